#!/usr/bin/python3
"""The chance of a first-time fit of the pilot boat, a million samples at once in numpy: the yardstick
that the program's draw is measured against, and a second way to its number.

    chance_numpy.py                        times a million samples
    chance_numpy.py BOWFRONT CASE          compares shares with the program's

Drawn as the program says it draws: normal, sigma half the limit, cut at the limit.
"""

import subprocess
import sys
import time

import numpy as np

from sums_numpy import (BASE, CLEAR_HEIGHT, CUTTER, DEPTH, DEPTH_12, DEPTH_15, DEPTH_6,
                        GROOVE, GROOVE_LIMIT, OPEN_HEIGHT, PANES, POST, POST_DEPTH, SHRINK, SPREAD,
                        THICKNESS, THICKNESS_LIMIT, TOP, TOP_CLEARANCE, WIDTH, limit, states,
                        stretched)

RADIUS = 420.0
CLEARANCES = (3.0, 4.5, 5.0, 5.25)  # from always fitting to mostly not
LEAST_ENGAGEMENT, LEAST_ROOM = 3.0, 0.5
SAMPLES = 1_000_000
AT_ONCE = 100_000  # as many as stay in the processor's caches
# Two draws of so many samples differ by more than five standard errors once in a million.
ERRORS = 5


class Pane:
    """What of a pane does not change from sample to sample."""

    def __init__(self, side, end_clearance):
        self.curved = side == "front"
        sweep = 2 * np.arcsin(WIDTH / 2 / RADIUS)
        whole = RADIUS * sweep if self.curved else WIDTH if side == "back" else DEPTH
        in_posts = 2 * RADIUS * np.arcsin(POST / 2 / RADIUS) if self.curved else POST
        self.opening = whole - in_posts
        self.left = 1 - SHRINK if self.curved else 1.0
        self.spread = SPREAD if self.curved else 0.0
        self.blank_length = (self.opening + 2 * (POST_DEPTH - end_clearance)) / self.left
        self.blank_width = (CLEAR_HEIGHT + BASE + TOP - TOP_CLEARANCE) / self.left
        crown = POST_DEPTH + CUTTER / 2 - GROOVE / 2
        half_groove, half_pane = GROOVE / 2, THICKNESS / 2
        if self.curved:
            outer = RADIUS + half_pane
            bottom = RADIUS * np.arcsin(RADIUS * np.sin(POST_DEPTH / RADIUS) / outer)
            square = (half_groove**2 - half_pane**2) / (4 * outer * RADIUS)
            rounded = crown + RADIUS * 2 * np.arcsin(np.sqrt(square))
        else:
            bottom, rounded = POST_DEPTH, crown + np.sqrt(half_groove**2 - half_pane**2)
        self.reach = min(bottom, rounded)
        turned = self.reach / RADIUS
        self.taken = RADIUS * (1 - np.cos(turned)) if self.curved else 0.0
        self.per_thickness = (1 + np.cos(turned)) / 2 if self.curved else 1.0
        self.states = []
        for sheet, tangential, radial in states():
            side_now = (float(stretched(np.array([RADIUS]), sweep, tangential)[0]) if self.curved
                        else whole * (1 if side == "back" else tangential))
            self.states.append((sheet, tangential, radial, side_now - in_posts * tangential))


def share(random, count):
    """Draws as shares of a limit: those beyond it are drawn again."""
    z = random.standard_normal(count)
    beyond = np.flatnonzero(np.abs(z) > 2)
    while beyond.size:
        z[beyond] = random.standard_normal(beyond.size)
        beyond = beyond[np.abs(z[beyond]) > 2]
    return z / 2


def fits(pane, frame, sheet, random, count):
    def cut(blank, shrink_share):
        drawn = blank + limit(blank) * share(random, count)
        return drawn * (pane.left - pane.spread * shrink_share)
    length, height = cut(pane.blank_length, sheet[0]), cut(pane.blank_width, sheet[1])
    base, top = BASE + DEPTH_6 * frame[1], TOP + DEPTH_12 * frame[2]
    start, end = (POST_DEPTH + DEPTH_15 * share(random, count) for _ in range(2))
    off = limit(pane.opening) * share(random, count)
    opening_height = CLEAR_HEIGHT + OPEN_HEIGHT * frame[0]
    thickness = (THICKNESS + THICKNESS_LIMIT * sheet[2]) / pane.left**2
    width = GROOVE + GROOVE_LIMIT * frame[3]
    good = (width >= thickness) & (width >= pane.taken + pane.per_thickness * thickness)
    for of_sheet, tangential, radial, opening in pane.states:
        long, tall = length * of_sheet, height * of_sheet
        low, high = base * radial, top * radial
        wide = opening + off
        up = tall - opening_height - low
        one, other = start * tangential, end * tangential
        play = wide + one + other + 2 * (pane.reach - POST_DEPTH) * tangential - long
        good &= ((low >= LEAST_ENGAGEMENT) & (up >= LEAST_ENGAGEMENT)
                 & (long - wide - other >= LEAST_ENGAGEMENT)
                 & (long - wide - one >= LEAST_ENGAGEMENT)
                 & (high - up >= LEAST_ROOM) & (play >= LEAST_ROOM))
    return good


def chance(end_clearance=CLEARANCES[0], samples=SAMPLES):
    random = np.random.default_rng(1)
    panes = [Pane(side, end_clearance) for side in PANES]
    hits = 0
    for done in range(0, samples, AT_ONCE):
        count = min(AT_ONCE, samples - done)
        sheet = [share(random, count) for _ in range(3)]
        frame = [share(random, count) for _ in range(4)]
        good = np.ones(count, dtype=bool)
        for pane in panes:
            good &= fits(pane, frame, sheet, random, count)
        hits += int(np.count_nonzero(good))
    return hits / samples


def share_of_program(program, case, end_clearance):
    table = subprocess.run([program, "sweep", case, "--samples", str(SAMPLES), "--vary",
                            f"/fit/end_clearance={end_clearance}:{end_clearance}:1"],
                           check=True, capture_output=True, text=True).stdout
    heading, line = table.splitlines()[:2]
    return float(dict(zip(heading.split(","), line.split(",")))["first_time_fit"])


def compare(program, case):
    off = False
    for end_clearance in CLEARANCES:
        theirs, ours = share_of_program(program, case, end_clearance), chance(end_clearance)
        error = np.sqrt(2 * max(ours * (1 - ours), 1 / SAMPLES) / SAMPLES)
        off |= abs(theirs - ours) > ERRORS * error
        print(f"end clearance {end_clearance} mm: {theirs:.6f} by the program, {ours:.6f} here, "
              f"standard error of the difference {error:.6f}")
    return 1 if off else 0


def measure():
    start = time.process_time()
    found = chance()
    print(f"{SAMPLES} samples in {time.process_time() - start:.2f} s of processor time, "
          f"share {found:.6f}")
    return 0


if __name__ == "__main__":
    sys.exit(compare(*sys.argv[1:]) if len(sys.argv) == 3 else measure())
