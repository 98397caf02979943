#include "app/paper/print_correction.h"

#include "app/paper/page_furniture.h"
#include "app/paper/paper_size.h"

#include "core/base/length_text.h"

#include <QUrl>

#include <algorithm>
#include <cmath>

namespace lidwright {

namespace {

struct Fitting {
    double ratio;  ///< printed / true
    const char* how;
};

// The smaller of the two ratios of the sides: what fits is as large as the tighter side allows.
constexpr double kLetterWidth = 215.9, kLetterHeight = 279.4, kA4Width = 210, kA4Height = 297;
constexpr Fitting kFittings[] = {
    {std::min(kLetterWidth / kA4Width, kLetterHeight / kA4Height),
     QT_TRANSLATE_NOOP("PaperText", "an A4 page fitted to letter paper")},
    {std::min(kA4Width / kLetterWidth, kA4Height / kLetterHeight),
     QT_TRANSLATE_NOOP("PaperText", "a letter page fitted to A4 paper")},
    {std::min((kA4Width - 6) / kA4Width, (kA4Height - 6) / kA4Height),
     QT_TRANSLATE_NOOP("PaperText", "an A4 page fitted into margins of 3 mm")},
};
constexpr double kNear = 0.002;

/// One remembered number or text of a printer and paper. The key lives as long as this does.
class Remembered {
public:
    Remembered(const QString& printer, PaperSize size, const char* what)
    {
        // A printer's name may hold slashes, which would make groups.
        m_key = "print-correction/" +
                QUrl::toPercentEncoding(printer.isEmpty() ? QStringLiteral("-") : printer) + '/' +
                formatOf(size).word + '/' + what;
    }
    template <typename T>
    Setting<T> with(const T& fallback) const
    {
        return {m_key.constData(), fallback};
    }

private:
    QByteArray m_key;
};

}  // namespace

Result<double> correctionFrom(double nominal, double measured)
{
    const double factor = nominal / measured;
    if (measured > 0 && nominal > 0 && factor >= kLeastCorrection && factor <= kMostCorrection) return factor;
    return Error{
        PaperText::tr("That is more than a tenth off.").toStdString(), exactNumber(measured) + " mm",
        PaperText::tr("Measure the line again; was it printed at actual size, 100 %?").toStdString()};
}

QString fittedPageWarning(double factor)
{
    for (const Fitting& fitting : kFittings) {
        // Shrinking is mended by enlarging, but a page may have been enlarged to fit as well.
        if (std::abs(1 / factor - fitting.ratio) > kNear && std::abs(factor - fitting.ratio) > kNear)
            continue;
        return PaperText::tr(
                   "%1 % looks like fit to page (%2). Switch fitting off and measure again, instead of "
                   "correcting.")
            .arg(100 / factor, 0, 'f', 1)
            .arg(PaperText::tr(fitting.how));
    }
    return {};
}

PrintCorrection loadCorrection(const Settings& settings, const QString& printer, PaperSize size)
{
    PrintCorrection found;
    found.x = settings.read(Remembered(printer, size, "x").with(1.0));
    found.y = settings.read(Remembered(printer, size, "y").with(1.0));
    found.date = settings.read(Remembered(printer, size, "date").with(QString()));
    const auto fine = [](double f) { return f >= kLeastCorrection && f <= kMostCorrection; };
    return fine(found.x) && fine(found.y) ? found : PrintCorrection{};
}

void saveCorrection(Settings& settings, const QString& printer, PaperSize size,
                    const PrintCorrection& correction)
{
    settings.write(Remembered(printer, size, "x").with(1.0), correction.x);
    settings.write(Remembered(printer, size, "y").with(1.0), correction.y);
    settings.write(Remembered(printer, size, "date").with(QString()),
                   correction.none() ? QString() : correction.date);
}

}  // namespace lidwright
