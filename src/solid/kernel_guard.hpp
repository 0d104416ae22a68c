#pragma once
/// \file
/// The wall between the solid kernel and the rest: its exceptions become KernelError, and it says
/// nothing on standard output.

#include <Standard_Failure.hxx>
#include <exception>
#include <string>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"

namespace bowfront {

/// Takes the kernel's own printers away; they write to standard output.
void silence_kernel();

/// Runs `work` and translates whatever it throws, except our own errors, to KernelError.
template <typename Work>
auto guarded(const char* operation, const std::string& part, Work&& work) {
    silence_kernel();
    try {
        return std::forward<Work>(work)();
    } catch (const KernelError&) {
        throw;
    } catch (const ContractError&) {
        throw;
    } catch (const Standard_Failure& failure) {  // which is no std::exception
        const char* said = failure.GetMessageString();
        throw KernelError(operation, part,
                          std::string(failure.DynamicType()->Name()) + " " + (said ? said : ""));
    } catch (const std::exception& failure) {
        throw KernelError(operation, part, failure.what());
    }
}

}  // namespace bowfront
