#include "app/window/first_steps.h"

#include "app/document/plan_document.h"
#include "app/window/close_button.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

#include <algorithm>

namespace lidwright {

namespace {

struct StepText {
    const char* text;
    const char* help;
};

const StepText kTexts[FirstSteps::kSteps] = {
    {QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Box"),
     QT_TRANSLATE_NOOP("lidwright::FirstSteps",
                       "Measure your box and write its outside length, width and height")},
    {QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Artwork"),
     QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Bring in a drawing for the lid, or lay out plain holes")},
    {QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Neck"),
     QT_TRANSLATE_NOOP("lidwright::FirstSteps",
                       "Write the measures of your stick, the scale length and the fretboard")},
    {QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Bridge"),
     QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Find the bridge a place that is clear of the artwork")},
    {QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Paper"),
     QT_TRANSLATE_NOOP("lidwright::FirstSteps", "Print the templates full size and check them with a ruler")},
};

std::array<bool, FirstSteps::kSteps> differences(const Plan& a, const Plan& b)
{
    return {!(a.box == b.box && a.lid == b.lid), !(a.art == b.art && a.holes == b.holes),
            !(a.neck == b.neck && a.scale == b.scale && a.fretboard == b.fretboard && a.strings == b.strings),
            !(a.bridge == b.bridge && a.scale == b.scale), false};
}

}  // namespace

FirstSteps::FirstSteps(PlanDocument& document, QWidget* parent) : QFrame(parent), m_document(document)
{
    setAccessibleName(tr("First steps"));
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(8, 2, 4, 2);
    line->addWidget(new QLabel(tr("To do next:"), this));
    for (std::size_t i = 0; i < kSteps; ++i) {
        auto* button = new QToolButton(this);
        button->setAutoRaise(true);
        button->setMinimumHeight(24);
        button->setFocusPolicy(Qt::TabFocus);
        connect(button, &QToolButton::clicked, this, [this, i] { Q_EMIT wanted(static_cast<Step>(i)); });
        line->addWidget(button);
        m_buttons[i] = button;
    }
    line->addStretch(1);
    auto* close = new CloseButton(tr("Put the first steps away; the View menu brings them back"), this);
    connect(close, &QToolButton::clicked, this, &FirstSteps::dismissed);
    line->addWidget(close);
    connect(&document, &PlanDocument::changed, this, &FirstSteps::refresh);
    m_start = document.plan();
    refresh();
}

void FirstSteps::setStart(const Plan& plan)
{
    m_start = plan;
    m_done = {};
    refresh();
}

void FirstSteps::setPaperMade()
{
    const bool before = allDone();
    m_done[static_cast<std::size_t>(Step::Paper)] = true;
    refresh();
    if (allDone() && !before) Q_EMIT finished();
}

bool FirstSteps::allDone() const
{
    return std::all_of(m_done.begin(), m_done.end(), [](bool done) { return done; });
}

void FirstSteps::refresh()
{
    if (m_document.dragging()) return;
    const bool before = allDone();
    const auto now = differences(m_document.plan(), m_start);
    for (std::size_t i = 0; i < kSteps; ++i) {
        if (static_cast<Step>(i) != Step::Paper) m_done[i] = now[i];
        const QString name = tr(kTexts[i].text);
        //: a step that is done, with a tick before its name
        m_buttons[i]->setText(m_done[i] ? tr("\u2713 %1").arg(name) : tr("%1. %2").arg(i + 1).arg(name));
        m_buttons[i]->setToolTip(tr(kTexts[i].help));
        m_buttons[i]->setAccessibleName(m_done[i] ? tr("%1, done").arg(name) : tr("%1, to do").arg(name));
    }
    if (allDone() && !before) Q_EMIT finished();
}

}  // namespace lidwright
