#!/usr/bin/python3
"""The figures of a sweep's table over the pilot boat, all variants at once in numpy: the yardstick
that `bowfront sweep` is measured against, and a second way to its numbers.

    sums_numpy.py                          times a million variants
    sums_numpy.py BOWFRONT CASE            compares 2000 variants with the program's table

Front radius and end clearance are varied. All checks and outlines, which the program also works
out for each variant, are left out here.
"""

import csv
import io
import subprocess
import sys
import time

import numpy as np

WIDTH, DEPTH, CLEAR_HEIGHT = 520.0, 240.0, 380.0
POST, GROOVE, BASE, TOP, POST_DEPTH = 42.0, 4.8, 6.0, 12.0, 15.0
THICKNESS, CUTTER, TOP_CLEARANCE = 3.0, 3.175, 4.5
SHRINK, SPREAD = 0.015, 0.005
OPEN_HEIGHT, DEPTH_6, DEPTH_12, DEPTH_15 = 0.5, 0.1, 0.2, 0.2  # ISO 2768-1, class m
GROOVE_LIMIT, THICKNESS_LIMIT = 0.1, 0.4 + 0.1 * THICKNESS
TANGENTIAL, RADIAL, EXPANSION = 0.00248, 0.00126, 7.2e-5
BUILT, AIR = (20.0, 0.45), [(t, h) for t in (15.0, 28.0) for h in (0.35, 0.60)]
GROWTH = ((0.0, 0.6, 0.8, 1.0), (0.0, 0.002, 0.003, 0.006))
ROWS, LIMITS = (3, 6, 30, 120, 400, 1000, 2000), (0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2)
NODES, WEIGHTS = np.polynomial.legendre.leggauss(12)
# Sums of a few dozen steps on lengths of some 600 mm, in another order than the program's.
SAME = 1e-9
PANES = ("front", "left", "right", "back")
COLUMNS = ("blank/length", "blank/width", "edges/top/engagement/settled",
           "edges/top/engagement/least", "edges/start/engagement/settled",
           "edges/start/engagement/least", "room/vertical/worst", "room/sideways/worst",
           "face_clearance/least")


def limit(size):
    """± of class m for a size."""
    return np.asarray(LIMITS)[np.searchsorted(ROWS, size)]


def moisture(celsius, humidity):
    w = 349 + 1.29 * celsius + 0.0135 * celsius**2
    k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius**2
    k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius**2
    k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius**2
    kh = k * humidity
    return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2)
                       / (1 + k1 * kh + k1 * k2 * kh**2))


def states():
    """Factors in each state, as built first: sheet, timber tangential, timber radial."""
    first = moisture(*BUILT)
    for celsius, humidity in [BUILT, *AIR]:
        more = moisture(celsius, humidity) - first
        sheet = ((1 + EXPANSION * (celsius - BUILT[0])) * (1 + np.interp(humidity, *GROWTH))
                 / (1 + np.interp(BUILT[1], *GROWTH)))
        yield sheet, 1 + TANGENTIAL * more, 1 + RADIAL * more


def stretched(radius, sweep, rise):
    """Length of the front's arc on a plate that has moved by a factor along Y."""
    total = np.zeros_like(radius)
    for node, weight in zip(NODES, WEIGHTS):
        total += weight * np.sqrt((1 + rise**2) / 2 + (1 - rise**2) / 2
                                  * np.cos(sweep / 2 * (1 + node)))
    return radius * sweep / 2 * total


