#include "app/text/unbroken.h"

#include <gtest/gtest.h>

namespace lidwright {
namespace {

/// With a tilde for each space that does not break.
std::string marked(const char* text)
{
    return unbroken(QString::fromUtf8(text)).replace(QChar(QChar::Nbsp), QLatin1Char('~')).toStdString();
}

TEST(Unbroken, MeasuresStayTogether)
{
    EXPECT_EQ(marked("Take at least ≈ 15 15/16 in of it"), "Take at least ≈~15~15/16~in of it");
    EXPECT_EQ(marked("from 3 mm to 5 mm"), "from 3~mm to 5~mm");
    EXPECT_EQ(marked("490 mm² and 2.1 litres"), "490~mm² and 2.1~litres");
}

TEST(Unbroken, OtherSpacesStayAsTheyAre)
{
    EXPECT_EQ(marked("Hole 2 inside the lid"), "Hole 2 inside the lid");
    EXPECT_EQ(marked("3 holes in 2 rows"), "3 holes in 2 rows");
    EXPECT_EQ(marked(""), "");
}

}  // namespace
}  // namespace lidwright
