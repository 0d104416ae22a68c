#!/usr/bin/env python3
"""What examples/pilot-boat weighs and when it tips, done a second way.

The program makes the patterns of base and top; ezdxf reads them and shapely measures their areas,
centres and the hull of the base, with every arc cut into short straights. Posts are made here from
their definition, densities and sizes written down from their sources, not asked of the program.

    whole_case_sums.py BOWFRONT CASE   asks the program for each figure, ends with 1 if one differs
"""

import json
import math
import subprocess
import sys
import tempfile
from pathlib import Path

import ezdxf
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon

# Black cherry: specific gravity 0.50 at 12 % moisture content, Wood Handbook FPL-GTR-190, Table
# 5-3a; with 12 % of water on top. Cast acrylic: 1190, a sheet maker's data sheet. kg/mm³
CHERRY, ACRYLIC = 0.50 * 1120e-9, 1190e-9
GRAVITY = 9.80665
# The case file's values, mm.
BASE, TOP, CLEAR_HEIGHT, BASE_DEPTH, TOP_DEPTH = 20.0, 24.0, 380.0, 6.0, 12.0
WIDTH, DEPTH, RADIUS, THICKNESS, MARGIN = 520.0, 240.0, 420.0, 3.0, 24.0
POST, POST_DEPTH, GROOVE = 42.0, 15.0, 4.8
# What is asked of besides the file: contents at half the clear height, in the middle of the plan.
CONTENTS = 12.0

# A straight for a piece of an arc stays this near to it, mm: for a plate 1.6 m round that is less
# than a share of 1e-8 of its area.
SAGITTA = 1e-6
MASS_GAP = 1e-6   # kg
PLACE_GAP = 1e-4  # mm
ANGLE_GAP = 1e-4  # deg
FORCE_GAP = 1e-4  # N


class Piece:
    """A mass and its centre."""

    def __init__(self, mass, x, y, z):
        self.mass, self.x, self.y, self.z = mass, x, y, z


def together(pieces):
    mass = sum(piece.mass for piece in pieces)
    return Piece(mass, *(sum(piece.mass * getattr(piece, axis) for piece in pieces) / mass
                         for axis in "xyz"))


def walked(corners):
    """Points round a closed outline of corners with bulges, near enough to every arc."""
    for (x, y, bulge), (to_x, to_y, _) in zip(corners, corners[1:] + corners[:1]):
        yield x, y
        if bulge:
            sweep = 4 * math.atan(bulge)
            radius = math.hypot(to_x - x, to_y - y) / 2 / math.sin(abs(sweep) / 2)
            rise = bulge * 2 / (1 - bulge * bulge) if abs(bulge) < 1 else math.inf
            # From the chord's middle to the centre, to the left of the way round.
            away = 0 if rise is math.inf else 1 / rise
            centre = ((x + to_x - away * (to_y - y)) / 2, (y + to_y + away * (to_x - x)) / 2)
            start = math.atan2(y - centre[1], x - centre[0])
            steps = math.ceil(abs(sweep) / math.sqrt(8 * SAGITTA / radius))
            for i in range(1, steps):
                angle = start + sweep * i / steps
                yield (centre[0] + radius * math.cos(angle), centre[1] + radius * math.sin(angle))


def outlines(path):
    """Closed outlines of a pattern by their layers, as they lie in the file."""
    found = {}
    for entity in ezdxf.readfile(path).modelspace().query("LWPOLYLINE"):
        corners = [tuple(corner) for corner in entity.get_points("xyb")]
        found.setdefault(entity.dxf.layer, []).append(Polygon(walked(corners)))
    return found


