#pragma once

#include <array>
#include <cstddef>
#include <vector>

namespace lidwright {

inline constexpr std::size_t kLanes = 4;

/// Four complex numbers, one each of four rows that are transformed side by side.
struct Lanes {
    std::array<double, kLanes> re{}, im{};
};

/// The discrete Fourier transform of four rows at once, for convolution: the transformed values stand in an
/// order of their own, which the way back undoes, so that nothing is ever sorted. Radix 4 with one step of
/// radix 2 where the length asks for it (J. W. Cooley and J. W. Tukey, An algorithm for the machine
/// calculation of complex Fourier series, Math. Comp. 19 (1965) 297; from memory).
class LaneFft {
public:
    /// Which part of a row is in use; the other half is taken as zero before, and left undefined after.
    enum class Rows { Whole, LowerHalf };

    /// `length`: a power of two, at least 4.
    explicit LaneFft(int length);

    int length() const { return m_length; }
    /// In place; `row` has length() places.
    void forward(Lanes* row, Rows rows) const;
    /// In place; gives length() times what forward() was given.
    void inverse(Lanes* row, Rows rows) const;

private:
    struct Turn {
        double re1, im1, re2, im2, re3, im3;  ///< exp(-2 pi i j / L) to the powers 1, 2 and 3
    };
    template <bool kHalf>
    static void spread(Lanes* block, int quarter, const Turn* turns);
    template <bool kHalf>
    static void gather(Lanes* block, int quarter, const Turn* turns);

    int m_length = 0;
    std::vector<std::vector<Turn>> m_turns;  ///< one list for each radix 4 step, longest first
};

}  // namespace lidwright
