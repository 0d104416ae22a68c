"""Sag and stress of shelves, held against plates whose work of bending is least.

usage: shelf_plate.py PROGRAM CASE
Each plate is a sum of Legendre polynomials over the shelf's true shape, resting on points: Ritz's
method for a thin plate with free edges (Timoshenko and Woinowsky-Krieger, Theory of Plates and
Shells, chapter 10). It shares no formula with the program, whose figures must be larger, but not by
more than MOST times. The method is held against the printed values of plates on their corners.
"""

import json
import pathlib
import subprocess
import sys
import tempfile

import numpy
from numpy.polynomial import legendre

DEGREE = 12
POINTS = 40  # of the quadrature each way
MOST = 3  # times: the models are simple, and a third rail helps that they leave out
RAIL_POINTS = 15
MOST_ROUNDS = 20
NEAR = 4  # thicknesses: a point's own pressing is no bending of the shelf


def polynomials(x):
    """Values, first and second derivatives, a column a degree."""
    unit = numpy.eye(DEGREE + 1)
    return [numpy.stack([legendre.legval(x, legendre.legder(row, order) if order else row)
                         for row in unit], 1) for order in (0, 1, 2)]


class Plate:
    """A plate between y = front(x) and y = back over |x| up to half a width."""

    def __init__(self, width, back, front, stiffness, poisson):
        low = min(front(0.0), front(width / 2))
        self.half, self.middle, self.high = width / 2, (back + low) / 2, (back - low) / 2
        nodes, weights = legendre.leggauss(POINTS)
        self.x = numpy.repeat(nodes * self.half, POINTS)
        floor = numpy.array([front(x) for x in nodes * self.half]).repeat(POINTS)
        self.y = floor + (back - floor) * (numpy.tile(nodes, POINTS) + 1) / 2
        self.weight = (numpy.repeat(weights, POINTS) * self.half
                       * numpy.tile(weights, POINTS) * (back - floor) / 2)
        self.stiffness, self.poisson = stiffness, poisson

    def shapes(self, x, y):
        """The deflection's shapes, and their curvatures along x, along y and twist."""
        a, b = polynomials(x / self.half), polynomials((y - self.middle) / self.high)
        i, j = zip(*[(i, j) for i in range(DEGREE + 1) for j in range(DEGREE + 1)
                     if i + j <= DEGREE + 2])
        i, j = list(i), list(j)
        return (a[0][:, i] * b[0][:, j], a[2][:, i] * b[0][:, j] / self.half**2,
                a[0][:, i] * b[2][:, j] / self.high**2,
                a[1][:, i] * b[1][:, j] / self.half / self.high)

    def bent(self, pressure, rests, thickness):
        """Greatest deflection, and stress away from the rests."""
        shape, across, along, twist = self.shapes(self.x, self.y)
        w, nu = self.weight[:, None], self.poisson
        work = self.stiffness * ((across * w).T @ across + (along * w).T @ along
                                 + nu * ((across * w).T @ along + (along * w).T @ across)
                                 + 2 * (1 - nu) * (twist * w).T @ twist)
        # Springs so stiff that they give under a thousandth of the deflection. A shelf only lies on
        # its rests: those that would have to hold it down are left out, one round after the other.
        spring = 1e5 * self.stiffness / min(self.half, self.high)**2
        held = self.shapes(rests[:, 0], rests[:, 1])[0]
        pressed = numpy.ones(len(rests), bool)
        for _ in range(MOST_ROUNDS):
            on = held[pressed]
            found = numpy.linalg.solve(work + spring * on.T @ on, pressure * (shape * w).sum(0))
            lifted = pressed & (held @ found < 0)
            if not lifted.any():
                break
            pressed &= ~lifted
        moments = [self.stiffness * m @ found for m in
                   (across + nu * along, along + nu * across, (1 - nu) * twist)]
        middle, radius = (moments[0] + moments[1]) / 2, numpy.hypot(
            (moments[0] - moments[1]) / 2, moments[2])
        stress = 6 / thickness**2 * (abs(middle) + radius)
        away = numpy.min(numpy.hypot(self.x[:, None] - rests[:, 0],
                                     self.y[:, None] - rests[:, 1]), axis=1) > NEAR * thickness
        return (shape @ found).max(), stress[away].max()


