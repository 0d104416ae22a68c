#include "bowfront/pipeline/make.hpp"

#include <cmath>
#include <set>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/io/read_measured.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "bowfront/pipeline/output_folder.hpp"
#include "bowfront/report/measuring_card.hpp"
#include "bowfront/report/report.hpp"
#include "digest.hpp"
#include "parts.hpp"

namespace bowfront {
namespace {

using Progress = std::function<void(const std::string&)>;

// How far an engagement measured on the solids may be off the sums, mm: the kernel's own precision
// is 1e-7 mm.
constexpr double kMeasured = 1e-6;

std::string title_of(const Design& design) {
    std::string title = design.c().name;
    if (design.verdict() == Status::fail) {
        title += " (" + std::string(report::kFailedMark) + ")";
    }
    return title;
}

// The engagements that the solids must show: every edge that stands in the frame at all.
std::vector<EngagementProbe> probes(const Design& design) {
    std::vector<EngagementProbe> list;
    for (const auto& pane : design.sums.panes) {
        const std::string side(side_text(pane.side));
        const auto& line = design.layout.line.sides[index(pane.side)];
        const pattern::PaneSpan span = pattern::pane_span(pane);
        const auto add = [&](PaneEdge edge, EngagementProbe::Edge kind, const std::string& frame,
                             Point near) {
            const double expected = pane.edge(edge).engagement;
            if (expected > 0) {
                list.push_back({side + "/" + std::string(edge_text(edge)), "pane-" + side, frame,
                                kind, near, expected});
            }
        };
        add(PaneEdge::bottom, EngagementProbe::Edge::bottom,
            pattern::plate_piece("base", design.layout.base, pane.side), {});
        add(PaneEdge::top, EngagementProbe::Edge::top,
            pattern::plate_piece("top", design.layout.top, pane.side), {});
        // A rabbet takes the face away that an end's engagement is measured from.
        if (design.c().frame.post.hold.value == Hold::rabbet) {
            continue;
        }
        add(PaneEdge::start, EngagementProbe::Edge::start,
            "post-" + design.layout.post(pane.side, PaneEdge::start).name,
            fit::point_at(line, span.start));
        add(PaneEdge::end, EngagementProbe::Edge::end,
            "post-" + design.layout.post(pane.side, PaneEdge::end).name,
            fit::point_at(line, span.end));
    }
    return list;
}

void prove(const SolidResult& result) {
    for (const MeasuredEngagement& engagement : result.engagements) {
        if (!(std::abs(engagement.measured - engagement.expected) <= kMeasured)) {
            throw KernelError("engagement", engagement.about,
                              "measured " + number_text(engagement.measured) + " mm, by the sums " +
                                  number_text(engagement.expected) + " mm");
        }
    }
    for (const StepFile& file : result.files) {
        if (!file.difference.empty()) {
            throw KernelError("read-back", file.assembly + ".step", file.difference);
        }
    }
}

void add_interferences(const SolidResult& result, std::vector<Finding>& findings) {
    for (const Interference& pair : result.interferences) {
        Finding finding;
        finding.code = Code::proof_interference;
        finding.id = "interference";
        finding.about = pair.first + "+" + pair.second;
        finding.state = "solids as they stand";
        finding.value = finding.worst = pair.depth;
        finding.limit = kOverlapDepth;
        finding.bound = Bound::at_most;
        finding.unit = "mm";
        finding.status = Status::fail;
        finding.advice = "two parts stand in one place: see the failed checks of either";
        findings.push_back(std::move(finding));
    }
}

// Patterns that a cutter could not cut: a groove's end that just touches another, say.
// Returns the ids of their parts.
std::set<std::string> add_unsound_patterns(const std::vector<Part>& parts,
                                           std::vector<Finding>& findings) {
    std::set<std::string> unsound;
    for (const Part& part : parts) {
        if (const auto fault = dxf::fault_of(part.pattern)) {
            unsound.insert(part.id);
            Finding finding;
            finding.code = Code::proof_pattern;
            finding.id = "pattern";
            finding.about = part.id;
            finding.state = *fault;
            finding.value = finding.worst = 1;
            finding.bound = Bound::at_most;
            finding.status = Status::fail;
            finding.advice = "move the grooves of this part apart, or let them meet in full";
            findings.push_back(std::move(finding));
        }
    }
    return unsound;
}

class Maker {
  public:
    Maker(const Design& design, const MakeOptions& options, const Progress& progress)
        : design_(design), options_(options), progress_(progress), folder_(options.folder) {}

