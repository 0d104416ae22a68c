#pragma once
/// \file
/// A folder that takes another one's place whole, or not at all.

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace bowfront {

/// Collects files beside the place where they shall stand, and moves them there in one step.
class OutputFolder {
  public:
    /// @param place  the folder to fill; it may stand already where it is empty or holds a
    ///               report.json of ours; a link to a folder means the folder
    /// @throws IoError where it is something else, or where nothing can be written beside it
    explicit OutputFolder(const std::string& place);
    OutputFolder(const OutputFolder&) = delete;
    OutputFolder& operator=(const OutputFolder&) = delete;
    /// Takes away what was not committed, and the parent folders that were made for it.
    ~OutputFolder();

    /// Writes a file and reads it back.
    /// @param path   relative, with `/`; folders are made as needed
    /// @throws IoError where it can't be written, or reads back as something else
    void write(const std::string& path, std::string_view bytes);

    /// Puts what was written in the place. Our own files that stood there before are gone afterwards,
    /// and until then whole; files that are not ours are kept.
    /// @throws IoError
    void commit();

  private:
    void make_parents(const std::filesystem::path& parent);
    void take_parents_away() noexcept;
    void take_over_foreign_files();

    std::filesystem::path place_;
    std::filesystem::path staged_;
    std::vector<std::filesystem::path> parents_;  ///< made for this output, the deepest first
};

/// Whether a folder holds a report.json of ours.
[[nodiscard]] bool is_our_output(const std::filesystem::path& folder);

}  // namespace bowfront
