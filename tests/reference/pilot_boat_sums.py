#!/usr/bin/env python3
"""The sums of examples/pilot-boat, done a second way.

Written from the trade's definitions, not from the program: where the program has a closed formula,
this looks for the answer by halving an interval or by walking the outline.

    pilot_boat_sums.py                 prints the table
    pilot_boat_sums.py BOWFRONT CASE   asks the program for each figure, ends with 1 where one differs
"""

import math
import re
import subprocess
import sys

# The case file's values, mm.
WIDTH, RADIUS, CLEAR_HEIGHT = 520.0, 420.0, 380.0
POST, GROOVE, BASE_DEPTH, TOP_DEPTH, POST_DEPTH = 42.0, 4.8, 6.0, 12.0, 15.0
THICKNESS, CUTTER = 3.0, 3.175
END_CLEARANCE, TOP_CLEARANCE = 3.0, 4.5
SKIN, COVER, OVERRUN, OVERHANG = 3.0, 0.6, 60.0, 20.0
RIB, RIB_SPACING = 18.0, 180.0
# The library's: common practice, no source.
SHRINK, SPREAD = 0.015, 0.005
# Limits of ISO 2768-1, class m, read from its table 1 for these sizes.
CUT_LENGTH, CUT_WIDTH = 0.8, 0.5          # blank of 400..1000 and of 120..400
OPEN_LENGTH, OPEN_HEIGHT = 0.8, 0.5
DEPTH_6, DEPTH_12, DEPTH_15 = 0.1, 0.2, 0.2
GROOVE_LIMIT = 0.1
THICKNESS_LIMIT = 0.4 + 0.1 * THICKNESS   # cast sheet, ISO 7823-1


# Built at 20 C and 45 %; lives in 15 to 28 C, 35 to 60 %.
BUILT, AIR = (20.0, 0.45), [(t, h) for t in (15.0, 28.0) for h in (0.35, 0.60)]
# Black cherry per 1 % of moisture, Wood Handbook FPL-GTR-190, Table 13-5; acrylic per K, a sheet
# maker's glazing guide; growth of extruded acrylic with humidity, a maker's data sheet.
RADIAL, TANGENTIAL, EXPANSION = 0.00126, 0.00248, 7.2e-5
GROWTH = [(0.0, 0.0), (0.6, 0.002), (0.8, 0.003), (1.0, 0.006)]


def moisture(celsius, humidity):
    """Equilibrium moisture content, %: Wood Handbook FPL-GTR-282, equation 4-5."""
    w = 349 + 1.29 * celsius + 0.0135 * celsius**2
    k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius**2
    k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius**2
    k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius**2
    kh = k * humidity
    return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2)
                       / (1 + k1 * kh + k1 * k2 * kh**2))


def growth(humidity):
    for (h0, g0), (h1, g1) in zip(GROWTH, GROWTH[1:]):
        if humidity <= h1:
            return g0 + (g1 - g0) * (humidity - h0) / (h1 - h0)
    raise ValueError(humidity)


def states():
    """Factors in each state, as built first: sheet, timber tangential, timber radial."""
    for celsius, humidity in [BUILT] + AIR:
        more = moisture(celsius, humidity) - moisture(*BUILT)
        sheet = ((1 + EXPANSION * (celsius - BUILT[0])) * (1 + growth(humidity))
                 / (1 + growth(BUILT[1])))
        yield sheet, 1 + TANGENTIAL * more, 1 + RADIAL * more


def root(function, low, high):
    """Where an increasing function passes through 0."""
    for _ in range(200):
        middle = (low + high) / 2
        if function(middle) > 0:
            high = middle
        else:
            low = middle
    return (low + high) / 2


def on_front(length):
    """Point on the front's glazing line, at a length from the left corner; corner at (-260, 0)."""
    half = math.atan2(WIDTH / 2, math.sqrt(RADIUS**2 - WIDTH**2 / 4))
    angle = -math.pi / 2 - half + length / RADIUS
    centre_y = math.sqrt(RADIUS**2 - WIDTH**2 / 4)
    return RADIUS * math.cos(angle), centre_y + RADIUS * math.sin(angle)


