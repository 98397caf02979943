#include "core/solvers/air/lattice_product.h"

#include "core/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <cstddef>
#include <random>
#include <vector>

namespace lidwright {
namespace {

using Complex = std::complex<double>;

double between(std::mt19937& engine, double low, double high)
{
    return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
}

TEST(LaneFft, IsTheDefinitionsTransformInAnyOrder)
{
    std::mt19937 engine(3);
    for (const int length : {4, 8, 16, 32, 128}) {
        const LaneFft fft(length);
        std::vector<Lanes> row(static_cast<std::size_t>(length));
        std::vector<Complex> third;
        for (Lanes& lanes : row) {
            for (std::size_t lane = 0; lane < kLanes; ++lane) {
                lanes.re[lane] = between(engine, -1, 1);
                lanes.im[lane] = between(engine, -1, 1);
            }
            third.emplace_back(lanes.re[2], lanes.im[2]);
        }
        const std::vector<Lanes> before = row;
        fft.forward(row.data(), LaneFft::Rows::Whole);
        // Each value that the definition gives stands somewhere, once.
        std::vector<bool> used(row.size());
        for (int k = 0; k < length; ++k) {
            Complex wanted = 0;
            for (int j = 0; j < length; ++j)
                wanted += third[static_cast<std::size_t>(j)] * std::polar(1.0, -2 * kPi * j * k / length);
            bool found = false;
            for (std::size_t i = 0; i < row.size() && !found; ++i)
                if (!used[i] && std::abs(Complex(row[i].re[2], row[i].im[2]) - wanted) < 1e-12 * length)
                    found = used[i] = true;
            EXPECT_TRUE(found) << "length " << length << ", wave " << k;
        }
        fft.inverse(row.data(), LaneFft::Rows::Whole);
        for (std::size_t i = 0; i < row.size(); ++i)
            for (std::size_t lane = 0; lane < kLanes; ++lane) {
                EXPECT_NEAR(row[i].re[lane], length * before[i].re[lane], 1e-12 * length);
                EXPECT_NEAR(row[i].im[lane], length * before[i].im[lane], 1e-12 * length);
            }
    }
}

TEST(LatticeProduct, IsTheSumOverAllPairs)
{
    std::mt19937 engine(7);
    const auto kernel = [](int x, int y) { return 1 / (1.3 + std::hypot(x, 1.7 * y)); };
    for (const auto& [columns, rows] :
         {std::pair{1, 1}, {2, 3}, {7, 5}, {16, 16}, {17, 9}, {3, 33}, {20, 1}}) {
        SCOPED_TRACE(std::to_string(columns) + " x " + std::to_string(rows));
        std::vector<Complex> in;
        for (int i = 0; i < columns * rows; ++i)
            in.emplace_back(between(engine, -1, 1), between(engine, -1, 1));
        LatticeProduct product(columns, rows, kernel);
        // Twice: nothing may be left over from before.
        std::vector<Complex> out(in.size(), Complex(5, 3));
        product.apply(out);
        out = in;
        product.apply(out);
        for (int i = 0; i < columns * rows; ++i) {
            Complex wanted = 0;
            for (int j = 0; j < columns * rows; ++j)
                wanted += kernel(std::abs(i % columns - j % columns), std::abs(i / columns - j / columns)) *
                          in[static_cast<std::size_t>(j)];
            EXPECT_LT(std::abs(out[static_cast<std::size_t>(i)] - wanted), 1e-12);
        }
    }
}

}  // namespace
}  // namespace lidwright
