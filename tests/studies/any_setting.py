"""Every panel at settings drawn at random: python tests/studies/any_setting.py 100000 1 [--pictures 2000]

No error but one clear sentence that our own code raises; no number that is none; shares between 0 and 100 of 100; a
ball that hooks before it rolls, in words and in tables; a picture with its point in words. Prints a line for each
panel and writes it into any_setting.csv beside itself; a panel that stands there with this seed and these counts is
not asked again, so it can be taken up where it was stopped. A panel that takes long gets fewer settings. Settings that
a panel refuses are counted.
"""

import argparse
import csv
import platform
import re
import sys
import time
import traceback
from math import ceil
from pathlib import Path
from unittest.mock import patch

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "display"))
from panels_help import ALL_PANELS, RACK_PANELS  # noqa: E402

import bowlcore  # noqa: E402
from bowlcore.display.controls import Number  # noqa: E402
from bowlcore.display.pieces import in_trade_words  # noqa: E402

PANELS = [*ALL_PANELS, *RACK_PANELS]
PACKAGE = Path(bowlcore.__file__).parent
_A_FIELD = re.compile(r"\b[a-z]+(?:_[a-z]+)*_(?:board|boards|deg|ft|rpm|mph|lb|in|s|percent|ml)\b|\brow \d")
# One setting without its picture [ms], on a busy machine; a panel of 25 or less is not named. All get about the same time.
SLOW_MS = {"published_shot": 100, "miss_room": 160, "pattern_builder": 110, "path_lab": 150, "pocket": 70}
SLOW_MS |= {"carry_map": 260, "spares": 150, "own_numbers": 170, "ten_pin": 300, "a_lane_that_changes": 860}
SLOW_MS |= {
    "customary_hand": 370,
    "rules": 940,
    "reaction": 470,
    "changes": 390,
    "two_faces": 120,
    "demo_clip": 320,
}
SLOW_MS |= {"measure_a_release": 70, "my_lane": 240, "one_number": 70, "push": 210, "response_map": 150}
SLOW_MS |= {
    "ball_weight": 50,
    "bowler_odds": 50,
    "three_six_nine": 45,
    "strikes_or_spares": 45,
    "twenty_balls": 35,
}
_QUICK_MS = 18
COLUMNS = ["panel", "settings", "with_picture", "refused", "faults", "seed", "seconds", "machine"]
_NO_NUMBER = re.compile(r"\b(?:nan|NaN|inf|None|True|False)\b|Traceback|<class")
_SHARE = re.compile(r"(?<![\d.,])(-?\d+(?:\.\d+)?)(?: %| (?:in|of) 100\b(?! of the ball's speed))")
_BOTH_SHARES = re.compile(r"between (-?\d+) and (-?\d+) (?:in|of) 100\b")
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


class Refused(Exception):
    """The panel said in one sentence of ours that it cannot show this."""


def _raised_by_us(problem) -> bool:
    """Whether the error comes from a `raise` of the package, not from Python or a library in the middle of our code."""
    last = traceback.extract_tb(problem.__traceback__)[-1]
    return Path(last.filename).is_relative_to(PACKAGE) and last.line.startswith("raise")


def faults(panel, values, metric, hand) -> list[str]:
    """What is wrong with this panel at this setting; raises Refused where the panel says why it shows nothing."""
    try:
        drawn = panel._draw(metric=metric, hand=hand, **values, **panel.memory)
    except ValueError as problem:
        told = in_trade_words(str(problem))
        if (
            not _raised_by_us(problem)
            or not told
            or "\n" in told
            or len(told) >= 300
            or _A_FIELD.search(told)
        ):
            return [f"no clear sentence: {told[:200]!r}"]
        raise Refused from None
    except Exception as problem:
        return [f"{type(problem).__name__}: {problem}"]
    text = "; ".join(
        [drawn.lead, drawn.sentence, *(f"{k} {v}" for row in drawn.rows for k, v in row.items())]
    )
    found = [f"no number: {word[0]!r} in {text[:160]!r}" for word in _NO_NUMBER.finditer(text)]
    shares = [(one[0], one.groups()) for one in (*_SHARE.finditer(text), *_BOTH_SHARES.finditer(text))]
    found += [f"share: {told}" for told, numbers in shares if not all(0 <= float(n) <= 100 for n in numbers)]
    found += [f"order: {two[0]}" for two in _HOOKS_THEN_ROLLS.finditer(text) if float(two[1]) > float(two[2])]
    found += [f"order: {row}" for row in drawn.rows if not _in_order(row)]
    if not drawn.sentence.strip():
        found.append("says nothing")
    if drawn.svg.startswith("<svg") and not re.search(r'aria-label="[^"]{10,}', drawn.svg[:4000]):
        found.append("a picture without words")
    return found


