"""inspect: the fit of what was measured, in words and as JSON, and its exit codes."""

import json

import jsonschema

import program
from case_files import PILOT_BOAT
from program import BAD_INPUT, CHECK_FAILS, FINE

SCHEMA = json.loads((program.ROOT / "schemas/inspection.schema.json").read_text(encoding="utf-8"))
MEASURED = PILOT_BOAT.with_name("measured.json")


def of_back(height, length=502):
    return {"bowfront_measured": 1, "uncertainty": {"length": 0.2},
            "panes": [{"side": "back", "formed": {"length": length, "height": height}}]}


class Inspect(program.ProgramTest):
    def inspected(self, code, measured):
        path = self.write_case(measured, "measured.json")
        out, error = self.ends(code, "inspect", PILOT_BOAT, path, "--json")
        self.assertEqual(error, "")
        report = json.loads(out)
        jsonschema.Draft7Validator(SCHEMA).validate(report)
        return report

    def test_the_example_fits_and_the_text_says_how(self):
        out, error = self.ends(FINE, "inspect", PILOT_BOAT, MEASURED)
        self.assertEqual(error, "")
        self.assertTrue(out.startswith("pilot-boat model case, as made: it fits"))
        self.assertIn("Pane, front: 544.20 x 393.30 x 3.11 mm in an opening of 518.50 x 380.30", out)
        self.assertIn("it shrank 1.32 % in length", out)
        # R = (c²/4 + f²)/(2f) of the chord and rise in the example
        self.assertIn(f"inside radius {(505.4**2 / 4 + 84.5**2) / (2 * 84.5):.2f} mm", out)
        self.assertIn("(419.01 to 421.20 by the measuring), wanted 418.50", out)
        self.assertIn("\nPane, left: not cut yet, nor is its place; as drawn\n", out)
        for state in ("built", "cold-dry", "cold-damp", "warm-dry", "warm-damp"):
            self.assertIn(f"\n  {state} ", out)

    def test_a_low_pane_fails_and_what_can_be_done_is_told(self):
        report = self.inspected(CHECK_FAILS, of_back(388.2))
        self.assertEqual(report["verdict"], "fail")
        failed = [check for check in report["checks"] if check["status"] == "fail"]
        self.assertEqual([(check["id"], check["about"]) for check in failed],
                         [("engagement", "back/top")])
        # height less opening less base groove
        self.assertAlmostEqual(failed[0]["value"], 388.2 - 380 - 6, places=9)
        rescues = [rescue for rescue in report["rescues"] if rescue["about"] == "back/top"]
        self.assertTrue(rescues)
        for rescue in rescues:
            self.assertIn(rescue["action"], failed[0]["advice"])
            self.assertLess(["pass", "warn", "fail"].index(rescue["after"]),
                            ["pass", "warn", "fail"].index(rescue["before"]))
        self.assertEqual([pane["pointer"] for pane in report["assumed"]],
                         ["/uncertainty/thickness"])

    def test_a_pane_of_the_right_size_needs_no_rescue(self):
        report = self.inspected(FINE, of_back(393.5))
        self.assertEqual([check["id"] for check in report["checks"]
                          if check["about"].startswith("back") and check["status"] != "pass"],
                         ["push-stress"])  # of the design: the sheet is as thick as it was bought
        self.assertEqual(report["rescues"], [])
        self.assertEqual(report["beyond_rescue"], [])

    def test_each_state_of_the_work_is_told_and_mended_as_it_can_be(self):
        def front(pane):
            return {"bowfront_measured": 1, "panes": [{"side": "front", **pane}]}
        blank = self.inspected(CHECK_FAILS, front({"blank": {"length": 560, "width": 399.5}}))
        self.assertEqual(blank["panes"][0]["stage"], "blank-cut")
        self.assertIn("trim the blank of the front pane in length by ",
                      blank["rescues"][0]["action"])
        self.assertTrue({"heat-face", "oven", "shrink-measured"}
                        <= {check["id"] for check in blank["checks"]})
        formed = self.inspected(CHECK_FAILS, front(
            {"formed": {"length": 537, "height": 388, "chord": 500, "rise": 79}}))
        self.assertEqual(formed["panes"][0]["stage"], "made")
        self.assertAlmostEqual(formed["panes"][0]["inside_radius"]["measured"],
                               (500**2 / 4 + 79**2) / (2 * 79), places=9)
        self.assertIn("cut the base groove under the front pane 3.9 mm deep instead of 6 mm",
                      [rescue["action"] for rescue in formed["rescues"]])
        self.assertNotIn("oven", {check["id"] for check in formed["checks"]})
        openings = self.inspected(FINE, {"bowfront_measured": 1, "openings": [
            {"side": "back", "length": 482, "height": 382}]})
        back = next(pane for pane in openings["panes"] if pane["side"] == "back")
        # The design's 502 x 393.5 mm for an opening of 478 x 380 mm
        self.assertEqual((back["to_cut"]["length"], back["to_cut"]["height"]), (506, 395.5))

    def test_the_least_margin_comes_first(self):
        report = self.inspected(CHECK_FAILS, of_back(388.2))
        worst = [margin["worst"] for margin in report["margins"]]
        self.assertEqual(worst, sorted(worst))
        self.assertEqual((report["margins"][0]["about"], report["margins"][0]["id"]),
                         ("back/top", "engagement"))
        self.assertAlmostEqual(report["margins"][0]["margin"], 388.2 - 380 - 6 - 3, places=9)

    def test_the_schema_is_sound_and_refuses_what_is_not_of_it(self):
        jsonschema.Draft7Validator.check_schema(SCHEMA)
        report = self.inspected(FINE, of_back(393.5))
        for change in ({"verdict": "good"}, {"bowfront_inspection": 2}, {"more": 1},
                       {"panes": [{"side": "top"}]}, {"margins": [{"about": "front"}]}):
            self.assertFalse(jsonschema.Draft7Validator(SCHEMA).is_valid({**report, **change}))

    def test_a_rise_within_its_uncertainty_tells_no_radius(self):
        path = self.write_case({"bowfront_measured": 1, "uncertainty": {"length": 1}, "panes": [
            {"side": "front", "formed": {"chord": 500, "rise": 0.8}}]}, "m.json")
        _, error = self.ends(BAD_INPUT, "inspect", PILOT_BOAT, path)
        self.assertIn("BF-IN-008 /panes/0", error)
        self.assertIn("tell no radius", error)

    def test_faults_of_the_measurements_are_told_all_at_once(self):
        path = self.write_case('{"bowfront_measured": 1,\n"pains": 3,\n"openings": 5}', "m.json")
        out, error = self.ends(BAD_INPUT, "inspect", PILOT_BOAT, path)
        self.assertEqual(out, "")
        self.assertIn("m.json:2:1: BF-IN-005 /pains", error)
        self.assertIn("m.json:3:13: BF-IN-003 /openings", error)

    def test_a_groove_through_its_board_can_t_be(self):
        path = self.write_case({"bowfront_measured": 1,
                                "grooves": [{"side": "back", "base": [20.5]}]}, "m.json")
        _, error = self.ends(BAD_INPUT, "inspect", PILOT_BOAT, path)
        self.assertIn("goes through the board", error)

    def test_a_file_that_is_not_there_is_bad_input(self):
        self.ends(BAD_INPUT, "inspect", PILOT_BOAT, "missing.json")
        self.ends(BAD_INPUT, "inspect", "missing.json", MEASURED)
        self.ends(BAD_INPUT, "inspect", PILOT_BOAT)

    def test_the_card_that_make_writes_can_be_filled_in(self):
        self.ends(FINE, "make", PILOT_BOAT, "-o", "out")
        card = self.folder / "out" / "measuring-card.json"
        text = card.read_text(encoding="utf-8")
        self.ends(FINE, "inspect", PILOT_BOAT, card)
        at = text.index('"length": null', text.index("// length along the mid-surface: 542.71 mm"))
        card.write_text(text[:at] + '"length": 555' + text[at + len('"length": null'):],
                        encoding="utf-8")
        out, _ = self.ends(CHECK_FAILS, "inspect", PILOT_BOAT, card)
        self.assertIn("Pane, front: 555.00 x", out)

    def test_the_order_of_work_measures_the_bent_pane_before_grooves_are_cut(self):
        out, _ = self.ends(FINE, "check", PILOT_BOAT, "--json")
        order = json.loads(out)["order_of_work"]
        steps = [entry["step"] for entry in order]
        formed = next(i for i, step in enumerate(steps) if step.startswith("Cut the front blank"))
        grooves = next(i for i, step in enumerate(steps) if step.startswith("Cut the grooves"))
        self.assertLess(formed, grooves)
        self.assertIn("Only then cut grooves", order[formed]["hold"])

    def test_the_schema_is_printed(self):
        for name in ("measured", "inspection"):
            out, _ = self.ends(FINE, "schema", name)
            self.assertEqual(json.loads(out)["$id"], f"{name}.schema.json")


if __name__ == "__main__":
    program.main()
