#pragma once
/// \file
/// Work in numbered parts, done by several threads and taken in order.

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

namespace bowfront::study {

/// Makes the parts 0 to `count` − 1 on `jobs` threads and hands them over in order on the calling
/// thread. Not many more parts than threads are held at once. The first exception of either side
/// ends the work and is thrown here.
/// @param make_worker  called on each thread once: gives it the function that makes a part
template <class Part>
class OrderedParts {
  public:
    using Worker = std::function<Part(std::size_t)>;

    OrderedParts(std::size_t count, std::size_t jobs) : count_(count), jobs_(jobs) {}

    void run(const std::function<Worker()>& make_worker,
             const std::function<void(const Part&)>& take) {
        const Joined threads{*this, make_worker};
        for (std::size_t i = 0; i < count_; ++i) {
            take(next());
        }
    }

  private:
    // The threads; they are told to stop and waited for whatever happens.
    struct Joined {
        Joined(OrderedParts& owner, const std::function<Worker()>& make_worker) : parts(owner) {
            for (std::size_t i = 0; i < parts.jobs_; ++i) {
                threads.emplace_back([this, &make_worker] { parts.work(make_worker); });
            }
        }
        Joined(const Joined&) = delete;
        Joined& operator=(const Joined&) = delete;
        ~Joined() {
            parts.stop();
            for (std::thread& thread : threads) {
                thread.join();
            }
        }
        OrderedParts& parts;
        std::vector<std::thread> threads;
    };

    static constexpr std::size_t kHeldPerThread = 4;

    void work(const std::function<Worker()>& make_worker) {
        try {
            const Worker make = make_worker();
            while (const auto number = claim()) {
                Part part = make(*number);
                const std::lock_guard lock(mutex_);
                held_[*number - taken_] = std::move(part);
                made_.notify_one();
            }
        } catch (...) {
            const std::lock_guard lock(mutex_);
            failure_ = failure_ ? failure_ : std::current_exception();
            made_.notify_one();
        }
    }

    // The next part to make, once there is room for it; nothing where the work is at its end.
    std::optional<std::size_t> claim() {
        std::unique_lock lock(mutex_);
        room_.wait(lock, [&] { return stopped_ || held_.size() < kHeldPerThread * jobs_; });
        if (stopped_ || claimed_ == count_) {
            return std::nullopt;
        }
        held_.emplace_back();
        return claimed_++;
    }

    Part next() {
        std::unique_lock lock(mutex_);
        made_.wait(lock, [&] { return failure_ || (!held_.empty() && held_.front()); });
        if (failure_) {
            std::rethrow_exception(failure_);
        }
        Part part = std::move(*held_.front());
        held_.pop_front();
        ++taken_;
        room_.notify_one();
        return part;
    }

    void stop() {
        const std::lock_guard lock(mutex_);
        stopped_ = true;
        room_.notify_all();
    }

    std::size_t count_;
    std::size_t jobs_;
    std::mutex mutex_;
    std::condition_variable made_;
    std::condition_variable room_;
    std::deque<std::optional<Part>> held_;  // from `taken_` on; empty while in the making
    std::size_t claimed_ = 0;
    std::size_t taken_ = 0;
    std::exception_ptr failure_;
    bool stopped_ = false;
};

}  // namespace bowfront::study
