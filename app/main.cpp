#include "app/commandline/command_line.h"
#include "app/window/application.h"

int main(int argc, char** argv)
{
    // Commands first: they must work with no display at all.
    if (const auto code = lidwright::runCommandLine(argc, argv)) return *code;
    return lidwright::runWindow(argc, argv);
}