    Made run(const SolidShop& shop) {
        parts_ = all_parts(design_);
        const SolidRequest request{title_of(design_), parts_, probes(design_), options_.stamp};
        const SolidResult solids = shop(request, progress_);
        prove(solids);
        Made made;
        made.findings = design_.findings;
        add_interferences(solids, made.findings);
        unsound_ = add_unsound_patterns(parts_, made.findings);
        for (const StepFile& file : solids.files) {
            write(file.assembly + ".step", file.text);
        }
        report::Content content{design_.c(), design_.read.assumed, design_.sums, design_.chance,
                                design_.spreads, design_.shop, made.findings, design_.paths,
                                design_.whole, design_.cost, design_.shelves,
                                design_.build, design_.timber};
        if (design_.access) {
            content.opened.emplace(
                report::OpenedEntry{design_.access->sums, design_.access->weight});
        }
        for (const MeasuredEngagement& engagement : solids.engagements) {
            content.measured.push_back(
                {engagement.about, engagement.expected, engagement.measured});
        }
        const bool failed = made.verdict() == Status::fail;
        content.despite_failures = failed && options_.despite_failures;
        write_patterns(failed, content);
        write_card(failed);
        content.files = files_;
        made.report_json = report::to_json(content);
        made.report_text = report::to_text(content);
        folder_.write("report.json", made.report_json);
        progress_("moving the output into its place");
        folder_.commit();
        return made;
    }

  private:
    // Only what was read back and found equal is written; the folder reads its bytes back once more.
    void write(const std::string& path, const std::string& bytes) {
        folder_.write(path, bytes);
        files_.push_back({path, sha256(bytes), "pass"});
    }

    // Patterns and cut list: what is cut from. Withheld where a check fails.
    void write_patterns(bool failed, report::Content& content) {
        const bool withheld = failed && !options_.despite_failures;
        for (const Part& part : parts_) {
            report::PartEntry entry{&part, {}};
            if (!withheld && unsound_.count(part.id) == 0) {
                progress_("pattern " + part.id);
                entry.file = "parts/" + part.id + ".dxf";
                write_pattern(part, entry.file, failed);
            }
            content.parts.push_back(entry);
        }
        if (!withheld) {
            write("cutlist.csv", report::cut_list(content));
        }
    }

    // Proven by its reader: a file of measurements in which nothing is measured yet.
    void write_card(bool failed) {
        const std::string path = "measuring-card.json";
        const std::string_view mark = failed ? report::kFailedMark : std::string_view();
        const std::string card = report::measuring_card(design_.c(), design_.sums, mark);
        for (const MeasuredSide& side : io::read_measured(card, path, design_.c()).value.sides) {
            const MeasuredPane& pane = side.pane;
            const MeasuredGrooves& grooves = side.grooves;
            if (pane.blank_length || pane.blank_width || pane.length || pane.height || pane.chord ||
                pane.rise || !pane.bends.empty() || !pane.thickness.empty() || side.opening.length ||
                side.opening.height || !grooves.base.empty() || !grooves.top.empty() ||
                !grooves.start.empty() || !grooves.end.empty() || !grooves.width.empty()) {
                throw ContractError("read-back of " + path + ": a size that nobody measured");
            }
        }
        write(path, card);
        write("measuring-card.html", report::measuring_page(design_.c(), design_.sums, mark));
    }

    void write_pattern(const Part& part, const std::string& path, bool failed) {
        std::string title = part.name + ", " + std::to_string(part.count()) + " x " +
                            part.material + " " + rounded_text(part.pattern.thickness, 2) + " mm";
        if (failed) {
            title += ", " + std::string(report::kFailedMark);
        }
        const std::string text = dxf::write(part.pattern, title, options_.stamp, options_.dxf);
        const std::string difference = dxf::difference(dxf::read(text, path), part.pattern);
        if (!difference.empty()) {
            throw ContractError("read-back of " + path + ": " + difference);
        }
        write(path, text);
    }

    const Design& design_;
    const MakeOptions& options_;
    const Progress& progress_;
    OutputFolder folder_;
    std::vector<Part> parts_;
    std::set<std::string> unsound_;  // parts whose pattern can't be written
    std::vector<report::FileEntry> files_;
};

}  // namespace

Made make(const Design& design, const MakeOptions& options, const SolidShop& shop,
          const Progress& progress) {
    return Maker(design, options, progress).run(shop);
}

}  // namespace bowfront
