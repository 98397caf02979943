// Writes the sample plans anew from their drawings: make_samples SAMPLES_FOLDER. Run it after a change of the
// file format or of a drawing, look at the result, and commit it; samples_test compares.
#include "tests/support/sample_plans.h"

#include "core/io/plan/plan_file.h"

#include <cstdio>
#include <fstream>

int main(int argc, char** argv)
{
    if (argc != 2) {
        std::fprintf(stderr, "usage: make_samples SAMPLES_FOLDER\n");
        return 2;
    }
    for (const auto& sample : lidwright::testing::samplePlans(argv[1])) {
        const std::filesystem::path path = std::filesystem::path(argv[1]) / sample.file;
        std::ofstream out(path, std::ios::binary);
        out << lidwright::writePlan(sample.plan);
        if (!out) {
            std::fprintf(stderr, "cannot write %s\n", path.string().c_str());
            return 1;
        }
        std::printf("%s\n", path.string().c_str());
    }
    return 0;
}
