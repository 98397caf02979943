#pragma once

#include "core/io/svg/svg_budget.h"
#include "core/io/svg/svg_css.h"
#include "core/io/svg/svg_notes.h"
#include "core/io/svg/svg_page.h"
#include "core/io/svg/svg_scene.h"
#include "core/io/svg/svg_style.h"
#include "core/io/svg/svg_text_run.h"
#include "core/io/svg/svg_xml.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace lidwright::svg {

/// Walks the tree of elements and lists what is painted.
///
/// One walk serves three ends: to list painted shapes, to list the shapes of a clipping path, and to
/// measure a bounding box. Limits stop it by way of the budget.
class SceneBuilder {
public:
    /// `outlineText` may be empty: text is then left out.
    SceneBuilder(const XmlFile& file, const Page& page, double unitsPerInch, TextOutliner outlineText,
                 Notes& notes, Budget& budget);

    /// The drawing's shapes in painting order; not to be used where the budget is then broken.
    Scene build();

private:
    enum class Purpose { Paint, Clip, Measure };

    /// Where an element stands.
    struct Place {
        const Style* style = nullptr;  ///< of the parent
        Transform map;                 ///< user units to px of the page
        double viewportWidth = 0, viewportHeight = 0;
        ClipPtr clip;
        int depth = 0;
        double opacity = 1;              ///< of all groups around
        const Style* context = nullptr;  ///< of the line that a marker stands on
    };
    /// What a paint comes to on one shape.
    struct Choice {
        bool painted = false;
        bool seeThrough = false;
        std::string name;  ///< "#rrggbb", "gradient #rrggbb", "pattern"
        std::string colour;
        pugi::xml_node pattern;  ///< to be laid as tiles
    };
    struct Gradient {
        bool painted = false, boundingBox = true, seeThrough = false;
        Colour middle;
    };

    /// What the spans around add up to.
    struct TextLevel {
        double rise = 0;
        double opacity = 1;
    };
    struct TextSpan;
    struct TextParts;
    struct TextPiece;

    pugi::xml_node m_root;
    const Page& m_page;
    double m_unitsPerInch;
    TextOutliner m_outlineText;
    Notes& m_notes;
    Budget& m_budget;

    StyleSheet m_sheet;
    std::unordered_map<std::string_view, pugi::xml_node> m_ids;
    std::unordered_map<std::string, int> m_paintIndex;
    std::unordered_map<std::string, Gradient> m_gradients;
    std::map<pugi::xml_node, Style> m_treeStyles;
    std::map<TextRun, std::optional<TextShape>> m_textShapes;
    std::set<std::string> m_ownFonts;  ///< families, in lower case, that the drawing draws letters for itself
    std::vector<pugi::xml_node> m_following;  ///< references being followed just now

    Purpose m_purpose = Purpose::Paint;
    Scene m_scene;
    std::vector<SceneShape> m_clipShapes;
    Bounds m_measured;

    // svg_builder.cpp: the tree
    void collect();
    void visit(const pugi::xml_node& node, const Place& parent);
    void visitChildren(const pugi::xml_node& node, const Place& place);
    void visitSwitch(const pugi::xml_node& node, const Place& place);
    void content(std::string_view name, const pugi::xml_node& node, const Style& style, const Place& place);
    bool applyTransform(const pugi::xml_node& node, const Style& style, Place& place);

    // svg_build_use.cpp: references and viewports
    void use(const pugi::xml_node& node, const Style& style, const Place& place);
    void innerSvg(const pugi::xml_node& node, const Style& style, const Place& place,
                  const pugi::xml_node& user);
    void viewport(const pugi::xml_node& node, const Style& style, Place place, Bounds area);
    pugi::xml_node referenced(std::string_view href);
    bool follows(const pugi::xml_node& target) const;
    bool follow(const pugi::xml_node& target);
    const Style& treeStyle(const pugi::xml_node& node);
    LengthContext lengths(const Style& style, const Place& place) const;
    double attributeLength(const pugi::xml_node& node, const char* name, Axis axis,
                           const LengthContext& context, double otherwise) const;

    // svg_build_clip.cpp
    void clipTo(const pugi::xml_node& node, std::string_view name, const Style& style, Place& place);
    ClipPtr clipFrom(const pugi::xml_node& clipPath, const Place& place, const Bounds& box);
    ClipPtr rectangleClip(const Transform& map, const Bounds& area, const ClipPtr& outer) const;
    Bounds measure(const pugi::xml_node& node, std::string_view name, const Style& style, const Place& place);

    // svg_build_shape.cpp
    void shape(std::string_view name, const pugi::xml_node& node, const Style& style, const Place& place);
    void outlinedShape(Outline made, std::string_view id, bool marked, const Style& style,
                       const Place& place);
    void paintFill(const OutlinePtr& outline, const Style& style, const Place& place);
    void paintLine(const OutlinePtr& outline, const Style& style, const Place& place);
    void put(SceneShape shape, const Choice& choice, const Place& place);
    LineStyle lineStyle(const Style& style, const Place& place) const;

    // svg_build_text.cpp
    bool text(const pugi::xml_node& node, const Style& style, const Place& place);
    void gatherText(const pugi::xml_node& node, const Style& style, TextLevel level, const Place& place,
                    TextParts& parts);
    bool layPieces(const TextParts& parts, std::vector<TextPiece>& pieces);
    void anchorChunks(std::vector<TextPiece>& pieces) const;
    const TextShape* outlined(std::string words, const Style& style);
    void paintPiece(const TextPiece& piece, const Place& place);

    // svg_build_paint.cpp
    Choice choose(const Paint& paint, double opacity, const Outline& outline, const Style& style,
                  const Place& place);
    Choice plain(const Colour& colour, double opacity) const;
    Gradient gradient(const std::string& id, const pugi::xml_node& node);
    std::vector<pugi::xml_node> templateChain(const pugi::xml_node& node);

    // svg_build_pattern.cpp
    bool layTiles(const pugi::xml_node& pattern, const SceneShape& area, const Place& place);

    // svg_build_marker.cpp
    void markers(const Outline& outline, const Style& style, const Place& place);
    void marker(const pugi::xml_node& node, Point at, double angle, bool start, const Style& style,
                const Place& place);
};

}  // namespace lidwright::svg
