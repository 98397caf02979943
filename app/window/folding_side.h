#pragma once

#include <QFrame>

class QLabel;
class QToolButton;
class QVBoxLayout;

namespace lidwright {

/// A side of the window that folds away to a narrow strip with its name, like the leaf of a drop-leaf table.
class FoldingSide : public QFrame {
    Q_OBJECT
public:
    enum class Edge { Left, Right };

    FoldingSide(const QString& name, Edge edge, QWidget* content, QWidget* parent = nullptr);

    bool folded() const { return m_folded; }
    void setFolded(bool folded);
    /// How wide it was before it was last folded, px.
    int openWidth() const { return m_openWidth; }
    QWidget* content() const { return m_content; }

Q_SIGNALS:
    void foldedChanged(bool folded);

protected:
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void arrange();

    QString m_name;
    Edge m_edge;
    QWidget* m_content;
    QToolButton* m_fold;
    QLabel* m_title;
    bool m_folded = false;
    int m_openWidth = 300;
};

}  // namespace lidwright
