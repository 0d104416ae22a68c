"""Files that are no case: each ends with a message that names the place, and changes nothing."""

import os
import re
import threading

import program
from case_files import PILOT_BOAT, changed, pilot_boat
from program import BAD_INPUT, CHECK_FAILS, FINE

COMMANDS = {
    "check": lambda path: ("check", path),
    "check --json": lambda path: ("check", path, "--json"),
    "explain": lambda path: ("explain", path, "panes/front/blank/length"),
    "make": lambda path: ("make", path, "-o", "out"),
}
PLACE = r":(\d+):(\d+): (BF-IN-\d{3})"
MOST_BYTES = 4 << 20


def place_of(words, text):
    """Line and column, from 1, of where some words first stand."""
    before = text[: text.index(words)]
    return before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1


class BadInput(program.ProgramTest):
    def refused(self, path, code, place=None, pointer="", says=""):
        """Each command refuses the file, alike, by code, place and pointer; all stays as it is."""
        before = program.tree(self.folder)
        messages = set()
        for name, arguments in COMMANDS.items():
            with self.subTest(name):
                out, error = self.ends(BAD_INPUT, *arguments(path))
                self.assertEqual(out, "")
                messages.add(error)
        self.assertEqual(program.tree(self.folder), before)
        self.assertEqual(len(messages), 1)
        line = messages.pop().splitlines()[0]
        where = "" if place is None else f":{place[0]}:{place[1]}"
        start = f"{path}{where}: {code}{' ' + pointer if pointer else ''}: "
        self.assertTrue(line.startswith(start), f"{line}\ndoes not start with\n{start}")
        self.assertIn(says, line)
        self.assertIn("; ", line[len(start):], "what is wanted is not said")

    def refused_case(self, case, *expected, **more):
        self.refused(self.write_case(case), *expected, **more)


class Texts(BadInput):
    def test_an_empty_file(self):
        self.refused_case("", "BF-IN-002", (1, 1))

    def test_a_binary(self):
        self.refused_case(b"\x7fELF\x02\x01\x01\x00\xff", "BF-IN-001", (1, 8))

    def test_text_in_another_encoding(self):
        self.refused_case(b'{ "name": "K\xfchne" }', "BF-IN-001", (1, 13), says="UTF-8")

    def test_a_truncated_file_wherever_it_ends(self):
        text = PILOT_BOAT.read_text(encoding="utf-8").rstrip()
        for length in range(1, len(text), 97):
            out, error = self.ends(BAD_INPUT, "check", self.write_case(text[:length]))
            self.assertEqual(out, "")
            self.assertRegex(error, PLACE)
            self.assertIn("BF-IN-002", error)

    def test_words_that_are_no_json(self):
        for text, place, says in (
                ('{ "bowfront": NaN }', (1, 15), "NaN"),
                ('{ "bowfront": Infinity }', (1, 15), "Infinity"),
                ('{\n  "bowfront": 1,\n}', (3, 1), "comma"),
                ("{\n  'bowfront': 1\n}", (2, 3), "quote"),
                ('{ "bowfront": 01 }', (1, 15), "01"),
                ('{ "bowfront": 1 } more', (1, 19), "after the end"),
                ('{ "name": "a\nb" }', (1, 11), "closed"),
                ('{ "name": "\\x" }', (1, 11), "\\u and four digits"),
                ("/* no end", (1, 1), "comment")):
            with self.subTest(text):
                self.refused_case(text, "BF-IN-002", place, says=says)

    def test_json_that_is_no_object(self):
        for text in ("null", "[]", "1", '"case"', "true"):
            with self.subTest(text):
                self.refused_case(text, "BF-IN-003", (1, 1))

    def test_a_number_that_no_machine_holds(self):
        self.refused_case('{ "bowfront": 1e400 }', "BF-IN-009", (1, 15))

    def test_nesting_without_end(self):
        deep = 10_000
        for text in ("[" * deep, "[" * deep + "]" * deep, '{"a":' * deep + "1" + "}" * deep):
            with self.subTest(text[:5]):
                path = self.write_case(text)
                _, error = self.ends(BAD_INPUT, "check", path)
                self.assertIn("BF-IN-009", error)
                self.assertEqual(error.count("\n"), 1)

    def test_a_file_of_fifty_megabytes(self):
        path = self.write_case(b" " * (50 << 20))
        _, error = self.ends(BAD_INPUT, "check", path)
        self.assertTrue(error.startswith(f"{path}: BF-IN-009: "), error)

    def test_the_largest_file_is_read(self):
        text = PILOT_BOAT.read_text(encoding="utf-8")
        self.ends(FINE, "check", self.write_case(text.encode().ljust(MOST_BYTES)))
        self.ends(BAD_INPUT, "check", self.write_case(text.encode().ljust(MOST_BYTES + 1)))


