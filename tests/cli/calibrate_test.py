"""From coupons to the case file: `bowfront calibrate` and what is done with its entry."""

import json

import program
from case_files import PILOT_BOAT, changed, pilot_boat
from program import BAD_INPUT, CHECK_FAILS, FINE, NO_OUTPUT, ROOT

COUPONS = ROOT / "examples" / "pilot-boat" / "coupons.csv"
HEADER = "direction,before,after\n"


def shrink_checks(report):
    return {check["about"]: check["status"] for check in json.loads(report)["checks"]
            if check["id"] == "shrink-measured"}


class Calibrate(program.ProgramTest):
    def write(self, text, name="coupons.csv"):
        return self.write_case(text, name)

    def test_the_entry_of_the_example_ends_its_warning(self):
        before, _ = self.ends(FINE, "check", PILOT_BOAT, "--json")
        self.assertEqual(shrink_checks(before), {"front": "warn"})
        out, error = self.ends(FINE, "calibrate", COUPONS)
        self.assertIn('Put the entry "measured"', error)
        case = {**pilot_boat(), **json.loads(out)}
        path = self.write_case(changed({"/panes/0/sheet": "measured"}, case))
        after, _ = self.ends(FINE, "check", path, "--json")
        self.assertEqual(shrink_checks(after), {"front": "pass"})

    def test_the_figures_are_those_of_the_rows(self):
        # Worked by hand: shrinks of 1, 2 and 3 %; s = 1 %, t = 4.303 at 2 degrees of freedom, so
        # the next lies within 4.303 * sqrt(4/3) = 4.97 %.
        path = self.write(HEADER + "along,100,99\nalong,100,98\nalong,100,97\n")
        out, error = self.ends(FINE, "calibrate", path)
        shrink = json.loads(out)["sheets"]["measured"]["shrink"]
        self.assertEqual(shrink["along"], "2 %")
        self.assertAlmostEqual(float(shrink["spread"]["along"].split()[0]), 4.969, delta=0.001)
        row = next(line for line in error.splitlines() if line.startswith("shrink along "))
        self.assertEqual(row.split(), ["shrink", "along", "3", "2.000", "%", "1.000", "%", "0.577",
                                       "%", "+-4.968", "%"])
        out, error = self.ends(FINE, "calibrate", path, "--json")
        self.assertEqual(error, "")
        series = json.loads(out)["series"][0]
        self.assertEqual([one["line"] for one in series["measured"]], [2, 3, 4])
        self.assertAlmostEqual(series["standard_error"], 0.01 / 3 ** 0.5)
        self.assertEqual(json.loads(out)["sheets"]["measured"]["shrink"], shrink)

    def test_name_and_likeness_are_those_asked_for(self):
        out, _ = self.ends(FINE, "calibrate", COUPONS, "--like", "extruded-acrylic", "--key", "b 7")
        self.assertEqual(json.loads(out)["sheets"]["b 7"]["like"], "extruded-acrylic")

    def test_samples_that_tell_nothing_are_a_failed_check(self):
        path = self.write(HEADER + "along,100,105\nalong,100,95\nalong,100,85\n")
        out, error = self.ends(CHECK_FAILS, "calibrate", path)
        self.assertEqual(json.loads(out), {"sheets": {"measured": {"like": "cast-acrylic"}}})
        self.assertIn("measure again", error)

    def test_a_wrong_command_line_prints_no_product(self):
        wrong = {
            (): "COUPONS",
            ("",): "empty",
            (COUPONS, "--like", "cast-acrilic"): "did you mean cast-acrylic",
            (COUPONS, "--like", "float-glass"): "can be heated",
            (COUPONS, "--key", ""): "the text is empty",
            (COUPONS, "--key", "petg"): "is a sheet of the library",
            (COUPONS, "--key", "a\nb"): "control character",
            ("missing.csv",): "BF-IN-001",
        }
        for arguments, named in wrong.items():
            with self.subTest(arguments):
                out, error = self.ends(BAD_INPUT, "calibrate", *arguments)
                self.assertEqual(out, "")
                self.assertIn(named, error)

    def test_every_fault_of_the_file_is_told_at_once(self):
        path = self.write(HEADER + "alnog,100,99\nalong,x,99\nalong,100\n")
        out, error = self.ends(BAD_INPUT, "calibrate", path)
        self.assertEqual(out, "")
        self.assertEqual([line.split(" ")[0].removeprefix(f"{path}:") for line in
                          error.splitlines()], ["2:1:", "3:7:", "4:1:"])

    def test_hostile_files_are_refused_in_words(self):
        for name, content in {
            "zero bytes": b"\0" * 1000,
            "random bytes": bytes(range(256)) * 40,
            "one long quote": b'direction,before,after\n"' + b"x" * 500_000,
            "commas": b"direction" + b"," * 900_000,
            "too large": b"#" * (1 << 21),
            "nothing": b"",
        }.items():
            with self.subTest(name):
                out, error = self.ends(BAD_INPUT, "calibrate", self.write(content))
                self.assertEqual(out, "")
                self.assertIn("BF-IN-", error)

    def test_a_full_device_is_an_output_that_could_not_be_written(self):
        with open("/dev/full", "wb") as full:
            self.ends(NO_OUTPUT, "calibrate", COUPONS, stdout=full)


if __name__ == "__main__":
    program.main()
