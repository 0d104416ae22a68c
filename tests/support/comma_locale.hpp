#pragma once
/// \file
/// A locale that writes decimals with a comma, for as long as an object of this class lives.

#include <gtest/gtest.h>

#include <clocale>
#include <cstdlib>
#include <string>

namespace bowfront {

/// Takes an installed locale, or has the system's `localedef` make one among the test's files.
class CommaLocale {
  public:
    CommaLocale() : before_(std::setlocale(LC_ALL, nullptr)) {
        for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "nl_NL.UTF-8"}) {
            if (std::setlocale(LC_ALL, name) != nullptr) {
                return;
            }
        }
        const std::string folder = ::testing::TempDir() + "bowfront_locales";
        const std::string make = "mkdir -p '" + folder + "' && localedef -c -i de_DE -f UTF-8 '" +
                                 folder + "/de_DE.UTF-8' >/dev/null 2>&1";
        (void)!std::system(make.c_str());
        setenv("LOCPATH", folder.c_str(), 1);
        (void)std::setlocale(LC_ALL, "de_DE.UTF-8");
        unsetenv("LOCPATH");
    }
    ~CommaLocale() { std::setlocale(LC_ALL, before_.c_str()); }
    CommaLocale(const CommaLocale&) = delete;
    CommaLocale& operator=(const CommaLocale&) = delete;

    /// Whether decimals have a comma now: neither way may have worked.
    [[nodiscard]] bool found() const { return std::localeconv()->decimal_point[0] == ','; }

  private:
    std::string before_;
};

}  // namespace bowfront
