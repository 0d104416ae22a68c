#pragma once
/// \file
/// The kernel's STEP code one caller at a time, with its process-wide settings made ours.

#include <mutex>

namespace bowfront::step {

/// While one lives, the kernel's STEP code belongs to its holder. That code keeps its settings and
/// counters in the process: two writers at once crash it, and settings left by others change files.
class Session {
  public:
    /// @throws KernelError where the kernel takes no setting
    Session();

  private:
    std::unique_lock<std::mutex> held_;
};

}  // namespace bowfront::step
