// Runs a fuzz target once for every file of the folders and files named on the command line: the corpus as a
// test, with any compiler. The target reports a broken property by aborting.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

std::vector<std::filesystem::path> filesOf(const std::filesystem::path& place)
{
    if (!std::filesystem::is_directory(place)) return {place};
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(place)) {
        if (entry.is_regular_file()) files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

bool replay(const std::filesystem::path& file)
{
    std::ifstream in(file, std::ios::binary);
    if (!in) {
        std::fprintf(stderr, "cannot read %s\n", file.string().c_str());
        return false;
    }
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    // Named before it runs, so that the last name told is the file that broke it.
    std::printf("%s (%zu bytes)\n", file.string().c_str(), bytes.size());
    std::fflush(stdout);
    const std::vector<std::uint8_t> data(bytes.begin(), bytes.end());
    LLVMFuzzerTestOneInput(data.data(), data.size());
    // Every way of cutting it short once more, in at most 64 steps: files break off in real life.
    const std::size_t step = std::max<std::size_t>(1, data.size() / 64);
    for (std::size_t size = 0; size < data.size(); size += step) {
        const std::vector<std::uint8_t> start(data.begin(), data.begin() + static_cast<std::ptrdiff_t>(size));
        LLVMFuzzerTestOneInput(start.data(), start.size());
    }
    return true;
}

}  // namespace

int main(int argc, char** argv)
{
    std::size_t count = 0;
    for (int i = 1; i < argc; ++i) {
        for (const std::filesystem::path& file : filesOf(argv[i])) {
            if (!replay(file)) return 1;
            ++count;
        }
    }
    std::printf("%zu files replayed\n", count);
    // An empty corpus proves nothing.
    return count > 0 ? 0 : 1;
}
