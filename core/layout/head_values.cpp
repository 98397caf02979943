#include "core/layout/head_values.h"

#include <algorithm>
#include <limits>

namespace lidwright {

double fromNutEdge(const Layout& layout, const HeadPost& post)
{
    return post.face.x + layout.nutEdgeX - layout.nutX;
}

std::vector<DerivedValue> headValues(const Plan& plan, const Layout& layout)
{
    const HeadLayout& head = layout.head;
    std::vector<DerivedValue> out;
    const auto add = [&](std::string key, std::string label, double value, Quantity quantity) {
        out.push_back({std::move(key), std::move(label), {value + 0.0, quantity}});  // + 0.0: no minus zero
    };
    const auto length = [&](std::string key, std::string label, double value) {
        add(std::move(key), std::move(label), value, Quantity::Length);
    };
    length("head.wide", "Head's width", head.width);
    length("head.thick", "Head's thickness at the tuners", head.thickness);
    length("head.face-length", "Nut to the head's end, along the face", head.faceLength);
    length("head.blank-used", "Blank used beyond the nut, with a scarf's own saw cut", head.blankUsed);
    length("head.blank-more", "Blank used beyond what a straight head takes",
           head.blankUsed - plan.neck.headLength);
    if (plan.head.shape == HeadShape::Scarfed) {
        length("head.scarf-length", "Slope sawn through the stick", head.scarfLength);
        length("head.scarf-run", "Saw mark on the underside behind that on the top",
               head.sawLine[0].x - head.sawLine[1].x);
        length("head.glue-length", "Glued faces of the scarf joint", head.glueLength);
        length("head.piece-face", "Face of the piece glued on", head.headPiece);
    } else {
        length("head.wood-off", "Wood taken off the head", plan.neck.thickness - head.thickness);
    }
    length("tuners.hole-height", "String hole over the head's face", head.holeOverFace);
    for (std::size_t i = 0; i < head.posts.size(); ++i) {
        const std::string key = "tuners." + std::to_string(i + 1);
        const std::string name = "Tuner of string " + std::to_string(i + 1);
        const HeadPost& post = head.posts[i];
        const HeadString& string = head.strings[i];
        length(key + ".from-nut", name + ": from the nut, along the face", fromNutEdge(layout, post));
        length(key + ".from-end", name + ": from the head's end, along the face",
               head.faceLength - post.face.x);
        length(key + ".from-centre", name + ": from the neck's centre line to the treble side",
               post.face.y - layout.neckY);
        add(key + ".splay", name + ": string turns at the nut toward the treble side", string.splay,
            Quantity::Angle);
        add(key + ".break", name + ": string bends down over the nut", string.breakAngle, Quantity::Angle);
        double nearest = std::numeric_limits<double>::infinity();
        for (std::size_t k = 0; k < head.posts.size(); ++k)
            if (k != i) nearest = std::min(nearest, airToPost(plan, head, i, k));
        if (nearest < std::numeric_limits<double>::infinity())
            length(key + ".clear", name + ": string's nearest other post", nearest);
    }
    return out;
}

}  // namespace lidwright
