"""Where `make` writes: whole or not at all, never over what is not its own."""

import json
import os
import resource
import shutil
import signal
import subprocess
import time

import program
from case_files import EXTRUDED, PILOT_BOAT, RECTANGLE, changed
from program import FINE, NO_OUTPUT, tree

SMALL_FILE = 20_000  # bytes; a STEP file is far larger, a report of the smallest case is not

ELSEWHERE = {"LC_ALL": "de_DE.UTF-8", "LANG": "tr_TR.UTF-8", "TZ": "Asia/Kathmandu",
             "HOME": "/nonexistent", "COLUMNS": "20", "NO_COLOR": "1", "TERM": "dumb"}


class OutputTest(program.ProgramTest):
    def make(self, code=FINE, case=PILOT_BOAT, folder="out", **options):
        return self.ends(code, "make", case, "-o", folder, **options)


class Places(OutputTest):
    def refused(self, folder, says):
        before = tree(self.folder)
        out, error = self.make(NO_OUTPUT, folder=folder)
        self.assertEqual(out, "")
        self.assertIn(says, error)
        self.assertEqual(error.count("\n"), 1, error)
        self.assertEqual(tree(self.folder), before)

    def test_a_folder_is_made_with_its_parents(self):
        for folder in ("out", "a/b/c", "slash/", "./dotted", "with space/ünï",
                       self.folder / "absolute"):
            with self.subTest(folder):
                self.make(folder=folder)
                self.assertTrue((self.folder / folder / "report.json").is_file())
        self.assertEqual({path.name for path in self.folder.iterdir()},
                         {"out", "a", "slash", "dotted", "with space", "absolute"})

    def test_an_empty_folder_is_taken(self):
        (self.folder / "out").mkdir()
        self.make()

    def test_places_where_nothing_can_be_written(self):
        self.write_case("a file", "file")
        for folder, says in (("file", "not a folder"), ("file/out", "Not a directory"),
                             ("/proc/out", "/proc"), ("/dev/null", "not a folder"),
                             ("/dev/full", "not a folder"), ("/dev/full/out", "Not a directory"),
                             ("x" * 300, "name too long"), ("x" * 250, "name too long"),
                             ("/", "not empty"), (".", "not empty"), ("..", "not empty")):
            with self.subTest(folder[:20]):
                self.refused(folder, says)

    def test_a_folder_with_foreign_files_is_left_as_it_is(self):
        reports = {"notes.txt": "mine", "report.json": '{ "report": "of something else" }',
                   ".hidden": "mine"}
        for name, text in reports.items():
            with self.subTest(name):
                folder = self.folder / f"with {name}"
                folder.mkdir()
                (folder / name).write_text(text, encoding="utf-8")
                self.refused(folder.name, "not empty")

    def test_links_that_lead_nowhere_are_refused(self):
        (self.folder / "dangling").symlink_to("nothing")
        (self.folder / "loop").symlink_to("loop")
        self.refused("dangling", "not a folder")
        self.refused("loop", "loop")

    def test_a_link_to_a_folder_stays_and_the_folder_is_filled(self):
        (self.folder / "real").mkdir()
        (self.folder / "link").symlink_to("real")
        for case in (PILOT_BOAT, self.write_case(changed(RECTANGLE))):
            self.make(case=case, folder="link")
            self.assertEqual(os.readlink(self.folder / "link"), "real")
            self.assertTrue((self.folder / "real/case.step").is_file())
        self.assertEqual({path.name for path in self.folder.iterdir()},
                         {"real", "link", "case.json"})

    def test_a_way_through_a_link_is_the_one_that_the_system_goes(self):
        (self.folder / "far/away").mkdir(parents=True)
        (self.folder / "link").symlink_to("far/away")
        self.make(folder="link/../out")
        self.assertTrue((self.folder / "far/out/report.json").is_file())
        self.assertEqual({path.name for path in self.folder.iterdir()}, {"far", "link"})

    def test_the_output_is_as_readable_as_the_user_has_it(self):
        for mask, folder_mode, file_mode in ((0o022, 0o755, 0o644), (0o077, 0o700, 0o600)):
            with self.subTest(oct(mask)):
                name = f"out-{mask:o}"
                self.make(folder=name, umask=mask)
                self.assertEqual((self.folder / name).stat().st_mode & 0o777, folder_mode)
                self.assertEqual((self.folder / name / "parts").stat().st_mode & 0o777, folder_mode)
                self.assertEqual((self.folder / name / "report.json").stat().st_mode & 0o777,
                                 file_mode)


