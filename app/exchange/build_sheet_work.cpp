#include "app/exchange/build_sheet_work.h"

#include <QProgressDialog>
#include <QTimer>

namespace lidwright {
namespace {

/// Milliseconds between two looks at how far the work is.
constexpr int kLook = 100;
constexpr int kWhole = 100;

}  // namespace

BuildSheetWork::BuildSheetWork(QWidget* window)
    : QObject(window),
      m_window(window),
      m_look(new QTimer(this)),
      m_work(this, [this](const BenchSheet& sheet) {
          m_run.reset();
          closeDialog();
          // It may ask the next question.
          const Take take = std::move(m_take);
          m_take = nullptr;
          if (!sheet.stopped && take) take(sheet);
      })
{
    m_look->setInterval(kLook);
    connect(m_look, &QTimer::timeout, this, [this] {
        // At its end the dialog would close itself; the answer does that.
        if (m_dialog && m_run) m_dialog->setValue(std::min(m_run->percent.load(), kWhole - 1));
    });
}

BuildSheetWork::~BuildSheetWork()
{
    if (m_run) m_run->stop = true;
}

void BuildSheetWork::compose(const Plan& plan, const Layout& layout, const std::vector<Finding>& findings,
                             BuildSheetInput input, Take take)
{
    giveUp();
    m_take = std::move(take);
    m_run = std::make_shared<Run>();
    m_dialog = new QProgressDialog(tr("Reckoning how the lid and the air will sound..."), tr("Give up"), 0,
                                   kWhole, m_window);
    m_dialog->setWindowTitle(tr("Build sheet"));
    m_dialog->setAttribute(Qt::WA_DeleteOnClose);
    m_dialog->setMinimumDuration(kPatience);
    m_dialog->setAutoReset(false);
    m_dialog->setAutoClose(false);
    m_dialog->setValue(0);
    connect(m_dialog, &QProgressDialog::canceled, this, &BuildSheetWork::giveUp);
    m_look->start();
    input.watch.cancelled = [run = m_run] { return run->stop.load(); };
    input.watch.progress = [run = m_run](double share) { run->percent = static_cast<int>(kWhole * share); };
    m_work.ask([plan, layout, findings, input = std::move(input)] {
        return buildSheet(plan, layout, findings, input);
    });
}

void BuildSheetWork::giveUp()
{
    if (m_run) m_run->stop = true;
    m_run.reset();
    m_take = nullptr;
    m_work.dismiss();
    closeDialog();
}

void BuildSheetWork::closeDialog()
{
    m_look->stop();
    if (!m_dialog) return;
    // Closing it counts as giving up, which is over already.
    disconnect(m_dialog, nullptr, this, nullptr);
    m_dialog->close();
    m_dialog = nullptr;
}

}  // namespace lidwright
