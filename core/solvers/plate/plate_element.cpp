#include "core/solvers/plate/plate_element.h"

#include <cstddef>

namespace lidwright {
namespace {

using Cubic = std::array<double, 4>;

/// Hermite's cubics by powers of xi, -1 to 1; slopes are per length of the cell.
constexpr std::array<Cubic, 4> kHermite = {{
    {2.0 / 4, -3.0 / 4, 0, 1.0 / 4},
    {1.0 / 8, -1.0 / 8, -1.0 / 8, 1.0 / 8},
    {2.0 / 4, 3.0 / 4, 0, -1.0 / 4},
    {-1.0 / 8, -1.0 / 8, 1.0 / 8, 1.0 / 8},
}};

constexpr std::array<Cubic, 4> derivatives(const std::array<Cubic, 4>& cubics)
{
    std::array<Cubic, 4> result{};
    for (std::size_t i = 0; i < 4; ++i)
        result[i] = {cubics[i][1], 2 * cubics[i][2], 3 * cubics[i][3], 0};
    return result;
}

/// The cubics, their first and their second derivatives by xi.
constexpr std::array<std::array<Cubic, 4>, 3> kCubics = {kHermite, derivatives(kHermite),
                                                         derivatives(derivatives(kHermite))};

const Cubic& derivative(std::size_t cubic, int order)
{
    return kCubics[static_cast<std::size_t>(order)][cubic];
}

double valueOf(const Cubic& c, double t)
{
    return c[0] + t * (c[1] + t * (c[2] + t * c[3]));
}

std::array<double, kMomentOrder> product(const Cubic& a, const Cubic& b)
{
    std::array<double, kMomentOrder> p{};
    for (std::size_t i = 0; i < 4; ++i)
        for (std::size_t j = 0; j < 4; ++j)
            p[i + j] += a[i] * b[j];
    return p;
}

/// Which of Hermite's cubics unknown k has along x and along y.
std::size_t partX(int k)
{
    return static_cast<std::size_t>(2 * ((k >> 2) & 1) + (k & 1));
}

std::size_t partY(int k)
{
    return static_cast<std::size_t>(2 * (k >> 3) + ((k >> 1) & 1));
}

double power(double base, int exponent)
{
    double p = 1;
    for (; exponent > 0; --exponent)
        p *= base;
    return p;
}

}  // namespace

PlateElement::PlateElement(double sizeX, double sizeY) : m_sizeX(sizeX), m_sizeY(sizeY) {}

Vector16 PlateElement::functions(double xi, double eta, int alongX, int alongY) const
{
    std::array<double, 4> x{}, y{};
    const double scaleX = power(2 / m_sizeX, alongX), scaleY = power(2 / m_sizeY, alongY);
    for (std::size_t i = 0; i < 4; ++i) {
        x[i] = valueOf(derivative(i, alongX), xi) * scaleX;
        y[i] = valueOf(derivative(i, alongY), eta) * scaleY;
    }
    Vector16 values;
    for (int k = 0; k < 16; ++k)
        values(k) = x[partX(k)] * y[partY(k)];
    return values;
}

Eigen::Matrix<double, 16, 3> PlateElement::rigid(const CellFrame& frame, Point origin, double unit) const
{
    Eigen::Matrix<double, 16, 3> fields = Eigen::Matrix<double, 16, 3>::Zero();
    for (int c = 0; c < 4; ++c) {
        const double x = frame.centre.x + ((c & 1) != 0 ? frame.halfX : -frame.halfX) - origin.x;
        const double y = frame.centre.y + ((c & 2) != 0 ? frame.halfY : -frame.halfY) - origin.y;
        fields.row(4 * c) << 1, x / unit, y / unit;
        fields(4 * c + 1, 1) = m_sizeX / unit;
        fields(4 * c + 2, 2) = m_sizeY / unit;
    }
    return fields;
}

Vector16 PlateElement::volumes(const CellMoments& moments) const
{
    Vector16 sums = Vector16::Zero();
    for (int k = 0; k < 16; ++k)
        for (std::size_t p = 0; p < 4; ++p)
            for (std::size_t q = 0; q < 4; ++q)
                sums(k) += kHermite[partX(k)][p] * kHermite[partY(k)][q] * moments[p * kMomentOrder + q];
    return m_sizeX * m_sizeY / 4 * sums;
}

void PlateElement::add(Table& table, const Product& part) const
{
    const double factor = part.factor * m_sizeX * m_sizeY / 4 *
                          power(2 / m_sizeX, part.firstX + part.secondX) *
                          power(2 / m_sizeY, part.firstY + part.secondY);
    for (int a = 0; a < 16; ++a) {
        for (int b = 0; b < 16; ++b) {
            const auto x = product(derivative(partX(a), part.firstX), derivative(partX(b), part.secondX));
            const auto y = product(derivative(partY(a), part.firstY), derivative(partY(b), part.secondY));
            for (int p = 0; p < kMomentOrder; ++p)
                for (int q = 0; q < kMomentOrder; ++q)
                    table(16 * b + a, p * kMomentOrder + q) +=
                        factor * x[static_cast<std::size_t>(p)] * y[static_cast<std::size_t>(q)];
        }
    }
}

PlateElement::Table PlateElement::products() const
{
    Table table = Table::Zero();
    add(table, {1, 0, 0, 0, 0});
    return table;
}

PlateElement::Table PlateElement::bending(const PlateStiffness& d) const
{
    Table table = Table::Zero();
    add(table, {d.D11, 2, 0, 2, 0});
    add(table, {d.D22, 0, 2, 0, 2});
    add(table, {4 * d.D66, 1, 1, 1, 1});
    add(table, {d.D12, 2, 0, 0, 2});
    add(table, {d.D12, 0, 2, 2, 0});
    if (d.D16 != 0) {
        add(table, {2 * d.D16, 2, 0, 1, 1});
        add(table, {2 * d.D16, 1, 1, 2, 0});
    }
    if (d.D26 != 0) {
        add(table, {2 * d.D26, 0, 2, 1, 1});
        add(table, {2 * d.D26, 1, 1, 0, 2});
    }
    return table;
}

Matrix16 PlateElement::matrix(const Table& table, const CellMoments& moments)
{
    const Eigen::Map<const Eigen::Matrix<double, kMomentOrder * kMomentOrder, 1>> m(moments.data());
    Matrix16 matrix;
    Eigen::Map<Eigen::Matrix<double, 256, 1>>(matrix.data()) = table * m;
    return matrix;
}

}  // namespace lidwright