class Files(BadInput):
    def test_a_file_that_is_not_there(self):
        self.refused(self.folder / "none.json", "BF-IN-001")
        self.refused(self.folder / "none" / "none.json", "BF-IN-001")

    def test_a_folder(self):
        (self.folder / "case.json").mkdir()
        self.refused(self.folder / "case.json", "BF-IN-001", says="directory")

    def test_devices(self):
        self.refused("/dev/null", "BF-IN-002", (1, 1))
        self.refused("/dev/zero", "BF-IN-009")

    def test_a_pipe_is_read_to_its_end(self):
        pipe = self.folder / "pipe.json"
        os.mkfifo(pipe)
        for text, code in ((PILOT_BOAT.read_bytes(), FINE), (b"", BAD_INPUT)):
            writer = threading.Thread(target=pipe.write_bytes, args=(text,))
            writer.start()
            self.ends(code, "check", pipe)
            writer.join()


class Values(BadInput):
    def test_each_wrong_value_is_named_by_its_pointer(self):
        wrong = {
            "/plan/width": ["520", "", "wide", None, True, [], {}, 0, -520, 1e308, 5e-324, "520 kg",
                            "1/0 in", "-3 in", "520 mm mm"],
            "/plan/front/radius": [0, -420, 1e9, "1e999"],
            "/plan/shape": ["oval", 7, "bow front"],
            "/frame/clear_height": [0, -1, "tall"],
            "/frame/timber": ["ironwood", 3],
            "/frame/groove/depth/post": [0, -15, "15 C"],
            "/fit/end_clearance": [-0.001, "3 s"],
            "/service/built_at/humidity": [45, "450 %", "45", "-1 %"],
            "/service/temperature": [["28 C", "15 C"], ["15 C"], "15 C", []],
            "/oven/accuracy": [5, "5 mm"],
            "/stock/0/count": [0, -1, 1.5, "2"],
            "/panes/0/sheet": ["cast-acrylik", "", 3],
            "/name": ["", "two\nlines", 5],
            "/bowfront": [2, "1", 1e308],
        }
        for pointer, values in wrong.items():
            for value in values:
                with self.subTest(f"{pointer} = {value!r}"):
                    path = self.write_case(changed({pointer: value}))
                    out, error = self.ends(BAD_INPUT, "check", path)
                    self.assertEqual(out, "")
                    found = re.findall(PLACE + r" (\S+?): ", error)
                    self.assertTrue(any(entry[3].startswith(pointer) for entry in found), error)

    def test_a_unit_that_is_wanted(self):
        self.refused_case('{\n"service": {\n  "built_at": { "temperature": 20 }\n}}',
                          "BF-IN-006", (1, 1), "/bowfront")
        path = self.write_case(changed({"/service/built_at/temperature": 20}))
        _, error = self.ends(BAD_INPUT, "check", path)
        self.assertIn("/service/built_at/temperature: ", error)
        self.assertIn("BF-IN-010", error)

    def test_an_unknown_key_is_offered_the_nearest(self):
        text = PILOT_BOAT.read_text(encoding="utf-8").replace(
            '"clear_height"', '"clear_hight": 380, "clear_height"')
        self.refused_case(text, "BF-IN-005", place_of('"clear_hight"', text), "/frame/clear_hight",
                          says='"clear_height"')

    def test_a_key_that_stands_twice(self):
        text = PILOT_BOAT.read_text(encoding="utf-8").replace(
            '"units": "mm",', '"units": "mm", "units": "in",')
        self.refused_case(text, "BF-IN-007", place_of('"units": "in"', text), "/units")

    def test_a_missing_key(self):
        case = pilot_boat()
        del case["frame"]["groove"]
        _, error = self.ends(BAD_INPUT, "check", self.write_case(case))
        self.assertIn(" /frame/groove: ", error)

    def test_all_faults_are_told_at_once(self):
        case = changed({"/plan/width": -1, "/frame/timber": "ironwood", "/fit/end_clearance": "3 s",
                        "/colour": "red"})
        _, error = self.ends(BAD_INPUT, "check", self.write_case(case))
        for pointer in ("/plan/width", "/frame/timber", "/fit/end_clearance", "/colour"):
            self.assertIn(f" {pointer}: ", error)
        places = [tuple(map(int, place[:2])) for place in re.findall(PLACE, error)]
        self.assertEqual(places, sorted(places))


