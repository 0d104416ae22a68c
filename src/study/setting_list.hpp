#pragma once
/// \file
/// The settings of a case file by what they are, entered in a list one by one.

#include <string>
#include <vector>

#include "setting.hpp"

namespace bowfront::study {

/// Collects settings that a finding may depend on; one that the case does not have is left out.
class SettingList {
  public:
    SettingList(const Case& c, const Finding& finding, const CaseFile& file);

    [[nodiscard]] const Case& c() const noexcept { return c_; }
    /// The pane that the finding is about; null where it is about none.
    [[nodiscard]] const PaneSpec* pane() const noexcept { return pane_; }
    [[nodiscard]] const std::string& about() const noexcept { return about_; }
    [[nodiscard]] bool inches() const noexcept { return c_.units == LengthUnit::inch; }
    /// Whether the maker gives the pane's size, or the blank that it comes of.
    [[nodiscard]] bool own_height() const noexcept;
    [[nodiscard]] bool own_length() const noexcept;
    [[nodiscard]] std::vector<Setting> take() { return std::move(list_); }

    void number(const NumberPlace& place);
    void word(WordPlace place);
    void upright_play();  ///< clearance over the pane, its own height, its blank's width
    void end_play();      ///< clearance at its ends, its own length, its blank's length
    void blank(const std::string& key);        ///< a blank that is cut: `length` or `width`
    void method();                             ///< how the blank is cut
    void trim();
    void bend();
    void depth(const std::string& key);        ///< of a groove: `base`, `top` or `post`
    void groove_width();
    void sheet_thickness();
    void shelf_thickness(const ShelfSpec& shelf);
    void shelf_support(const ShelfSpec& shelf);
    void cutter();
    void plate_thickness(const std::string& plate);
    void margin(const std::string& plate);
    void post(const std::string& key);         ///< `width` or `depth`
    void section();
    void loading();
    void hold();
    void sawn();                               ///< of base and top
    void post_sawn();
    void clear_height();
    void own_side();                           ///< the plan along the pane
    void own_chained_side();
    void front_arc();
    void oven_set();
    void larger(const std::string& pointer, const std::string& name);  ///< bought, not made
    void tolerance(const std::string& key, const std::string& name);

  private:
    void share(const std::string& pointer, const std::string& name, Touches touches, double share,
               double steps);
    void play(const std::string& key, const std::string& name);
    void own(const std::string& key);
    [[nodiscard]] std::string side() const { return std::string(side_text(pane_->side)); }

    const Case& c_;
    const CaseFile& file_;
    std::string about_;
    const PaneSpec* pane_ = nullptr;
    std::vector<Setting> list_;
};

}  // namespace bowfront::study
