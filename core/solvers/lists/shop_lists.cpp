#include "core/solvers/lists/shop_lists.h"

#include <string_view>

namespace lidwright {

const std::vector<StudyEntry>& shopLists()
{
    static const std::vector<StudyEntry> all{
        {"cut-list", "Cut list", cutList},
        {"stock", "Stock and what is cut from it", stockList},
        {"holes", "Holes and slots", holeList},
        {"relief", "Relief of the stick", reliefList},
        {"hardware", "Hardware and shopping", hardwareList},
    };
    return all;
}

const std::vector<StudyEntry>& benchLists()
{
    static const std::vector<StudyEntry> all = [] {
        std::vector<StudyEntry> list = shopLists();
        for (const StudyEntry& entry : studies())
            if (std::string_view(entry.id) == "frets" || std::string_view(entry.id) == "strings")
                list.push_back(entry);
        return list;
    }();
    return all;
}

const std::vector<StudyEntry>& allSubjects()
{
    static const std::vector<StudyEntry> all = [] {
        std::vector<StudyEntry> list = studies();
        list.insert(list.end(), shopLists().begin(), shopLists().end());
        return list;
    }();
    return all;
}

}  // namespace lidwright