class Replacing(OutputTest):
    def test_a_new_output_takes_the_whole_place_of_an_old_one(self):
        self.make()
        self.assertIn("form-front.step", tree(self.folder / "out"))
        case = self.write_case(changed(RECTANGLE))
        self.make(case=case)
        self.make(case=case, folder="fresh")
        self.assertEqual(tree(self.folder / "out"), tree(self.folder / "fresh"))
        self.assertEqual({path.name for path in self.folder.iterdir()},
                         {"out", "fresh", "case.json"})

    def test_the_makers_own_files_stay_in_a_renewed_output(self):
        self.make()
        out = self.folder / "out"
        case = changed(RECTANGLE)
        own = {"case.json": json.dumps(case), "parts/note.txt": "cut twice", "a/b.txt": "b"}
        for name, text in own.items():
            (out / name).parent.mkdir(exist_ok=True)
            (out / name).write_text(text, encoding="utf-8")
        (out / "link").symlink_to("a/b.txt")
        (out / "far").symlink_to("/proc")
        self.make(case=out / "case.json")
        found = tree(out)
        self.make(case=out / "case.json", folder="fresh")
        fresh = tree(self.folder / "fresh")
        self.assertEqual({name: found[name] for name in fresh}, fresh)
        self.assertEqual(set(found) - set(fresh), {*own, "a", "link", "far"})
        self.assertEqual(os.readlink(out / "link"), "a/b.txt")
        for name, text in own.items():
            self.assertEqual((out / name).read_text(encoding="utf-8"), text)

    def test_a_report_that_is_broken_costs_nothing(self):
        for text in ('{ "bowfront_report": 1', '{ "bowfront_report": 1, "files": 3 }',
                     '{ "bowfront_report": 1, "files": [{ "path": "../../x" }] }',
                     '"bowfront_report"'):
            with self.subTest(text):
                folder = self.folder / "broken"
                folder.mkdir()
                (folder / "report.json").write_text(text, encoding="utf-8")
                (folder / "note.txt").write_text("mine", encoding="utf-8")
                done = self.run_program("make", PILOT_BOAT, "-o", folder)
                self.assertIn(done.returncode, (FINE, NO_OUTPUT), done.stderr)
                self.assertEqual((folder / "note.txt").read_text(encoding="utf-8"), "mine")
                shutil.rmtree(folder)

    def test_runs_side_by_side_leave_one_whole_output(self):
        self.make(folder="fresh")
        runs = [subprocess.Popen([self.program, "make", PILOT_BOAT, "-o", "out"], cwd=self.folder,
                                 stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
                for _ in range(3)]
        for run in runs:
            _, error = run.communicate(timeout=program.HANGS)
            self.assertIn(run.returncode, (FINE, NO_OUTPUT), error)
        self.assertEqual(tree(self.folder / "out"), tree(self.folder / "fresh"))
        self.assertEqual({path.name for path in self.folder.iterdir()}, {"out", "fresh"})


class Interrupted(OutputTest):
    def setUp(self):
        super().setUp()
        self.old_case = self.write_case(changed(RECTANGLE), "old.json")
        self.make(case=self.old_case)
        self.old = tree(self.folder / "out")
        begun = time.monotonic()
        self.make(folder="new")
        self.lasts = time.monotonic() - begun
        self.new = tree(self.folder / "new")

    def interrupt(self, number, share, folder="out"):
        """Starts a run, sends a signal after a share of the time that it takes."""
        run = subprocess.Popen([self.program, "make", PILOT_BOAT, "-o", folder], cwd=self.folder,
                               stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        time.sleep(self.lasts * share)
        run.send_signal(number)
        _, error = run.communicate(timeout=program.HANGS)
        return run.returncode, error.decode()

    def test_the_old_output_stays_whole_and_nothing_is_left_beside_it(self):
        for number, shares in ((signal.SIGINT, (0.02, 0.2, 0.4, 0.6, 0.8)),
                               (signal.SIGTERM, (0.4, 0.6, 0.8)), (signal.SIGHUP, (0.4, 0.6, 0.8))):
            told = 0
            for share in shares:
                with self.subTest(f"{number.name} at {share}"):
                    code, error = self.interrupt(number, share)
                    self.assertIn(code, (NO_OUTPUT, FINE, -number), error)
                    wanted = self.new if code == FINE else self.old
                    self.assertEqual(tree(self.folder / "out"), wanted)
                    self.assertEqual({path.name for path in self.folder.iterdir()},
                                     {"old.json", "out", "new"})
                    told += code == NO_OUTPUT and "interrupted" in error
                    if code == FINE:
                        self.make(case=self.old_case)
            self.assertGreater(told, 0, f"no {number.name} met the run at work")

    def test_no_parents_are_left_of_an_output_that_never_came(self):
        for share in (0.3, 0.6):
            code, error = self.interrupt(signal.SIGINT, share, "a/b/c")
            if code != FINE:
                self.assertFalse((self.folder / "a").exists(), error)

    def test_a_limit_on_file_size_leaves_all_as_it_was(self):
        def limited():
            resource.setrlimit(resource.RLIMIT_FSIZE, (SMALL_FILE, SMALL_FILE))

        _, error = self.make(NO_OUTPUT, preexec_fn=limited)
        self.assertIn("File too large", error)
        self.assertEqual(tree(self.folder / "out"), self.old)
        self.assertEqual({path.name for path in self.folder.iterdir()}, {"old.json", "out", "new"})


class Repeated(OutputTest):
    def test_a_second_run_gives_the_same_bytes(self):
        for name, changes in (("pilot boat", {}), ("rectangle", RECTANGLE),
                              ("extruded", EXTRUDED)):
            with self.subTest(name):
                case = self.write_case(changed(changes))
                self.make(case=case, folder="first")
                self.make(case=case, folder="second")
                self.assertEqual(tree(self.folder / "first"), tree(self.folder / "second"))

    def test_place_language_and_time_zone_do_not_show(self):
        self.make()
        copy = self.folder / "elsewhere" / "another name.json"
        copy.parent.mkdir()
        copy.write_bytes(PILOT_BOAT.read_bytes())
        self.make(case=copy.name, folder="made here", cwd=copy.parent,
                  env={**os.environ, **ELSEWHERE})
        self.assertEqual(tree(copy.parent / "made here"), tree(self.folder / "out"))

    def test_the_order_of_keys_does_not_show(self):
        def turned(value):
            if isinstance(value, dict):
                return {key: turned(value[key]) for key in reversed(value)}
            return [turned(item) for item in value] if isinstance(value, list) else value

        self.make()
        case = json.loads(PILOT_BOAT.read_text(encoding="utf-8"))
        self.make(case=self.write_case(turned(case)), folder="turned")
        self.assertEqual(tree(self.folder / "turned"), tree(self.folder / "out"))

    def test_the_stamp_of_files_follows_the_environment_alone(self):
        def made(folder, **more):
            self.make(folder=folder, env={**os.environ, **more})
            return (self.folder / folder / "case.step").read_text(encoding="ascii")

        self.assertIn("2001-09-09T01:46:40", made("dated", SOURCE_DATE_EPOCH="1000000000"))
        for wrong in ("yesterday", "-1", "1e9", ""):
            self.assertIn("1970-01-01T00:00:00", made("undated", SOURCE_DATE_EPOCH=wrong))


if __name__ == "__main__":
    program.main()
