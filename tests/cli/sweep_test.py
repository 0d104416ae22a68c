"""`sweep`: a table that agrees with `check`, whole whatever the threads and parts."""

import csv
import io
import json
import xml.etree.ElementTree

import program
from case_files import ABSENT, PILOT_BOAT, changed, pilot_boat
from program import BAD_INPUT, CHECK_FAILS, FINE, NO_OUTPUT
from report_paths import figures

EDGES = ("bottom", "top", "start", "end")
RADIUS = ("--vary", "/plan/front/radius=260:480:20")
CLEARANCE = ("--vary", "/fit/end_clearance=0:8:0.4")


class SweepTest(program.ProgramTest):
    def table(self, case, *options):
        out, _ = self.ends(FINE, "sweep", case, *options)
        self.assertTrue(out.endswith("\r\n"))
        self.assertEqual(out.count("\n"), out.count("\r\n"))
        return list(csv.DictReader(io.StringIO(out, newline="")))

    def refused(self, words, *options):
        _, error = self.ends(BAD_INPUT, "sweep", PILOT_BOAT, *options)
        self.assertIn("--", error)
        self.assertIn(words, error)


class Agreement(SweepTest):
    def agrees(self, row, changes, case=None):
        """Every figure of a line is the one that `check` prints of the file with the values in it."""
        done = self.run_program("check", self.write_case(changed(changes, case)), "--json",
                                "--samples", 1)
        self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
        report = json.loads(done.stdout)
        known = dict(figures(report["panes"], "panes"))
        for path, text in row.items():
            if not path.startswith("panes/"):
                continue
            pane, _, rest = path.partition("/face_clearance/")
            asked = [f"{pane}/edges/{edge}/face_clearance/{rest}" for edge in EDGES] if rest \
                else [path]
            self.assertEqual(float(text), min(known[figure] for figure in asked), path)
        failing = [check for check in report["checks"] if check["status"] == "fail"
                   and check["id"] != "first-time-fit"]
        self.assertEqual(row["verdict"] == "fail", bool(failing))

    def test_of_the_pilot_boat(self):
        rows = self.table(PILOT_BOAT, "--vary", "/plan/front/radius=300:440:70",
                          "--vary", "/panes/0/thickness=2:4:0.5")
        self.assertEqual(len(rows), 15)
        for row in rows[::4]:
            self.agrees(row, {pointer: float(row[pointer])
                              for pointer in ("/plan/front/radius", "/panes/0/thickness")})

    def test_in_inches_and_per_cent(self):
        case = self.in_inches()
        path = self.write_case(case)
        rows = self.table(path, "--vary", "/fit/end_clearance=0.1:0.2:0.05",
                          "--vary", "/sheets/batch-7/shrink/along=1 %:2 %:0.5 %")
        self.assertEqual(len(rows), 9)
        for row in rows[::4]:
            self.agrees(row, {"/fit/end_clearance": float(row["/fit/end_clearance"]),
                              "/sheets/batch-7/shrink/along":
                                  row["/sheets/batch-7/shrink/along"] + " %"}, case)

    @staticmethod
    def in_inches():
        def told(node, key=None):
            if isinstance(node, dict):
                return {k: told(v, k) for k, v in node.items()}
            if isinstance(node, list):
                return [told(v, key) for v in node]
            bare = isinstance(node, (int, float)) and key not in ("bowfront", "count")
            return f"{node} mm" if bare else node
        case = told(pilot_boat())
        case["units"] = "in"
        case["fit"]["end_clearance"] = 0.12
        case["sheets"] = {"batch-7": {"like": "cast-acrylic", "shrink": {"along": "1.4 %"}}}
        case["panes"][0]["sheet"] = "batch-7"
        return case

    def test_what_follows_a_value_follows_it_here(self):
        # A post's depth, left out, is its width.
        case = changed({"/frame/post/depth": ABSENT})
        for row in self.table(self.write_case(case), "--vary", "/frame/post/width=42:46:2"):
            self.agrees(row, {"/frame/post/width": float(row["/frame/post/width"])}, case)

    def test_of_values_that_the_file_leaves_out(self):
        case = changed({"/fit": ABSENT})
        path = self.write_case(case)
        for row in self.table(path, "--vary", "/fit/top_clearance=3:5:1"):
            self.agrees(row, {"/fit/top_clearance": float(row["/fit/top_clearance"])}, case)

    def test_library_shrink_is_varied_like_a_sheet_of_the_makers_own(self):
        library = self.table(PILOT_BOAT, "--vary", "/sheets/cast-acrylic/shrink/along=1 %:2 %:1 %")
        own = self.write_case(changed({"/sheets": {"mine": {"like": "cast-acrylic",
                                                            "shrink": {"along": "1.5 %"}}},
                                       "/panes/0/sheet": "mine"}))
        own = self.table(own, "--vary", "/sheets/mine/shrink/along=1:2:1")
        for first, second in zip(library, own):
            self.assertEqual(first["panes/front/blank/length"],
                             second["panes/front/blank/length"])


