#pragma once
/// \file
/// Volumes and areas as STEP items with their units.

#include <StepBasic_SiUnitAndLengthUnit.hxx>
#include <StepBasic_Unit.hxx>
#include <StepRepr_MeasureRepresentationItem.hxx>

namespace bowfront::step {

/// Makes items that share their units.
class MeasureItems {
  public:
    MeasureItems();
    /// @param value  mm³
    [[nodiscard]] Handle(StepRepr_MeasureRepresentationItem) volume(double value) const;
    /// @param value  mm²
    [[nodiscard]] Handle(StepRepr_MeasureRepresentationItem) area(double value) const;

  private:
    StepBasic_Unit cubic_;
    StepBasic_Unit square_;
};

}  // namespace bowfront::step
