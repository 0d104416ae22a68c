#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_EntityIterator.hxx>
#include <STEPConstruct.hxx>
#include <STEPConstruct_Styles.hxx>
#include <STEPConstruct_ValidationProps.hxx>
#include <STEPControl_Writer.hxx>
#include <StepBasic_Product.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepBasic_ProductDefinitionFormation.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepGeom_CartesianPoint.hxx>
#include <StepRepr_CharacterizedDefinition.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <StepRepr_PropertyDefinition.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepRepr_RepresentedDefinition.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>
#include <StepShape_ShapeRepresentation.hxx>
#include <StepVisual_ColourRgb.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <StepVisual_StyledItem.hxx>
#include <TransferBRep.hxx>
#include <TransferBRep_ShapeMapper.hxx>
#include <Transfer_FinderProcess.hxx>
#include <XSControl_TransferWriter.hxx>
#include <XSControl_WorkSession.hxx>
#include <sstream>

#include "solid/kernel_guard.hpp"
#include "solid/shape_access.hpp"
#include "step/measure_items.hpp"
#include "step/part21_text.hpp"
#include "step/product_tree.hpp"
#include "step/session.hpp"

namespace bowfront::step {
namespace {

/// Colour (sRGB) and how much light goes through; our own choice, so that timber looks like
/// timber and a pane like a pane.
struct Look {
    double red;
    double green;
    double blue;
    double transparency;
};

Look look(Finish finish) {
    switch (finish) {
        case Finish::timber:
            return {0.55, 0.36, 0.20, 0};
        case Finish::plywood:
            return {0.87, 0.75, 0.56, 0};
        case Finish::clear_sheet:
            return {0.70, 0.85, 0.95, 0.65};
        case Finish::glass:
            break;
    }
    return {0.72, 0.88, 0.80, 0.6};
}

Handle(TCollection_HAsciiString) text(const std::string& said) {
    return new TCollection_HAsciiString(printable(said).c_str());
}

/// One writing of one assembly.
class Writing {
  public:
    Writing(const ProductTree& tree, const Stamp& stamp) : tree_(tree), stamp_(stamp) {}

    std::string run() {
        // The graph would only serve look-ups that are not made here; it doubles the cost.
        const auto status = writer_.Transfer(tree_.root(), STEPControl_AsIs, /*compgraph=*/false);
        expect(status == IFSelect_RetDone, "the shapes could not be transferred");
        for (const Product& product : tree_.products) {
            name(product);
            if (product.item != nullptr) {
                paint(product);
                add_properties(product);
            }
        }
        name_instances();
        fill_header();
        return clear_text();
    }

  private:
    void expect(bool done, const std::string& otherwise) const {
        if (!done) {
            throw KernelError("write STEP", tree_.products.front().name, otherwise);
        }
    }

    Handle(StepShape_ShapeDefinitionRepresentation) representation(const Product& product) const {
        const auto process = writer_.WS()->TransferWriter()->FinderProcess();
        Handle(StepShape_ShapeDefinitionRepresentation) found;
        const bool known = process->FindTypedTransient(
            TransferBRep::ShapeMapper(process, product.shape),
            STANDARD_TYPE(StepShape_ShapeDefinitionRepresentation), found);
        expect(known, "no product was made of " + product.id);
        return found;
    }

    Handle(StepRepr_RepresentationContext) context(const Product& product) const {
        return representation(product)->UsedRepresentation()->ContextOfItems();
    }

    void name(const Product& product) {
        const auto made = representation(product)
                              ->Definition()
                              .PropertyDefinition()
                              ->Definition()
                              .ProductDefinition()
                              ->Formation()
                              ->OfProduct();
        made->SetId(text(product.id));
        made->SetName(text(product.name));
    }

