#include <type_traits>

#include "bowfront/module/kernel_module.hpp"

extern "C" void bowfront_make_solids(const bowfront::SolidRequest& request,
                                     const std::function<void(const std::string&)>& progress,
                                     bowfront::SolidResult& result) {
    result = bowfront::module::make_solids(request, progress);
}

static_assert(std::is_same_v<bowfront::module::Entry, decltype(&bowfront_make_solids)>,
              "the symbol must be what its header promises");
