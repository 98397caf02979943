#include "core/drawing/stroke_glyphs.h"

#include <array>

namespace lidwright {
namespace {

constexpr std::string_view kBox = "0009696000";

/// From the blank (32) to the underscore (95), then the grave accent and what follows the small letters.
constexpr std::array<std::string_view, 64> kBodies{
    "",                                  // blank
    "3933 3130",                         // !
    "2927 4947",                         // "
    "2029 4049 0363 0666",               // #
    "684929080625456461402001 3930",     // $
    "0069 0929270709 4262604042",        // %
    "601618293948470301103063",          // &
    "3937",                              // '
    "49262340",                          // (
    "29464320",                          // )
    "3236 1553 1355",                    // *
    "1454 3236",                         // +
    "3110",                              // ,
    "1454",                              // -
    "2030312120",                        // .
    "0069",                              // /
    "200207294967624020",                // 0
    "173930 1050",                       // 1
    "07294967650060",                    // 2
    "08294968664525 456461402001",       // 3
    "50590363",                          // 4
    "690905456461402001",                // 5
    "5939050220406263452503",            // 6
    "096920",                            // 7
    "25060829496866452504012040616445",  // 8
    "1030646749290706244466",            // 9
    "2030312120 2535362625",             // :
    "3110 2535362625",                   // ;
    "571451",                            // <
    "1353 1656",                         // =
    "175411",                            // >
    "07294967653533 3130",               // ?
    "6240200207294967644324264766",      // @
    "003960 1353",                       // A
    "00094968664505 4564614000",         // B
    "6849290702204061",                  // C
    "00093966633000",                    // D
    "69090060 0545",                     // E
    "690900 0545",                       // F
    "68492907022040626434",              // G
    "0009 6069 0565",                    // H
    "1050 1959 3039",                    // I
    "5952302002",                        // J
    "0009 6903 2560",                    // K
    "090060",                            // L
    "0009346960",                        // M
    "00096069",                          // N
    "200207294967624020",                // O
    "00094968664505",                    // P
    "200207294967624020 3360",           // Q
    "00094968664505 3560",               // R
    "684929080625456461402001",          // S
    "0969 3930",                         // T
    "090220406269",                      // U
    "093069",                            // V
    "0910365069",                        // W
    "0069 0960",                         // X
    "093569 3530",                       // Y
    "09690060",                          // Z
    "49292040",                          // [
    "0960",                              // backslash
    "29494020",                          // ]
    "173957",                            // ^
    "0060",                              // _
};

constexpr std::string_view kAccents[] = {
    "",            // none
    "1c3a",        // ` grave
    "5c3a",        // ' acute
    "1a3c5a",      // ^ circumflex
    "0a1b5a6b",    // ~ tilde
    "1a1b 5a5b",   // " diaeresis
    "2a4a4c2c2a",  // o ring
    "304/3.2.",    // cedilla: / and . are one and two steps below the base line
    "0069",        // stroke through the letter
};

std::string_view bodyOf(char32_t code)
{
    if (code >= U'a' && code <= U'z') code = code - U'a' + U'A';
    if (code >= 32 && code < 96) return kBodies[code - 32];
    switch (code) {
        case U'`':
            return "2937";
        case U'|':
            return "3039";
        case U'~':
        case 0x2248:  // almost equal
            return "04254465";
        case U'{':
            return "493827261524233140";
        case U'}':
            return "293847465544433120";
        case 0xB0:  // degree
            return "2747492927";
        case 0xD7:  // times
            return "1256 1652";
        case 0x2010:
        case 0x2013:
        case 0x2014:
            return kBodies['-' - 32];
        case 0x2018:
        case 0x2019:
        case 0x2032:
            return kBodies['\'' - 32];
        case 0x201C:
        case 0x201D:
        case 0x2033:
            return kBodies['"' - 32];
        default:
            return kBox;
    }
}

/// Base letter and accent (an index of kAccents) of U+00C0 to U+00DF, capitals; small ones lie 32 above.
/// '?' for those that are no letter with one of these accents.
constexpr std::string_view kBases = "AAAAAA?CEEEEIIII?NOOOOO?OUUUUY??";
constexpr std::string_view kMarks = "12345607123512350412345081235200";

}  // namespace

std::vector<StrokeLetter> lettersOf(char32_t code)
{
    constexpr char32_t kFirstAccented = 0xC0, kFirstSmall = 0xE0, kLast = 0xFF;
    if (code < 32 || code == 0x7F) return {};
    if (code == 0xA0) return {{kBodies[0], {}}};
    if (code == 0xDF) return {{bodyOf(U'S'), {}}, {bodyOf(U'S'), {}}};
    if (code == 0xFF) return {{bodyOf(U'Y'), kAccents[5]}};
    if (code == 0xC6 || code == 0xE6) return {{bodyOf(U'A'), {}}, {bodyOf(U'E'), {}}};
    if (code >= kFirstAccented && code < kLast) {
        const char32_t place = code - (code >= kFirstSmall ? kFirstSmall : kFirstAccented);
        const char base = kBases[place];
        if (base != '?') return {{bodyOf(static_cast<char32_t>(base)), kAccents[kMarks[place] - '0']}};
    }
    return {{bodyOf(code), {}}};
}

}  // namespace lidwright
