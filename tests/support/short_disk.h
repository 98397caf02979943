#pragma once

#include <sys/resource.h>

#include <csignal>

namespace lidwright::testing {

/// While it lives no file of this process grows beyond the limit: a write that passes it is cut short, and
/// the next one fails, as on a disk that fills up.
class ShortDisk {
public:
    explicit ShortDisk(rlim_t bytes)
    {
        ::getrlimit(RLIMIT_FSIZE, &m_before);
        m_handler = std::signal(SIGXFSZ, SIG_IGN);
        rlimit limit = m_before;
        limit.rlim_cur = bytes;
        ::setrlimit(RLIMIT_FSIZE, &limit);
    }
    ~ShortDisk()
    {
        ::setrlimit(RLIMIT_FSIZE, &m_before);
        std::signal(SIGXFSZ, m_handler);
    }
    ShortDisk(const ShortDisk&) = delete;
    ShortDisk& operator=(const ShortDisk&) = delete;

private:
    rlimit m_before{};
    void (*m_handler)(int) = SIG_DFL;
};

}  // namespace lidwright::testing