    void paint(const Product& product) {
        const auto process = writer_.WS()->TransferWriter()->FinderProcess();
        const auto body = STEPConstruct::FindEntity(process, product.shape);
        expect(!body.IsNull(), "no solid was made of " + product.id);
        const Look shown = look(product.item->finish);
        STEPConstruct_Styles styles(writer_.WS());
        const Handle(StepVisual_ColourRgb) colour = new StepVisual_ColourRgb;
        colour->Init(text(""), shown.red, shown.green, shown.blue);
        const Handle(StepVisual_Colour) no_curves;
        const Handle(StepVisual_StyledItem) overrides_none;
        styles.AddStyle(body,
                        styles.MakeColorPSA(body, colour, no_curves, colour, shown.transparency),
                        overrides_none);
        Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) shown_in;
        expect(styles.CreateMDGPR(context(product), shown_in),
               "no colour could be given to " + product.id);
        writer_.Model()->AddWithRefs(shown_in);
    }

    void add_property(const Product& product, const char* what,
                      const Handle(StepRepr_RepresentationItem) & value) {
        // Of the product's shape: by the solid itself the kernel would add an aspect for it.
        StepRepr_CharacterizedDefinition shape;
        shape.SetValue(representation(product)->Definition().PropertyDefinition());
        STEPConstruct_ValidationProps properties(writer_.WS());
        expect(properties.AddProp(shape, context(product), value, what),
               std::string("no ") + what + " could be given to " + product.id);
    }

    /// Volume by the closed form; area and centroid as the kernel has them.
    void add_properties(const Product& product) {
        const MassProperties& mass = ShapeAccess::mass(product.item->solid);
        // The solid may stand elsewhere than the product's own shape.
        const gp_Pnt centre = mass.centroid.Transformed(
            ShapeAccess::shape(product.item->solid).Location().Inverted().Transformation());
        add_property(product, "volume", measures_.volume(product.item->volume));
        add_property(product, "surface area", measures_.area(mass.area));
        const Handle(StepGeom_CartesianPoint) point = new StepGeom_CartesianPoint;
        point->Init3D(text("centre point"), centre.X(), centre.Y(), centre.Z());
        add_property(product, "centroid", point);
    }

    /// The kernel numbers instances by a counter of the process.
    void name_instances() {
        int number = 0;
        const auto model = writer_.Model();
        for (int i = 1; i <= model->NbEntities(); ++i) {
            const auto instance =
                Handle(StepRepr_NextAssemblyUsageOccurrence)::DownCast(model->Value(i));
            if (!instance.IsNull()) {
                instance->SetId(text(std::to_string(++number)));
                instance->SetName(
                    instance->RelatedProductDefinition()->Formation()->OfProduct()->Name());
            }
        }
    }

    void fill_header() {
        APIHeaderSection_MakeHeader header(writer_.Model());
        expect(header.HasFn() && header.HasFs() && header.HasFd(), "the file has no header");
        const auto nobody = text("");
        header.SetName(text(tree_.products.front().name));
        header.SetTimeStamp(text(stamp_.time));
        header.SetAuthorValue(1, nobody);
        header.SetOrganizationValue(1, nobody);
        header.SetOriginatingSystem(text(stamp_.tool + " " + stamp_.version));
        header.SetAuthorisation(nobody);
        header.SetDescriptionValue(1, text("solids of " + tree_.products.front().name));
    }

    std::string clear_text() const {
        const auto model = writer_.WS()->Model();
        const auto step_model = Handle(StepData_StepModel)::DownCast(model);
        StepData_StepWriter out(step_model);
        out.SendModel(Handle(StepData_Protocol)::DownCast(writer_.WS()->Protocol()));
        expect(out.CheckList().IsEmpty(true), "the file's text has faults");
        std::ostringstream stream;
        stream.imbue(std::locale::classic());
        expect(out.Print(stream), "the file's text could not be printed");
        return escaped(stream.str());
    }

    const ProductTree& tree_;
    const Stamp& stamp_;
    MeasureItems measures_;
    mutable STEPControl_Writer writer_;  // mutable: it hands out its model by a non-const call
};

}  // namespace

std::string write(const Assembly& assembly, const Stamp& stamp) {
    return guarded("write STEP", assembly.name, [&] {
        const Session session;
        const ProductTree tree = product_tree(assembly);
        return Writing(tree, stamp).run();
    });
}

}  // namespace bowfront::step
