"""The lines of a drawing as ezdxf reads them: exact sums, and faults that a cutter would meet."""

import math
from dataclasses import dataclass

from shapely.geometry import LineString, Polygon

SHORTEST = 0.01  # mm; the pattern's own bound
FLATTENING = 0.01  # mm, the most that an arc's chords lie off it
SAME_LINE = 1e-6  # mm


def sagitta_steps(radius, sweep):
    """Chords for an arc, so that none lies further off than FLATTENING."""
    if radius <= FLATTENING:
        return 8
    return max(1, math.ceil(abs(sweep) / (2 * math.acos(1 - FLATTENING / radius))))


@dataclass
class Side:
    """A straight or an arc from (x0, y0) to (x1, y1) by its bulge."""

    x0: float
    y0: float
    x1: float
    y1: float
    bulge: float

    @property
    def chord(self):
        return math.hypot(self.x1 - self.x0, self.y1 - self.y0)

    @property
    def sweep(self):
        return 4 * math.atan(self.bulge)

    @property
    def radius(self):
        return self.chord / (2 * math.sin(abs(self.sweep) / 2))

    @property
    def length(self):
        return abs(self.sweep) * self.radius if self.bulge else self.chord

    @property
    def area(self):
        """Part of the sum by Green's theorem, the arc's segment added to the chord's share."""
        straight = (self.x0 * self.y1 - self.x1 * self.y0) / 2
        if not self.bulge:
            return straight
        angle = abs(self.sweep)
        arc = self.radius ** 2 / 2 * (angle - math.sin(angle))
        return straight + math.copysign(arc, self.bulge)

    def points(self):
        """The start and points on the way, the end left out."""
        if not self.bulge or not self.chord:
            return [(self.x0, self.y0)]
        offset = (1 - self.bulge ** 2) / (4 * self.bulge)
        cx = (self.x0 + self.x1) / 2 - (self.y1 - self.y0) * offset
        cy = (self.y0 + self.y1) / 2 + (self.x1 - self.x0) * offset
        start = math.atan2(self.y0 - cy, self.x0 - cx)
        steps = sagitta_steps(self.radius, self.sweep)
        inner = [start + self.sweep * i / steps for i in range(1, steps)]
        return [(self.x0, self.y0)] + [(cx + self.radius * math.cos(a),
                                        cy + self.radius * math.sin(a)) for a in inner]


@dataclass
class Line:
    """One thing to follow: a closed outline, a circle or an open path, as its sides."""

    kind: str
    layer: str
    closed: bool
    sides: list

    @property
    def area(self):
        return math.fsum(side.area for side in self.sides) if self.closed else 0.0

    @property
    def length(self):
        return math.fsum(side.length for side in self.sides)

    def flattened(self):
        points = [point for side in self.sides for point in side.points()]
        return points if self.closed else points + [(self.sides[-1].x1, self.sides[-1].y1)]


def sides_of(vertices, closed):
    following = vertices[1:] + (vertices[:1] if closed else [])
    return [Side(x0, y0, x1, y1, bulge)
            for (x0, y0, bulge), (x1, y1, _) in zip(vertices, following)]


def line_of(entity):
    """An entity of ezdxf as a line; None for a text."""
    kind, layer, dxf = entity.dxftype(), entity.dxf.layer, entity.dxf
    if kind == "LWPOLYLINE":
        return Line(kind, layer, entity.closed, sides_of(entity.get_points("xyb"), entity.closed))
    if kind == "POLYLINE":
        vertices = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0))
                    for v in entity.vertices]
        return Line(kind, layer, entity.is_closed, sides_of(vertices, entity.is_closed))
    if kind == "LINE":
        return Line(kind, layer, False, [Side(dxf.start.x, dxf.start.y, dxf.end.x, dxf.end.y, 0)])
    if kind == "CIRCLE":
        ends = [(dxf.center.x + sign * dxf.radius, dxf.center.y, 1) for sign in (1, -1)]
        return Line(kind, layer, True, sides_of(ends, True))
    if kind == "ARC":
        sweep = math.radians((dxf.end_angle - dxf.start_angle) % 360 or 360)
        bulge = math.tan(sweep / 8)  # in halves, so that it is never over 1
        start = math.radians(dxf.start_angle)
        ends = [(dxf.center.x + dxf.radius * math.cos(start + sweep * share),
                 dxf.center.y + dxf.radius * math.sin(start + sweep * share), bulge)
                for share in (0, 0.5, 1)]
        return Line(kind, layer, False, sides_of(ends, False))
    return None


def is_profile(layer):
    return layer.startswith("profile-") or layer == "sheet-edge"


def must_close(layer):
    return is_profile(layer) or layer.startswith(("recess-", "bore-"))


