#pragma once
/// \file
/// Every number of a case, one after the other.

#include "bowfront/model/case.hpp"

namespace bowfront {

/// Calls `visit(double&, Origin&)` for every number of a case that has an origin of its own, always
/// in the same order for cases with the same panes, sheets and shelves. A tolerance counts by its
/// length, which is 0 where it goes by a class. Stock has no origins and is left out; so are prices
/// and access, which nothing that can be varied goes by.
/// @param c  a Case, or a const Case: the numbers are then const, too
template <class AnyCase, class Visit>
void visit_values(AnyCase& c, const Visit& visit) {
    const auto one = [&](auto& sourced) { visit(sourced.value, sourced.origin); };
    const auto any = [&](auto& optional) {
        if (optional) {
            one(*optional);
        }
    };
    const auto each = [&](auto&... sourced) { (one(sourced), ...); };
    const auto tolerance = [&](auto& sourced) { visit(sourced.value.value, sourced.origin); };
    auto& plan = c.plan;
    each(plan.width, plan.depth, plan.side);
    if (plan.front) {
        one(plan.front->value);
    }
    for (auto& corner : plan.corners) {
        each(corner[0], corner[1]);
    }
    for (auto& side : plan.chain) {
        for (auto& piece : side.pieces) {
            any(piece.straight);
            for (auto& measure : piece.arc) {
                one(measure.value);
            }
            if (piece.ellipse) {
                each(piece.ellipse->semi_axes[0], piece.ellipse->semi_axes[1], piece.ellipse->from,
                     piece.ellipse->to);
            }
            if (piece.curve) {
                for (auto& point : piece.curve->through) {
                    each(point[0], point[1]);
                }
            }
            if (piece.is_free()) {
                one(piece.chord_error);
            }
        }
        one(side.turn);
    }
    auto& frame = c.frame;
    each(frame.clear_height, frame.base.thickness, frame.base.margin, frame.top.thickness,
         frame.top.margin, frame.post.width, frame.post.depth, frame.groove.width,
         frame.groove.base_depth, frame.groove.top_depth, frame.groove.post_depth,
         frame.bead_width);
    any(frame.post.joint_size);
    for (auto* const build : {&frame.base.build, &frame.top.build}) {
        each(build->inset, build->board_width, build->run_out);
    }
    for (auto& pane : c.panes) {
        each(pane.thickness, pane.blank.trim);
        any(pane.blank.length);
        any(pane.blank.width);
        any(pane.length);
        any(pane.height);
    }
    for (auto& [key, sheet] : c.sheets) {
        each(sheet.shrink_along, sheet.shrink_across, sheet.spread_along, sheet.spread_across,
             sheet.springback, sheet.springback_spread);
    }
    for (auto& shelf : c.shelves) {
        each(shelf.height, shelf.thickness, shelf.clearance, shelf.load);
    }
    each(c.fit.end_clearance, c.fit.top_clearance, c.fit.loading_clearance);
    any(c.fit.least_engagement);
    tolerance(c.tolerance.cut);
    tolerance(c.tolerance.groove_depth);
    tolerance(c.tolerance.groove_width);
    tolerance(c.tolerance.opening);
    if (c.tolerance.sheet_thickness) {
        tolerance(*c.tolerance.sheet_thickness);
    }
    auto& form = c.form;
    each(c.webs.web, c.webs.cheek, c.webs.floor, form.skin, form.cover, form.overrun, form.overhang,
         form.rib_thickness, form.rib_depth, form.rib_spacing, form.foot, form.joint_allowance,
         form.fence_depth, form.fence_clearance);
    if (c.oven) {
        each(c.oven->inside[0], c.oven->inside[1], c.oven->inside[2], c.oven->accuracy);
        any(c.oven->set);
    }
    auto& service = c.service;
    each(service.built_temperature, service.built_humidity, service.temperature[0],
         service.temperature[1], service.humidity[0], service.humidity[1], service.push,
         c.cutter.diameter, c.cutter.spacing, c.shop.step, c.shop.allowance.length,
         c.shop.allowance.width, c.shop.allowance.thickness);
    if (c.contents) {
        one(c.contents->mass);
        any(c.contents->height);
        any(c.contents->x);
        any(c.contents->y);
    }
}

}  // namespace bowfront
