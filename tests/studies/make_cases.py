"""Draws the deliveries of the made-up cases and writes them down: python tests/studies/make_cases.py

For each case the first seed is taken whose balls hang together, show what the case is about, and are read
so that the case teaches something. Run it after a change of the cases, of the coach's errors or of the
reading; then read the cases once again. They are picked, and the lesson says so.
"""

import subprocess
import sys
from itertools import count
from pathlib import Path

from bowlcore.coaching import case_seen
from bowlcore.coaching.cases import BELIEVED, CASES, DIFFER, OPEN, drawn
from bowlcore.coaching.hypotheses import EARLY, EDGE, LATE, OWN, ROLLS
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.reading import CANNOT_TELL, read_reaction
from bowlcore.coaching.seen import contradictions

_HEAD = '''"""What was noted in the made-up cases, written by tests/studies/make_cases.py."""

from bowlcore.coaching.seen import Seen

'''
_SURE = {OWN: 0.45, OPEN: 0.5}  # least weight of the truth in the reading; 0.6 for the others


def fits(case, balls) -> bool:
    """True if these balls make a case."""
    hits, finishes = [ball.hit for ball in balls], {ball.finish for ball in balls}
    if any(contradictions(ball, case.known) for ball in balls):
        return False
    if any(ball.hit == "missed" and not (ball.leave and 1 in ball.leave) for ball in balls):
        return False
    shows = {
        OWN: "light" in hits and {"high", "nose"} & set(hits),
        EDGE: "light" in hits and {"high", "nose"} & set(hits) and "unsteady" in finishes,
        ROLLS: hits.count("light") >= 2 and "stood up" in finishes,
        OPEN: all(len(ball.leave or ()) == 1 for ball in balls),
    }
    return bool(shows.get(case.truth, True)) and read_as(case, balls)


def read_as(case, balls) -> bool:
    """True if the reading finds the truth, surely enough."""
    wanted = {"left": EARLY, "right": LATE} if case.truth == DIFFER else {None: case.truth}
    wanted = {None: CANNOT_TELL} if case.truth == OPEN else wanted
    for lane, name in wanted.items():
        first = read_reaction([ball for ball in balls if ball.lane == lane], case.known, lane_of(BELIEVED))[0]
        if first.name != name or first.weight < _SURE.get(case.truth, 0.6):
            return False
    return True


def text(seeds, seen) -> str:
    """The module's source."""
    lines = [f"SEEDS = {seeds!r}\nSEEN = {{\n"]
    for number, balls in seen.items():
        lines.append(f"    {number}: [\n")
        for ball in balls:
            told = ", ".join(f"{name}={value!r}" for name, value in ball.told.items())
            lines.append(f"        Seen({told}),\n")
        lines.append("    ],\n")
    return _HEAD + "".join(lines) + "}\n"


def main():
    seeds = {
        number: next(seed for seed in count(1000 * number, 2) if fits(case, drawn(case, seed)))
        for number, case in CASES.items()
    }
    place = Path(case_seen.__file__)
    place.write_text(text(seeds, {number: drawn(CASES[number], seed) for number, seed in seeds.items()}))
    subprocess.run([sys.executable, "-m", "ruff", "format", "-q", str(place)], check=False)
    print(seeds)


if __name__ == "__main__":
    main()
