#include "app/properties/part_form.h"

#include "app/document/plan_document.h"
#include "app/document/plan_members.h"
#include "app/properties/parameter_editor.h"
#include "app/properties/parameter_row.h"
#include "app/properties/part_keys.h"
#include "app/style/fonts.h"
#include "app/style/verdict_mark.h"
#include "app/style/wrapping_button.h"
#include "app/text/texts.h"
#include "app/text/unbroken.h"

#include <QEvent>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace lidwright {
namespace {

constexpr int kSettle_ms = 80;
constexpr int kRowGap = 6;

QLabel* wrapped(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

QLabel* heading(const QString& text, QWidget* parent)
{
    QLabel* label = wrapped(text, parent);
    label->setFont(boldFont(label->font()));
    return label;
}

}  // namespace

PartForm::PartForm(PlanDocument& document, QWidget* parent) : QWidget(parent), m_document(document)
{
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    m_settle.setSingleShot(true);
    m_settle.setInterval(kSettle_ms);
    connect(&m_settle, &QTimer::timeout, this, &PartForm::refreshDerived);
    connect(&m_document, &PlanDocument::selectionChanged, this, &PartForm::showPart);
    connect(&m_document, &PlanDocument::changed, this, &PartForm::refresh);
    showPart();
}

void PartForm::showPart()
{
    if (m_body != nullptr) {
        // An undo that takes the part away is no moment for a new edit of it.
        if (hasPart(m_document.plan(), m_part)) commit();
        // A control of the old form may be the sender of what led here.
        m_body->hide();
        layout()->removeWidget(m_body);
        m_body->deleteLater();
    }
    m_part = m_document.selectedPart();
    m_rows.clear();
    m_derivedKeys.clear();
    m_amounts.clear();
    m_derived = nullptr;
    m_title = nullptr;
    m_icon = nullptr;
    m_body = new QWidget(this);
    m_lines = new QVBoxLayout(m_body);
    m_lines->setContentsMargins(8, 8, 8, 8);
    m_lines->setSpacing(kRowGap);
    if (m_part.isEmpty()) {
        m_lines->addWidget(
            wrapped(tr("No part is selected. Choose one in the list above or on the board, and its "
                       "measures stand here."),
                    m_body));
    } else {
        addHeader();
        addRows();
        addButtons();
        m_derived = new QWidget(m_body);
        m_lines->addWidget(m_derived);
    }
    m_lines->addStretch();
    layout()->addWidget(m_body);
    m_body->show();
    refresh();
}

void PartForm::addHeader()
{
    auto* line = new QHBoxLayout;
    m_icon = new QLabel(m_body);
    m_title = heading({}, m_body);
    showIcon();
    line->addWidget(m_icon, 0, Qt::AlignTop);
    line->addWidget(m_title, 1);
    m_lines->addLayout(line);
}

void PartForm::showIcon()
{
    if (m_icon == nullptr) return;
    const int side = fontMetrics().height() + 4;
    m_icon->setPixmap(
        tintedIcon(partIconName(m_part), palette()).pixmap(QSize(side, side), devicePixelRatioF()));
}

void PartForm::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) showIcon();
}

void PartForm::addRows()
{
    for (const ParameterRef& ref : parametersOf(m_document.plan(), m_part.toStdString())) {
        auto* row = new ParameterRow(m_document, ref, m_body);
        m_lines->addWidget(row);
        m_rows.push_back(row);
    }
    if (m_part == QLatin1String("art") && m_document.plan().art.empty())
        m_lines->addWidget(
            wrapped(tr("There is no artwork yet. Bring in a drawing (SVG): what it paints can be cut "
                       "through the lid or engraved."),
                    m_body));
}

QPushButton* PartForm::button(const QString& text, const QString& tip)
{
    auto* made = new WrappingButton(text, m_body);
    made->setToolTip(tip);
    m_lines->addWidget(made);
    return made;
}