def out_of_post(point):
    """How far a point lies outside the fitted post at the front left corner (negative inside)."""
    half = math.atan2(WIDTH / 2, math.sqrt(RADIUS**2 - WIDTH**2 / 4))
    worst = -math.inf
    # Along the front's tangent at the corner, and along the left side (towards +Y).
    for ux, uy in ((math.cos(half), -math.sin(half)), (0.0, 1.0)):
        dx, dy = point[0] + WIDTH / 2, point[1]
        u, n = dx * ux + dy * uy, -dx * uy + dy * ux
        worst = max(worst, u - POST / 2, abs(n) - POST / 2)
    return worst


def chord_sum(function, length, steps=200000):
    """Length of a curve by adding chords, extrapolated to none (error of the chords is 1/n²)."""
    def total(n):
        points = [function(length * i / n) for i in range(n + 1)]
        return math.fsum(math.dist(points[i], points[i + 1]) for i in range(n))
    return (4 * total(steps) - total(steps // 2)) / 3


def figures():
    table = {}
    half = root(lambda a: RADIUS * math.sin(a) - WIDTH / 2, 0, math.pi / 2)
    side = 2 * half * RADIUS
    table["plan/front/length"] = side
    table["plan/front/rise"] = -on_front(side / 2)[1]
    in_post = root(lambda s: out_of_post(on_front(s)), 1, 100)
    opening = side - 2 * in_post
    table["panes/front/start/in_post"] = in_post
    table["panes/front/opening/length"] = opening
    length = opening + 2 * (POST_DEPTH - END_CLEARANCE)
    height = CLEAR_HEIGHT + BASE_DEPTH + TOP_DEPTH - TOP_CLEARANCE
    table["panes/front/formed/developed_length"] = length
    table["panes/front/formed/height"] = height
    # The blank loses a share of itself: found by asking which blank comes to the size.
    blank = root(lambda b: b - SHRINK * b - length, 0, 2 * length)
    width = root(lambda b: b - SHRINK * b - height, 0, 2 * height)
    table["panes/front/blank/length"] = blank
    table["panes/front/blank/width"] = width
    # Volume stays: blank times its thickness is pane times its own.
    formed = blank * width * THICKNESS / (length * height)
    table["panes/front/formed/thickness"] = formed
    thickest = (THICKNESS + THICKNESS_LIMIT) / (1 - SHRINK - SPREAD) ** 2
    table["panes/front/formed/inside_radius"] = RADIUS - THICKNESS / 2
    sweep = length / RADIUS
    table["panes/front/formed/sweep"] = sweep
    start, end = (side - length) / 2, (side + length) / 2
    a, b = on_front(start), on_front(end)
    table["panes/front/formed/chord"] = math.dist(a, b)
    table["panes/front/formed/rise"] = (a[1] + b[1]) / 2 - on_front(side / 2)[1]

    # The pane's square end in the post's straight groove: its outer corner meets the bottom, or in
    # base and top the groove's round end, first.
    def corner(reach):
        angle = reach / RADIUS
        return ((RADIUS + THICKNESS / 2) * math.sin(angle),
                RADIUS - (RADIUS + THICKNESS / 2) * math.cos(angle))
    bottom = root(lambda r: corner(r)[0] - RADIUS * math.sin(POST_DEPTH / RADIUS), 0, 30)
    at = (POST_DEPTH + CUTTER / 2 - GROOVE / 2) / RADIUS
    crown = (RADIUS * math.sin(at), RADIUS - RADIUS * math.cos(at))
    rounded = root(lambda r: math.dist(corner(r), crown) - GROOVE / 2, at * RADIUS, 30)
    reach = min(bottom, rounded)
    table["panes/front/reach"] = reach
    table["panes/front/room/sideways/nominal"] = opening + 2 * reach - length
    table["panes/front/room/vertical/nominal"] = TOP_CLEARANCE

    length_limit = CUT_LENGTH * (1 - SHRINK) + blank * SPREAD
    height_limit = CUT_WIDTH * (1 - SHRINK) + width * SPREAD
    table["panes/front/tolerance/length"] = length_limit
    table["panes/front/tolerance/height"] = height_limit

    # The plates' grain runs along the width: only their depth moves, and the front's arc with it.
    def moved_opening(timber):
        moved = chord_sum(lambda l: (on_front(l)[0], on_front(l)[1] * timber), side)
        return moved - (side - opening) * timber  # flat-sawn plates and posts: both tangential
    air = [(sheet, timber, radial, moved_opening(timber)) for sheet, timber, radial in states()]
    table["panes/front/room/sideways/worst"] = min(
        o + 2 * reach * timber - length * sheet for sheet, timber, _, o in air
    ) - length_limit - OPEN_LENGTH - 2 * DEPTH_15
    table["panes/front/room/vertical/worst"] = min(
        CLEAR_HEIGHT + (BASE_DEPTH + TOP_DEPTH) * radial - height * sheet
        for sheet, _, radial, _ in air) - height_limit - OPEN_HEIGHT - DEPTH_6 - DEPTH_12
    edge = "panes/front/edges/"
    table[edge + "bottom/engagement/nominal"] = BASE_DEPTH
    table[edge + "bottom/engagement/least"] = (
        BASE_DEPTH * min(radial for _, _, radial, _ in air) - DEPTH_6)
    table[edge + "top/engagement/nominal"] = TOP_DEPTH - TOP_CLEARANCE
    table[edge + "top/engagement/least"] = min(
        height * sheet - CLEAR_HEIGHT - BASE_DEPTH * radial for sheet, _, radial, _ in air
    ) - height_limit - OPEN_HEIGHT - DEPTH_6
    table[edge + "top/edge_clearance/nominal"] = TOP_CLEARANCE
    table[edge + "start/engagement/nominal"] = POST_DEPTH - END_CLEARANCE
    table[edge + "start/engagement/settled"] = POST_DEPTH - 2 * END_CLEARANCE
    table[edge + "start/engagement/least"] = min(
        length * sheet - o - POST_DEPTH * timber for sheet, timber, _, o in air
    ) - length_limit - OPEN_LENGTH - DEPTH_15
    table[edge + "end/engagement/nominal"] = POST_DEPTH - END_CLEARANCE

    # Across a straight groove the pane takes from its outer face at the mouth to the inner corner
    # of its end.
    def across(thickness, depth):
        angle = depth / RADIUS
        inner = RADIUS - (RADIUS - thickness / 2) * math.cos(angle)
        return inner + thickness / 2
    table[edge + "start/face_clearance/nominal"] = GROOVE - across(formed, POST_DEPTH
                                                                   - END_CLEARANCE)
    table[edge + "start/face_clearance/least"] = (GROOVE - GROOVE_LIMIT
                                                  - across(thickest, reach * max(timber for _, timber, _, _
                                                                         in air) + DEPTH_15))
    table[edge + "top/face_clearance/nominal"] = GROOVE - formed
    table[edge + "top/face_clearance/least"] = GROOVE - GROOVE_LIMIT - thickest

    inside = RADIUS - THICKNESS / 2
    rib_radius = inside - COVER - SKIN
    arc = inside * sweep + 2 * OVERRUN
    form_width = width + 2 * OVERHANG
    table["forms/front/face_radius"] = inside
    table["forms/front/rib_radius"] = rib_radius
    table["forms/front/rib_sweep"] = arc / inside
    table["forms/front/rib_count"] = next(
        n for n in range(2, 100) if (form_width - RIB) / (n - 1) <= RIB_SPACING)
    table["forms/front/skin/width"] = form_width
    table["forms/front/skin/length"] = (rib_radius + SKIN / 2) * arc / inside
    table["forms/front/fence_gap"] = width * (1 - SHRINK + SPREAD) + 1
    table["heating/front/shop_rule_min"] = THICKNESS / 25.4 * 100
    assert abs(chord_sum(on_front, side) - side) < 1e-6
    return table


# The program prints six decimals; angles nine, in rad.
PRINTED = {"": 0.5e-6 + 1e-9, "rad": 0.5e-9 + 1e-12}


def explained(program, case, path):
    """The value in the first line of an explanation, and its unit where that is rad."""
    done = subprocess.run([program, "explain", case, path], capture_output=True, text=True,
                          check=True)
    first = done.stdout.splitlines()[0]
    found = re.search(r"= (-?[\d.]+) rad", first)
    if found:
        return float(found[1]), "rad"
    return float(re.search(r"= (-?[\d.]+)", first)[1]), ""


def compare(program, case):
    differing = 0
    for path, expected in figures().items():
        value, unit = explained(program, case, path)
        if not abs(value - expected) <= PRINTED[unit]:
            print(f"{path}: {value} by the program, {expected} by this script", file=sys.stderr)
            differing += 1
    print(f"{len(figures())} figures compared, {differing} differ")
    return 1 if differing else 0


def main(arguments):
    if len(arguments) == 2:
        return compare(*arguments)
    for path, value in figures().items():
        print(f"{path:<48} {value!r}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
