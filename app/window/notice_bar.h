#pragma once

#include <QFrame>
#include <QString>

#include <functional>
#include <vector>

class QVBoxLayout;

namespace lidwright {

/// A way to answer a notice.
struct NoticeAnswer {
    QString label;
    std::function<void()> act;
};

/// Messages that wait at the top of the window without stopping the work: what a file's reader has to say, a
/// plan that can be restored, an edit that was refused. Each goes away when it is answered or closed.
class NoticeBar : public QFrame {
    Q_OBJECT
public:
    explicit NoticeBar(QWidget* parent = nullptr);

    /// Shows the message. One with the same non-empty `topic` takes the place of the earlier one.
    void show(const QString& message, const QString& topic = {},
              const std::vector<NoticeAnswer>& answers = {});
    void dismiss(const QString& topic);
    void dismissAll();
    /// The messages that stand there, oldest first.
    QStringList messages() const;

private:
    void remove(QWidget* row);

    QVBoxLayout* m_rows;
};

}  // namespace lidwright
