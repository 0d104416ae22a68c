"""The sums of a case done a second way, from the words of the trade and not from the program.

Where the program has a closed formula for a corner, this walks along the glazing line and halves
intervals; a pane is a band of points, a post a set of conditions. Lengths in mm, angles in rad.
"""

import math
from fractions import Fraction

INCH = 25.4
SIDES = ("front", "right", "back", "left")  # the way round

OVERHANG = 20  # where the case does not say

# Of the library: shrink along and across, oven, limit of the face, temperature of the core.
LIBRARY = {
    "cast-acrylic": {"shrink": (0.015, 0.015), "set": 165, "face": 177, "core": 150},
    "extruded-acrylic": {"shrink": (0.03, -0.005), "set": 152, "face": 160, "core": 145},
}


def length(value, units="mm"):
    """A length as a case file writes it."""
    if isinstance(value, (int, float)):
        return value * (INCH if units == "in" else 1)
    total = Fraction(0)
    words = value.replace('"', " in").split()
    scale = {"in": Fraction("25.4"), "ft": 12 * Fraction("25.4"), "mm": Fraction(1)}
    number = Fraction(0)
    for word in words:
        if word in scale:
            total += number * scale[word]
            number = Fraction(0)
        else:
            number += Fraction(word)
    return float(total)


def ratio(text):
    return float(text.split()[0]) / 100


def switch(holds, low, high):
    """Where a condition that holds at `low` and not at `high` ceases to."""
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return (low + high) / 2


class Straight:
    """A side of the glazing line from one corner point to another."""

    curved = False

    def __init__(self, start, end):
        self.length = math.dist(start, end)
        self.start, self.end = start, end
        self.way = [(b - a) / self.length for a, b in zip(start, end)]

    def at(self, s):
        return [a + s * w for a, w in zip(self.start, self.way)]

    def tangent(self, _):
        return self.way


class Arc:
    """The front: from the left corner to the right one, bowing towards −Y."""

    curved = True

    def __init__(self, chord, radius, sweep):
        self.radius, self.sweep = radius, sweep
        self.length = radius * sweep
        self.centre = (0, radius * math.cos(sweep / 2))
        self.chord = chord

    def at(self, s):
        angle = s / self.radius - self.sweep / 2  # 0 in the middle, to the right positive
        return [self.radius * math.sin(angle), self.centre[1] - self.radius * math.cos(angle)]

    def tangent(self, s):
        angle = s / self.radius - self.sweep / 2
        return [math.cos(angle), math.sin(angle)]


def front_arc(chord, front, units):
    """The arc over a chord by the one measure that is given."""
    (key, value), = front.items()
    if key == "sweep":
        sweep = math.radians(value)
        return Arc(chord, chord / 2 / math.sin(sweep / 2), sweep)
    given = length(value, units)
    if key == "radius":
        return Arc(chord, given, 2 * math.asin(chord / 2 / given))
    if key == "rise":
        radius = (chord**2 / 4 + given**2) / (2 * given)
        half = math.asin(chord / 2 / radius)
        return Arc(chord, radius, 2 * (half if given <= radius else math.pi - half))
    # sin(θ/2)/(θ/2) = c/L falls from 1 to 0 over a full turn.
    sweep = 2 * switch(lambda half: math.sin(half) / half > chord / given, 1e-9, math.pi)
    return Arc(chord, given / sweep, sweep)


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1]


def inside_post(post, corner, away, point):
    """Whether a point lies within the post on a corner; `away` are the two sides' tangents there,
    each away from the corner."""
    offset = [p - c for p, c in zip(point, corner)]
    half_width, half_depth = post["width"] / 2, post["depth"] / 2
    if post["section"] == "round":
        return math.hypot(*offset) <= half_width
    if post["section"] == "square":  # to the straight sides, its width along Y
        return abs(offset[1]) <= half_width and abs(offset[0]) <= half_depth
    return all(dot(offset, u) <= half_width and abs(u[0] * offset[1] - u[1] * offset[0])
               <= half_depth for u in away)


