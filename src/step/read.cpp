#include <BRepLib.hxx>
#include <Interface_CheckIterator.hxx>
#include <Interface_InterfaceModel.hxx>
#include <STEPControl_Reader.hxx>
#include <StepBasic_Product.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepBasic_ProductDefinitionFormation.hxx>
#include <StepGeom_Axis2Placement3d.hxx>
#include <StepGeom_CartesianPoint.hxx>
#include <StepRepr_PropertyDefinition.hxx>
#include <StepRepr_RepresentedDefinition.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>
#include <StepShape_VertexPoint.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Iterator.hxx>
#include <TopoDS_TShape.hxx>
#include <TransferBRep.hxx>
#include <Transfer_TransientProcess.hxx>
#include <XSControl_TransferReader.hxx>
#include <XSControl_WorkSession.hxx>
#include <map>
#include <sstream>

#include "bowfront/step/step.hpp"
#include "solid/kernel_guard.hpp"
#include "solid/shape_access.hpp"
#include "step/session.hpp"

namespace bowfront::step {
namespace {

[[noreturn]] void refuse(const std::string& why) {
    throw KernelError("read STEP", "a file", why);
}

/// The kernel's reader takes a text that stops short for a shorter file, or falls over it.
void expect_whole(const std::string& text) {
    constexpr std::string_view kStart = "ISO-10303-21;";
    constexpr std::string_view kEnd = "END-ISO-10303-21;";
    const auto last = text.find_last_not_of(" \t\r\n");
    const auto first = text.find_first_not_of(" \t\r\n");
    if (first == std::string::npos || text.compare(first, kStart.size(), kStart) != 0) {
        refuse("the text does not begin as a STEP file does");
    }
    if (last + 1 < kEnd.size() || text.compare(last + 1 - kEnd.size(), kEnd.size(), kEnd) != 0) {
        refuse("the text does not end as a STEP file does");
    }
}

bool in_space(const Handle(StepGeom_CartesianPoint) & point) {
    return !point.IsNull() && point->NbCoordinates() == 3;
}

/// Why the kernel would fall over an entity, if it would.
std::string unusable(const Handle(Standard_Transient) & entity) {
    bool sound = true;
    if (const auto frame = Handle(StepGeom_Axis2Placement3d)::DownCast(entity)) {
        sound = in_space(frame->Location());
    } else if (const auto vertex = Handle(StepShape_VertexPoint)::DownCast(entity)) {
        sound = in_space(Handle(StepGeom_CartesianPoint)::DownCast(vertex->VertexGeometry()));
    } else if (const auto shape =
                   Handle(StepShape_ShapeDefinitionRepresentation)::DownCast(entity)) {
        sound = !shape->Definition().PropertyDefinition().IsNull();
    }
    return sound ? "" : std::string("a ") + entity->DynamicType()->Name() + " is incomplete";
}

/// Gives edges their curves in planes, as solid::make does: without them each look at a plane
/// works them out anew.
void trace_on_planes(const TopoDS_Shape& shape) {
    for (TopExp_Explorer faces(shape, TopAbs_FACE); faces.More(); faces.Next()) {
        const TopoDS_Face& face = TopoDS::Face(faces.Current());
        for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
            BRepLib::BuildPCurveForEdgeOnPlane(TopoDS::Edge(edges.Current()), face);
        }
    }
}

/// One reading of one text.
class Reading {
  public:
    std::vector<ReadInstance> run(const std::string& text) {
        std::istringstream stream(text);
        stream.imbue(std::locale::classic());
        if (reader_.ReadStream("text", stream) != IFSelect_RetDone) {
            refuse("the kernel can't read the text");
        }
        expect_sound();
        expect_usable();
        if (reader_.TransferRoots() < 1) {
            refuse("there is no shape in it");
        }
        learn_names();
        for (int i = 1; i <= reader_.NbShapes(); ++i) {
            collect(reader_.Shape(i), {});
        }
        return std::move(found_);
    }

  private:
    /// The kernel loads what it can of a faulty text, and may fall over the gaps when it goes on.
    void expect_sound() {
        Interface_CheckIterator checks = reader_.WS()->ModelCheckList(/*complete=*/true);
        for (checks.Start(); checks.More(); checks.Next()) {
            if (checks.Value()->HasFailed()) {
                refuse(checks.Value()->CFail(1));
            }
        }
    }

    /// What the kernel checks on loading is less than what it relies on later.
    void expect_usable() {
        const auto model = reader_.Model();
        for (int i = 1; i <= model->NbEntities(); ++i) {
            if (const auto fault = unusable(model->Value(i)); !fault.empty()) {
                refuse(fault);
            }
        }
    }

    /// A product is known by the shape that the reader made of it.
    void learn_names() {
        const auto process = reader_.WS()->TransferReader()->TransientProcess();
        const auto model = reader_.Model();
        for (int i = 1; i <= model->NbEntities(); ++i) {
            const auto definition = Handle(StepBasic_ProductDefinition)::DownCast(model->Value(i));
            if (definition.IsNull() || definition->Formation().IsNull() ||
                definition->Formation()->OfProduct().IsNull() ||
                definition->Formation()->OfProduct()->Name().IsNull()) {
                continue;
            }
            const TopoDS_Shape shape = TransferBRep::ShapeResult(process, definition);
            if (!shape.IsNull()) {
                names_[shape.TShape().get()] =
                    definition->Formation()->OfProduct()->Name()->ToCString();
            }
        }
    }

    /// Walks down; `path` holds the names of the products above, the root's first.
    void collect(const TopoDS_Shape& shape, std::vector<std::string> path) {
        if (shape.IsNull()) {
            return;
        }
        const auto known = names_.find(shape.TShape().get());
        if (known != names_.end()) {
            path.push_back(known->second);
        }
        if (shape.ShapeType() == TopAbs_SOLID) {
            found_.push_back({path.empty() ? "" : path.back(),
                              path.size() < 3 ? "" : path[path.size() - 2],
                              solid::measure(ShapeAccess::moved(own(shape), shape.Location()))});
            return;
        }
        if (shape.ShapeType() == TopAbs_COMPOUND || shape.ShapeType() == TopAbs_COMPSOLID) {
            for (TopoDS_Iterator parts(shape); parts.More(); parts.Next()) {
                collect(parts.Value(), path);
            }
        }
    }

    /// The solid that all instances of a shape share, where the shape itself lies.
    const Solid& own(const TopoDS_Shape& shape) {
        const auto known = solids_.find(shape.TShape().get());
        if (known != solids_.end()) {
            return known->second;
        }
        const TopoDS_Shape unplaced = shape.Located(TopLoc_Location());
        trace_on_planes(unplaced);
        return solids_.emplace(shape.TShape().get(), ShapeAccess::wrap(unplaced)).first->second;
    }

    STEPControl_Reader reader_;
    // Looked up by where shapes lie in memory, never walked through.
    std::map<const TopoDS_TShape*, std::string> names_;
    std::map<const TopoDS_TShape*, Solid> solids_;
    std::vector<ReadInstance> found_;
};

}  // namespace

std::vector<ReadInstance> read(const std::string& text) {
    return guarded("read STEP", "a file", [&] {
        expect_whole(text);
        const Session session;
        return Reading().run(text);
    });
}

}  // namespace bowfront::step
