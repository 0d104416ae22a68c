#pragma once
/// \file
/// The solid kernel's module, opened when solids are made and not before.

#include "bowfront/pipeline/solid_shop.hpp"

namespace bowfront::cli {

/// Opens the module that lies beside the program: ../lib/bowfront from where the program stands.
/// @throws KernelError where it is not there or does not fit
[[nodiscard]] SolidShop open_solid_shop();

}  // namespace bowfront::cli
