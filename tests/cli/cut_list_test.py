"""The cutting list: exact sizes, and those in whole steps of what the shop can set."""

import csv
import io
from fractions import Fraction

import program
from case_files import changed
from program import FINE

INCH = 25.4
# mm: half of the list's last decimal
SHOWN = 0.005


def inches(text):
    number, unit = text.rsplit(" ", 1)
    assert unit == "in", text
    return float(sum(Fraction(part) for part in number.split())) * INCH


def millimetres(text):
    number, unit = text.rsplit(" ", 1)
    assert unit == "mm", text
    return float(number)


class CutList(program.ProgramTest):
    def rows(self, case):
        folder = self.folder / "out"
        self.ends(FINE, "make", self.write_case(case), "-o", folder)
        text = (folder / "cutlist.csv").read_text(encoding="utf-8")
        return {row["id"]: row for row in csv.DictReader(io.StringIO(text, newline=""))}

    def judge(self, rows, length_of, step):
        for name, row in rows.items():
            for what in ("length", "width", "thickness"):
                with self.subTest(f"{name} {what}"):
                    text = row[f"shop_{what}"]
                    if name.startswith("bead-"):
                        self.assertEqual(text, "")
                        continue
                    size = length_of(text)
                    over = float(row[f"shop_{what}_over_mm"])
                    self.assertAlmostEqual(size - over, float(row[f"{what}_mm"]), delta=2 * SHOWN)
                    if what != "thickness" or name.startswith("post-"):
                        steps = size / step
                        self.assertAlmostEqual(steps, round(steps), places=6)
                        self.assertLess(abs(over), step + SHOWN)
                    if not name.startswith(("pane-", "post-")):
                        self.assertGreaterEqual(over, 0)  # a board to cut the pattern from

    def test_half_millimetres_where_nothing_is_said(self):
        self.judge(self.rows(changed({})), millimetres, 0.5)

    def test_fractions_of_an_inch_with_what_they_are_over_or_under(self):
        rows = self.rows(changed({"/shop": {"step": "1/64 in"}}))
        self.judge(rows, inches, INCH / 64)
        self.assertEqual(rows["pane-front"]["shop_length"], "21 11/16 in")
        self.assertEqual(rows["post-back-left"]["shop_length"], "1 21/32 in")

    def test_rough_sizes_and_board_feet_of_solid_timber(self):
        rows = self.rows(changed({"/shop": {"allowance": {"length": 30, "width": 8,
                                                          "thickness": "1/8 in"}}}))
        back = rows["post-back-left"]
        rough = [float(back[f"rough_{what}_mm"]) for what in ("length", "width", "thickness")]
        self.assertEqual([float(size) for size in rough], [410, 50, round(42 + INCH / 8, 2)])
        # Source: a board foot is 144 in3 (NIST Handbook 130).
        volume = 410 * 50 * (42 + INCH / 8)
        self.assertAlmostEqual(float(back["board_feet"]), volume / (144 * INCH ** 3), places=6)
        self.assertAlmostEqual(float(back["volume_m3"]), volume / 1e9, places=6)
        self.assertEqual(rows["pane-front"]["board_feet"], "")
        self.assertEqual(rows["form-front-rib"]["rough_length_mm"], "")

    def test_a_step_of_no_use_is_refused(self):
        for step in (0, -1, "2 in", "half"):
            with self.subTest(step):
                _, error = self.ends(program.BAD_INPUT, "check",
                                     self.write_case(changed({"/shop": {"step": step}})))
                self.assertIn("/shop/step", error)


if __name__ == "__main__":
    program.main()
