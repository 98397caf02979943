#include "app/window/keys_page.h"

#include "app/actions/action_table.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace lidwright {

namespace {

struct HandKey {
    const char* what;
    const char* keys;
    const char* help;
};

/// Keys that are no commands: they belong to the thing that has the keyboard.
const HandKey kHandKeys[] = {
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "On the board: choose a part"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Tab, Shift+Tab"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Goes from part to part; F6 leads out")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "On the board: move the part"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "arrow keys; Shift ten steps, Alt a tenth"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Moves the selected part by 1 mm or 1/16 in")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "On the board: change a dimension"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "F2"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Opens the selected part's first dimension where it stands")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "On the board: the part's form"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Enter"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Puts the keyboard into the part's fields")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "On the board: let go"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Esc"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Breaks off a drag, clears marks, or selects nothing")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "On the board: look elsewhere"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage",
                       "arrow keys with nothing selected or with Ctrl; Page Up, Page Down, Home, End"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Moves the paper; Space with the mouse does too")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "In a field: take the value"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Enter"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage",
                       "Any unit can be typed: 25 1/2\", 648mm, 1' 2 3/8\", 12 + 3/4\"")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "In a field: the old value"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Esc"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Forgets what was typed")},
    {QT_TRANSLATE_NOOP("lidwright::KeysPage", "In a field: a step up or down"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Up, Down; with Shift ten steps"),
     QT_TRANSLATE_NOOP("lidwright::KeysPage", "Steps the value")},
};

}  // namespace

KeysPage::KeysPage(QWidget* parent) : QDialog(parent), m_table(new QTableWidget(this))
{
    setWindowTitle(tr("Keys"));
    auto* search = new QLineEdit(this);
    search->setPlaceholderText(tr("Find a command or key"));
    search->setAccessibleName(tr("Find a command or key"));
    search->setToolTip(tr("Shows only what has all these words"));
    search->setClearButtonEnabled(true);
    m_table->setColumnCount(3);
    m_table->setHorizontalHeaderLabels({tr("Command"), tr("Keys"), tr("What it does")});
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setTabKeyNavigation(false);
    m_table->setAccessibleName(tr("Commands and their keys"));
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setStretchLastSection(true);
    // Long rows wrap instead of pushing the explanations aside.
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);

    for (const ActionEntry& entry : actionTable()) {
        QString text = QCoreApplication::translate("Actions", entry.text);
        text.remove(QLatin1Char('&')).remove(QStringLiteral("..."));
        addRow(text, QKeySequence::listToString(keysOf(entry), QKeySequence::NativeText),
               QCoreApplication::translate("Actions", entry.help));
    }
    for (const HandKey& key : kHandKeys)
        addRow(tr(key.what), tr(key.keys), tr(key.help));
    m_table->resizeColumnsToContents();
    const int widest = fontMetrics().averageCharWidth() * 34;
    for (const int column : {0, 1})
        m_table->setColumnWidth(column, std::min(m_table->columnWidth(column), widest));
    m_table->selectRow(0);

    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(search, &QLineEdit::textChanged, this, &KeysPage::filter);
    auto* column = new QVBoxLayout(this);
    column->addWidget(search);
    column->addWidget(m_table, 1);
    column->addWidget(buttons);
    resize(860, 560);
}

void KeysPage::addRow(const QString& what, const QString& keys, const QString& help)
{
    const int row = m_table->rowCount();
    m_table->insertRow(row);
    m_table->setItem(row, 0, new QTableWidgetItem(what));
    m_table->setItem(row, 1, new QTableWidgetItem(keys));
    m_table->setItem(row, 2, new QTableWidgetItem(help));
}

void KeysPage::filter(const QString& words)
{
    const QStringList wanted = words.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    for (int row = 0; row < m_table->rowCount(); ++row) {
        QString all;
        for (int column = 0; column < 3; ++column)
            all += m_table->item(row, column)->text() + QLatin1Char('\n');
        bool fits = true;
        for (const QString& word : wanted)
            fits = fits && all.contains(word, Qt::CaseInsensitive);
        m_table->setRowHidden(row, !fits);
    }
}

}  // namespace lidwright
