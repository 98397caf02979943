#include "app/properties/parameter_editor.h"

#include "app/properties/choice_edit.h"
#include "app/properties/flag_edit.h"
#include "app/properties/length_edit.h"
#include "app/properties/notes_edit.h"
#include "app/properties/number_edit.h"
#include "app/properties/text_edit.h"
#include "app/text/texts.h"

namespace lidwright {
namespace {

/// Texts that may be longer than this get several lines.
constexpr double kLongTextBytes = 1000;

class TypedEditor final : public ParameterEditor {
public:
    explicit TypedEditor(TypedEdit* edit) : ParameterEditor(edit), m_edit(edit)
    {
        connect(edit, &TypedEdit::committed, this, &ParameterEditor::chosen);
        connect(edit, &TypedEdit::errorChanged, this, &ParameterEditor::errorChanged);
    }
    void setValue(const ParameterValue& value, const UnitStyle& style) override
    {
        m_edit->setValue(value, style);
    }
    void showInstead(const QString& text) override { m_edit->showInstead(text); }
    void refuse(const Error& error) override { m_edit->markError(error); }
    void commit() override { m_edit->commit(); }

private:
    TypedEdit* m_edit;
};

class NotesEditor final : public ParameterEditor {
public:
    explicit NotesEditor(NotesEdit* edit) : ParameterEditor(edit), m_edit(edit)
    {
        connect(edit, &NotesEdit::committed, this,
                [this](const QString& text) { Q_EMIT chosen(text.toStdString(), false); });
    }
    void setValue(const ParameterValue& value, const UnitStyle&) override
    {
        m_edit->setValue(QString::fromStdString(std::get<std::string>(value)));
    }
    void commit() override { m_edit->commit(); }

private:
    NotesEdit* m_edit;
};

class ChoiceEditor final : public ParameterEditor {
public:
    explicit ChoiceEditor(ChoiceEdit* edit) : ParameterEditor(edit), m_edit(edit)
    {
        connect(edit, &ChoiceEdit::committed, this, [this](double index) { Q_EMIT chosen(index, true); });
    }
    void setValue(const ParameterValue& value, const UnitStyle&) override
    {
        m_edit->setValue(std::get<double>(value));
    }
    int wantedWidth() const override { return m_edit->wantedWidth(); }

private:
    ChoiceEdit* m_edit;
};

class FlagEditor final : public ParameterEditor {
public:
    explicit FlagEditor(FlagEdit* edit) : ParameterEditor(edit), m_edit(edit)
    {
        connect(edit, &FlagEdit::committed, this, [this](double value) { Q_EMIT chosen(value, false); });
    }
    void setValue(const ParameterValue& value, const UnitStyle&) override
    {
        m_edit->setValue(std::get<double>(value));
    }

private:
    FlagEdit* m_edit;
};

}  // namespace

ParameterEditor::ParameterEditor(QWidget* widget) : QObject(widget), m_widget(widget) {}

void ParameterEditor::refuse(const Error& error)
{
    Q_EMIT errorChanged(shown(Error{error.what, {}, error.mend, -1}));
}

ParameterEditor* ParameterEditor::make(const Parameter& parameter, const UnitStyle& style, QWidget* parent)
{
    switch (parameter.quantity) {
        case Quantity::Length:
            return new TypedEditor(new LengthEdit(parameter.least, parameter.most, style, parent));
        case Quantity::Choice:
            return new ChoiceEditor(new ChoiceEdit(parameter.choices, parent));
        case Quantity::Flag:
            return new FlagEditor(new FlagEdit(parent));
        case Quantity::Text:
            if (parameter.most > kLongTextBytes) return new NotesEditor(new NotesEdit(parent));
            return new TypedEditor(new TextEdit(static_cast<int>(parameter.most), style, parent));
        default:
            return new TypedEditor(new NumberEdit(parameter, style, parent));
    }
}

}  // namespace lidwright
