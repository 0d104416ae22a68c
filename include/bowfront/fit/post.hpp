#pragma once
/// \file
/// Posts on the corner points: their outline, and where a glazing line leaves them.

#include <vector>

#include "bowfront/figure/book.hpp"
#include "bowfront/geom/contour.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::fit {

/// The two directions in which glazing lines leave a corner point, rad from X: along the tangent
/// of the next side (which starts there) and of the previous side (which ends there).
struct CornerDirections {
    double next = 0;
    double previous = 0;
    bool next_curved = false;  ///< that side is an arc
    bool previous_curved = false;
};

/// Which of the post's sizes a flat face of it stands off by.
enum class FaceSize { half_width, half_depth };

/// A flat face of a post: all points p with (p − corner)·direction(angle) ≤ the size.
struct PostFace {
    double angle = 0;  ///< of the outward normal, rad from X
    FaceSize size = FaceSize::half_width;
};

/// The faces that bound a post; empty for a round one.
/// Fitted: for both sides, u ≤ width/2 along the tangent and ±depth/2 across it. Square: the box
/// square to the straight side; of two alike, to the one nearer square to X.
[[nodiscard]] std::vector<PostFace> post_faces(PostSection section, CornerDirections directions);

/// The post's outline in plan, counter-clockwise.
/// @throws ContractError where the faces leave nothing
[[nodiscard]] Contour post_outline(const Post& post, CornerDirections directions, Point corner);

/// A glazing line as it leaves a corner point, seen along its tangent.
template <class N>
struct LeavingLine {
    double angle = 0;       ///< of the tangent, away from the corner, rad from X
    bool curved = false;
    bool turns_left = false;  ///< curved: to which side, going away from the corner
    N radius{};             ///< curved, > 0
    std::string_view path;    ///< of the figure: `front/start`
    std::string_view symbol;  ///< of the figure: `x_s`
};

/// Length of glazing line inside the post, from the corner point to where it leaves, mm.
/// Source:  geometry: a straight meets a face at h/cos β; an arc at R·(δ + asin(h/R − sin δ)), where
///          β, δ are the angles between tangent and face normal; a round post's circle at
///          2R·asin(w/4R)
/// Example: fitted post 42 mm, R 420 mm -> 21.008760 mm
/// @throws ContractError where the line never leaves the post
template <class N>
[[nodiscard]] N length_in_post(const Post& post, const std::vector<PostFace>& faces,
                               const LeavingLine<N>& line, Book<N>& book);

extern template double length_in_post(const Post&, const std::vector<PostFace>&,
                                      const LeavingLine<double>&, Book<double>&);
extern template Traced length_in_post(const Post&, const std::vector<PostFace>&,
                                      const LeavingLine<Traced>&, Book<Traced>&);

}  // namespace bowfront::fit
