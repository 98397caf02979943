#include "app/board/board_accessible.h"

#include "app/board/board_scene.h"
#include "app/board/board_widget.h"
#include "app/board/bridge_lane_bar.h"
#include "app/board/dimension_editor.h"
#include "app/board/station_rule.h"
#include "app/board/view_transform.h"
#include "app/document/plan_document.h"

#include <QAccessibleWidget>
#include <QPointer>

#include <algorithm>
#include <map>

namespace lidwright {

namespace {

/// One part of the drawing.
class PartAccessible : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    PartAccessible(BoardWidget& board, std::string part) : m_board(&board), m_part(std::move(part)) {}

    const std::string& part() const { return m_part; }

    bool isValid() const override { return !m_board.isNull(); }
    QObject* object() const override { return nullptr; }
    QAccessibleInterface* parent() const override { return QAccessible::queryAccessibleInterface(m_board); }
    QAccessibleInterface* child(int) const override { return nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QAccessible::Role role() const override { return QAccessible::Graphic; }

    QString text(QAccessible::Text which) const override
    {
        return which == QAccessible::Name && isValid() ? m_board->describePart(m_part) : QString();
    }
    void setText(QAccessible::Text, const QString&) override {}

    QRect rect() const override
    {
        if (!isValid()) return {};
        const PlacedView* view = m_board->scene().viewOf(m_part);
        if (!view) return {};
        const QRect local =
            m_board->transform().toWidget(m_board->scene().extentOf(m_part, *view)).toAlignedRect();
        return {m_board->mapToGlobal(local.topLeft()), local.size()};
    }

    QAccessible::State state() const override
    {
        QAccessible::State state;
        if (!isValid()) {
            state.invalid = true;
            return state;
        }
        const bool selected = m_board->document().selectedPart().toStdString() == m_part;
        state.selectable = state.focusable = true;
        state.selected = selected;
        state.focused = selected && m_board->hasFocus();
        state.offscreen = !m_board->isVisible();
        return state;
    }

    void* interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                    : nullptr;
    }
    QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
    void doAction(const QString& name) override
    {
        if (!isValid()) return;
        m_board->document().select(QString::fromStdString(m_part));
        if (name == setFocusAction()) m_board->setFocus(Qt::OtherFocusReason);
        if (name == pressAction()) Q_EMIT m_board->partActivated(QString::fromStdString(m_part));
    }
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

private:
    QPointer<BoardWidget> m_board;
    std::string m_part;
};

/// The board: its parts first, then the widgets that lie on it.
class BoardAccessible : public QAccessibleWidget {
public:
    explicit BoardAccessible(BoardWidget* board) : QAccessibleWidget(board, QAccessible::Canvas) {}
    ~BoardAccessible() override
    {
        for (const auto& [part, id] : m_children)
            QAccessible::deleteAccessibleInterface(id);
    }

    int childCount() const override { return int(parts().size()) + QAccessibleWidget::childCount(); }
    QAccessibleInterface* child(int index) const override
    {
        const std::vector<std::string> all = parts();
        if (index < 0) return nullptr;
        if (index < int(all.size())) return partChild(all[std::size_t(index)]);
        return QAccessibleWidget::child(index - int(all.size()));
    }
    int indexOfChild(const QAccessibleInterface* child) const override
    {
        const std::vector<std::string> all = parts();
        if (const auto* part = dynamic_cast<const PartAccessible*>(child)) {
            const auto at = std::find(all.begin(), all.end(), part->part());
            return at == all.end() ? -1 : int(at - all.begin());
        }
        const int index = QAccessibleWidget::indexOfChild(child);
        return index < 0 ? index : index + int(all.size());
    }
    QAccessibleInterface* childAt(int x, int y) const override
    {
        const int partCount = int(parts().size());
        for (int i = childCount() - 1; i >= partCount; --i) {
            QAccessibleInterface* widget = child(i);
            if (widget && !widget->state().invisible && widget->rect().contains(x, y)) return widget;
        }
        // The smallest part under the point: the lid must not hide the bridge.
        QAccessibleInterface* best = nullptr;
        double least = 0;
        for (const std::string& part : parts()) {
            QAccessibleInterface* candidate = partChild(part);
            const QRect box = candidate->rect();
            const double size = double(box.width()) * box.height();
            if (!box.contains(x, y) || (best && size >= least)) continue;
            best = candidate;
            least = size;
        }
        return best;
    }
    QAccessibleInterface* focusChild() const override
    {
        const std::string selected = board().document().selectedPart().toStdString();
        if (!board().hasFocus() || selected.empty()) return QAccessibleWidget::focusChild();
        const std::vector<std::string> all = parts();
        return std::find(all.begin(), all.end(), selected) == all.end() ? nullptr : partChild(selected);
    }

private:
    BoardWidget& board() const { return *static_cast<BoardWidget*>(widget()); }
    std::vector<std::string> parts() const { return board().scene().partsInOrder(); }

    QAccessibleInterface* partChild(const std::string& part) const
    {
        const auto found = m_children.find(part);
        if (found != m_children.end()) return QAccessible::accessibleInterface(found->second);
        auto* child = new PartAccessible(board(), part);
        m_children[part] = QAccessible::registerAccessibleInterface(child);
        return child;
    }

    mutable std::map<std::string, QAccessible::Id> m_children;
};

QAccessibleInterface* makeInterface(const QString&, QObject* object)
{
    auto* board = qobject_cast<BoardWidget*>(object);
    return board ? new BoardAccessible(board) : nullptr;
}

}  // namespace

void installBoardAccessibility()
{
    // Qt asks every installed factory; one that is installed already is not taken twice.
    QAccessible::removeFactory(makeInterface);
    QAccessible::installFactory(makeInterface);
}

void announceChange(BoardWidget& board)
{
    if (!QAccessible::isActive()) return;
    const int count = int(board.scene().partsInOrder().size());
    for (int i = 0; i < count; ++i) {
        for (const QAccessible::Event what : {QAccessible::NameChanged, QAccessible::LocationChanged}) {
            QAccessibleEvent event(&board, what);
            event.setChild(i);
            QAccessible::updateAccessibility(&event);
        }
    }
}

void announceSelection(BoardWidget& board, const std::string& part)
{
    if (!QAccessible::isActive() || part.empty()) return;
    const std::vector<std::string> all = board.scene().partsInOrder();
    const auto at = std::find(all.begin(), all.end(), part);
    if (at == all.end()) return;
    QAccessibleEvent event(&board, board.hasFocus() ? QAccessible::Focus : QAccessible::Selection);
    event.setChild(int(at - all.begin()));
    QAccessible::updateAccessibility(&event);
}

}  // namespace lidwright
