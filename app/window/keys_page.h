#pragma once

#include <QDialog>

class QTableWidget;

namespace lidwright {

/// Every command with its keys and what it does, and the keys of the board and of the fields.
class KeysPage : public QDialog {
    Q_OBJECT
public:
    explicit KeysPage(QWidget* parent = nullptr);

private:
    void addRow(const QString& what, const QString& keys, const QString& help);
    void filter(const QString& words);

    QTableWidget* m_table;
};

}  // namespace lidwright
