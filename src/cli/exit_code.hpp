#pragma once
/// \file
/// What the program tells the shell.

namespace bowfront::cli {

/// Exit codes; they never change their meaning.
struct ExitCode {
    static constexpr int fine = 0;         ///< all checks pass, warnings allowed
    static constexpr int check_fails = 1;  ///< a check fails
    static constexpr int bad_input = 2;    ///< bad input or usage
    static constexpr int no_output = 3;    ///< the output could not be written
    static constexpr int own_fault = 4;    ///< a fault of the program
};

}  // namespace bowfront::cli