def _in_order(row) -> bool:
    """A table's row of a shot: it hooks before it rolls, and both between the foul line and the pins."""
    feet = [
        float(cell)
        for start in ("starts to hook (", "rolls from (")
        for title, cell in row.items()
        if title.startswith(start) and re.fullmatch(r"-?[\d.]+", cell)
    ]
    return feet == sorted(feet) and all(0 <= at <= 60 for at in feet)


def one_panel(make, count, rng, pictures=False) -> tuple[list[str], int]:
    """The faults of one panel at `count` random settings, and how many of them it refused."""
    panel, found, refused = make(), [], 0
    for _ in range(count):
        values = random_values(panel, rng)
        metric, hand = bool(rng.integers(2)), ("right", "left")[rng.integers(2)]
        try:
            seen = (faults if pictures else _unpictured)(panel, values, metric, hand)
        except Refused:
            refused += 1
            continue
        found += [f"{fault} at {values}, metric={metric}, {hand}" for fault in seen]
    return found, refused


def _unpictured(*given):
    """The same without writing the picture out, which takes most of the time and computes nothing."""
    with patch("matplotlib.figure.Figure.savefig", lambda self, buffer, **how: buffer.write(_MADE_UP)):
        return faults(*given)


def share(name, total) -> int:
    """How many of all settings one panel gets."""
    speed = {
        make.__name__: 1 / SLOW_MS.get(make.__name__.removesuffix("_panel"), _QUICK_MS) for make in PANELS
    }
    return ceil(total * speed[name] / sum(speed.values()))


def done_before(path) -> list[dict]:
    """The rows of an earlier run."""
    if not path.exists():
        return []
    with path.open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("settings", type=int)
    asked.add_argument("seed", type=int)
    asked.add_argument("--pictures", type=int, default=0)
    asked = asked.parse_args()
    path, bad = Path(__file__).with_suffix(".csv"), 0
    rows = [row for row in done_before(path) if row["seed"] == str(asked.seed)]
    for number, make in enumerate(PANELS):
        name = make.__name__
        counts = share(name, asked.settings), -(-asked.pictures // len(PANELS))
        if any(
            (row["panel"], row["settings"], row["with_picture"]) == (name, *map(str, counts)) for row in rows
        ):
            continue
        begun, rng = time.perf_counter(), np.random.default_rng([asked.seed, number])
        (found, refused), (more, also) = (
            one_panel(make, counts[0], rng),
            one_panel(make, counts[1], rng, pictures=True),
        )
        found, refused = found + more, refused + also
        bad += len(found)
        took = time.perf_counter() - begun
        print(
            f"{name:30s} {counts[0]} + {counts[1]} settings, {refused} refused, {len(found)} faults, {took:.0f} s",
            flush=True,
        )
        for fault in found[:5]:
            print(f"    {fault}", flush=True)
        new = [name, *counts, refused, len(found), asked.seed, f"{took:.0f}", platform.machine()]
        rows = [row for row in rows if row["panel"] != name] + [
            dict(zip(COLUMNS, map(str, new), strict=True))
        ]
        with path.open("w", newline="", encoding="utf-8") as file:
            writer = csv.DictWriter(file, COLUMNS, lineterminator="\n")
            writer.writeheader()
            writer.writerows(rows)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
