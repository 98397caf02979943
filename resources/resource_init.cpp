#include "resources/resource_init.h"

#include <QtCore/qglobal.h>

// Outside every namespace, as Q_INIT_RESOURCE demands.
static void initNow() { Q_INIT_RESOURCE(lidwright); }

namespace lidwright {

void initResources() { initNow(); }

}  // namespace lidwright
