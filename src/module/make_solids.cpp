#include <algorithm>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/module/kernel_module.hpp"
#include "bowfront/solid/engagement.hpp"
#include "bowfront/step/step.hpp"
#include "module/read_back.hpp"

namespace bowfront::module {
namespace {

/// A part with the solid made of it, in local coordinates.
struct Made {
    const Part* part;
    Solid solid;
};

class Shop {
  public:
    Shop(const SolidRequest& request, const std::function<void(const std::string&)>& progress)
        : request_(request), progress_(progress) {}

    SolidResult run() {
        say("making " + std::to_string(request_.parts.size()) + " solids");
        for (const Part& part : request_.parts) {
            made_.push_back({&part, solid::make(part.body, part.id)});
        }
        for (const std::string& assembly : assemblies()) {
            find_interferences(assembly);
            export_step(assembly);
        }
        measure_engagements();
        return std::move(result_);
    }

  private:
    void say(const std::string& what) const {
        if (progress_) {
            progress_(what);
        }
    }

    std::vector<std::string> assemblies() const {
        std::vector<std::string> names;
        for (const Part& part : request_.parts) {
            if (std::find(names.begin(), names.end(), part.assembly) == names.end()) {
                names.push_back(part.assembly);
            }
        }
        return names;
    }

    void find_interferences(const std::string& assembly) {
        say(assembly + ": looking for solids in one place");
        std::vector<Solid> solids;
        std::vector<const Part*> owners;
        for (const Made& made : made_) {
            if (made.part->assembly != assembly) {
                continue;
            }
            for (const Placement& placement : made.part->placements) {
                solids.push_back(made.solid.placed(placement));
                owners.push_back(made.part);
            }
        }
        for (const solid::Overlap& overlap : solid::overlaps(solids, kOverlapDepth)) {
            result_.interferences.push_back({owners[overlap.first]->id, owners[overlap.second]->id,
                                             overlap.depth, overlap.volume});
        }
    }

    void export_step(const std::string& name) {
        step::Assembly assembly;
        assembly.name = request_.title + ", " + name;
        for (const Made& made : made_) {
            const Part& part = *made.part;
            if (part.assembly == name) {
                assembly.items.push_back({part.id, part.name, part.group, part.finish, made.solid,
                                          volume(part.body), part.placements});
            }
        }
        say(name + ": writing STEP");
        StepFile file{name, step::write(assembly, request_.stamp), {}};
        say(name + ": reading STEP back");
        file.difference = difference(assembly, step::read(file.text));
        result_.files.push_back(std::move(file));
    }

    /// The solid of a part's first instance, in its place.
    Solid standing(const std::string& id) const {
        const auto found = std::find_if(made_.begin(), made_.end(),
                                        [&](const Made& made) { return made.part->id == id; });
        BOWFRONT_EXPECTS(found != made_.end());
        return found->solid.placed(found->part->placements.front());
    }

    void measure_engagements() {
        if (!request_.probes.empty()) {
            say("measuring engagements");
        }
        for (const EngagementProbe& probe : request_.probes) {
            const Solid pane = standing(probe.pane_part);
            const Solid frame = standing(probe.frame_part);
            const bool in_plate = probe.edge == EngagementProbe::Edge::bottom ||
                                  probe.edge == EngagementProbe::Edge::top;
            const double measured = in_plate ? solid::engagement_in_plate(pane, frame)
                                             : solid::engagement_in_post(pane, frame, probe.near);
            result_.engagements.push_back({probe.about, probe.expected, measured});
        }
    }

    const SolidRequest& request_;
    const std::function<void(const std::string&)>& progress_;
    std::vector<Made> made_;
    SolidResult result_;
};

}  // namespace

SolidResult make_solids(const SolidRequest& request,
                        const std::function<void(const std::string&)>& progress) {
    for (const Part& part : request.parts) {
        BOWFRONT_EXPECTS(!part.placements.empty());
    }
    return Shop(request, progress).run();
}

}  // namespace bowfront::module
