#include "app/properties/parameter_row.h"

#include "app/document/plan_document.h"
#include "app/properties/edit_text.h"
#include "app/properties/parameter_editor.h"
#include "app/style/fonts.h"
#include "app/style/palette.h"
#include "app/style/verdict_mark.h"
#include "app/text/texts.h"
#include "app/text/unbroken.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>

namespace lidwright {
namespace {

constexpr int kLeastTarget = 24;      // pixels; WCAG 2.2, success criterion 2.5.8
constexpr int kSideBySideChars = 26;  // below this many characters of width the control goes under its label
constexpr double kHintScale = 0.88;

QLabel* wrappedLabel(QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    return label;
}

}  // namespace

ParameterRow::ParameterRow(PlanDocument& document, const ParameterRef& ref, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_ref(ref),
      m_line(new QHBoxLayout),
      m_label(wrappedLabel(this)),
      m_hint(wrappedLabel(this)),
      m_editor(ParameterEditor::make(*ref.parameter, document.style(), this)),
      m_reset(new QToolButton(this)),
      m_message(wrappedLabel(this))
{
    const QString name = parameterName(document.plan(), ref);
    m_label->setText(shown(ref.parameter->label));
    m_label->setBuddy(m_editor->widget());
    m_editor->widget()->setAccessibleName(name);
    m_editor->widget()->setObjectName(QString::fromStdString(ref.key()));
    m_editor->widget()->setWhatsThis(shown(ref.parameter->help));
    m_editor->widget()->setMinimumWidth(0);

    scaleFonts();
    m_message->setAccessibleName(tr("%1: message").arg(name));
    m_message->hide();

    m_reset->setObjectName(QStringLiteral("reset"));
    m_reset->setAutoRaise(true);
    m_reset->setMinimumSize(kLeastTarget, kLeastTarget);
    m_reset->setAccessibleName(tr("%1: back to the default").arg(name));
    QSizePolicy keepsPlace = m_reset->sizePolicy();
    keepsPlace.setRetainSizeWhenHidden(true);
    m_reset->setSizePolicy(keepsPlace);

    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    words->addWidget(m_label);
    words->addWidget(m_hint);
    auto* control = new QHBoxLayout;
    control->setSpacing(2);
    control->addWidget(m_editor->widget(), 1, Qt::AlignTop);
    control->addWidget(m_reset, 0, Qt::AlignTop);
    m_line->setSpacing(6);
    m_line->addLayout(words, 1);
    m_line->addLayout(control, 1);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(1);
    whole->addLayout(m_line);
    whole->addWidget(m_message);

    connect(m_editor, &ParameterEditor::chosen, this, &ParameterRow::choose);
    connect(m_editor, &ParameterEditor::errorChanged, this, &ParameterRow::showError);
    connect(m_reset, &QToolButton::clicked, this, [this] {
        // The button goes away with the difference; the keyboard stays in the row.
        const bool hadFocus = m_reset->hasFocus();
        choose(defaultValue(*m_ref.parameter), false);
        if (hadFocus) m_editor->widget()->setFocus();
    });
    paintQuiet();
    refresh({});
}

void ParameterRow::choose(const ParameterValue& value, bool step)
{
    // The member may be gone while its row still loses the keyboard.
    if (m_ref.parameter->inList() && m_ref.index >= m_ref.parameter->size(m_document.plan())) return;
    const std::string key = m_ref.key();
    const Result<Plan> next = set(m_document.plan(), m_ref, value);
    if (!next) {
        m_editor->refuse(next.error());
        return;
    }
    const QString mergeKey = step ? QStringLiteral("step ") + QString::fromStdString(key) : QString();
    m_document.edit({Edit{key, value}}, editText(m_document.plan(), m_ref, value), mergeKey);
}

void ParameterRow::refresh(const QString& derived)
{
    const Plan& plan = m_document.plan();
    const UnitStyle style = m_document.style();
    const ParameterValue value = get(plan, m_ref);
    const bool counts = active(plan, m_ref);
    m_editor->setValue(value, style);
    m_editor->widget()->setEnabled(counts);
    m_label->setEnabled(counts);

    const QString tip = parameterTip(plan, m_ref);
    if (m_editor->widget()->toolTip() != tip) {
        m_editor->widget()->setToolTip(tip);
        m_label->setToolTip(tip);
    }
    const ParameterValue fresh = defaultValue(*m_ref.parameter);
    m_reset->setVisible(counts && value != fresh);
    const QString back = shown(formatValue(*m_ref.parameter, fresh, style));
    m_reset->setToolTip(back.isEmpty() ? tr("Back to the default: nothing")
                                       : tr("Back to the default: %1").arg(back));

    const bool unusual = counts && outsideCustomary(*m_ref.parameter, value);
    const QString usual = customaryHint(*m_ref.parameter, style);
    m_hint->setText(unbroken(unusual ? tr("%1; this is outside").arg(usual) : usual));
    m_hint->setVisible(counts && !usual.isEmpty());

    if (counts && !m_refused) {
        m_message->hide();
    } else if (!counts) {
        m_refused = false;
        if (!derived.isEmpty()) m_editor->showInstead(derived);
        m_message->setText(inactiveReason(plan, m_ref, !derived.isEmpty()));
        m_message->show();
    }
}

void ParameterRow::showError(const QString& message)
{
    m_refused = !message.isEmpty();
    m_message->setText(message);
    m_message->setVisible(m_refused);
    if (!m_refused) return;
    QAccessibleEvent alert(m_message, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void ParameterRow::takeFocus()
{
    m_editor->widget()->setFocus(Qt::OtherFocusReason);
    if (auto* line = qobject_cast<QLineEdit*>(m_editor->widget())) line->selectAll();
}

void ParameterRow::paintQuiet()
{
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, quietText(palette()));
    m_hint->setPalette(quiet);
    m_reset->setIcon(tintedIcon(QStringLiteral("row_reset"), palette()));
}

void ParameterRow::scaleFonts()
{
    m_hint->setFont(scaledFont(font(), kHintScale));
    m_message->setFont(scaledFont(font(), kHintScale));
    m_reset->setIconSize({fontMetrics().height(), fontMetrics().height()});
}

void ParameterRow::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) paintQuiet();
    if (event->type() == QEvent::FontChange) scaleFonts();
}

void ParameterRow::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    const int room = (width() - m_reset->width()) / 2;
    const bool narrow =
        width() < kSideBySideChars * fontMetrics().averageCharWidth() || m_editor->wantedWidth() > room;
    m_line->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    // Side by side both halves are as wide; one above the other nothing may grow taller than it is.
    for (const int item : {0, 1})
        m_line->setStretch(item, narrow ? 0 : 1);
}

}  // namespace lidwright
