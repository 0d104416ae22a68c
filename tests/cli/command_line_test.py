"""Commands, options, exit codes, and where output goes."""

import json
import os
import re
import subprocess
import tempfile
from pathlib import Path

import program
from case_files import PILOT_BOAT, VARIANTS, changed, failing
from program import BAD_INPUT, CHECK_FAILS, FINE, NO_OUTPUT, OWN_FAULT

SHAPES = ("access-hinged-door", "access-lift-off-top", "access-lift-out-pane",
          "access-sliding-pair", "bow-ends", "bow-front", "half-round", "polygon", "quarter-round",
          "rectangle", "serpentine", "sides")
KERNEL = "libTK"  # how the kernel's libraries begin


class Usage(program.ProgramTest):
    def test_version_is_one_line(self):
        out, error = self.ends(FINE, "--version")
        self.assertRegex(out, r"\Abowfront \d+\.\d+\.\d+\n\Z")
        self.assertEqual(error, "")

    def test_a_wrong_command_line_says_what_is_wrong_and_prints_no_product(self):
        wrong = {
            (): "subcommand",
            ("frobnicate",): "frobnicate",
            ("chekc", PILOT_BOAT): "did you mean check",
            ("check",): "CASE",
            ("check", PILOT_BOAT, "more"): "more",
            ("check", PILOT_BOAT, "--frob"): "--frob",
            ("check", ""): "empty",
            ("make", PILOT_BOAT): "--output",
            ("make", PILOT_BOAT, "-o"): "--output",
            ("make", PILOT_BOAT, "-o", ""): "empty",
            ("make", PILOT_BOAT, "-o", "out", "--dxf", "r13"): "ac1015",
            ("start", "pyramid"): "bow-front",
            ("materials", "chery"): "did you mean cherry",
            ("materials", "xyzzy"): "walnut",
            ("schema", "cases"): "case",
            ("explain", PILOT_BOAT): "QUANTITY",
            ("explain", PILOT_BOAT, "panes/front/blank/lenght"):
                "did you mean panes/front/blank/length",
        }
        for arguments, named in wrong.items():
            with self.subTest(arguments):
                out, error = self.ends(BAD_INPUT, *arguments)
                self.assertEqual(out, "")
                self.assertIn(named, error)
        self.assertEqual(program.tree(self.folder), {})


class ExitCodes(program.ProgramTest):
    def test_each_cause_has_its_code(self):
        self.ends(FINE, "check", PILOT_BOAT)
        self.ends(CHECK_FAILS, "check", self.write_case(failing()))
        self.ends(BAD_INPUT, "check", self.write_case("{", "broken.json"))
        self.ends(NO_OUTPUT, "make", PILOT_BOAT, "-o", "/dev/null")

    def test_a_program_without_its_kernel_module_is_at_fault_itself(self):
        alone = self.folder / "bin" / "bowfront"
        alone.parent.mkdir()
        alone.write_bytes(Path(self.program).read_bytes())
        alone.chmod(0o755)
        done = subprocess.run([alone, "make", PILOT_BOAT, "-o", self.folder / "out"], check=False,
                              capture_output=True, timeout=program.HANGS)
        self.assertEqual(done.returncode, OWN_FAULT)
        self.assertIn(b"bowfront-kernel.so", done.stderr)
        self.assertEqual([path.name for path in self.folder.iterdir()], ["bin"])


class Streams(program.ProgramTest):
    def test_standard_output_holds_the_product_alone(self):
        products = {
            ("start",): lambda text: text.startswith("//"),
            ("check", PILOT_BOAT): lambda text: text.startswith("pilot-boat model case: "),
            ("check", PILOT_BOAT, "--json"): json.loads,
            ("explain", PILOT_BOAT, "panes/front/blank/length"):
                lambda text: text.startswith("L₀ = "),
            ("explain", PILOT_BOAT, "panes/front/blank/length", "--json"): json.loads,
            ("materials",): lambda text: "cast-acrylic" in text,
            ("materials", "cherry"): lambda text: "cherry" in text,
            ("schema", "case"): json.loads,
            ("schema", "report"): json.loads,
        }
        for arguments, is_product in products.items():
            with self.subTest(arguments):
                out, error = self.ends(FINE, *arguments)
                self.assertTrue(is_product(out))
                self.assertEqual(error, "")

    def test_make_prints_the_report_to_standard_output_only_when_asked(self):
        out, error = self.ends(FINE, "make", PILOT_BOAT, "-o", "out")
        self.assertEqual(out, "")
        self.assertIn("pilot-boat model case: ", error)
        out, error = self.ends(FINE, "make", PILOT_BOAT, "-o", "out", "--json")
        self.assertEqual(out, (self.folder / "out/report.json").read_text(encoding="utf-8"))
        self.assertEqual(error.count("\n"), 1)

    def test_no_control_characters_where_no_terminal_is(self):
        _, error = self.ends(FINE, "make", PILOT_BOAT, "-o", "out")
        self.assertNotRegex(error, r"[\r\x1b]")

    def test_a_full_device_is_an_output_that_could_not_be_written(self):
        for arguments in (["--help"], ["--version"], ["check", "--help"], ["check", PILOT_BOAT],
                          ["start"], ["schema", "case"], ["materials"],
                          ["explain", PILOT_BOAT, "plan/front/radius"]):
            with self.subTest(arguments), open("/dev/full", "wb") as full:
                _, error = self.ends(NO_OUTPUT, *arguments, stdout=full)
                self.assertIn("standard output", error)

    def test_a_reader_that_went_away_leaves_a_whole_output(self):
        for arguments in (["check", PILOT_BOAT], ["make", PILOT_BOAT, "-o", "out", "--json"]):
            with self.subTest(arguments):
                reader, writer = os.pipe()
                os.close(reader)
                with os.fdopen(writer, "wb") as closed:
                    done = self.run_program(*arguments, stdout=closed)
                self.assertNotIn(done.returncode, (FINE, OWN_FAULT))
        self.assertEqual([path.name for path in self.folder.iterdir()], ["out"])
        json.loads((self.folder / "out/report.json").read_text(encoding="utf-8"))

    def test_closed_streams_never_put_words_into_a_file(self):
        sound = self.folder / "sound"
        self.ends(FINE, "make", PILOT_BOAT, "-o", sound)
        command = f'"{self.program}" make "{PILOT_BOAT}" -o closed >&- 2>&- <&-'
        subprocess.run(["sh", "-c", command], cwd=self.folder, check=False, timeout=program.HANGS)
        self.assertEqual(program.tree(self.folder / "closed"), program.tree(sound))


