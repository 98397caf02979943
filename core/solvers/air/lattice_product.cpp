#include "core/solvers/air/lattice_product.h"

#include <algorithm>
#include <bit>
#include <cstddef>

namespace lidwright {
namespace {

constexpr int kRows = static_cast<int>(kLanes);

int doubled(int count)
{
    return std::max(kRows, static_cast<int>(2 * std::bit_ceil(static_cast<unsigned>(count))));
}

/// Four rows of four become four columns.
void turned(const Lanes* from, std::size_t stride, Lanes* to)
{
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
        const Lanes& row = from[lane * stride];
        for (std::size_t k = 0; k < kLanes; ++k) {
            to[k].re[lane] = row.re[k];
            to[k].im[lane] = row.im[k];
        }
    }
}

void turnedBack(const Lanes* from, Lanes* to, std::size_t stride)
{
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
        Lanes& row = to[lane * stride];
        for (std::size_t k = 0; k < kLanes; ++k) {
            row.re[k] = from[k].re[lane];
            row.im[k] = from[k].im[lane];
        }
    }
}

}  // namespace

LatticeProduct::LatticeProduct(int columns, int rows, const std::function<double(int, int)>& kernel)
    : m_columns(columns),
      m_rows(rows),
      m_blocks((rows + kRows - 1) / kRows),
      m_along(doubled(columns)),
      m_across(doubled(rows))
{
    const int wide = m_along.length(), high = m_across.length(), halfHigh = high / 2 + 1;
    const int blocks = (halfHigh + kRows - 1) / kRows;
    m_line.resize(static_cast<std::size_t>(std::max(wide, high)));
    // The kernel is the same in both directions, so half of its rows tell all, and its transform is real.
    std::vector<Lanes> half(static_cast<std::size_t>(wide * blocks));
    for (int block = 0; block < blocks; ++block) {
        for (int x = 0; x <= wide / 2; ++x)
            for (std::size_t lane = 0; lane < kLanes; ++lane) {
                const int y = std::min(kRows * block + static_cast<int>(lane), high / 2);
                const double value = kernel(x, y);
                for (const int place : {x, (wide - x) % wide}) {
                    m_line[static_cast<std::size_t>(place)].re[lane] = value;
                    m_line[static_cast<std::size_t>(place)].im[lane] = 0;
                }
            }
        m_along.forward(m_line.data(), LaneFft::Rows::Whole);
        for (int x = 0; x < wide; ++x)
            half[static_cast<std::size_t>(x * blocks + block)] = m_line[static_cast<std::size_t>(x)];
    }
    const double share = 1.0 / (static_cast<double>(wide) * high);
    m_spectrum.resize(static_cast<std::size_t>(wide / kRows * high));
    for (int x = 0; x < wide; x += kRows) {
        for (int y = 0; y < high; ++y)
            for (std::size_t lane = 0; lane < kLanes; ++lane) {
                const int row = std::min(y, high - y);
                const Lanes& from =
                    half[static_cast<std::size_t>((x + static_cast<int>(lane)) * blocks + row / kRows)];
                m_line[static_cast<std::size_t>(y)].re[lane] = from.re[static_cast<std::size_t>(row % kRows)];
                m_line[static_cast<std::size_t>(y)].im[lane] = 0;
            }
        m_across.forward(m_line.data(), LaneFft::Rows::Whole);
        for (int y = 0; y < high; ++y)
            for (std::size_t lane = 0; lane < kLanes; ++lane)
                m_spectrum[static_cast<std::size_t>(x / kRows * high + y)][lane] =
                    share * m_line[static_cast<std::size_t>(y)].re[lane];
    }
    m_half.resize(static_cast<std::size_t>(wide * m_blocks));
}

void LatticeProduct::apply(std::vector<std::complex<double>>& lattice)
{
    rowsForward(lattice);
    columnsThere();
    rowsBack(lattice);
}

void LatticeProduct::rowsForward(const std::vector<std::complex<double>>& lattice)
{
    const int wide = m_along.length();
    for (int block = 0; block < m_blocks; ++block) {
        for (std::size_t lane = 0; lane < kLanes; ++lane) {
            const int y = kRows * block + static_cast<int>(lane);
            const bool inside = y < m_rows;
            const std::complex<double>* row = lattice.data() + (inside ? y * m_columns : 0);
            for (int x = 0; x < wide / 2; ++x) {
                const std::complex<double> value = inside && x < m_columns ? row[x] : 0;
                m_line[static_cast<std::size_t>(x)].re[lane] = value.real();
                m_line[static_cast<std::size_t>(x)].im[lane] = value.imag();
            }
        }
        m_along.forward(m_line.data(), LaneFft::Rows::LowerHalf);
        for (int x = 0; x < wide; ++x)
            m_half[static_cast<std::size_t>(x * m_blocks + block)] = m_line[static_cast<std::size_t>(x)];
    }
}

void LatticeProduct::columnsThere()
{
    const int wide = m_along.length(), high = m_across.length();
    const auto stride = static_cast<std::size_t>(m_blocks);
    for (int x = 0; x < wide; x += kRows) {
        Lanes* columns = m_half.data() + static_cast<std::ptrdiff_t>(x) * m_blocks;
        for (int block = 0; block < m_blocks; ++block)
            turned(columns + block, stride, m_line.data() + kRows * block);
        for (int y = kRows * m_blocks; y < high / 2; ++y)
            m_line[static_cast<std::size_t>(y)] = Lanes{};
        m_across.forward(m_line.data(), LaneFft::Rows::LowerHalf);
        const std::array<double, kLanes>* spectrum =
            m_spectrum.data() + static_cast<std::ptrdiff_t>(x / kRows) * high;
        for (int y = 0; y < high; ++y)
            for (std::size_t lane = 0; lane < kLanes; ++lane) {
                m_line[static_cast<std::size_t>(y)].re[lane] *= spectrum[y][lane];
                m_line[static_cast<std::size_t>(y)].im[lane] *= spectrum[y][lane];
            }
        m_across.inverse(m_line.data(), LaneFft::Rows::LowerHalf);
        for (int block = 0; block < m_blocks; ++block)
            turnedBack(m_line.data() + kRows * block, columns + block, stride);
    }
}

void LatticeProduct::rowsBack(std::vector<std::complex<double>>& lattice)
{
    const int wide = m_along.length();
    for (int block = 0; block < m_blocks; ++block) {
        for (int x = 0; x < wide; ++x)
            m_line[static_cast<std::size_t>(x)] = m_half[static_cast<std::size_t>(x * m_blocks + block)];
        m_along.inverse(m_line.data(), LaneFft::Rows::LowerHalf);
        for (std::size_t lane = 0; lane < kLanes && kRows * block + static_cast<int>(lane) < m_rows; ++lane)
            for (int x = 0; x < m_columns; ++x) {
                const Lanes& from = m_line[static_cast<std::size_t>(x)];
                lattice[static_cast<std::size_t>((kRows * block + static_cast<int>(lane)) * m_columns + x)] =
                    {from.re[lane], from.im[lane]};
            }
    }
}

}  // namespace lidwright