class Sums:
    """All figures of a case that are compared, by their path in the report."""

    def __init__(self, case):
        self.case, self.units = case, case["units"]
        self.table = {}
        frame = case["frame"]
        self.post = {"section": frame["post"]["section"],
                     "width": self.mm(frame["post"]["width"]),
                     "depth": self.mm(frame["post"].get("depth", frame["post"]["width"]))}
        self.depth = {key: self.mm(value) for key, value in frame["groove"]["depth"].items()}
        self.groove = self.mm(frame["groove"]["width"])
        self.cutter = self.mm(case["cutter"]["diameter"])
        self.clear = self.mm(frame["clear_height"])
        self.fit = {key: self.mm(value) for key, value in case["fit"].items()}
        self.lines = self.glazing_line()
        for pane in case["panes"]:
            self.pane(pane)

    def mm(self, value):
        return length(value, self.units)

    def glazing_line(self):
        plan = self.case["plan"]
        width, depth = self.mm(plan["width"]), self.mm(plan["depth"])
        left, right = -width / 2, width / 2
        front = (front_arc(width, plan["front"], self.units) if plan["shape"] == "bow-front"
                 else Straight((left, 0), (right, 0)))
        return {"front": front, "right": Straight((right, 0), (right, depth)),
                "back": Straight((right, depth), (left, depth)),
                "left": Straight((left, depth), (left, 0))}

    def in_post(self, side, from_end):
        """Length of a side's line within the post at its start or end."""
        line = self.lines[side]
        turn = 1 if from_end else -1
        other = self.lines[SIDES[(SIDES.index(side) + turn) % 4]]

        def leaving(which, s):
            tangent = which.tangent(s)
            return tangent if s == 0 else [-x for x in tangent]

        here = line.length if from_end else 0
        there = 0 if from_end else other.length
        away = [leaving(line, here), leaving(other, there)]
        corner = line.at(here)

        def within(s):
            return inside_post(self.post, corner, away,
                               line.at(line.length - s if from_end else s))

        step = min(self.post["width"], self.post["depth"]) / 64
        first_out = next(n for n in range(1, 100_000) if not within(n * step))
        return switch(within, (first_out - 1) * step, first_out * step)

    def reach(self, line, thickness):
        """How far an end goes in before a corner of it meets the post groove's square bottom or
        the round end of the plates' grooves."""
        depth = self.depth["post"]
        centre = depth + self.cutter / 2 - self.groove / 2

        def corner(s, across):
            """Along and across the line's tangent at the post's face."""
            if not line.curved:
                return s, across
            turned, radius = s / line.radius, line.radius + across
            return radius * math.sin(turned), radius * math.cos(turned) - line.radius

        bottom = corner(depth, 0)[0]

        def free(s):
            corners = [corner(s, sign * thickness / 2) for sign in (-1, 1)]
            square = all(along <= bottom for along, _ in corners)
            around = all(s <= centre or math.dist(at, corner(centre, 0)) <= self.groove / 2
                         for at in corners)
            return square and around

        return switch(free, 0, depth + self.cutter)

    def sheet(self, pane):
        """Shrink along the pane's length and height, springback, and the library's entry."""
        own = self.case.get("sheets", {}).get(pane["sheet"], {})
        library = LIBRARY[own.get("like", pane["sheet"])]
        along, across = library["shrink"]
        if "shrink" in own:
            along, across = (ratio(own["shrink"][key]) for key in ("along", "across"))
        if pane.get("along") == "height":
            along, across = across, along
        springback = ratio(own["springback"]["radius"]) if "springback" in own else 0
        return along, across, springback, library

    def formed_and_blank(self, wanted, given, shrink, heated, blank):
        """Size as formed and size of the blank, one way."""
        if given is not None:
            size = self.mm(given)
            return (size * (1 - shrink) if heated else size), size
        if not heated:
            return wanted, wanted
        trim = 2 * self.mm(blank["trim"]) if blank.get("method") == "trim-after" else 0
        return wanted, (wanted + trim) / (1 - shrink)

    def pane(self, pane):
        side, line = pane["side"], self.lines[pane["side"]]

        def put(path, value):
            self.table[f"panes/{side}/{path}"] = value

        thickness = self.mm(pane["thickness"])
        along, across, springback, library = self.sheet(pane)
        loading = self.case["frame"]["loading"]
        opening = line.length - self.in_post(side, False) - self.in_post(side, True)
        size = pane.get("size", {})
        wide = (self.mm(size["length"]) if size else
                opening + 2 * (self.depth["post"] - self.fit["end_clearance"]))
        if size:
            high = self.mm(size["height"])
        elif loading == "lift-and-drop":
            high = self.clear + self.depth["top"] - self.fit.get("loading_clearance", 1)
        else:
            high = self.clear + self.depth["base"] + self.depth["top"] - self.fit["top_clearance"]
        blank = pane.get("blank", self.case.get("blank", {}))
        wide, blank_length = self.formed_and_blank(wide, blank.get("length"), along, line.curved,
                                                   blank)
        high, blank_width = self.formed_and_blank(high, blank.get("width"), across, line.curved,
                                                  blank)
        formed = thickness / ((1 - along) * (1 - across)) if line.curved else thickness
        put("opening/length", opening)
        put("opening/height", self.clear)
        put("formed/developed_length", wide)
        put("formed/height", high)
        put("formed/thickness", formed)
        put("blank/length", blank_length)
        put("blank/width", blank_width)
        if line.curved:
            turn = wide / line.radius
            put("formed/inside_radius", line.radius - thickness / 2)
            put("formed/sweep", math.degrees(turn))
            put("formed/chord", 2 * line.radius * math.sin(turn / 2))
            put("formed/rise", line.radius - line.radius * math.cos(turn / 2))
            self.form(side, line.radius - thickness / 2, turn, blank_width, springback)
            self.heating(side, thickness, library)
        self.edges(put, line, opening, wide, high, thickness, formed)

    def edges(self, put, line, opening, wide, high, thickness, formed):
        base, top, post = (self.depth[key] for key in ("base", "top", "post"))
        standing = high - self.clear - base
        put("edges/bottom/engagement/nominal", base)
        put("edges/bottom/engagement/settled", base)
        put("edges/bottom/edge_clearance/nominal", 0)
        put("edges/bottom/face_clearance/nominal", self.groove - formed)
        put("edges/top/engagement/nominal", standing)
        put("edges/top/engagement/settled", standing)
        put("edges/top/edge_clearance/nominal", top - standing)
        put("edges/top/face_clearance/nominal", self.groove - formed)
        bite = (wide - opening) / 2
        for edge in ("start", "end"):
            put(f"edges/{edge}/engagement/nominal", bite)
            put(f"edges/{edge}/engagement/settled", wide - opening - post)
            put(f"edges/{edge}/edge_clearance/nominal", post - bite)
            put(f"edges/{edge}/face_clearance/nominal", self.groove - taken(line, formed, bite))
        put("room/vertical/nominal", self.clear + base + top - high)
        put("room/sideways/nominal", opening + 2 * self.reach(line, thickness) - wide)

    def form(self, side, inside, turn, blank_width, springback):
        form = self.case["form"]
        skin, cover = self.mm(form["skin"]["thickness"]), self.mm(form["cover"]["thickness"])
        ribs = {key: self.mm(value) for key, value in form["ribs"].items()}
        width = blank_width + 2 * OVERHANG
        face = inside / (1 + springback)
        sweep = (inside * turn + 2 * self.mm(form["overrun"])) / face
        count = math.ceil((width - ribs["thickness"]) / ribs["max_spacing"]) + 1
        self.table |= {
            f"forms/{side}/face_radius": face,
            f"forms/{side}/rib_radius": face - cover - skin,
            f"forms/{side}/rib_sweep": math.degrees(sweep),
            f"forms/{side}/rib_count": count,
            f"forms/{side}/rib_pitch": (width - ribs["thickness"]) / (count - 1),
            f"forms/{side}/skin/length": (face - cover - skin / 2) * sweep,
            f"forms/{side}/skin/width": width,
        }

    def heating(self, side, thickness, library):
        accuracy = 5 if "oven" in self.case else 0
        self.table |= {
            f"heating/{side}/oven_set": library["set"],
            f"heating/{side}/face_limit": library["face"],
            f"heating/{side}/core_min": library["core"],
            f"heating/{side}/margin_to_limit": library["face"] - library["set"] - accuracy,
            f"heating/{side}/margin_to_core": library["set"] - accuracy - library["core"],
            f"heating/{side}/shop_rule_min": thickness / (INCH / 100),
        }


def taken(line, thickness, depth):
    """Width that a pane takes of a straight groove, its end standing so deep in it."""
    if not line.curved:
        return thickness
    across = [(line.radius + sign * thickness / 2) * math.cos(depth * n / 64 / line.radius)
              for sign in (-1, 1) for n in range(65)]
    return max(across) - min(across)
