#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <cmath>

#include "bowfront/base/number_text.hpp"
#include "solid/kernel_guard.hpp"
#include "solid/prism.hpp"
#include "solid/shape_access.hpp"

namespace bowfront::solid {
namespace {

// A recess nearer than this to another outline would leave a wall that the kernel takes for none:
// ten times its tolerance.
constexpr double kTouching = 1e-6;

// How far a cutting tool sticks out of the face that it cuts into, mm; any length would do.
constexpr double kProtrusion = 1;

// Relative difference between the kernel's volume and the closed form that still counts as
// equal: Gauss integration over planes and cylinders keeps 13 digits of 16.
constexpr double kVolumeProof = 1e-9;

void refuse(const std::string& part, const std::string& why) {
    throw KernelError("make", part, why);
}

bool above_zero(double value) {
    return std::isfinite(value) && value > 0;
}

void expect_sizes(const Body& body, const std::string& part) {
    if (!above_zero(body.height) || body.section.outer.size() < 2) {
        refuse(part, "the body has no height or no section");
    }
    for (const Recess& recess : body.recesses) {
        if (!above_zero(recess.depth) || recess.depth >= body.height ||
            recess.area.outer.size() < 2) {
            refuse(part, "a recess has no depth or no area, or goes through");
        }
    }
    for (const Bore& bore : body.bores) {
        if (!above_zero(bore.depth) || bore.depth > body.height || !above_zero(bore.diameter)) {
            refuse(part, "a bore has no depth or no diameter, or is deeper than the body is high");
        }
    }
    for (const Bore& bore : body.back_bores) {
        if (!above_zero(bore.depth) || bore.depth >= body.height || !above_zero(bore.diameter)) {
            refuse(part, "a bore from the back has no depth or no diameter, or goes through");
        }
    }
    for (const Step& step : body.steps) {
        if (!above_zero(step.height) || step.area.outer.size() < 2) {
            refuse(part, "a step has no height or no area");
        }
    }
}

std::vector<Contour> outlines(const Region& region) {
    std::vector<Contour> all{region.outer};
    all.insert(all.end(), region.holes.begin(), region.holes.end());
    return all;
}

bool touches(const Contour& one, const Contour& other) {
    const Box a = one.box();
    const Box b = other.box();
    const bool apart = a.high.x + kTouching < b.low.x || b.high.x + kTouching < a.low.x ||
                       a.high.y + kTouching < b.low.y || b.high.y + kTouching < a.low.y;
    return !apart && gap(one, other) <= kTouching;
}

bool touches(const Region& one, const Region& other) {
    for (const Contour& a : outlines(one)) {
        for (const Contour& b : outlines(other)) {
            if (touches(a, b)) {
                return true;
            }
        }
    }
    return false;
}

/// A body split into what can be built face by face and the recesses that must be cut: those that
/// run out at an edge of the section, or into one another.
struct Division {
    Body built;
    std::vector<Recess> cut;
};

Division divide(const Body& body) {
    Division division{body, {}};
    division.built.recesses.clear();
    const auto meets_another = [&](std::size_t i) {
        const Region& area = body.recesses[i].area;
        if (touches(area, body.section)) {
            return true;
        }
        for (std::size_t k = 0; k < body.recesses.size(); ++k) {
            if (k != i && touches(area, body.recesses[k].area)) {
                return true;
            }
        }
        return std::any_of(body.bores.begin(), body.bores.end(), [&](const Bore& bore) {
            return touches(area, Region{outline(bore), {}});
        });
    };
    for (std::size_t i = 0; i < body.recesses.size(); ++i) {
        (meets_another(i) ? division.cut : division.built.recesses).push_back(body.recesses[i]);
    }
    return division;
}

/// The tool that cuts a recess of a body.
TopoDS_Shape tool(const Body& body, const Recess& recess, const std::string& part) {
    Body block;
    block.section = recess.area;
    block.height = recess.depth + kProtrusion;
    const double foot = body.face == Face::high ? body.height - recess.depth : -kProtrusion;
    gp_Trsf lift;
    lift.SetTranslation(gp_Vec(0, 0, foot));
    return prism(block, part).Moved(TopLoc_Location(lift));
}

/// The one solid in a boolean's result, which is a compound.
TopoDS_Solid only_solid(const TopoDS_Shape& result, const std::string& part) {
    TopExp_Explorer solids(result, TopAbs_SOLID);
    if (!solids.More()) {
        refuse(part, "nothing is left of the body");
    }
    const TopoDS_Solid first = TopoDS::Solid(solids.Current());
    solids.Next();
    if (solids.More()) {
        refuse(part, "its recesses cut the body in pieces");
    }
    return first;
}

TopoDS_Solid cut(const TopoDS_Solid& blank, const Body& body, const std::vector<Recess>& recesses,
                 const std::string& part) {
    TopTools_ListOfShape blanks;
    blanks.Append(blank);
    TopTools_ListOfShape tools;
    for (const Recess& recess : recesses) {
        tools.Append(tool(body, recess, part));
    }
    BRepAlgoAPI_Cut operation;
    operation.SetArguments(blanks);
    operation.SetTools(tools);
    operation.SetNonDestructive(true);
    operation.SetToFillHistory(false);
    operation.Build();
    if (!operation.IsDone() || operation.HasErrors()) {
        refuse(part, "the kernel could not cut its recesses");
    }
    return only_solid(operation.Shape(), part);
}

/// A body with its steps: each a prism that shares a part of an end face with it.
TopoDS_Solid stepped(const TopoDS_Solid& blank, const Body& body, const std::string& part) {
    TopTools_ListOfShape blanks;
    blanks.Append(blank);
    TopTools_ListOfShape steps;
    for (const Step& step : body.steps) {
        Body block;
        block.section = step.area;
        block.height = step.height;
        gp_Trsf lift;
        lift.SetTranslation(
            gp_Vec(0, 0, step.face == Face::high ? body.height : -step.height));
        steps.Append(prism(block, part).Moved(TopLoc_Location(lift)));
    }
    BRepAlgoAPI_Fuse operation;
    operation.SetArguments(blanks);
    operation.SetTools(steps);
    operation.SetNonDestructive(true);
    operation.SetToFillHistory(false);
    operation.Build();
    if (!operation.IsDone() || operation.HasErrors()) {
        refuse(part, "the kernel could not join its steps");
    }
    return only_solid(operation.Shape(), part);
}

void prove(const Solid& solid, const Body& body, const std::string& part) {
    if (!BRepCheck_Analyzer(ShapeAccess::shape(solid)).IsValid()) {
        refuse(part, "its outlines give no valid solid; they cross or overlap");
    }
    const double measured = ShapeAccess::mass(solid).volume;
    const double expected = volume(body);
    if (!(std::abs(measured - expected) <= kVolumeProof * expected)) {
        refuse(part, "its volume is " + rounded_text(measured, 6) + " mm3, not " +
                         rounded_text(expected, 6) + " mm3");
    }
}

}  // namespace

Solid make(const Body& body, const std::string& part) {
    expect_sizes(body, part);
    return guarded("make", part, [&] {
        const Division division = divide(body);
        TopoDS_Solid shape = prism(division.built, part);
        if (!division.cut.empty()) {
            shape = cut(shape, body, division.cut, part);
        }
        if (!body.steps.empty()) {
            shape = stepped(shape, body, part);
        }
        const Solid solid = ShapeAccess::wrap(shape);
        prove(solid, body, part);
        return solid;
    });
}

}  // namespace bowfront::solid
