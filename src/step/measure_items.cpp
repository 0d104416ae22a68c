#include "step/measure_items.hpp"

#include <StepBasic_DerivedUnit.hxx>
#include <StepBasic_DerivedUnitElement.hxx>
#include <StepBasic_HArray1OfDerivedUnitElement.hxx>
#include <StepBasic_MeasureValueMember.hxx>
#include <TCollection_HAsciiString.hxx>

namespace bowfront::step {
namespace {

StepBasic_Unit power(const Handle(StepBasic_SiUnitAndLengthUnit) & length, double exponent) {
    const Handle(StepBasic_DerivedUnitElement) element = new StepBasic_DerivedUnitElement;
    element->Init(length, exponent);
    const Handle(StepBasic_HArray1OfDerivedUnitElement) elements =
        new StepBasic_HArray1OfDerivedUnitElement(1, 1);
    elements->SetValue(1, element);
    const Handle(StepBasic_DerivedUnit) derived = new StepBasic_DerivedUnit;
    derived->Init(elements);
    StepBasic_Unit unit;
    unit.SetValue(derived);
    return unit;
}

Handle(StepRepr_MeasureRepresentationItem)
    item(const char* name, const char* measure, double value, const StepBasic_Unit& unit) {
    const Handle(StepBasic_MeasureValueMember) member = new StepBasic_MeasureValueMember;
    member->SetName(measure);
    member->SetReal(value);
    const Handle(StepRepr_MeasureRepresentationItem) made = new StepRepr_MeasureRepresentationItem;
    made->Init(new TCollection_HAsciiString(name), member, unit);
    return made;
}

}  // namespace

MeasureItems::MeasureItems() {
    const Handle(StepBasic_SiUnitAndLengthUnit) millimetre = new StepBasic_SiUnitAndLengthUnit;
    millimetre->Init(/*hasAprefix=*/true, StepBasic_spMilli, StepBasic_sunMetre);
    cubic_ = power(millimetre, 3);
    square_ = power(millimetre, 2);
}

Handle(StepRepr_MeasureRepresentationItem) MeasureItems::volume(double value) const {
    return item("volume measure", "VOLUME_MEASURE", value, cubic_);
}

Handle(StepRepr_MeasureRepresentationItem) MeasureItems::area(double value) const {
    return item("surface area measure", "AREA_MEASURE", value, square_);
}

}  // namespace bowfront::step
