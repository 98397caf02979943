#pragma once

#include <QWidget>

class QPushButton;

namespace lidwright {

class PartForm;
class PartTree;
class PlanDocument;

/// The parts, each with its mark (gravest finding), and below them the selected part's form from the
/// catalogue.
class PartsPanel : public QWidget {
    Q_OBJECT
public:
    explicit PartsPanel(PlanDocument& document, QWidget* parent = nullptr);

    /// Puts the keyboard into the field of this parameter key, opening its part.
    void focusParameter(const QString& key);
    /// Takes over what is being typed in a field, as Enter does. For commands that read the plan while a
    /// field has the keyboard: saving, printing.
    void commitPending();

Q_SIGNALS:
    void addArtworkWanted();
    /// One more part of the wiring is asked for; its kind is still to be chosen.
    void addWiringWanted();
    void boxOutlineWanted();
    /// The table of the selected artwork's paints and their uses is asked for.
    void paintUsesWanted();

private:
    void add(const QString& word);
    void removeSelected();
    void showRemovable();

    PlanDocument& m_document;
    PartTree* m_tree;
    PartForm* m_form;
    QPushButton* m_remove;
};

}  // namespace lidwright
