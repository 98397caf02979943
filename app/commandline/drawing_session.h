#pragma once

#include <QGuiApplication>

#include <memory>

namespace lidwright {

/// What Qt needs for painting text into files and for the outlines of letters: an application on the
/// offscreen platform, whether or not there is a display. One at a time.
class DrawingSession {
public:
    DrawingSession();
    ~DrawingSession();

private:
    int m_argc = 1;
    char m_name[10] = "lidwright";
    char* m_argv[2] = {m_name, nullptr};
    std::unique_ptr<QGuiApplication> m_application;
};

}  // namespace lidwright