class Table(SweepTest):
    def test_same_bytes_by_any_number_of_threads_and_parts(self):
        whole = self.ends(FINE, "sweep", PILOT_BOAT, *RADIUS, *CLEARANCE, "--jobs", 1)[0]
        self.assertEqual(len(whole.splitlines()), 1 + 12 * 21)
        many = self.ends(FINE, "sweep", PILOT_BOAT, *RADIUS, *CLEARANCE, "--jobs", 4)[0]
        self.assertEqual(many, whole)
        parts = [self.ends(FINE, "sweep", PILOT_BOAT, *RADIUS, *CLEARANCE, "--shard", f"{i}/3")[0]
                 for i in (1, 2, 3)]
        self.assertEqual("".join(parts), whole)
        self.assertTrue(all(parts))

    def test_impossible_variants_have_a_line_and_a_reason(self):
        rows = self.table(PILOT_BOAT, "--vary", "/plan/front/radius=200:300:100",
                          "--vary", "/frame/groove/depth/top=-1:11:12")
        self.assertEqual([row["verdict"] for row in rows],
                         ["impossible", "impossible", "impossible", "warn"])
        self.assertIn("out of range", rows[0]["reason"])
        self.assertIn("can't reach", rows[1]["reason"])
        self.assertEqual(rows[3]["reason"], "")
        self.assertEqual(rows[0]["panes/front/blank/length"], "")

    def test_new_file_is_written_and_never_over_another(self):
        place = self.folder / "table.csv"
        self.ends(FINE, "sweep", PILOT_BOAT, *RADIUS, "-o", place)
        first = place.read_bytes()
        self.assertEqual(first.decode(), self.run_program(
            "sweep", PILOT_BOAT, *RADIUS).stdout.decode())
        self.ends(NO_OUTPUT, "sweep", PILOT_BOAT, *CLEARANCE, "-o", place)
        self.assertEqual(place.read_bytes(), first)

    def test_chance_where_it_is_asked_for(self):
        rows = self.table(PILOT_BOAT, "--vary", "/fit/end_clearance=3:9:6", "--samples", 200)
        self.assertEqual([float(row["first_time_fit"]) for row in rows], [1, 0])

    def test_drawing_is_svg(self):
        for name, options in (("one.svg", RADIUS), ("two.svg", (*RADIUS, *CLEARANCE))):
            self.ends(FINE, "sweep", PILOT_BOAT, *options, "--plot", self.folder / name)
            root = xml.etree.ElementTree.parse(self.folder / name).getroot()
            texts = [text.text for text in root.iter("{http://www.w3.org/2000/svg}text")]
            self.assertIn("/plan/front/radius", texts)
            self.assertIn("300", texts)


class Refusals(SweepTest):
    def test_of_what_to_vary(self):
        for vary, words in (("/plan/widht=1:2:1", "did you mean /plan/width?"),
                            ("/frame/timber=1:2:1", "no number of the case"),
                            ("/stock/0/thickness=1:2:1", "no number of the case"),
                            ("/panes/7/thickness=1:2:1", "did you mean /panes/"),
                            ("/plan/width=1:2", "FROM:TO:STEP"),
                            ("/plan/width=5:1:1", "other sign"),
                            ("/plan/width=1:5:0", "the step is 0"),
                            ("/plan/width=a:5:1", "\"a\" is not a number"),
                            ("/plan/width=1 mm:5 in:1", "are mixed"),
                            ("/plan/width=-5:-1:1", "out of range"),
                            ("plan/width=1:5:1", "names no value")):
            with self.subTest(vary):
                self.refused(words, "--vary", vary)

    def test_of_too_many_variants(self):
        self.refused("10000000", "--vary", "/plan/width=1:10000:0.1",
                     "--vary", "/plan/depth=1:10000:1")

    def test_of_a_value_varied_twice(self):
        self.refused("twice", *RADIUS, *RADIUS)

    def test_of_parts_that_are_none(self):
        for shard in ("0/2", "3/2", "1", "1/2/3", "a/b", "-1/2"):
            with self.subTest(shard):
                self.refused("--shard", *RADIUS, "--shard", shard)

    def test_of_drawings_that_cannot_be(self):
        self.refused("--plot", *RADIUS, "--plot", "x.svg", "--shard", "1/2")
        self.refused("--plot", *RADIUS, *CLEARANCE, "--vary", "/plan/width=500:520:10",
                     "--plot", "x.svg")
        self.assertFalse(list(self.folder.iterdir()))


if __name__ == "__main__":
    program.main()
