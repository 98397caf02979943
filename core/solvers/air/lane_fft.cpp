#include "core/solvers/air/lane_fft.h"

#include "core/base/units.h"

#include <cmath>
#include <cstddef>

namespace lidwright {
namespace {

void pairs(Lanes* row, int length)
{
    for (int i = 0; i < length; i += 2)
        for (std::size_t lane = 0; lane < kLanes; ++lane) {
            const double re = row[i].re[lane], im = row[i].im[lane];
            row[i].re[lane] = re + row[i + 1].re[lane];
            row[i].im[lane] = im + row[i + 1].im[lane];
            row[i + 1].re[lane] = re - row[i + 1].re[lane];
            row[i + 1].im[lane] = im - row[i + 1].im[lane];
        }
}

}  // namespace

LaneFft::LaneFft(int length) : m_length(length)
{
    for (int block = length; block >= 4; block /= 4) {
        std::vector<Turn> turns(static_cast<std::size_t>(block / 4));
        for (int j = 0; j < block / 4; ++j) {
            const double angle = -2 * kPi * j / block;
            turns[static_cast<std::size_t>(j)] = {std::cos(angle),     std::sin(angle),
                                                  std::cos(2 * angle), std::sin(2 * angle),
                                                  std::cos(3 * angle), std::sin(3 * angle)};
        }
        m_turns.push_back(std::move(turns));
    }
}

template <bool kHalf>
void LaneFft::spread(Lanes* block, int quarter, const Turn* turns)
{
    for (int j = 0; j < quarter; ++j) {
        const Turn t = turns[j];
        Lanes &a = block[j], &b = block[j + quarter], &c = block[j + 2 * quarter],
              &d = block[j + 3 * quarter];
        for (std::size_t lane = 0; lane < kLanes; ++lane) {
            const double aRe = a.re[lane], aIm = a.im[lane], bRe = b.re[lane], bIm = b.im[lane];
            double evenRe = aRe, evenIm = aIm, oddRe = aRe, oddIm = aIm;     // a + c, a - c
            double sumRe = bRe, sumIm = bIm, crossRe = bIm, crossIm = -bRe;  // b + d, -i (b - d)
            if constexpr (!kHalf) {
                const double cRe = c.re[lane], cIm = c.im[lane], dRe = d.re[lane], dIm = d.im[lane];
                evenRe += cRe;
                evenIm += cIm;
                oddRe -= cRe;
                oddIm -= cIm;
                sumRe += dRe;
                sumIm += dIm;
                crossRe -= dIm;
                crossIm += dRe;
            }
            const double re1 = oddRe + crossRe, im1 = oddIm + crossIm;
            const double re2 = evenRe - sumRe, im2 = evenIm - sumIm;
            const double re3 = oddRe - crossRe, im3 = oddIm - crossIm;
            a.re[lane] = evenRe + sumRe;
            a.im[lane] = evenIm + sumIm;
            b.re[lane] = re1 * t.re1 - im1 * t.im1;
            b.im[lane] = re1 * t.im1 + im1 * t.re1;
            c.re[lane] = re2 * t.re2 - im2 * t.im2;
            c.im[lane] = re2 * t.im2 + im2 * t.re2;
            d.re[lane] = re3 * t.re3 - im3 * t.im3;
            d.im[lane] = re3 * t.im3 + im3 * t.re3;
        }
    }
}

template <bool kHalf>
void LaneFft::gather(Lanes* block, int quarter, const Turn* turns)
{
    for (int j = 0; j < quarter; ++j) {
        const Turn t = turns[j];
        Lanes &a = block[j], &b = block[j + quarter], &c = block[j + 2 * quarter],
              &d = block[j + 3 * quarter];
        for (std::size_t lane = 0; lane < kLanes; ++lane) {
            const double aRe = a.re[lane], aIm = a.im[lane], bRe = b.re[lane], bIm = b.im[lane];
            const double cRe = c.re[lane], cIm = c.im[lane], dRe = d.re[lane], dIm = d.im[lane];
            const double re1 = bRe * t.re1 + bIm * t.im1, im1 = bIm * t.re1 - bRe * t.im1;
            const double re2 = cRe * t.re2 + cIm * t.im2, im2 = cIm * t.re2 - cRe * t.im2;
            const double re3 = dRe * t.re3 + dIm * t.im3, im3 = dIm * t.re3 - dRe * t.im3;
            const double evenRe = aRe + re2, evenIm = aIm + im2, sumRe = aRe - re2, sumIm = aIm - im2;
            const double oddRe = re1 + re3, oddIm = im1 + im3;
            const double crossRe = im3 - im1, crossIm = re1 - re3;  // i (b - d)
            a.re[lane] = evenRe + oddRe;
            a.im[lane] = evenIm + oddIm;
            b.re[lane] = sumRe + crossRe;
            b.im[lane] = sumIm + crossIm;
            if constexpr (!kHalf) {
                c.re[lane] = evenRe - oddRe;
                c.im[lane] = evenIm - oddIm;
                d.re[lane] = sumRe - crossRe;
                d.im[lane] = sumIm - crossIm;
            }
        }
    }
}

void LaneFft::forward(Lanes* row, Rows rows) const
{
    int block = m_length;
    for (std::size_t step = 0; step < m_turns.size(); ++step, block /= 4) {
        if (step == 0 && rows == Rows::LowerHalf) {
            spread<true>(row, block / 4, m_turns[step].data());
            continue;
        }
        for (int at = 0; at < m_length; at += block)
            spread<false>(row + at, block / 4, m_turns[step].data());
    }
    if (block == 2) pairs(row, m_length);
}

void LaneFft::inverse(Lanes* row, Rows rows) const
{
    int block = m_length;
    for (std::size_t step = 0; step < m_turns.size(); ++step)
        block /= 4;
    if (block == 2) pairs(row, m_length);
    for (std::size_t step = m_turns.size(); step-- > 0;) {
        block *= 4;
        if (step == 0 && rows == Rows::LowerHalf) {
            gather<true>(row, block / 4, m_turns[step].data());
            continue;
        }
        for (int at = 0; at < m_length; at += block)
            gather<false>(row + at, block / 4, m_turns[step].data());
    }
}

}  // namespace lidwright
