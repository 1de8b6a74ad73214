"""Draws the deliveries of the made-up cases from their seeds and writes them down: python tests/studies/make_cases.py

Run it after a change of the cases, the coach's errors or the pin table; then read the cases once again.
"""

import subprocess
import sys
from pathlib import Path

from bowlcore.coaching import case_seen
from bowlcore.coaching.cases import CASES, drawn_again

_HEAD = '''"""What was noted in the made-up cases, written by tests/studies/make_cases.py from the seeds of `cases`."""

from bowlcore.coaching.seen import Seen

SEEN = {
'''


def text() -> str:
    """The module's source."""
    lines = []
    for number, case in CASES.items():
        lines.append(f"    {number}: [\n")
        for seen in drawn_again(case):
            told = ", ".join(f"{name}={value!r}" for name, value in seen.told.items())
            lines.append(f"        Seen({told}),\n")
        lines.append("    ],\n")
    return _HEAD + "".join(lines) + "}\n"


if __name__ == "__main__":
    place = Path(case_seen.__file__)
    place.write_text(text())
    subprocess.run([sys.executable, "-m", "ruff", "format", "-q", str(place)], check=False)