class Kernel(program.ProgramTest):
    def loaded(self, *arguments):
        """Names of the shared libraries that a command loads, by the dynamic linker's own words."""
        with tempfile.TemporaryFile() as log:
            self.run_program(*arguments, stdout=subprocess.DEVNULL, stderr=log,
                             env={**os.environ, "LD_DEBUG": "libs"})
            log.seek(0)
            return set(re.findall(r"calling init: \S*/(\S+)", log.read().decode()))

    def test_only_make_loads_the_solid_kernel(self):
        kernel = {name for name in self.loaded("make", PILOT_BOAT, "-o", "out")
                  if name.startswith(KERNEL)}
        self.assertTrue(kernel)
        for arguments in (["check", PILOT_BOAT], ["check", PILOT_BOAT, "--json"], ["--help"],
                          ["explain", PILOT_BOAT, "parts/base/volume"], ["start"], ["materials"]):
            with self.subTest(arguments):
                libraries = self.loaded(*arguments)
                self.assertTrue(libraries)
                self.assertEqual({name for name in libraries if name.startswith(KERNEL)}, set())


class Start(program.ProgramTest):
    def test_every_starter_is_a_case_that_passes(self):
        for shape in SHAPES:
            with self.subTest(shape):
                text, _ = self.ends(FINE, "start", shape)
                out, _ = self.ends(FINE, "check", self.write_case(text), "--json")
                self.assertIn(json.loads(out)["verdict"], ("pass", "warn"))

    def test_the_help_names_every_starter(self):
        out, _ = self.ends(FINE, "start", "--help")
        _, error = self.ends(BAD_INPUT, "start", "xyzzy")
        for shape in SHAPES:
            self.assertIn(shape, out)
        self.assertEqual(set(error.strip().split("there are ")[1].split(", ")), set(SHAPES))

    def test_the_file_holds_what_standard_output_would(self):
        for shape in SHAPES:
            text, _ = self.ends(FINE, "start", shape)
            self.ends(FINE, "start", shape, "-o", f"{shape}.json")
            self.assertEqual((self.folder / f"{shape}.json").read_text(encoding="utf-8"), text)

    def test_no_file_is_ever_overwritten(self):
        self.write_case("mine", "mine.json")
        (self.folder / "link.json").symlink_to("mine.json")
        (self.folder / "dangling.json").symlink_to("nothing.json")
        (self.folder / "folder").mkdir()
        before = program.tree(self.folder)
        for name in ("mine.json", "link.json", "dangling.json", "folder", "/dev/null",
                     "mine.json/x.json", "missing/x.json"):
            with self.subTest(name):
                _, error = self.ends(NO_OUTPUT, "start", "-o", name)
                self.assertIn(name, error)
        self.assertEqual(program.tree(self.folder), before)


class Explain(program.ProgramTest):
    def test_a_derivation_ends_in_what_was_given(self):
        out, _ = self.ends(FINE, "explain", PILOT_BOAT, "panes/front/blank/length")
        for word in ("L₀", "= L/(1 − s_a)", "given at line 5", "library: "):
            self.assertIn(word, out)

    def test_a_check_is_explained_too(self):
        out, _ = self.ends(FINE, "explain", PILOT_BOAT, "checks/engagement/front/top")
        self.assertIn("BF-FIT-001", out)
        self.assertIn("settled by gravity", out)


class Checking(program.ProgramTest):
    def test_every_variant_is_checked_without_a_fault(self):
        for name, changes in VARIANTS.items():
            with self.subTest(name):
                path = self.write_case(changed(changes))
                done = self.run_program("check", path)
                self.assertIn(done.returncode, (FINE, CHECK_FAILS), done.stderr)
                self.assertEqual(done.stderr, b"")
                self.assertNotRegex(done.stdout.decode(), r"(?i)\b(nan|inf)\b")
        self.assertEqual(list(program.tree(self.folder)), ["case.json"])


if __name__ == "__main__":
    program.main()
