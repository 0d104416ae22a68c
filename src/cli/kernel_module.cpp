#include "kernel_module.hpp"

#include <dlfcn.h>

#include <filesystem>

#include "bowfront/base/error.hpp"
#include "bowfront/module/kernel_module.hpp"

namespace bowfront::cli {

SolidShop open_solid_shop() {
    namespace fs = std::filesystem;
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error);
    const fs::path file =
        program.parent_path().parent_path() / "lib" / "bowfront" / "bowfront-kernel.so";
    void* module = error ? nullptr : dlopen(file.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (module == nullptr) {
        const char* reason = error ? nullptr : dlerror();
        throw KernelError("opening the module", "bowfront-kernel.so",
                          reason != nullptr ? reason : "the program can't tell where it stands");
    }
    const auto make = reinterpret_cast<module::Entry>(dlsym(module, module::kEntryName));
    if (make == nullptr) {
        throw KernelError("opening the module", "bowfront-kernel.so", "it is not of this build");
    }
    return [make](const SolidRequest& request,
                  const std::function<void(const std::string&)>& progress) {
        SolidResult result;
        make(request, progress, result);
        return result;
    };
}

}  // namespace bowfront::cli
