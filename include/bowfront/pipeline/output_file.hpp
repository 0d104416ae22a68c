#pragma once
/// \file
/// A single new file.

#include <string>
#include <string_view>

namespace bowfront {

/// A file that is not there yet, written piece by piece; never over an existing one.
class NewFile {
  public:
    /// @throws IoError where the name is taken or nothing can be written there
    explicit NewFile(std::string path);
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    /// Takes away what was not finished.
    ~NewFile();

    /// Appends. @throws IoError
    void write(std::string_view bytes);
    /// Ends the file, which then stays. @throws IoError
    void finish();

  private:
    std::string path_;
    int file_ = -1;
};

/// Writes a file that is not there yet, whole or not at all; never over an existing one.
/// @throws IoError where the name is taken or nothing can be written there
void write_new_file(const std::string& path, std::string_view bytes);

}  // namespace bowfront
