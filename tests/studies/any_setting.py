"""Every panel at settings drawn at random: python tests/studies/any_setting.py 100000 1 [--pictures 2000]

No error but one clear sentence; no number that is none; shares between 0 and 100 %; a ball that hooks before it
rolls; a picture with its point in words. Prints a line for each panel and writes any_setting.csv beside itself.
"""

import argparse
import csv
import platform
import re
import sys
import time
from pathlib import Path
from unittest.mock import patch

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "display"))
from panels_help import ALL_PANELS, RACK_PANELS  # noqa: E402

from bowlcore.display.controls import Number  # noqa: E402

PANELS = [*ALL_PANELS, *RACK_PANELS]
_NO_NUMBER = re.compile(r"\b(?:nan|NaN|inf|None|True|False)\b|Traceback|<class")
_SHARE = re.compile(r"(?<![\d.,-])(\d+(?:\.\d+)?) %")
_HOOKS_THEN_ROLLS = re.compile(
    r"starts to hook at ([\d.]+) (?:ft|m)\b.{0,120}?rolls from ([\d.]+) (?:ft|m)\b"
)
_MADE_UP = '<?xml version="1.0"?><svg></svg>'


def random_values(panel, rng) -> dict:
    """A setting of all controls; what is typed stays as it is."""
    values = {}
    for name, control in panel.controls.items():
        if isinstance(control, Number):
            steps = round((control.high - control.low) / control.step)
            values[name] = control.low + control.step * int(rng.integers(steps + 1))
            values[name] = min(values[name], control.high)
        elif len(control.ends) > 1:
            values[name] = control.ends[rng.integers(len(control.ends))]
        else:
            values[name] = control.start
    return values


def faults(panel, values, metric, hand) -> list[str]:
    """What is wrong with this panel at this setting."""
    try:
        drawn = panel._draw(metric=metric, hand=hand, **values, **panel.memory)
    except ValueError as problem:
        told = str(problem)
        return [] if told and "\n" not in told and len(told) < 300 else [f"no clear sentence: {told[:200]!r}"]
    except Exception as problem:
        return [f"{type(problem).__name__}: {problem}"]
    text = " ".join([drawn.lead, drawn.sentence, *(f"{k} {v}" for row in drawn.rows for k, v in row.items())])
    found = [f"no number: {word[0]!r} in {text[:160]!r}" for word in _NO_NUMBER.finditer(text)]
    found += [f"share: {share[0]}" for share in _SHARE.finditer(text) if float(share[1]) > 100]
    found += [f"order: {two[0]}" for two in _HOOKS_THEN_ROLLS.finditer(text) if float(two[1]) > float(two[2])]
    if not drawn.sentence.strip():
        found.append("says nothing")
    if drawn.svg.startswith("<svg") and not re.search(r'aria-label="[^"]{10,}', drawn.svg[:4000]):
        found.append("a picture without words")
    return found


def one_panel(make, count, rng, pictures=False) -> list[str]:
    """The faults of one panel at `count` random settings."""
    panel, found = make(), []
    for _ in range(count):
        values = random_values(panel, rng)
        metric, hand = bool(rng.integers(2)), ("right", "left")[rng.integers(2)]
        for fault in (
            faults(panel, values, metric, hand) if pictures else _unpictured(panel, values, metric, hand)
        ):
            found.append(f"{fault} at {values}, metric={metric}, {hand}")
    return found


def _unpictured(*given):
    """The same without writing the picture out, which takes most of the time and computes nothing."""
    with patch("matplotlib.figure.Figure.savefig", lambda self, buffer, **how: buffer.write(_MADE_UP)):
        return faults(*given)


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("settings", type=int)
    asked.add_argument("seed", type=int)
    asked.add_argument("--pictures", type=int, default=0)
    asked = asked.parse_args()
    rows, bad = [], 0
    for number, make in enumerate(PANELS):
        begun, rng = time.perf_counter(), np.random.default_rng([asked.seed, number])
        counts = asked.settings // len(PANELS), asked.pictures // len(PANELS)
        found = one_panel(make, counts[0], rng) + one_panel(make, counts[1], rng, pictures=True)
        bad += len(found)
        took = time.perf_counter() - begun
        print(
            f"{make.__name__:30s} {counts[0]} + {counts[1]} settings, {len(found)} faults, {took:.0f} s",
            flush=True,
        )
        for fault in found[:5]:
            print(f"    {fault}", flush=True)
        rows.append([make.__name__, *counts, len(found), asked.seed, f"{took:.0f}", platform.machine()])
    with Path(__file__).with_suffix(".csv").open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["panel", "settings", "with_picture", "faults", "seed", "seconds", "machine"])
        writer.writerows(rows)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
