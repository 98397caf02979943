#include "app/findings/finding_card.h"

#include <QAccessibleWidget>

namespace lidwright {
namespace {

/// A card is an entry of a list whose name is the whole finding; its buttons are its children.
class CardAccess final : public QAccessibleWidget {
public:
    explicit CardAccess(FindingCard* card) : QAccessibleWidget(card, QAccessible::ListItem) {}

    QAccessible::State state() const override
    {
        QAccessible::State state = QAccessibleWidget::state();
        const auto* card = qobject_cast<const FindingCard*>(object());
        state.selectable = true;
        state.selected = card != nullptr && card->isCurrent();
        return state;
    }
};

QAccessibleInterface* makeAccess(const QString&, QObject* object)
{
    auto* card = qobject_cast<FindingCard*>(object);
    return card == nullptr ? nullptr : new CardAccess(card);
}

}  // namespace

void installCardAccess()
{
    // Qt keeps a factory once, however often it is handed over.
    QAccessible::installFactory(makeAccess);
}

}  // namespace lidwright
