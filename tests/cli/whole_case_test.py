"""The case as one thing: what it weighs, when it tips, what it costs, as the program tells it."""

import json

import program
from case_files import HELD, VARIANTS, changed
from program import BAD_INPUT, CHECK_FAILS, FINE


class WholeCase(program.ProgramTest):
    def report(self, changes):
        done = self.run_program("check", self.write_case(changed(changes)), "--json")
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
        return json.loads(done.stdout)

    def test_masses_of_the_parts_add_up(self):
        done = self.run_program("make", self.write_case(changed(HELD)), "-o", "out", "--json")
        report = json.loads(done.stdout)
        whole = report["whole"]
        parts = sum(part["mass"] * part["count"] for part in report["parts"]
                    if part["assembly"] == "case")
        self.assertAlmostEqual(whole["empty"]["mass"], parts, delta=1e-9)
        self.assertAlmostEqual(sum(whole["groups"].values()), parts, delta=1e-9)
        self.assertAlmostEqual(whole["loaded"]["mass"], parts + 12, delta=1e-9)
        self.assertEqual(whole["unknown"], [])
        self.assertEqual(whole["contents"], {"mass": 12, "x": 30, "y": 100, "z": 150})

    def test_an_empty_case_alone_is_told_of_where_no_contents_are_named(self):
        whole = self.report({})["whole"]
        self.assertNotIn("loaded", whole)
        self.assertNotIn("contents", whole)
        self.assertNotIn("cost", self.report({}))

    def test_a_case_that_tips_fails_unless_it_is_fixed(self):
        for name, status in (("tall and free", "fail"), ("tall and fixed", "warn")):
            with self.subTest(name):
                report = self.report(VARIANTS[name])
                tipping = {check["about"]: check for check in report["checks"]
                           if check["id"] == "tipping"}
                self.assertEqual(tipping["empty"]["status"], status)
                self.assertEqual(tipping["empty"]["code"], "BF-CASE-001")
                self.assertEqual(tipping["empty"]["limit"], 10)
                self.assertEqual(tipping["empty"]["value"],
                                 report["whole"]["empty"]["tipping"]["angle"])
        self.assertTrue(any("What holds the case to the wall" in caution
                            for caution in report["cautions"]))

    def test_cautions_tell_how_to_lift_and_when_to_fix(self):
        cautions = "\n".join(self.report({})["cautions"])
        self.assertIn("hold the case under its base", cautions)
        self.assertNotIn("This case is tall and heavy", cautions)
        self.assertNotIn("people at the best of conditions", cautions)
        tall = "\n".join(self.report(VARIANTS["tall and free"] |
                                     {"/frame/base/thickness": 100,
                                      "/frame/top/thickness": 100})["cautions"])
        self.assertIn("This case is tall and heavy", tall)
        self.assertIn("people at the best of conditions", tall)

    def test_the_cost_adds_up(self):
        cost = self.report(HELD)["cost"]
        rows = {row["id"]: row for row in cost["rows"]}
        self.assertEqual(cost["currency"], "EUR")
        self.assertEqual(cost["waste"], 20)
        self.assertEqual(rows["cast-acrylic-3"]["unit"], "sheet")
        self.assertEqual(rows["cast-acrylic-3"]["cost"], 93)
        self.assertAlmostEqual(rows["cherry"]["quantity"], 1.2 * rows["cherry"]["net"], delta=1e-12)
        self.assertAlmostEqual(rows["hardware-1"]["cost"], 16 * 0.15, delta=1e-12)
        self.assertAlmostEqual(cost["total"], sum(row["cost"] for row in rows.values()), delta=1e-9)
        self.assertEqual(cost["not_priced"], [])
        without = self.report(HELD | {"/prices/materials": []})["cost"]
        self.assertIn("cherry", without["not_priced"])
        self.assertIn("cast-acrylic 3 mm", without["not_priced"])

    def test_the_terminal_tells_the_same(self):
        out, _ = self.ends(FINE, "check", self.write_case(changed(HELD)))
        self.assertIn("The whole case, 424.0 mm high", out)
        self.assertIn("  loaded  ", out)
        self.assertIn("Material, net sizes and 20 % waste, in EUR", out)
        self.assertIn("brass screw 4 x 40", out)

    def test_a_price_of_a_wrong_unit_is_refused(self):
        case = self.write_case(changed(HELD | {"/prices/materials": [
            {"material": "cherry", "price": "62 /m2"}]}))
        _, error = self.ends(BAD_INPUT, "check", case)
        self.assertIn("BF-IN-010 /prices/materials/0: a price by \"m2\" of cherry", error)

    # A change that the adviser finds for a pane may not be what a case stands on.
    def test_suggest_ends_where_the_case_tips(self):
        case = self.write_case(changed(VARIANTS["tall and free"] | {"/frame/groove/width": 3.2}))
        done = self.run_program("check", case, "--suggest", "better.json")
        self.assertEqual(done.returncode, CHECK_FAILS, done.stderr)


if __name__ == "__main__":
    program.main()