def side_faults(line):
    if not line.sides:
        yield f"vertices: a {line.kind} on {line.layer} has no side"
    for side in line.sides:
        where = f"on {line.layer} at {side.x0}, {side.y0}"
        if side.chord == 0:
            yield f"zero: a side without length {where}"
        elif side.length < SHORTEST:
            yield f"tiny: a side of {side.length} mm {where}"
        if abs(side.bulge) > 1:
            yield f"bulge: {side.bulge} {where}"


def own_faults(line):
    """What is wrong with one line by itself."""
    faults = list(side_faults(line))
    if must_close(line.layer) and not line.closed:
        faults.append(f"open: a {line.kind} on {line.layer}")
    if line.layer.startswith("bore-") and line.kind != "CIRCLE":
        faults.append(f"bore: a {line.kind} on {line.layer}")
    if not faults and line.closed:
        points = line.flattened()
        ring = LineString(points + points[:1])
        if len(points) < 3 or not ring.is_simple or not Polygon(points).is_valid:
            faults.append(f"crossing: an outline on {line.layer} meets itself")
    return faults


def same_line(a, b):
    if abs(a.length - b.length) > SAME_LINE * (len(a.sides) + len(b.sides)):
        return False
    first, second = LineString(a.flattened()), LineString(b.flattened())
    if max(abs(p - q) for p, q in zip(first.bounds, second.bounds)) > SAME_LINE:
        return False
    # Two flattenings of one arc may start elsewhere, and then lie apart by as much as each errs.
    return first.hausdorff_distance(second) <= 2 * FLATTENING


def doubled_faults(lines):
    for layer in sorted({line.layer for line in lines}):
        here = [line for line in lines if line.layer == layer]
        here.sort(key=lambda line: line.length)
        for i, line in enumerate(here):
            for other in here[i + 1:]:
                if other.length - line.length > SAME_LINE * (len(line.sides) + len(other.sides)):
                    break
                if line.closed == other.closed and same_line(line, other):
                    yield f"doubled: a line on {layer} from {line.sides[0].x0}, {line.sides[0].y0}"


def nesting_faults(outers, inners, name):
    """Each inner outline lies in one outer one, free of its edge and of the others."""
    for index, inner in enumerate(inners):
        if sum(outer.contains(inner) and not outer.exterior.intersects(inner.exterior)
               for outer in outers) != 1:
            yield f"hole: one on {name} is not inside exactly one outer outline"
        if any(inner.intersects(other) for other in inners[index + 1:]):
            yield f"hole: two on {name} overlap"


def sense_faults(lines):
    for line in lines:
        wanted = {"profile-outer": 1, "profile-inner": -1, "sheet-edge": 1}.get(line.layer)
        if line.closed and wanted and line.area * wanted <= 0:
            yield f"sense: an outline on {line.layer} runs the wrong way round"


def profile_faults(lines):
    """Outlines against each other. Part files have one outer outline, nests have sheet edges."""
    polygons = {}
    for line in lines:
        turned = "-inner" if line.layer.startswith("recess-") and line.area < 0 else ""
        polygons.setdefault(line.layer + turned, []).append(Polygon(line.flattened()))
    outers = polygons.get("profile-outer", [])
    sheets = polygons.get("sheet-edge", [])
    if not outers or (len(outers) > 1 and not sheets):
        yield f"outline: {len(outers)} outer ones"
    yield from nesting_faults(outers, polygons.get("profile-inner", []), "profile-inner")
    for layer in sorted(polygons):
        if layer.startswith("recess-") and not layer.endswith("-inner"):
            yield from nesting_faults(polygons[layer], polygons.get(layer + "-inner", []), layer)
        if layer.startswith(("recess-", "bore-")):
            for polygon in polygons[layer]:
                if sum(outer.intersection(polygon).area > 0 for outer in outers) != 1:
                    yield f"place: something on {layer} is not on exactly one part"
    for index, outer in enumerate(outers):
        if any(outer.intersection(other).area > 0 for other in outers[index + 1:]):
            yield "overlap: two parts"
        if sheets and sum(sheet.contains(outer) for sheet in sheets) != 1:
            yield "overlap: a part is not on one sheet"


def origin_faults(lines):
    layer = "sheet-edge" if any(line.layer == "sheet-edge" for line in lines) else "profile-outer"
    points = [point for line in lines if line.layer == layer for point in line.flattened()]
    low = [min(axis) for axis in zip(*points)]
    if any(abs(value) > FLATTENING for value in low):
        yield f"origin: the lower left corner is {low}"


def geometry_faults(lines):
    faults = [fault for line in lines for fault in own_faults(line)]
    if faults:
        return faults
    closed = [line for line in lines if line.closed and must_close(line.layer)]
    faults += doubled_faults(lines)
    faults += sense_faults(lines)
    faults += profile_faults(closed)
    return faults + (list(origin_faults(closed)) if closed else [])