def plate(path, thickness, depth, foot, mirrored):
    """A board with grooves in its upper face, or, seen from below, in its lower one.

    A pattern lies in its file where there is room; the board stands behind the back corner points
    and beside the side ones by its margin."""
    layers = outlines(path)
    (board,) = layers["profile-outer"]
    grooves = [shape for name, shapes in layers.items() if name.startswith("recess")
               for shape in shapes]
    if len(grooves) != 4:
        raise SystemExit(f"{path.name} has {len(grooves)} grooves, wanted 4")
    turn = -1 if mirrored else 1
    left, _, _, back = affinity.scale(board, turn, 1, origin=(0, 0)).bounds
    def placed(shape):
        return affinity.translate(affinity.scale(shape, turn, 1, origin=(0, 0)),
                                  -WIDTH / 2 - MARGIN - left, DEPTH + MARGIN - back)
    board = placed(board)
    pieces = [Piece(board.area * thickness * CHERRY, board.centroid.x, board.centroid.y,
                    foot + thickness / 2)]
    middle = foot + depth / 2 if mirrored else foot + thickness - depth / 2
    pieces += [Piece(-groove.area * depth * CHERRY, groove.centroid.x, groove.centroid.y, middle)
               for groove in map(placed, grooves)]
    return together(pieces), board


def strip(at, along, low, high, half):
    """The rectangle about a line through a point, from `low` to `high` along it."""
    across = (-along[1], along[0])
    return Polygon([(at[0] + u * along[0] + n * across[0], at[1] + u * along[1] + n * across[1])
                    for u, n in ((low, -half), (high, -half), (high, half), (low, half))])


def posts():
    """Fitted posts from their definition, in plan: by hand, since a pattern doesn't say where its
    part stands."""
    centre = math.sqrt(RADIUS**2 - (WIDTH / 2)**2)
    for right in (1, -1):
        for front in (True, False):
            corner = (right * WIDTH / 2, 0 if front else DEPTH)
            depthwise = (0, 1 if front else -1)
            tangents = [depthwise]
            # The arc's tangent at the corner, away from it, is square to the radius.
            bowed = (-right * centre / RADIUS, -WIDTH / 2 / RADIUS)
            tangents.append(bowed if front else (-right, 0))
            section = strip(corner, tangents[0], -POST, POST / 2, POST / 2).intersection(
                strip(corner, tangents[1], -POST, POST / 2, POST / 2))
            for along in tangents:
                if along is bowed:
                    # Mouth and bottom lie on the arc, from the corner R·asin(w/2R), less the depth.
                    first = math.asin(WIDTH / 2 / RADIUS)
                    def on_arc(length):
                        angle = first - length / RADIUS
                        return (right * RADIUS * math.sin(angle),
                                centre - RADIUS * math.cos(angle)), angle
                    face = RADIUS * math.asin(POST / 2 / RADIUS)
                    mouth, angle = on_arc(face)
                    bottom, _ = on_arc(face - POST_DEPTH)
                    inward = (right * math.cos(angle), math.sin(angle))
                    reach = ((bottom[0] - mouth[0]) * inward[0]
                             + (bottom[1] - mouth[1]) * inward[1])
                else:
                    mouth = (corner[0] + POST / 2 * along[0], corner[1] + POST / 2 * along[1])
                    inward, reach = (-along[0], -along[1]), POST_DEPTH
                section = section.difference(strip(mouth, inward, -POST, reach, GROOVE / 2))
            yield Piece(section.area * CLEAR_HEIGHT * CHERRY, section.centroid.x,
                        section.centroid.y, CLEAR_HEIGHT / 2)


def flat_pane(pane, x, y):
    size = pane["formed"]
    return Piece(size["developed_length"] * size["height"] * THICKNESS * ACRYLIC, x, y,
                 size["height"] / 2 - BASE_DEPTH)


def curved_pane(pane):
    """A band round an arc, cut into short pieces and added up."""
    size = pane["formed"]
    sweep = size["developed_length"] / RADIUS
    centre = math.sqrt(RADIUS**2 - (WIDTH / 2)**2)
    low, high = RADIUS - THICKNESS / 2, RADIUS + THICKNESS / 2
    steps = 20000
    pieces = []
    for i in range(steps):
        angle = sweep * ((i + 0.5) / steps - 0.5)
        area = (high**2 - low**2) / 2 * sweep / steps
        out = 2 / 3 * (high**3 - low**3) / (high**2 - low**2)
        pieces.append(Piece(area * size["height"] * ACRYLIC, out * math.sin(angle),
                            centre - out * math.cos(angle), size["height"] / 2 - BASE_DEPTH))
    return together(pieces)


