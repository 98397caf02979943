#include "app/properties/parts_panel.h"

#include "app/document/plan_document.h"
#include "app/document/plan_members.h"
#include "app/properties/parameter_row.h"
#include "app/properties/part_form.h"
#include "app/properties/part_keys.h"
#include "app/properties/part_tree.h"
#include "app/style/verdict_mark.h"
#include "app/text/texts.h"

#include "core/plan/catalogue.h"

#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

namespace lidwright {

PartsPanel::PartsPanel(PlanDocument& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_tree(new PartTree(document)),
      m_form(new PartForm(document)),
      m_remove(new QPushButton(tr("Remove")))
{
    auto* addButton = new QPushButton(tr("Add"));
    addButton->setAccessibleName(tr("Add a part"));
    addButton->setToolTip(
        tr("Add artwork, a tie, a hole, a block, a bar, a part of the wiring or a layer of backing"));
    auto* menu = new QMenu(addButton);
    for (const PartInfo& part : parts()) {
        if (!part.list) continue;
        const QString word = QString::fromLatin1(part.key);
        const QString label = word == QLatin1String("art") || word == QLatin1String("wiring")
                                  ? tr("%1...").arg(shown(part.label))
                                  : shown(part.label);
        menu->addAction(label, this, [this, word] { add(word); });
    }
    addButton->setMenu(menu);
    m_remove->setToolTip(
        tr("Take the selected artwork, tie, hole, block, bar or other piece out of the plan"));
    for (QPushButton* button : {addButton, m_remove})
        button->setAutoDefault(false);

    auto* upper = new QWidget;
    auto* upperLines = new QVBoxLayout(upper);
    upperLines->setContentsMargins(0, 0, 0, 0);
    upperLines->setSpacing(4);
    upperLines->addWidget(m_tree, 1);
    auto* buttons = new QHBoxLayout;
    buttons->setContentsMargins(4, 0, 4, 4);
    buttons->addWidget(addButton);
    buttons->addWidget(m_remove);
    buttons->addStretch();
    upperLines->addLayout(buttons);

    auto* scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setAccessibleName(tr("Measures of the selected part"));
    scroll->setWidget(m_form);

    auto* splitter = new QSplitter(Qt::Vertical);
    splitter->addWidget(upper);
    splitter->addWidget(scroll);
    splitter->setChildrenCollapsible(false);
    splitter->setStretchFactor(0, 0);
    splitter->setStretchFactor(1, 1);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(splitter);

    connect(m_tree, &PartTree::removeWanted, this, &PartsPanel::removeSelected);
    connect(m_remove, &QPushButton::clicked, this, &PartsPanel::removeSelected);
    connect(m_form, &PartForm::removeWanted, this, &PartsPanel::removeSelected);
    connect(m_form, &PartForm::addWanted, this, &PartsPanel::add);
    connect(m_form, &PartForm::paintUsesWanted, this, &PartsPanel::paintUsesWanted);
    connect(m_form, &PartForm::boxOutlineWanted, this, &PartsPanel::boxOutlineWanted);
    connect(&m_document, &PlanDocument::selectionChanged, this, &PartsPanel::showRemovable);
    connect(&m_document, &PlanDocument::changed, this, &PartsPanel::showRemovable);
    showRemovable();
}

void PartsPanel::showRemovable()
{
    m_remove->setEnabled(partMember(m_document.selectedPart()).has_value());
}

void PartsPanel::add(const QString& word)
{
    if (word == QLatin1String("art")) {
        Q_EMIT addArtworkWanted();
        return;
    }
    if (word == QLatin1String("wiring")) {
        Q_EMIT addWiringWanted();
        return;
    }
    commitPending();
    const Plan& plan = m_document.plan();
    const std::optional<Plan> next = word == QLatin1String("hole")     ? withHole(plan, HoleKind::Circle)
                                     : word == QLatin1String("string") ? withString(plan)
                                     : word == QLatin1String("fixing") ? withFixing(plan)
                                     : word == QLatin1String("tie")
                                         ? withTie(plan, m_document.layout(), m_document.selectedPart())
                                     : word == QLatin1String("hollow")   ? withHollow(plan)
                                     : word == QLatin1String("bar")      ? withBar(plan, m_document.layout())
                                     : word == QLatin1String("backing")  ? withBackingLayer(plan)
                                     : word == QLatin1String("stock")    ? withStock(plan)
                                     : word == QLatin1String("price")    ? withPrice(plan)
                                     : word == QLatin1String("accepted") ? withAcceptance(plan)
                                                                         : withBlock(plan);
    if (!next) return;
    m_document.replace(*next, tr("Add %1").arg(partLabel(plan, word).toLower()));
    m_document.select(memberKey(word, memberCount(m_document.plan(), word) - 1));
}

void PartsPanel::removeSelected()
{
    const QString part = m_document.selectedPart();
    const std::optional<Plan> next = withoutMember(m_document.plan(), part);
    if (!next) return;
    const QString word = partWord(part);
    const int index = partMember(part)->index;
    m_document.replace(*next, tr("Remove %1").arg(partLabel(m_document.plan(), part)));
    const int left = memberCount(m_document.plan(), word);
    // The neighbour that moved into its place, the one before it, or the list.
    m_document.select(left == 0 ? word : memberKey(word, std::min(index, left - 1)));
}

void PartsPanel::commitPending()
{
    m_form->commit();
}

void PartsPanel::focusParameter(const QString& key)
{
    m_document.select(key.left(key.lastIndexOf(QLatin1Char('.'))));
    ParameterRow* row = m_form->row(key);
    if (row == nullptr) return;
    row->takeFocus();
    for (QWidget* up = m_form->parentWidget(); up != nullptr; up = up->parentWidget()) {
        auto* scroll = qobject_cast<QScrollArea*>(up);
        if (scroll == nullptr) continue;
        scroll->ensureWidgetVisible(row);
        return;
    }
}

}  // namespace lidwright
