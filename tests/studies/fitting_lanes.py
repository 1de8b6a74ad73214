"""Study: do 90 % intervals of a fitted lane hold the truth?  python tests/studies/fitting_lanes.py [lanes] [seed]

Each case draws a lane (friction in the oil, friction of the dry, end of the oil) and a bowler's real numbers as
unsure as the fit takes them to be, lets the bowler scatter, and watches some shots with the coach's errors.
Everything is invented. Writes a CSV with seed and machine.
"""

import csv
import platform
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path

import numpy as np

from bowlcore import load_pattern
from bowlcore.coaching.bowler import SCATTERED, load_bowlers
from bowlcore.coaching.feet import mark_board
from bowlcore.coaching.fitting import BEFORE, EYE, KNOWN, Watched, changed, fit_lane
from bowlcore.motion.path import simulate
from bowlcore.motion.surface import MU_HIGH, OiledLane

WHO = ("league one-hander", "high-rev two-hander", "low-rev senior", "left-hander")
NUMBERS = ("oil", "dry", "ends_ft")


def draw(rng):
    """A bowler as known, as he really is, the believed lane and where the true one lies from it."""
    known = load_bowlers()[WHO[rng.integers(len(WHO))]]
    believed = OiledLane(load_pattern("house"))
    at = BEFORE * rng.normal(size=3)
    at[1] = min(at[1], np.log(MU_HIGH / believed.law.dry))  # no lane has more friction
    moved = {name: getattr(known.release, name) + error * rng.normal() for name, error in KNOWN.items()}
    return known, replace(known, release=replace(known.release, **moved)), believed, at


def watch(bowler, lane, count, rng):
    """Shots as seen; one that falls into the gutter is not written down."""
    seen, factor = [], bowler.spread.factor()
    while len(seen) < count:
        moved = factor @ rng.normal(size=6)
        release = replace(
            bowler.release,
            **{name: getattr(bowler.release, name) + by for name, by in zip(SCATTERED, moved, strict=True)},
        )
        path = simulate(release, lane, bowler.ball)
        if path.entry_board != path.entry_board:
            if rng.random() < 0.02:
                return None  # a lane on which hardly any ball arrives
            continue
        true = {
            "laydown_board": release.laydown_board, "arrow_board": mark_board(release),
            "breakpoint_board": path.breakpoint_board, "breakpoint_ft": path.breakpoint_ft,
            "hit_board": path.entry_board, "time_s": path.time_s[-1],
        }  # fmt: skip
        looked = {name: value + EYE[name] * rng.normal() for name, value in true.items()}
        low = {"breakpoint_ft": 0.0, "breakpoint_board": 0.5, "time_s": 1.3}
        high = {"breakpoint_ft": 60.0, "breakpoint_board": 39.5, "time_s": 6.0}
        seen.append(
            Watched(**{n: float(np.clip(v, low.get(n, 1.0), high.get(n, 39.0))) for n, v in looked.items()})
        )
    return seen


def one_case(seed, count=6):
    """One lane fitted: is the truth inside the ranges, how wide are they, how long did it take."""
    rng = np.random.default_rng(seed)
    seen = None
    while seen is None:
        known, real, believed, at = draw(rng)
        seen = watch(real, changed(believed, at), count, rng)
    started = time.perf_counter()
    fit = fit_lane(seen, known, believed)
    took = time.perf_counter() - started
    end = believed.pattern.length_ft
    truth = np.exp(at[0]), np.exp(at[1]), end + at[2]
    here = simulate(known.release, changed(believed, at), known.ball).entry_board
    before = simulate(known.release, believed, known.ball).entry_board
    row = {"seed": seed, "bowler": known.name, "seconds": round(took, 3)}
    for name, true in zip(NUMBERS, truth, strict=True):
        low, middle, high = getattr(fit, name)
        row |= {
            f"{name}_true": round(float(true), 3),
            name: round(middle, 3),
            f"{name}_in": int(low <= true <= high),
        }
    low, middle, high = fit.boards
    row |= {"boards_true": round(here - before, 2), "boards": round(middle, 2)}
    row |= {"boards_in": int(low <= here - before <= high), "boards_wide": round(high - low, 2)}
    row |= {f"learnt_{name}": round(share, 2) for name, share in zip(NUMBERS, fit.learnt, strict=True)}
    return row


def summary(rows):
    """Shares inside, and the rest of what is asked for."""
    found = {f"{name} inside": float(np.mean([row[f"{name}_in"] for row in rows])) for name in NUMBERS}
    reached = [row for row in rows if row["boards_true"] == row["boards_true"]]
    return found | {
        "boards inside": float(np.mean([row["boards_in"] for row in reached])),
        "median width of boards": float(np.median([row["boards_wide"] for row in reached])),
        "median seconds": float(np.median([row["seconds"] for row in rows])),
        "longest": float(max(row["seconds"] for row in rows)),
        **{f"median learnt of {n}": float(np.median([row[f"learnt_{n}"] for row in rows])) for n in NUMBERS},
    }


def main():
    cases, seed = (int(a) for a in (sys.argv[1:] + ["200", "1"][len(sys.argv) - 1 :]))
    with ProcessPoolExecutor() as workers:
        rows = list(workers.map(one_case, range(1000 * seed, 1000 * seed + cases), chunksize=5))
    out = Path(__file__).with_name("fitting_lanes.csv")
    with out.open("w", newline="") as file:
        file.write(
            f"# fitting study, seed {seed}, {platform.machine()}, Python {platform.python_version()}\n"
        )
        writer = csv.DictWriter(file, rows[0])
        writer.writeheader()
        writer.writerows(rows)
    for name, value in summary(rows).items():
        print(f"{name}: {value:.3g}")


if __name__ == "__main__":
    main()