def plan_middle():
    """The middle of the glazing line's area, as a polygon."""
    centre = math.sqrt(RADIUS**2 - (WIDTH / 2)**2)
    half = math.asin(WIDTH / 2 / RADIUS)
    steps = 20000
    front = [(RADIUS * math.sin(angle), centre - RADIUS * math.cos(angle))
             for angle in (half * (2 * i / steps - 1) for i in range(steps + 1))]
    return Polygon(front + [(WIDTH / 2, DEPTH), (-WIDTH / 2, DEPTH)]).centroid


def standing(piece, board, state):
    hull = board.convex_hull
    distance = LineString(hull.exterior.coords).distance(Point(piece.x, piece.y))
    height = BASE + CLEAR_HEIGHT + TOP
    left, front, right, back = hull.bounds
    at = f"whole/{state}/"
    yield at + "mass", piece.mass, MASS_GAP
    for axis in "xyz":
        yield at + "centre/" + axis, getattr(piece, axis), PLACE_GAP
    yield at + "tipping/distance", distance, PLACE_GAP
    yield (at + "tipping/angle", math.degrees(math.atan2(distance, piece.z + BASE)), ANGLE_GAP)
    yield at + "tipping/force", piece.mass * GRAVITY * distance / height, FORCE_GAP
    yield at + "edges/left", piece.x - left, PLACE_GAP
    yield at + "edges/right", right - piece.x, PLACE_GAP
    yield at + "edges/front", piece.y - front, PLACE_GAP
    yield at + "edges/back", back - piece.y, PLACE_GAP


def second_way(folder):
    report = json.loads((folder / "report.json").read_text(encoding="utf-8"))
    panes = {pane["side"]: pane for pane in report["panes"]}
    parts = folder / "parts"
    base, board = plate(parts / "base.dxf", BASE, BASE_DEPTH, -BASE, False)
    top, _ = plate(parts / "top.dxf", TOP, TOP_DEPTH, CLEAR_HEIGHT, True)
    frame = [base, top, *posts()]
    glazing = [curved_pane(panes["front"]), flat_pane(panes["left"], -WIDTH / 2, DEPTH / 2),
               flat_pane(panes["right"], WIDTH / 2, DEPTH / 2), flat_pane(panes["back"], 0, DEPTH)]
    yield "whole/groups/frame", sum(piece.mass for piece in frame), MASS_GAP
    yield "whole/groups/glazing", sum(piece.mass for piece in glazing), MASS_GAP
    empty = together(frame + glazing)
    yield from standing(empty, board, "empty")
    middle = plan_middle()
    held = Piece(CONTENTS, middle.x, middle.y, CLEAR_HEIGHT / 2)
    yield from standing(together([empty, held]), board, "loaded")


def figure_of(report, path):
    node = report
    for step in path.split("/"):
        node = node[step]
    return node


def main():
    bowfront, case = sys.argv[1:]
    with tempfile.TemporaryDirectory() as scratch:
        text = Path(case).read_text(encoding="utf-8").rstrip()
        held = Path(scratch) / "case.json"
        contents = f',\n  "contents": {{ "mass": "{CONTENTS} kg" }}\n}}\n'
        held.write_text(text[:-1].rstrip() + contents, encoding="utf-8")
        folder = Path(scratch) / "out"
        subprocess.run([bowfront, "make", held, "-o", folder], check=True, capture_output=True)
        report = json.loads((folder / "report.json").read_text(encoding="utf-8"))
        bad = 0
        for path, wanted, gap in second_way(folder):
            found = figure_of(report, path)
            differs = not abs(found - wanted) <= gap
            bad += differs
            print(f"{'DIFFERS' if differs else 'agrees '} {path}: {found:.6f}, the second way "
                  f"{wanted:.6f}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
