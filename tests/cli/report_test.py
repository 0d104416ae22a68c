"""report.json: valid by its schema, complete, and every figure of it explained."""

import hashlib
import json
import math

import jsonschema

import program
from case_files import HELD, PILOT_BOAT, VARIANTS, changed, hold
from program import CHECK_FAILS, FINE
from report_paths import figures

SCHEMA = json.loads((program.ROOT / "schemas/report.schema.json").read_text(encoding="utf-8"))
# Of a figure and its derivation, which are the same sum done twice.
SAME = 1e-12
EXPLAINED = ("panes", "forms", "heating", "parts", "shop", "first_time_fit", "whole", "cost")
# Of these every figure is asked for; panes have the same keys, so of the rest every ninth.
IN_FULL = ("panes/front/", "whole/", "cost/")
MADE = ("pilot boat", "shelves on pins and rails", "rectangle", "front alone", "round posts, beaded",
        "failing")


def no_constants(word):
    raise ValueError(f"{word} is no JSON")


class ReportTest(program.ProgramTest):
    def parsed(self, text):
        report = json.loads(text, parse_constant=no_constants)
        jsonschema.Draft7Validator(SCHEMA).validate(report)
        return report

    def checked(self, changes):
        done = self.run_program("check", self.write_case(changed(changes)), "--json")
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
        return self.parsed(done.stdout), done.returncode


class Contents(ReportTest):
    def test_the_schema_itself_is_sound(self):
        jsonschema.Draft7Validator.check_schema(SCHEMA)
        out, _ = self.ends(FINE, "schema", "report")
        self.assertEqual(json.loads(out), SCHEMA)

    def test_every_variant_gives_a_valid_report(self):
        for name, changes in VARIANTS.items():
            with self.subTest(name):
                report, code = self.checked(changes)
                self.assertEqual(code == CHECK_FAILS, report["verdict"] == "fail")
                worst = max((check["status"] for check in report["checks"]),
                            key=("pass", "warn", "fail").index)
                self.assertEqual(report["verdict"], worst)

    def test_what_was_made_is_listed_with_its_hash(self):
        for name in MADE:
            with self.subTest(name):
                folder = self.folder / name
                done = self.run_program("make", self.write_case(changed(VARIANTS[name])), "-o",
                                        folder, "--json")
                self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
                report = self.parsed(done.stdout)
                listed = {file["path"]: file["sha256"] for file in report["files"]}
                found = {path: sha for path, sha in program.tree(folder).items() if sha != "folder"}
                self.assertEqual(found.pop("report.json"),
                                 hashlib.sha256(done.stdout).hexdigest())
                self.assertEqual(listed, found)
                self.assertEqual({file["read_back"] for file in report["files"]}, {"pass"})
                files = {part["file"] for part in report["parts"]} - {""}
                self.assertEqual(files, {path for path in found if path.endswith(".dxf")})

    def test_check_and_make_tell_the_same(self):
        case = self.write_case(changed(hold("fitted", "rabbet", "beaded")))
        sums = self.parsed(self.run_program("check", case, "--json").stdout)
        made = self.parsed(self.run_program("make", case, "-o", "out", "--json").stdout)
        for key in ("case", "verdict", "open_sides", "panes", "forms", "heating", "whole",
                    "checks", "assumed", "cautions"):
            self.assertEqual(sums[key], made[key], key)

    def test_a_side_without_a_pane_is_reported_as_open(self):
        report, _ = self.checked(VARIANTS["open back"])
        self.assertEqual(report["open_sides"], ["back"])
        out, _ = self.ends(FINE, "check", self.folder / "case.json")
        self.assertIn("The back has no pane and stays open.", out)

    def test_what_the_case_does_not_say_is_listed_as_assumed(self):
        stated, _ = self.checked({})
        silent, _ = self.checked({"/fit": {}, "/cutter": {}})
        pointers = [{entry["pointer"] for entry in report["assumed"]}
                    for report in (stated, silent)]
        new = {"/fit/end_clearance", "/fit/top_clearance", "/fit/least_engagement",
               "/cutter/diameter", "/cutter/spacing"}
        self.assertEqual(pointers[1] - pointers[0], new)

    def test_inches_and_millimetres_give_one_report(self):
        inches, _ = self.checked({"/plan/width": "20 in", "/plan/front/radius": "1 ft 4 3/4 in"})
        millimetres, _ = self.checked({"/plan/width": 508, "/plan/front/radius": "425.45 mm"})
        self.assertEqual(inches, millimetres)


class Explanations(ReportTest):
    def explained(self, case, path):
        out, _ = self.ends(FINE, "explain", case, path, "--json")
        return json.loads(out)

    def made(self, name, more=None):
        case = self.write_case(changed(VARIANTS[name] | (more or {})))
        return case, self.parsed(self.run_program("make", case, "-o", "out", "--json").stdout)

    def is_explained(self, case, path, value):
        with self.subTest(path):
            told = self.explained(case, path)
            self.assertTrue(math.isclose(told["value"], value, rel_tol=SAME, abs_tol=SAME),
                            f"{told['value']} {value}")
            self.assertIn(told["origin"], ("given", "assumed", "library", "computed"))
            self.assertTrue(told.get("source") or told.get("pointer"), told)

    def check_is_explained(self, case, check):
        with self.subTest(f"{check['id']} {check['about']}"):
            told = self.explained(case, f"checks/{check['id']}/{check['about']}")
            self.assertEqual({key: told[key] for key in ("value", "limit", "status")},
                             {key: check[key] for key in ("value", "limit", "status")})

    def test_every_figure_of_the_report_has_its_derivation(self):
        for name, more in (("pilot boat", {}), ("rectangle, round posts, beaded", HELD)):
            with self.subTest(name):
                case, report = self.made(name, more)
                for section in EXPLAINED:
                    for number, (path, value) in enumerate(figures(report.get(section, []),
                                                                   section)):
                        if number % 9 == 0 or path.startswith(IN_FULL):
                            self.is_explained(case, path, value)
                for check in report["checks"]:
                    self.check_is_explained(case, check)

    def test_every_figure_of_shelves_has_its_derivation(self):
        # Rests have the same keys: of one of each shelf every figure is asked for.
        for name in ("shelves on pins and rails", "shelf on rails all round"):
            with self.subTest(name):
                case, report = self.made(name)
                for shelf in report["shelves"]:
                    shelf["supports"] = shelf["supports"][:1]
                for path, value in figures(report["shelves"], "shelves"):
                    self.is_explained(case, path, value)
                for check in report["checks"]:
                    if check["id"].startswith("shelf-"):
                        self.check_is_explained(case, check)

    def test_every_leaf_of_a_derivation_says_where_it_comes_from(self):
        def leaves(figure):
            inputs = figure.get("inputs", [])
            return [leaf for entry in inputs for leaf in leaves(entry)] if inputs else [figure]

        tree = self.explained(PILOT_BOAT, "panes/front/edges/top/engagement/least")
        kinds = {leaf["origin"] for leaf in leaves(tree)}
        self.assertLessEqual({"given", "library"}, kinds)
        for leaf in leaves(tree):
            if leaf["origin"] == "given":
                self.assertGreater(leaf["line"], 0)
            else:
                self.assertTrue(leaf["source"], leaf)


if __name__ == "__main__":
    program.main()
