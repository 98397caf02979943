#include "app/paper/paper_progress.h"

#include "app/paper/page_furniture.h"

#include <QProgressDialog>

#include <memory>

namespace lidwright {

PaperGoOn shownProgress(QWidget& window, const QString& what)
{
    constexpr int kSteps = 1000, kPatience = 400;  // ms until it is shown
    auto bar = std::make_shared<QProgressDialog>(what, PaperText::tr("&Stop"), 0, kSteps, &window);
    bar->setWindowTitle(window.windowTitle());
    bar->setWindowModality(Qt::WindowModal);
    bar->setMinimumDuration(kPatience);
    return [bar](double share) {
        bar->setValue(static_cast<int>(share * kSteps));
        return !bar->wasCanceled();
    };
}

}  // namespace lidwright
