#include "app/window/about_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QIcon>
#include <QLabel>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace lidwright {

AboutDialog::AboutDialog(QWidget* parent) : QDialog(parent)
{
    setWindowTitle(tr("About Lidwright"));
    auto* title = new QLabel(tr("Lidwright %1").arg(QStringLiteral(LIDWRIGHT_VERSION)), this);
    QFont font = title->font();
    font.setPointSizeF(font.pointSizeF() * 1.5);
    font.setBold(true);
    title->setFont(font);
    auto* mark = new QLabel(this);
    mark->setAccessibleName(tr("Sign of Lidwright"));
    mark->setPixmap(QIcon(QStringLiteral(":/icons/lidwright.svg")).pixmap(64, 64));
    auto* head = new QHBoxLayout;
    head->addWidget(mark);
    head->addWidget(title, 1);

    auto* text = new QTextBrowser(this);
    text->setAccessibleName(tr("About this program"));
    text->setOpenLinks(false);
    const QString libraries = QStringLiteral(
                                  "<ul><li>Qt %1 (LGPL 3)</li><li>Eigen (MPL 2)</li><li>Clipper 6 "
                                  "(Boost)</li><li>Boost (Boost)</li>"
                                  "<li>pugixml (MIT)</li><li>JSON for Modern C++ (MIT)</li></ul>")
                                  .arg(QLatin1String(qVersion()));
    text->setHtml(tr("<p>Plans one-off box guitars before the first saw cut: the box, the stick that runs "
                     "through it, and a lid "
                     "whose artwork is its sound hole.</p>"
                     "<p>What the program calls good was computed from the measures that it was given. "
                     "Measure the real parts, "
                     "and try on scrap what cannot be taken back.</p>"
                     "<p>It stands on these libraries, with thanks to their makers:</p>%1"
                     "<p>It opens no connection to anywhere.</p>")
                      .arg(libraries));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addLayout(head);
    column->addWidget(text, 1);
    column->addWidget(buttons);
    resize(520, 420);
}

}  // namespace lidwright
