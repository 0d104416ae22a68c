"""Topology and exact volume of boundary representations of planes and cylinders.

The volume is a third of the flux of the position vector through the faces (divergence theorem);
on planes and cylinders bounded by lines and level circles both integrals have closed forms.
"""

import math

from part21 import Ref


class ShapeFault(Exception):
    """A solid that is not closed, not oriented, or of other surfaces than planes and cylinders."""


# Coordinates are written with at least 12 digits; parts are no larger than 10 m.
POINT_GAP = 1e-6


def sub(a, b):
    return [x - y for x, y in zip(a, b)]


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def unit(a):
    length = math.sqrt(dot(a, a))
    if not length > 0:
        raise ShapeFault("a direction has no length")
    return [x / length for x in a]


class Solid:
    """One MANIFOLD_SOLID_BREP, read through a `get(Ref) -> Record`."""

    def __init__(self, get, brep):
        self.get = get
        self.faces = [get(face) for face in get(brep.values[1]).values[1]]
        self.origin = self.vertex(self.loop(self.bounds(self.faces[0])[0][0])[0][0])

    def of(self, ref, keyword):
        record = self.get(ref)
        if record.keyword != keyword:
            raise ShapeFault(f"#{record.number} is {record.keyword or 'complex'}, not {keyword}")
        return record.values

    def point(self, ref):
        return [float(x) for x in self.of(ref, "CARTESIAN_POINT")[1]]

    def direction(self, ref):
        return unit([float(x) for x in self.of(ref, "DIRECTION")[1]])

    def frame(self, ref):
        _, at, axis, x_axis = self.of(ref, "AXIS2_PLACEMENT_3D")
        z = self.direction(axis) if isinstance(axis, Ref) else [0.0, 0.0, 1.0]
        x = self.direction(x_axis) if isinstance(x_axis, Ref) else [1.0, 0.0, 0.0]
        x = unit(sub(x, [dot(x, z) * c for c in z]))
        return self.point(at), x, cross(z, x), z

    def vertex(self, ref):
        return self.point(self.of(ref, "VERTEX_POINT")[1])

    def bounds(self, face):
        """(loop, orientation, outer) of each bound."""
        found = []
        for ref in face.values[1]:
            bound = self.get(ref)
            if bound.keyword not in ("FACE_BOUND", "FACE_OUTER_BOUND"):
                raise ShapeFault(f"#{bound.number} bounds a face but is {bound.keyword}")
            found.append((bound.values[1], bound.values[2].word == "T", bound.keyword[5] == "O"))
        return found

    def loop(self, ref):
        """(start vertex, end vertex, edge number, along) of each edge of a loop, in order."""
        walked = []
        for oriented in self.of(ref, "EDGE_LOOP")[1]:
            _, _, _, edge, along = self.of(oriented, "ORIENTED_EDGE")
            ends = self.of(edge, "EDGE_CURVE")[1:3]
            forward = along.word == "T"
            start, end = ends if forward else reversed(ends)
            walked.append((start, end, edge, forward))
        for here, following in zip(walked, walked[1:] + walked[:1]):
            if here[1] != following[0]:
                raise ShapeFault(f"loop #{ref.number} is open after edge #{here[2].number}")
        return walked

    def curve(self, ref):
        record = self.get(ref)
        while record.keyword in ("SURFACE_CURVE", "SEAM_CURVE"):
            record = self.get(record.values[1])
        return record

    def run(self, edge, forward):
        """How an edge runs: (start, end, circle or None, signed sweep)."""
        _, first, last, curve, same = self.of(edge, "EDGE_CURVE")
        start, end = self.vertex(first), self.vertex(last)
        record = self.curve(curve)
        circle, sweep = None, 0.0
        if record.keyword == "CIRCLE":
            circle = (*self.frame(record.values[1]), float(record.values[2]))
            sweep = self.sweep(circle, start, end, same.word == "T", record.number)
        elif record.keyword == "LINE":
            self.expect_on_line(record, start)
            self.expect_on_line(record, end)
        else:
            raise ShapeFault(f"#{record.number}: edges of {record.keyword} are not known here")
        return (start, end, circle, sweep) if forward else (end, start, circle, -sweep)

    def expect_on_line(self, line, at):
        base = self.point(line.values[1])
        way = self.direction(self.of(line.values[2], "VECTOR")[1])
        off = cross(sub(at, base), way)
        if math.sqrt(dot(off, off)) > POINT_GAP:
            raise ShapeFault(f"a vertex lies off line #{line.number}")

    def sweep(self, circle, start, end, same, number):
        centre, x, y, z, radius = circle
        angles = []
        for at in (start, end):
            way = sub(at, centre)
            if abs(math.hypot(dot(way, x), dot(way, y)) - radius) > POINT_GAP or \
                    abs(dot(way, z)) > POINT_GAP:
                raise ShapeFault(f"a vertex lies off circle #{number}")
            angles.append(math.atan2(dot(way, y), dot(way, x)))
        turn = (angles[1] - angles[0]) % (2 * math.pi)
        if not same:
            turn -= 2 * math.pi
        return turn if start != end else math.copysign(2 * math.pi, turn or 1)

    def check_edges(self):
        """Each edge bounds two faces and is run once each way."""
        used = {}
        for face in self.faces:
            outer = 0
            for loop, forward, is_outer in self.bounds(face):
                outer += is_outer
                for _, _, edge, along in self.loop(loop):
                    used.setdefault(edge.number, []).append(along == forward)
            if outer > 1:
                raise ShapeFault(f"face #{face.number} has {outer} outer bounds")
        for number, ways in used.items():
            if sorted(ways) != [False, True]:
                raise ShapeFault(f"edge #{number} is run {ways.count(True)} times along and "
                                 f"{ways.count(False)} times against")

    def volume(self):
        return sum(self.flux(face) for face in self.faces) / 3

    def flux(self, face):
        surface = self.get(face.values[2])
        runs = [self.run(edge, along) if forward else self.run(edge, not along)
                for loop, forward, _ in self.bounds(face)
                for _, _, edge, along in self.loop(loop)]
        frame = self.frame(surface.values[1])
        if surface.keyword == "PLANE":
            area, flux = plane_flux(frame, runs, self.origin)
        elif surface.keyword == "CYLINDRICAL_SURFACE":
            area, flux = cylinder_flux(frame, float(surface.values[2]), runs, self.origin)
        else:
            raise ShapeFault(f"#{surface.number}: faces of {surface.keyword} are not known here")
        if not (area > 0) == (face.values[3].word == "T") or area == 0:
            raise ShapeFault(f"face #{face.number} is turned the wrong way")
        return flux


