#pragma once

#include "core/checks/finding.h"

#include <QTreeWidget>

#include <map>
#include <optional>

namespace lidwright {

class PlanDocument;

/// The parts in catalogue order, members of lists below their list, each with the mark of its gravest
/// finding. What is chosen here is selected everywhere, and the other way round.
class PartTree final : public QTreeWidget {
    Q_OBJECT
public:
    explicit PartTree(PlanDocument& document, QWidget* parent = nullptr);

    QSize sizeHint() const override;

Q_SIGNALS:
    void removeWanted();  ///< Del was pressed

protected:
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void refresh();
    void rebuild(const QStringList& keys);
    void label(QTreeWidgetItem& item);
    void showSelection();

    PlanDocument& m_document;
    QStringList m_keys;
    std::map<QString, QTreeWidgetItem*> m_items;
    std::map<QString, std::optional<Verdict>> m_marks;  ///< what the items show now
};

/// The gravest verdict of the findings about a part; for the key of a list also of its members'. Nothing
/// where no finding is about it.
std::optional<Verdict> gravest(const std::vector<Finding>& findings, const QString& partKey);

}  // namespace lidwright
