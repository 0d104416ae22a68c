"""inspect: the fit of what was measured, in words and as JSON, and its exit codes."""

import json

import program
from case_files import PILOT_BOAT
from program import BAD_INPUT, CHECK_FAILS, FINE

MEASURED = PILOT_BOAT.with_name("measured.json")


def of_back(height, length=502):
    return {"bowfront_measured": 1, "uncertainty": {"length": 0.2},
            "panes": [{"side": "back", "formed": {"length": length, "height": height}}]}


class Inspect(program.ProgramTest):
    def inspected(self, code, measured):
        path = self.write_case(measured, "measured.json")
        out, error = self.ends(code, "inspect", PILOT_BOAT, path, "--json")
        self.assertEqual(error, "")
        return json.loads(out)

    def test_the_example_fits_and_the_text_says_how(self):
        out, error = self.ends(FINE, "inspect", PILOT_BOAT, MEASURED)
        self.assertEqual(error, "")
        self.assertTrue(out.startswith("pilot-boat model case, as made: it fits"))
        self.assertIn("Pane, front: 544.20 x 393.30 x 3.11 mm in an opening of 518.50 x 380.30", out)
        self.assertIn("it shrank 1.32 % in length", out)
        # R = (c²/4 + f²)/(2f) of the chord and rise in the example
        self.assertIn(f"inside radius {(505.4**2 / 4 + 84.5**2) / (2 * 84.5):.2f} mm", out)
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
                          if check["about"].startswith("back") and check["status"] != "pass"], [])
        self.assertEqual(report["rescues"], [])
        self.assertEqual(report["beyond_rescue"], [])

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
        card.write_text(text.replace("// along the mid-surface: 542.71 mm\n        \"length\": null",
                                     "\"length\": 555", 1), encoding="utf-8")
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
        out, _ = self.ends(FINE, "schema", "measured")
        self.assertEqual(json.loads(out)["$id"], "measured.schema.json")


if __name__ == "__main__":
    program.main()
