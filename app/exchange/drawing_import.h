#pragma once

#include "app/exchange/artwork_picture.h"
#include "app/exchange/background.h"
#include "app/exchange/size_choice.h"

#include "core/base/units.h"

#include <QWidget>

#include <memory>
#include <optional>

class QLabel;
class QListWidget;
class QProgressBar;

namespace lidwright {

/// The common part of bringing a drawing in: reads the file in the background, shows its picture, asks for
/// its size and tells what could not be taken over.
class DrawingImport : public QWidget {
    Q_OBJECT
public:
    DrawingImport(const QString& path, const UnitStyle& style, QWidget* parent = nullptr);

    /// The newest reading; null while there is none or it failed.
    std::shared_ptr<const SvgReading> reading() const { return m_reading; }
    /// The drawing of reading(); null as that.
    ArtworkPtr art() const;
    bool busy() const { return m_background.busy(); }
    QString fileName() const;
    QString errorText() const { return m_error; }
    ArtworkPicture& picture() { return *m_picture; }
    SizeChoice& size() { return *m_size; }
    /// What was left out or taken in another way, as shown.
    QStringList messages() const;

Q_SIGNALS:
    /// A reading came, failed, or is under way again.
    void readingChanged();

private:
    struct Outcome {
        std::shared_ptr<const QByteArray> text;
        std::shared_ptr<const SvgReading> reading;
        std::optional<Error> error;
    };
    void read();
    void take(Outcome outcome);

    QString m_path;
    std::shared_ptr<const QByteArray> m_text;  ///< the file's content once it was read
    std::shared_ptr<const SvgReading> m_reading;
    QString m_error;
    ArtworkPicture* m_picture;
    SizeChoice* m_size;
    QLabel* m_state;
    QProgressBar* m_progress;
    QListWidget* m_messages;
    QLabel* m_messagesTitle;
    Background<Outcome> m_background;
};

}  // namespace lidwright