def hold_the_method():
    """A square plate on its corners, ν 0.3: w = 0.0257·q·a⁴/D, edge moment 0.153·q·a²."""
    side, stiffness, pressure = 100.0, 1e4, 1e-2
    corners = numpy.array([[x, y] for x in (-50, 50) for y in (0, 100)], float)
    plate = Plate(side, side, lambda x: 0.0, stiffness, 0.3)
    deflection, stress = plate.bent(pressure, corners, 1.0)
    for found, printed in ((deflection * stiffness / (pressure * side**4), 0.0257),
                           (stress / 6 / (pressure * side**2), 0.153)):
        if abs(found / printed - 1) > 0.02:
            sys.exit(f"the method gives {found:.4f} where {printed} is printed")


def shelf_of(program, case, folder):
    path = pathlib.Path(folder) / "case.json"
    path.write_text(json.dumps(case), encoding="utf-8")
    done = subprocess.run([program, "check", path, "--json"], capture_output=True, check=False)
    if done.returncode not in (0, 1):
        sys.exit(done.stderr.decode())
    return json.loads(done.stdout)["shelves"][0]


def rests_of(shelf):
    points = {rest["id"]: (rest["x"], rest["y"]) for rest in shelf["supports"]}
    rows = list(points.values())
    if shelf["support"] == "rails":
        for name, start in points.items():
            if name.endswith("-start"):
                end = points[name.replace("-start", "-end")]
                rows += [numpy.array(start) + share * (numpy.array(end) - start)
                         for share in numpy.linspace(0, 1, RAIL_POINTS)[1:-1]]
    return numpy.array(rows, float)


def judge(program, case, folder):
    """What is wrong with one case, or None, and how far the program is over the plate."""
    shelf = shelf_of(program, case, folder)
    spec, plan = case["shelves"][0], case["plan"]
    material, poisson, creep = {"float-glass": (70000, 0.2, 1),
                                "cast-acrylic": (3200, 0.37, 2)}[spec["material"]]
    thickness = spec["thickness"]
    inset = plan["width"] / 2 - (shelf["span"] if plan["width"] > plan["depth"]
                                 else shelf["breadth"]) / 2
    if spec.get("support") == "rails" and plan["shape"] == "rectangle":
        inset = min(plan["width"], plan["depth"]) / 2 - shelf["span"] / 2

    def front(x):
        if plan["shape"] == "rectangle":
            return inset
        radius = plan["front"]["radius"]
        return ((radius**2 - plan["width"]**2 / 4)**0.5
                - ((radius - inset)**2 - x * x)**0.5)

    plate = Plate(plan["width"] - 2 * inset, plan["depth"] - inset, front,
                  material * thickness**3 / 12 / (1 - poisson**2), poisson)
    sag, stress = plate.bent(shelf["pressure"], rests_of(shelf), thickness)
    over = shelf["sag"]["nominal"] / (creep * sag), shelf["stress"]["nominal"] / stress
    wrong = not all(1 <= ratio <= MOST for ratio in over)
    return over if wrong else None, over


def main():
    program, case_file = sys.argv[1:3]
    hold_the_method()
    base = json.loads(pathlib.Path(case_file).read_text(encoding="utf-8"))
    plans = [{"shape": "bow-front", "width": 520, "depth": 240, "front": {"radius": 420}},
             {"shape": "bow-front", "width": 700, "depth": 300, "front": {"radius": 900}},
             {"shape": "rectangle", "width": 520, "depth": 240},
             {"shape": "rectangle", "width": 400, "depth": 400},
             {"shape": "rectangle", "width": 300, "depth": 600}]
    with tempfile.TemporaryDirectory() as folder:
        for plan in plans:
            for material, thickness in (("float-glass", 6), ("cast-acrylic", 15)):
                for support in ("pins", "rails"):
                    shelf = {"height": 120, "material": material, "thickness": thickness,
                             "load": "5 kg", "support": support}
                    wrong, over = judge(program, base | {"plan": plan, "shelves": [shelf]}, folder)
                    print(plan["shape"], plan["width"], plan["depth"], material, support,
                          "times the plate's: sag %.2f, stress %.2f" % over)
                    if wrong:
                        sys.exit("not between 1 and %.1f times" % MOST)


if __name__ == "__main__":
    main()
