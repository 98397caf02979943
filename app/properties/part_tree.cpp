#include "app/properties/part_tree.h"

#include "app/document/plan_document.h"
#include "app/document/plan_members.h"
#include "app/properties/part_keys.h"
#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include "core/plan/catalogue.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QSignalBlocker>

#include <algorithm>

namespace lidwright {
namespace {

constexpr int kKeyRole = Qt::UserRole;
constexpr int kNameColumn = 0;
constexpr int kMarkColumn = 1;
constexpr int kLeastRow = 24;  // pixels; WCAG 2.2, success criterion 2.5.8
constexpr int kShownRows = 12;
constexpr int kIconSide = 16;
constexpr int kIconMargin = 12;

/// Keys of all parts and members that the plan has, in catalogue order.
QStringList allKeys(const Plan& plan)
{
    QStringList keys;
    for (const PartInfo& part : parts()) {
        const QString word = QString::fromLatin1(part.key);
        keys << word;
        for (int i = 0; part.list && i < memberCount(plan, word); ++i)
            keys << memberKey(word, i);
    }
    return keys;
}

}  // namespace

std::optional<Verdict> gravest(const std::vector<Finding>& findings, const QString& partKey)
{
    std::optional<Verdict> worst;
    for (const Finding& finding : findings) {
        const QString part = QString::fromStdString(finding.part);
        if (part != partKey && !part.startsWith(partKey + QLatin1Char('.'))) continue;
        if (!worst || finding.verdict > *worst) worst = finding.verdict;
    }
    return worst;
}

PartTree::PartTree(PlanDocument& document, QWidget* parent) : QTreeWidget(parent), m_document(document)
{
    setColumnCount(2);
    setHeaderHidden(true);
    setUniformRowHeights(true);
    setRootIsDecorated(true);
    setIndentation(14);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTextElideMode(Qt::ElideRight);
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(kNameColumn, QHeaderView::Stretch);
    header()->setSectionResizeMode(kMarkColumn, QHeaderView::Fixed);
    header()->setMinimumSectionSize(kLeastRow);
    setAccessibleName(tr("Parts"));
    setToolTip(tr("The parts of the plan, each with the mark of its gravest finding"));
    setWhatsThis(
        tr("Choose a part to see its measures below and its outline on the board. A ring means good, a "
           "half-filled ring tight, a square with a bar wrong, a dotted ring that data are missing."));

    connect(&m_document, &PlanDocument::changed, this, &PartTree::refresh);
    connect(&m_document, &PlanDocument::selectionChanged, this, &PartTree::showSelection);
    connect(this, &QTreeWidget::currentItemChanged, this, [this](QTreeWidgetItem* item) {
        if (item != nullptr) m_document.select(item->data(kNameColumn, kKeyRole).toString());
    });
    refresh();
    showSelection();
}

QSize PartTree::sizeHint() const
{
    return {QTreeWidget::sizeHint().width(), kShownRows * std::max(kLeastRow, fontMetrics().height() + 6)};
}

void PartTree::refresh()
{
    const QStringList keys = allKeys(m_document.plan());
    if (keys != m_keys) rebuild(keys);
    for (const auto& [key, item] : m_items)
        label(*item);
}

void PartTree::rebuild(const QStringList& keys)
{
    const int side = std::max(kIconSide, fontMetrics().height());
    setIconSize({side, side});
    header()->resizeSection(kMarkColumn, side + kIconMargin);
    std::map<QString, bool> open;
    for (const auto& [key, item] : m_items)
        open[key] = item->isExpanded();
    const QSignalBlocker quiet(this);
    clear();
    m_items.clear();
    m_marks.clear();
    m_keys = keys;
    for (const QString& key : keys) {
        const QString word = partWord(key);
        QTreeWidgetItem* item =
            key == word ? new QTreeWidgetItem(this) : new QTreeWidgetItem(m_items.at(word));
        item->setData(kNameColumn, kKeyRole, key);
        item->setIcon(kNameColumn, tintedIcon(partIconName(key), palette()));
        item->setSizeHint(kNameColumn, {0, std::max(kLeastRow, fontMetrics().height() + 6)});
        m_items[key] = item;
    }
    for (const auto& [key, item] : m_items)
        item->setExpanded(!open.contains(key) || open.at(key) || item->childCount() == 0);
    showSelection();
}

void PartTree::label(QTreeWidgetItem& item)
{
    const QString key = item.data(kNameColumn, kKeyRole).toString();
    const QString name =
        key == partWord(key) ? listLabel(m_document.plan(), key) : partLabel(m_document.plan(), key);
    const std::optional<Verdict> verdict = gravest(m_document.findings(), key);
    const auto known = m_marks.find(key);
    // During a drag most rows stay as they are.
    if (known != m_marks.end() && known->second == verdict && item.text(kNameColumn) == name) return;
    m_marks[key] = verdict;
    item.setText(kNameColumn, name);
    item.setIcon(kMarkColumn, verdict ? markIcon(*verdict, palette(), iconSize().width()) : QIcon());
    const QString word = verdict ? shown(*verdict) : QString();
    item.setData(kNameColumn, Qt::AccessibleTextRole, verdict ? tr("%1, %2").arg(name, word) : name);
    item.setData(kMarkColumn, Qt::AccessibleTextRole, verdict ? word : tr("not judged"));
    item.setToolTip(kNameColumn, name);
    item.setToolTip(kMarkColumn, verdict ? tr("Gravest finding: %1").arg(word) : QString());
}

void PartTree::showSelection()
{
    const QSignalBlocker quiet(this);
    const auto found = m_items.find(m_document.selectedPart());
    if (found == m_items.end()) {
        setCurrentItem(nullptr);
        return;
    }
    setCurrentItem(found->second);
    scrollToItem(found->second);
}

void PartTree::changeEvent(QEvent* event)
{
    QTreeWidget::changeEvent(event);
    if (event->type() != QEvent::PaletteChange && event->type() != QEvent::FontChange) return;
    rebuild(m_keys);
    refresh();
}

void PartTree::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Delete) {
        Q_EMIT removeWanted();
        return;
    }
    QTreeWidget::keyPressEvent(event);
}

}  // namespace lidwright
