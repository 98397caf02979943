#pragma once

#include "core/solvers/playing_values.h"

#include <QTimer>
#include <QWidget>

#include <vector>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace lidwright {

class ParameterRow;
class PlanDocument;

/// The form of the selected part: a row for each of its quantities, what can be done with it, and below them
/// what the layout makes of it.
class PartForm final : public QWidget {
    Q_OBJECT
public:
    explicit PartForm(PlanDocument& document, QWidget* parent = nullptr);

    /// The row of a parameter key, or null where the form has none.
    ParameterRow* row(const QString& parameterKey) const;
    const std::vector<ParameterRow*>& rows() const { return m_rows; }
    /// Reads what is being typed, as Enter does.
    void commit();

Q_SIGNALS:
    void addWanted(const QString& word);
    void removeWanted();
    void paintUsesWanted();
    void boxOutlineWanted();

protected:
    void changeEvent(QEvent* event) override;

private:
    void showIcon();
    void showPart();
    void refresh();
    void refreshDerived();
    void addHeader();
    void addRows();
    void addButtons();
    void buildDerived(const std::vector<DerivedValue>& own);
    QPushButton* button(const QString& text, const QString& tip);

    PlanDocument& m_document;
    QString m_part;
    QWidget* m_body = nullptr;
    QVBoxLayout* m_lines = nullptr;
    std::vector<ParameterRow*> m_rows;
    QLabel* m_icon = nullptr;
    QLabel* m_title = nullptr;
    QWidget* m_derived = nullptr;
    std::vector<std::string> m_derivedKeys;
    std::vector<QLabel*> m_amounts;  ///< one per derived key
    QTimer m_settle;                 ///< derived values wait for a pause in a drag
};

}  // namespace lidwright
