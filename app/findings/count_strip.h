#pragma once

#include "core/checks/finding.h"

#include <QWidget>

#include <array>

namespace lidwright {

/// How many findings there are of each verdict, with marks: "2 wrong, 1 tight, 9 good". Its accessible name
/// says the same; a change is announced.
class CountStrip final : public QWidget {
    Q_OBJECT
public:
    explicit CountStrip(QWidget* parent = nullptr);

    /// Takes the findings over; `announce` false while something is dragged.
    void setFindings(const std::vector<Finding>& findings, bool announce);
    /// "2 wrong, 1 tight, 9 good".
    QString words() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

Q_SIGNALS:
    /// Screen readers are told these words.
    void announced(const QString& words);

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Item {
        Verdict verdict;
        QString text;
        QRect box;
    };
    /// The items where they stand on a strip of this width, in lines.
    std::vector<Item> placed(int width) const;

    std::array<int, 4> m_counts{};
    QString m_announced;
};

}  // namespace lidwright
