"""Study: does the advice help on lanes that the reader has not seen?  python tests/studies/advisor.py [cases] [seed]

Seen -> read -> believed lane -> first suggestion, at most two rounds, judged on the true lane: is the expected
entry in the pocket, are the strike odds not lower (by more than two sampling errors), was a hand change kept
back where feet would do. Beside it the same advisor told the true lane. Writes a CSV with seed and machine.
"""

import csv
import platform
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parent))
from made_up_evenings import draw, off_the_pocket, watch  # noqa: E402

from bowlcore.coaching.changes import suggest_changes  # noqa: E402
from bowlcore.coaching.odds import bowler_odds  # noqa: E402
from bowlcore.coaching.reading import believed_lane, read_reaction  # noqa: E402
from bowlcore.motion.many import sweep_columns  # noqa: E402

WATCHED = 10  # balls in a round: the first balls of a game


def mean_entry(bowler, lane):
    marks, _ = sweep_columns(bowler.shots(256), lane, bowler.ball)
    board = marks["entry_board"]
    return float(np.nanmean(board)) if np.isfinite(board).mean() > 0.5 else float("nan")


def one_case(seed, rounds=2):
    """One evening from start to end, as a row."""
    rng = np.random.default_rng(seed)
    evening = draw(rng)
    while not off_the_pocket(evening):
        evening = draw(rng)
    first = evening
    before = bowler_odds(evening.true_bowler, evening.true_lane)
    kinds, names = [], []
    for _ in range(rounds):
        causes = read_reaction(watch(evening, rng, WATCHED), evening.bowler, evening.believed)
        names.append(causes[0].name)
        lane = believed_lane(causes)
        change = suggest_changes(evening.bowler, lane)[0]
        kinds.append(change.kind)
        moved = change.bowler
        evening = replace(
            evening,
            bowler=moved,
            true_bowler=replace(evening.true_bowler, release=moved.release, ball=moved.ball),
            believed=lane,
        )
    told = suggest_changes(first.bowler, first.true_lane)[0].bowler
    told_bowler = replace(first.true_bowler, release=told.release, ball=told.ball)
    after = bowler_odds(evening.true_bowler, evening.true_lane)
    best = bowler_odds(told_bowler, first.true_lane)
    noise = 2 * (before.sampling_error**2 + after.sampling_error**2) ** 0.5
    return {
        "seed": seed,
        "bowler": first.bowler.name,
        "causes": "; ".join(names),
        "kinds": "; ".join(kinds),
        "entry_before": round(mean_entry(first.true_bowler, first.true_lane), 2),
        "entry_after": round(mean_entry(evening.true_bowler, evening.true_lane), 2),
        "entry_told": round(mean_entry(told_bowler, first.true_lane), 2),
        "pocket_before": round(before.pocket, 3),
        "pocket_after": round(after.pocket, 3),
        "pocket_told": round(best.pocket, 3),
        "strike_before": round(before.strike, 3),
        "strike_after": round(after.strike, 3),
        "strike_told": round(best.strike, 3),
        "not_lower": int(after.strike >= before.strike - noise),
    }


def summary(rows):
    """Shares of what is asked for."""

    def inside(name):
        return float(np.mean([abs(row[name] - 17.5) <= 1.5 for row in rows]))

    return {
        "cases": len(rows),
        "in the pocket after": inside("entry_after"),
        "in the pocket if told the lane": inside("entry_told"),
        "strike odds not lower": float(np.mean([row["not_lower"] for row in rows])),
        "a hand change": float(np.mean(["hand" in row["kinds"] for row in rows])),
        "mean pocket share before / after / told": [
            round(float(np.mean([row[name] for row in rows])), 3)
            for name in ("pocket_before", "pocket_after", "pocket_told")
        ],
    }


def main():
    cases, seed = (int(a) for a in (sys.argv[1:] + ["300", "1"][len(sys.argv) - 1 :]))
    with ProcessPoolExecutor() as workers:
        rows = list(workers.map(one_case, range(1000 * seed, 1000 * seed + cases), chunksize=5))
    out = Path(__file__).with_name("advisor.csv")
    with out.open("w", newline="") as file:
        file.write(
            f"# advisor study, seed {seed}, {platform.machine()}, Python {platform.python_version()}\n"
        )
        writer = csv.DictWriter(file, rows[0])
        writer.writeheader()
        writer.writerows(rows)
    for name, value in summary(rows).items():
        print(f"{name}: {value}")


if __name__ == "__main__":
    main()