def pane(side, radius, end_clearance):
    """The columns of one pane, an array each."""
    curved = side == "front"
    sweep = 2 * np.arcsin(WIDTH / 2 / radius)
    length_of_side = radius * sweep if curved else WIDTH if side == "back" else DEPTH
    in_posts = 2 * radius * np.arcsin(POST / 2 / radius) if curved else np.full_like(radius, POST)
    opening = length_of_side - in_posts
    length = opening + 2 * (POST_DEPTH - end_clearance)
    height = np.full_like(radius, CLEAR_HEIGHT + BASE + TOP - TOP_CLEARANCE)
    left = 1 - SHRINK if curved else 1.0
    spread = SPREAD if curved else 0.0
    blank_length, blank_width = length / left, height / left
    length_limit = limit(blank_length) * left + blank_length * spread
    height_limit = limit(blank_width) * left + blank_width * spread
    open_limit = limit(opening)
    crown = POST_DEPTH + CUTTER / 2 - GROOVE / 2
    if curved:
        outer = radius + THICKNESS / 2
        bottom = radius * np.arcsin(radius * np.sin(POST_DEPTH / radius) / outer)
        square = ((GROOVE / 2)**2 - (THICKNESS / 2)**2) / (4 * outer * radius)
        rounded = crown + radius * 2 * np.arcsin(np.sqrt(np.maximum(0, square)))
    else:
        bottom, rounded = POST_DEPTH, crown + np.sqrt((GROOVE / 2)**2 - (THICKNESS / 2)**2)
    reach = np.minimum(bottom, rounded) * np.ones_like(radius)
    top_least, side_least, up_least, room_least = [], [], [], []
    for sheet, tangential, radial in states():
        base, top = BASE * radial, TOP * radial
        side_now = (stretched(radius, sweep, tangential) if curved
                    else length_of_side * (1 if side == "back" else tangential))
        widest = side_now - in_posts * min(tangential, radial)  # the posts' rings lie any way
        narrowest = side_now - in_posts * max(tangential, radial)
        top_least.append(height * sheet - CLEAR_HEIGHT - base)
        side_least.append(length * sheet - widest - POST_DEPTH * tangential)
        up_least.append(CLEAR_HEIGHT + base + top - height * sheet)
        room_least.append(narrowest + 2 * reach * tangential - length * sheet)
    # The deepest that an end reaches, for the groove's width that a curved pane takes there.
    deepest = reach * max(tangential for _, tangential, _ in states()) + DEPTH_15
    thickest = (THICKNESS + THICKNESS_LIMIT) / (left - spread)**2
    turned = deepest / radius
    taken = (radius * (1 - np.cos(turned)) + thickest / 2 * (1 + np.cos(turned)) if curved
             else thickest * np.ones_like(radius))
    narrow = GROOVE - GROOVE_LIMIT
    return {
        "blank/length": blank_length, "blank/width": blank_width,
        "edges/top/engagement/settled": height - CLEAR_HEIGHT - BASE,
        "edges/top/engagement/least":
            np.minimum.reduce(top_least) - height_limit - OPEN_HEIGHT - DEPTH_6,
        "edges/start/engagement/settled": length - opening - POST_DEPTH,
        "edges/start/engagement/least":
            np.minimum.reduce(side_least) - length_limit - open_limit - DEPTH_15,
        "room/vertical/worst":
            np.minimum.reduce(up_least) - height_limit - OPEN_HEIGHT - DEPTH_6 - DEPTH_12,
        "room/sideways/worst":
            np.minimum.reduce(room_least) - length_limit - open_limit - 2 * DEPTH_15,
        "face_clearance/least": np.minimum(narrow - taken, narrow - thickest)}


def grid(radii, clearances):
    radius, clearance = np.meshgrid(radii, clearances, indexing="ij")
    return radius.ravel(), clearance.ravel()


def compare(program, case):
    table = subprocess.run(
        [program, "sweep", case, "--vary", "/plan/front/radius=300:498:2",
         "--vary", "/fit/end_clearance=1:4.8:0.2"], check=True, capture_output=True, text=True)
    rows = list(csv.DictReader(io.StringIO(table.stdout, newline="")))
    radius, clearance = grid(np.arange(300, 499, 2.0), np.arange(20) * 0.2 + 1)
    worst = 0.0
    for side in PANES:
        for path, figures in pane(side, radius, clearance).items():
            theirs = np.array([float(row[f"panes/{side}/{path}"]) for row in rows])
            off = np.abs(theirs - figures).max()
            worst = max(worst, off)
            if off > SAME:
                print(f"panes/{side}/{path} differs by up to {off:.3g} mm")
    print(f"{len(rows)} variants, {len(PANES) * len(COLUMNS)} figures each: "
          f"largest difference {worst:.2g} mm")
    return 0 if worst <= SAME else 1


def measure():
    radius, clearance = grid(np.linspace(300, 500, 1000), np.linspace(1, 5, 1000))
    start = time.process_time()
    for side in PANES:
        pane(side, radius, clearance)
    taken = time.process_time() - start
    print(f"{radius.size} variants in {taken:.2f} s of processor time, "
          f"{taken / radius.size * 1e6:.3f} us each")
    return 0


if __name__ == "__main__":
    sys.exit(compare(*sys.argv[1:]) if len(sys.argv) == 3 else measure())
