#pragma once
/// \file
/// The command line, parsed: what was asked, as a value.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bowfront/dxf/dxf.hpp"
#include "bowfront/study/chance.hpp"
#include "bowfront/study/sweep.hpp"

namespace bowfront::cli {

/// `start`
struct StartRequest {
    std::string shape = "bow-front";
    std::string file;  ///< empty: standard output
};
/// `check`
struct CheckRequest {
    std::string case_file;
    bool json = false;
    std::string suggest;  ///< new file for the corrected case; empty: none
    study::ChanceOptions chance;
};
/// `make`
struct MakeRequest {
    std::string case_file;
    std::string folder;
    bool json = false;
    bool despite_failures = false;
    study::ChanceOptions chance;
    dxf::Version dxf_version = dxf::Version::ac1015;
};
/// `explain`
struct ExplainRequest {
    std::string case_file;
    std::string quantity;
    bool json = false;
};
/// `sweep`
struct SweepRequest {
    std::string case_file;
    std::vector<std::string> vary;  ///< each `POINTER=FROM:TO:STEP`
    std::string file;               ///< empty: standard output
    std::string plot;               ///< empty: none
    int samples = 0;                ///< 0: no chance of a first-time fit
    std::uint64_t seed = 1;
    std::size_t jobs = 0;           ///< 0: as many as the machine has
    study::Shard shard;
};
/// `calibrate`
struct CalibrateRequest {
    std::string coupons_file;
    std::string like = "cast-acrylic";  ///< sheet of the library for what was not measured
    std::string key = "measured";       ///< of the entry in the case file
    bool json = false;
};
/// `inspect`
struct InspectRequest {
    std::string case_file;
    std::string measured_file;
    bool json = false;
};
/// `materials`
struct MaterialsRequest {
    std::string name;  ///< empty: all, a line each
};
/// `schema`
struct SchemaRequest {
    std::string name;
};

using Request = std::variant<StartRequest, CheckRequest, MakeRequest, ExplainRequest, SweepRequest,
                             CalibrateRequest, InspectRequest, MaterialsRequest, SchemaRequest>;

/// What came of the command line: a request, or an exit code where help, the version or a usage
/// error was printed already.
struct Parsed {
    std::optional<Request> request;
    int exit_code = 0;
};

/// Parses the command line. Opens no file; help and version go to standard output.
/// @throws InputError where the command is not known; IoError where help can't be written
[[nodiscard]] Parsed parse(int argc, const char* const* argv);

}  // namespace bowfront::cli
