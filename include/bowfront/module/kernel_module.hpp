#pragma once
/// \file
/// The solid shop as it is met from outside: as a function to link to, and as a module to open at
/// run time. Nothing of the kernel shows here.

#include <functional>
#include <string>

#include "bowfront/pipeline/solid_shop.hpp"

namespace bowfront::module {

/// Fulfils `SolidShop`. Each part is built once and placed as often as it stands in its assembly;
/// each assembly becomes a STEP file, in the order in which assemblies first appear.
/// @param progress  told each step in a few words; may be empty
/// @throws KernelError where a solid fails its proof or the kernel fails
/// @throws ContractError where a probe names a part that the request has not
[[nodiscard]] SolidResult make_solids(const SolidRequest& request,
                                      const std::function<void(const std::string&)>& progress);

/// The module's one symbol: `make_solids`, with the result filled in by reference because C linkage
/// can't promise to return such a value.
///
/// C++ values and exceptions pass through it as they are, so the module and the program that opens
/// it must come from one build, and the module must stay open as long as the program runs: the code
/// of errors and results that it hands out lies in it.
using Entry = void (*)(const SolidRequest& request,
                       const std::function<void(const std::string&)>& progress,
                       SolidResult& result);

/// The name to look the symbol up by.
inline constexpr const char* kEntryName = "bowfront_make_solids";

}  // namespace bowfront::module