void PartForm::addButtons()
{
    const QString word = partWord(m_part);
    const QString name = partLabel(m_document.plan(), m_part);
    if (m_part == QLatin1String("box"))
        connect(button(tr("Outline from a drawing..."), tr("Take the outline of the box from an SVG file")),
                &QPushButton::clicked, this, &PartForm::boxOutlineWanted);
    if (!isListPart(word)) return;
    if (m_part == word) {
        const bool fromFile = word == QLatin1String("art");
        const QString text = fromFile                          ? tr("Add artwork...")
                             : word == QLatin1String("wiring") ? tr("Add a part of the wiring...")
                                                               : tr("Add a %1").arg(name.toLower());
        QPushButton* add =
            button(text, fromFile ? tr("Bring in artwork from an SVG file") : tr("Add one more to the plan"));
        connect(add, &QPushButton::clicked, this, [this, word] { Q_EMIT addWanted(word); });
        return;
    }
    if (word == QLatin1String("art"))
        connect(button(tr("Uses of the paints..."),
                       tr("Say for each colour of the drawing whether it is cut, engraved or left")),
                &QPushButton::clicked, this, &PartForm::paintUsesWanted);
    QPushButton* remove = button(tr("Remove"), tr("Take %1 out of the plan").arg(name));
    remove->setAccessibleName(tr("Remove %1").arg(name));
    connect(remove, &QPushButton::clicked, this, &PartForm::removeWanted);
}

void PartForm::buildDerived(const std::vector<DerivedValue>& own)
{
    if (m_derived->layout() != nullptr) {
        qDeleteAll(m_derived->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
        delete m_derived->layout();
    }
    m_derivedKeys.clear();
    m_amounts.clear();
    m_derived->hide();
    auto* lines = new QVBoxLayout(m_derived);
    lines->setContentsMargins(0, 6, 0, 0);
    lines->setSpacing(3);
    if (!own.empty()) lines->addWidget(heading(tr("What follows"), m_derived));
    // Under the part's title its name before a colon says nothing new.
    const bool member = m_part != partWord(m_part) || m_part.endsWith(QStringLiteral("-opening"));
    for (const DerivedValue& value : own) {
        QString text = shown(value.label);
        const qsizetype colon = text.lastIndexOf(QStringLiteral(": "));
        if (member && colon > 0) {
            text = text.mid(colon + 2);
            text[0] = text.at(0).toUpper();
        }
        auto* line = new QHBoxLayout;
        QLabel* amount = wrapped({}, m_derived);
        amount->setAccessibleName(text);
        line->addWidget(wrapped(text, m_derived), 1);
        line->addWidget(amount, 1);
        lines->addLayout(line);
        m_derivedKeys.push_back(value.key);
        m_amounts.push_back(amount);
    }
    m_derived->show();
}

void PartForm::refresh()
{
    // An undo may have taken members away: the form is built anew when its quantities are others.
    const std::vector<ParameterRef> refs = parametersOf(m_document.plan(), m_part.toStdString());
    const bool same =
        refs.size() == m_rows.size() &&
        std::equal(refs.begin(), refs.end(), m_rows.begin(),
                   [](const ParameterRef& ref, const ParameterRow* row) { return ref == row->ref(); });
    if (!same) {
        if (m_part == m_document.selectedPart()) showPart();
        return;
    }
    if (m_title != nullptr)
        m_title->setText(m_part == partWord(m_part) ? listLabel(m_document.plan(), m_part)
                                                    : partLabel(m_document.plan(), m_part));
    if (m_document.dragging()) {
        // Derived values measure areas and distances; a drag does not wait for them.
        for (ParameterRow* row : m_rows)
            row->refresh({});
        if (!m_settle.isActive()) m_settle.start();
    } else {
        refreshDerived();
    }
}

void PartForm::refreshDerived()
{
    const UnitStyle style = m_document.style();
    const std::vector<DerivedValue> all =
        m_part.isEmpty() ? std::vector<DerivedValue>() : allValues(m_document.plan(), m_document.layout());
    for (ParameterRow* row : m_rows) {
        QString derived;
        for (const DerivedValue& value : all)
            if (standsFor(value.key, row->ref().key())) derived = shown(value.measure, style);
        row->refresh(derived);
    }
    if (m_derived == nullptr) return;
    std::vector<DerivedValue> own;
    std::vector<std::string> keys;
    for (const DerivedValue& value : all) {
        if (partOfDerived(value.key) != m_part) continue;
        own.push_back(value);
        keys.push_back(value.key);
    }
    // Some quantities come and go: there is no distance to artwork where there is no artwork.
    if (keys != m_derivedKeys || m_derived->layout() == nullptr) buildDerived(own);
    for (std::size_t i = 0; i < own.size(); ++i)
        m_amounts[i]->setText(unbroken(shown(own[i].measure, style)));
}

ParameterRow* PartForm::row(const QString& parameterKey) const
{
    for (ParameterRow* row : m_rows)
        if (row->ref().key() == parameterKey.toStdString()) return row;
    return nullptr;
}

void PartForm::commit()
{
    for (ParameterRow* row : m_rows)
        row->editor().commit();
}

}  // namespace lidwright
