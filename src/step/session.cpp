#include "step/session.hpp"

#include <Interface_Static.hxx>
#include <STEPControl_Controller.hxx>
#include <array>

#include "bowfront/base/error.hpp"

namespace bowfront::step {
namespace {

struct Word {
    const char* name;
    const char* value;
};

struct Number {
    const char* name;
    int value;
};

constexpr std::array kWords = {
    Word{"write.step.schema", "AP214IS"},
    Word{"write.step.unit", "MM"},
    Word{"xstep.cascade.unit", "MM"},
};

constexpr std::array kNumbers = {
    // Compounds are assemblies.
    Number{"write.step.assembly", 1},
    // Planes and cylinders lose nothing without curves in them, and files become half as large.
    Number{"write.surfacecurve.mode", 0},
    // The kernel's defaults, in case that someone else has changed them.
    Number{"write.step.vertex.mode", 0},
    Number{"write.step.nonmanifold", 0},
    Number{"write.precision.mode", 0},
    Number{"read.precision.mode", 0},
    Number{"read.step.product.mode", 1},
    Number{"read.step.assembly.level", 1},
    Number{"read.step.shape.repr", 1},
};

std::mutex& kernel_step_mutex() {
    static std::mutex mutex;
    return mutex;
}

}  // namespace

Session::Session() : held_(kernel_step_mutex()) {
    STEPControl_Controller::Init();  // before any setting: it gives them their defaults
    for (const Word& word : kWords) {
        if (!Interface_Static::SetCVal(word.name, word.value)) {
            throw KernelError("set", word.name, word.value);
        }
    }
    for (const Number& number : kNumbers) {
        if (!Interface_Static::SetIVal(number.name, number.value)) {
            throw KernelError("set", number.name, std::to_string(number.value));
        }
    }
}

}  // namespace bowfront::step