class Contradictions(BadInput):
    """Values that are sound each by itself and can't hold together: what would do is said."""

    def contradiction(self, changes, pointer, says):
        path = self.write_case(changed(changes))
        _, error = self.ends(BAD_INPUT, "check", path)
        self.assertRegex(error, rf"{PLACE} {pointer}[:/]")
        self.assertIn(says, error)

    def test_a_chord_longer_than_the_diameter(self):
        self.contradiction({"/plan/front/radius": 259}, "/plan/front/radius", "260 mm")

    def test_an_arc_no_longer_than_its_chord(self):
        self.contradiction({"/plan/front": {"length": 520}}, "/plan/front/length", "520 mm")

    def test_two_measures_of_one_arc(self):
        self.contradiction({"/plan/front": {"radius": 420, "rise": 90}}, "/plan/front", "one of")

    def test_a_groove_deeper_than_half_the_post(self):
        self.contradiction({"/frame/groove/depth/post": 21}, "/frame/groove/depth/post", "21 mm")

    def test_a_groove_through_the_board(self):
        self.contradiction({"/frame/groove/depth/base": 20}, "/frame/groove/depth/base", "20 mm")

    def test_posts_that_leave_no_opening(self):
        self.contradiction({"/frame/post/width": 300, "/frame/post/depth": 300}, "/plan/depth",
                           "300 mm")

    def test_a_groove_that_runs_out_of_the_board(self):
        self.contradiction({"/frame/top/margin": 2}, "/frame/top/margin", "2.4 mm")

    def test_a_groove_wider_than_its_post(self):
        self.contradiction({"/frame/post/width": 9, "/frame/post/depth": 9,
                            "/frame/post/hold": "rabbet", "/frame/groove/depth/post": 4,
                            "/frame/groove/width": 10}, "/frame/groove/width", "less than 9 mm")

    def test_ribs_that_stand_in_one_another(self):
        self.contradiction({"/form/ribs/thickness": 200, "/form/ribs/max_spacing": 180},
                           "/form/ribs/max_spacing", "thinner ribs")
        self.contradiction({"/form/ribs/max_spacing": 0.01}, "/form/ribs/max_spacing", "spacing")

    def test_sizes_beyond_the_standards_table(self):
        self.contradiction({"/frame/clear_height": 5000}, "/tolerance/opening", "ISO 2768-1")

    def test_two_panes_on_one_side(self):
        case = pilot_boat()
        case["panes"][1]["side"] = "front"
        _, error = self.ends(BAD_INPUT, "check", self.write_case(case))
        self.assertIn(" /panes/1/side: ", error)

    def test_glass_that_would_have_to_bend(self):
        self.contradiction({"/panes/0/sheet": "float-glass"}, "/panes/0/sheet", "cast-acrylic")

    def test_a_lying_case_is_refused_by_name(self):
        self.contradiction({"/plan/axis": "horizontal"}, "/plan/axis", "not made by this version")

    def plan_is_refused(self, plan, pointer, *words):
        case = pilot_boat()
        case["plan"] = plan
        case["panes"] = [{**case["panes"][0], "side": "side-1"}]
        _, error = self.ends(BAD_INPUT, "check", self.write_case(case))
        self.assertRegex(error, rf"{PLACE} {pointer}:")
        for word in words:
            self.assertIn(word, error)

    def test_a_polygon_that_crosses_itself(self):
        self.plan_is_refused({"shape": "polygon",
                              "corners": [[0, 0], [500, 400], [500, 0], [0, 400]]},
                             "/plan/corners", "crosses itself", "side-1", "side-3")

    def test_a_polygon_that_runs_clockwise(self):
        self.plan_is_refused({"shape": "polygon", "corners": [[0, 0], [0, 400], [500, 400]]},
                             "/plan/corners", "clockwise")

    def test_a_chain_that_does_not_close(self):
        sides = [{"straight": 500, "turn": 90}, {"straight": 300, "turn": 90},
                 {"straight": 490, "turn": 90}, {"straight": 300}]
        self.plan_is_refused({"shape": "sides", "sides": sides}, "/plan/sides",
                             "ends 10 mm right", "closing")

    def test_an_arc_of_measures_that_no_arc_has(self):
        sides = [{"arc": {"radius": 100, "chord": 300}, "turn": 90}, {"straight": 300},
                 {"closing": True}]
        self.plan_is_refused({"shape": "sides", "sides": sides}, "/plan/sides/0",
                             "a radius of 100 mm and a chord of 300 mm", "at most 200 mm")

    def test_rails_along_a_side_of_several_pieces(self):
        case = pilot_boat()
        case["plan"] = {"shape": "sides", "sides": [
            {"run": [{"straight": 200}, {"arc": {"radius": 300, "sweep": 40}}, {"straight": 200}],
             "turn": 70},
            {"straight": 300}, {"closing": True}]}
        case["panes"] = [{**case["panes"][0], "side": "side-2"}]
        case["frame"]["base"]["build"] = "rails"
        _, error = self.ends(BAD_INPUT, "check", self.write_case(case))
        self.assertRegex(error, rf"{PLACE} /frame/base/build:")
        self.assertIn("side-1 has several pieces", error)

    def test_an_opening_cut_into_rails(self):
        self.contradiction({"/frame/base/build": "rails", "/access": {"kind": "lift-off-top"}},
                           "/frame/base/build", "ring of rails")

    def test_pegs_of_a_top_where_the_posts_have_joints(self):
        for joint in ("tenon", "dowel"):
            self.contradiction({"/frame/post/joint": joint,
                                "/access": {"kind": "lift-off-top", "held": "pegs"}},
                               "/access/held", joint + "s")

    def test_a_side_without_room_for_its_posts(self):
        self.plan_is_refused({"shape": "polygon", "count": 6, "side": 50}, "/plan/side",
                             "leave no opening")

    def test_an_arc_that_a_bow_runs_through_another_side(self):
        sides = [{"straight": 600, "turn": 90}, {"straight": 120, "turn": 90},
                 {"arc": {"chord": 600, "rise": 200}, "bow": "in", "turn": 90},
                 {"straight": 120}]
        self.plan_is_refused({"shape": "sides", "sides": sides}, "/plan/sides")


class Unharmed(BadInput):
    def test_a_bad_case_leaves_an_older_output_alone(self):
        self.ends(FINE, "make", PILOT_BOAT, "-o", "out")
        text = PILOT_BOAT.read_text(encoding="utf-8").replace('"radius": 420', '"radius": 100')
        self.refused_case(text, "BF-IN-008", place_of("100", text), "/plan/front/radius")

    def test_a_failing_check_is_no_bad_input(self):
        self.ends(CHECK_FAILS, "check", self.write_case(changed({"/frame/groove/width": 3.2})))


if __name__ == "__main__":
    program.main()
