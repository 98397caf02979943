#pragma once

namespace lidwright {

/// Opens the main window (with the plan named in argv, or the sample) and runs until it is closed.
int runWindow(int argc, char** argv);

}  // namespace lidwright
