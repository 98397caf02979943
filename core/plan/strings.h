#pragma once

namespace lidwright {

struct Strings {
    int count = 4;
    double spreadAtNut = 26;  ///< outer string to outer string, centres
    double spreadAtSaddle = 34;

    bool operator==(const Strings&) const = default;
};

}  // namespace lidwright
