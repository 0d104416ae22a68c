"""Advice taken to the letter makes the check pass that gave it."""

import json
import re

import program
from case_files import changed, hold
from program import CHECK_FAILS, FINE

NUMBER = r"([\d.]+)"


def value_at(case, pointer):
    for step in pointer.strip("/").split("/"):
        case = case[step]
    return case


def larger(case, pointer, by):
    return {pointer: value_at(case, pointer) + float(by)}


# What each piece of advice means in the case file.
MEANINGS = (
    (rf"make (\w+_clearance) larger by {NUMBER} mm",
     lambda case, m: larger(case, f"/fit/{m[1]}", m[2])),
    (rf"make (\w+_clearance) {NUMBER} mm or less", lambda _, m: {f"/fit/{m[1]}": float(m[2])}),
    (rf"deepen the (base|top) groove(?: and the pane with it)? by {NUMBER} mm",
     lambda case, m: larger(case, f"/frame/groove/depth/{m[1]}", m[2])),
    (rf"widen the (?:top )?groove by {NUMBER} mm",
     lambda case, m: larger(case, "/frame/groove/width", m[1])),
    (rf"make the (base|top)'s margin larger by {NUMBER} mm",
     lambda case, m: larger(case, f"/frame/{m[1]}/margin", m[2])),
    (rf"make the (base|top)'s grooves shallower by {NUMBER} mm",
     lambda case, m: larger(case, f"/frame/groove/depth/{m[1]}", f"-{m[2]}")),
    (rf"make the overrun shorter by {NUMBER} mm",
     lambda case, m: larger(case, "/form/overrun", f"-{m[1]}")),
    (rf"an oven at least {NUMBER} mm x {NUMBER} mm inside",
     lambda _, m: {"/oven/inside": [float(m[1]), float(m[2]), 400]}),
    (rf"take a cutter of {NUMBER} mm", lambda _, m: {"/cutter/diameter": float(m[1])}),
    (r"set the posts' hold to \"rabbet\"", lambda *_: {"/frame/post/hold": "rabbet"}),
    (r"bend it heated", lambda *_: {"/panes/0/bend": "heat"}),
)

# Cases by what is wrong with them, with the checks that then don't pass.
WRONG = {
    "groove too narrow": ({"/frame/groove/width": 3.2}, {"face-clearance"}),
    "no play at the ends": ({"/fit/end_clearance": 0}, {"room"}),
    "no play on top": ({"/fit/top_clearance": 0}, {"room"}),
    "too much play": ({"/fit/end_clearance": 6.5, "/fit/top_clearance": 10}, {"engagement"}),
    "shallow base groove": ({"/frame/groove/depth/base": 2}, {"engagement"}),
    "thin boards": ({"/frame/base/thickness": 8, "/frame/top/thickness": 16}, {"floor"}),
    "narrow boards": ({"/frame/base/margin": 15, "/frame/top/margin": 7},
                      {"post-on-plate", "cheek"}),
    "long overrun": ({"/plan/front/radius": 300, "/form/overrun": 220}, {"form-sweep"}),
    "small oven": ({"/oven/inside": [500, 300, 300]}, {"oven"}),
    "thick cutter": ({"/cutter/diameter": 6}, {"cutter"}),
    "beads and grooves": ({"/frame/loading": "beaded"}, {"loading"}),
    "can't swing": ({"/plan": {"shape": "rectangle", "width": 520, "depth": 240},
                     "/frame/loading": "lift-and-drop"}, {"loading"}),
    "no play to lift": ({"/plan": {"shape": "rectangle", "width": 520, "depth": 240},
                         "/fit/loading_clearance": 0.2,
                         **hold("square", "rabbet", "lift-and-drop")}, {"loading-reserve"}),
    "bent cold": ({"/panes/0/bend": "cold"}, {"bend"}),
}


class Advice(program.ProgramTest):
    def checks(self, case):
        done = self.run_program("check", self.write_case(case), "--json")
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
        return {(check["id"], check["about"]): check for check in json.loads(done.stdout)["checks"]}

    def follow(self, case, check):
        """The same check once its advice is followed; None where that is no change of a number."""
        for pattern, meaning in MEANINGS:
            match = re.match(pattern, check["advice"])
            if match:
                return self.checks(changed(meaning(case, match), case))[check["id"], check["about"]]
        return None

    def test_what_is_advised_is_enough(self):
        for name, (changes, ids) in WRONG.items():
            case = changed(changes)
            followed = set()
            for check in self.checks(case).values():
                if check["status"] == "pass" or check["id"] not in ids:
                    continue
                with self.subTest(f"{name}: {check['id']} {check['about']}"):
                    after = self.follow(case, check)
                    self.assertIsNotNone(after, check["advice"])
                    # Advice on a failure mends the nominal, on a warning the worst case too.
                    good = ("pass",) if check["status"] == "warn" else ("pass", "warn")
                    self.assertIn(after["status"], good, check["advice"])
                    followed.add(check["id"])
            with self.subTest(name):
                self.assertEqual(followed, ids, "not every check is provoked")


if __name__ == "__main__":
    program.main()
