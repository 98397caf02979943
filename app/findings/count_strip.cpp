#include "app/findings/count_strip.h"

#include "app/style/fonts.h"
#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include <QAccessible>
#include <QEvent>

namespace lidwright {
namespace {

constexpr Verdict kOrder[] = {Verdict::Wrong, Verdict::Unknown, Verdict::Tight, Verdict::Good};
constexpr int kGap = 14;     // between two counts
constexpr int kMarkGap = 5;  // between a mark and its words
constexpr int kMargin = 8;
constexpr int kLineGap = 4;

}  // namespace

CountStrip::CountStrip(QWidget* parent) : QWidget(parent)
{
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setToolTip(tr("How many findings there are of each kind"));
    setFindings({}, false);
}

void CountStrip::setFindings(const std::vector<Finding>& findings, bool announce)
{
    m_counts.fill(0);
    for (const Finding& finding : findings)
        ++m_counts[static_cast<std::size_t>(finding.verdict)];
    const QString now = words();
    if (now != accessibleName()) {
        setAccessibleName(now);
        updateGeometry();
        update();
    }
    if (!announce || now == m_announced) return;
    m_announced = now;
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
    Q_EMIT announced(now);
}

QString CountStrip::words() const
{
    QStringList parts;
    for (const Item& item : placed(1 << 20))
        parts << item.text;
    return parts.isEmpty() ? tr("Nothing is judged yet") : parts.join(tr(", "));
}

std::vector<CountStrip::Item> CountStrip::placed(int width) const
{
    std::vector<Item> items;
    const QFontMetrics metrics(boldFont(font()));
    const int line = metrics.height() + 2;
    int x = kMargin;
    int y = kMargin / 2;
    for (const Verdict verdict : kOrder) {
        const int count = m_counts[static_cast<std::size_t>(verdict)];
        if (count == 0) continue;
        //: how many findings have a verdict: "2 wrong"
        const QString text = tr("%1 %2").arg(count).arg(shown(verdict));
        const int size = line + kMarkGap + metrics.horizontalAdvance(text);
        if (x > kMargin && x + size > width - kMargin) {
            x = kMargin;
            y += line + kLineGap;
        }
        items.push_back({verdict, text, QRect(x, y, size, line)});
        x += size + kGap;
    }
    return items;
}

QSize CountStrip::sizeHint() const
{
    const std::vector<Item> items = placed(1 << 20);
    const int width = items.empty() ? 0 : items.back().box.right() + kMargin;
    return {width, heightForWidth(width + 1)};
}

QSize CountStrip::minimumSizeHint() const
{
    int widest = 0;
    for (const Item& item : placed(1 << 20))
        widest = std::max(widest, item.box.width());
    return {widest + 2 * kMargin, heightForWidth(1 << 20)};
}

int CountStrip::heightForWidth(int width) const
{
    const std::vector<Item> items = placed(width);
    return (items.empty() ? fontMetrics().height() + kMargin / 2 : items.back().box.bottom()) + kMargin / 2;
}

void CountStrip::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setFont(boldFont(font()));
    painter.setPen(palette().color(QPalette::WindowText));
    const std::vector<Item> items = placed(width());
    if (items.empty()) painter.drawText(rect().adjusted(kMargin, 0, -kMargin, 0), Qt::AlignVCenter, words());
    for (const Item& item : items) {
        const int side = item.box.height() - 3;
        paintMark(painter, QRectF(item.box.left(), item.box.top() + 1.5, side, side), item.verdict,
                  palette());
        painter.drawText(item.box.adjusted(item.box.height() + kMarkGap - 2, 0, 4, 0),
                         Qt::AlignVCenter | Qt::AlignLeft, item.text);
    }
}

void CountStrip::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) updateGeometry();
}

}  // namespace lidwright