def plane_flux(frame, runs, origin):
    """Area within the runs, counter-clockwise about the plane's normal, and its flux."""
    at, x, y, z = frame
    area = 0.0
    for start, end, circle, sweep in runs:
        a, b = sub(start, at), sub(end, at)
        if abs(dot(a, z)) > POINT_GAP:
            raise ShapeFault("a vertex lies off its plane")
        area += (dot(a, x) * dot(b, y) - dot(a, y) * dot(b, x)) / 2
        if circle:
            tilt = dot(circle[3], z)
            if abs(abs(tilt) - 1) > 1e-9:
                raise ShapeFault("a circle lies off its plane")
            radius, turned = circle[4], math.copysign(sweep, sweep * tilt)
            area += radius * radius * (turned - math.sin(turned)) / 2
    return area, dot(sub(at, origin), z) * area


def cylinder_flux(frame, radius, runs, origin):
    """The same about the outward normal. In (angle, height) a level circle adds −height·Δ of the
    antiderivative, a line along the axis nothing."""
    at, x, y, z = frame
    cx, cy = dot(sub(at, origin), x), dot(sub(at, origin), y)
    area = flux = 0.0
    for start, end, circle, sweep in runs:
        a, b = sub(start, at), sub(end, at)
        for way in (a, b):
            if abs(math.hypot(dot(way, x), dot(way, y)) - radius) > POINT_GAP:
                raise ShapeFault("a vertex lies off its cylinder")
        if not circle:
            off = cross(sub(b, a), z)
            if math.sqrt(dot(off, off)) > POINT_GAP:
                raise ShapeFault("a line on a cylinder is not along its axis")
            continue
        tilt = dot(circle[3], z)
        if abs(abs(tilt) - 1) > 1e-9:
            raise ShapeFault("a circle on a cylinder is not square to its axis")
        turned = math.copysign(sweep, sweep * tilt)
        height = dot(a, z)
        from_angle = math.atan2(dot(a, y), dot(a, x))
        to_angle = from_angle + turned
        area -= height * radius * turned
        flux -= height * radius * (radius * turned
                                   + cx * (math.sin(to_angle) - math.sin(from_angle))
                                   - cy * (math.cos(to_angle) - math.cos(from_angle)))
    return area, flux
