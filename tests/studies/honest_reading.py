"""Study: is the reading honest?  python tests/studies/honest_reading.py [cases] [seed]

Half of the cases come from the reader's own assumptions, half from the hidden lanes and scatters of
`made_up_evenings`. In each the exact posterior is found by brute force with the generator's own assumptions
(many lanes, many balls), and the log score of the reader is set beside it: the gain over what is known before
anything is seen. Prints a confusion table; writes a CSV with seed and machine.
"""

import csv
import platform
import sys
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parent))
from made_up_evenings import WHO, draw, see  # noqa: E402

from bowlcore.coaching.bowler import load_bowlers  # noqa: E402
from bowlcore.coaching.hypotheses import (  # noqa: E402
    CAUSES,
    EDGE,
    TARGET,
    _cause,
    aimed_wrong,
    execution,
    possible_lanes,
)
from bowlcore.coaching.path_lab import lane_of  # noqa: E402
from bowlcore.coaching.perception import chance_of, follow, usual_of  # noqa: E402
from bowlcore.coaching.reading import CANNOT_TELL, read_reaction  # noqa: E402
from bowlcore.motion.path import simulate  # noqa: E402

BALLS, LIBRARY, MANY = 3, 160, 1024  # deliveries in a case; lanes and balls of the brute force
_SHARP = 1.35  # a lane is called sharp if it scatters the balls so much more than the believed one
_SURE = 0.5  # below this chance of the likeliest cause nobody should claim to know


class Generator:
    """Lanes with their chance, their balls and the name of each ball."""

    def __init__(self, lanes):
        self.chance = np.array([chance for chance, _, _ in lanes])
        self.chance = self.chance / self.chance.sum()
        self.shots = [shots for _, shots, _ in lanes]
        self.names = [names for _, _, names in lanes]
        self.prior = self._shares([np.full(len(names), 1 / len(names)) for names in self.names], self.chance)

    def _shares(self, balls, chance):
        share = np.zeros(len(CAUSES))
        for weight, ball, names in zip(chance, balls, self.names, strict=True):
            share += weight * np.array([ball[names == cause].sum() for cause in CAUSES])
        return share

    def draw(self, rng):
        """A few deliveries of one lane and what each was."""
        i = rng.choice(len(self.chance), p=self.chance)
        balls = rng.choice(len(self.names[i]), size=BALLS, replace=False)
        return [see(self.shots[i], int(b), rng) for b in balls], [str(self.names[i][b]) for b in balls]

    def posterior(self, seen):
        """Exact shares of the causes after what was seen."""
        chances = [np.array([chance_of(item, shots) for item in seen]) for shots in self.shots]
        log = np.log(self.chance) + [np.log(c.mean(axis=1) + 1e-12).sum() for c in chances]
        weight = np.exp(log - log.max())
        balls = [(c / (c.sum(axis=1, keepdims=True) + 1e-12)).mean(axis=0) for c in chances]
        return self._shares(balls, weight / weight.sum())


@lru_cache(maxsize=8)
def same_assumptions(who):
    """The reader's own lanes, with many more balls."""
    bowler, lane = load_bowlers()[who], lane_of("house")
    found = []
    for possible in possible_lanes(bowler, lane):
        shots = follow(possible.thrown_by(bowler), possible.lane, MANY, possible.shots.usual)
        found.append((possible.chance, shots, _names(possible.cause, shots)))
    return Generator(found)


@lru_cache(maxsize=8)
def other_assumptions(who):
    """Lanes and scatters from the hidden evenings."""
    rng, found = np.random.default_rng(sum(map(ord, who))), []
    while len(found) < LIBRARY:
        evening = draw(rng)
        if evening.bowler.name != who:
            evening = replace(evening, bowler=load_bowlers()[who], true_bowler=_rescattered(evening, who))
        usual = usual_of(simulate(evening.bowler.release, evening.believed, evening.bowler.ball))
        believed = follow(evening.bowler, evening.believed, 128, usual)
        usual = usual._replace(restless=believed.restless)
        shots = follow(evening.true_bowler, evening.true_lane, 256, usual)
        cause = _cause(evening.bowler, evening.true_lane, shots, believed, {})
        at_home = follow(
            evening.true_bowler, evening.believed, 128, usual
        )  # his own scatter where all is as believed
        if cause is None and shots.restless > _SHARP * at_home.restless:
            cause = EDGE
        found.append((1.0, shots, _names(cause, shots)))
    return Generator(found)


def _rescattered(evening, who):
    known = load_bowlers()[who]
    size = evening.true_bowler.spread.speed_mph / evening.bowler.spread.speed_mph
    spread = replace(known.spread, **{n: size * getattr(known.spread, n) for n in
                                      ("speed_mph", "rev_rate_rpm", "axis_rotation_deg", "axis_tilt_deg",
                                       "laydown_board", "target_board")})  # fmt: skip
    return replace(known, spread=spread)


def _names(cause, shots):
    if cause is None:
        return execution(shots)
    return np.where(aimed_wrong(shots), TARGET, cause)


def one_case(seed, same):
    """One case as a row."""
    rng = np.random.default_rng(seed)
    who = WHO[rng.integers(len(WHO))]
    generator = (same_assumptions if same else other_assumptions)(who)
    seen, labels = generator.draw(rng)
    causes = read_reaction(seen, load_bowlers()[who], lane_of("house"))
    doubt = next(c.weight for c in causes if c.name == CANNOT_TELL)
    reader = {c.name: c.weight / (1 - doubt) for c in causes if c.name != CANNOT_TELL}
    exact = dict(zip(CAUSES, generator.posterior(seen), strict=True))
    prior = dict(zip(CAUSES, generator.prior, strict=True))

    def score(shares):
        return float(np.mean([np.log(max(shares[label], 1e-3)) for label in labels]))

    named = [c.name for c in causes if c.name != CANNOT_TELL]
    return {
        "seed": seed,
        "same": int(same),
        "bowler": who,
        "true": Counter(labels).most_common(1)[0][0],
        "first": causes[0].name,
        "first_named": named[0],
        "exact_first": max(exact, key=exact.get),
        "exact_cannot": int(max(exact.values()) < _SURE),
        "cannot": int(causes[0].name == CANNOT_TELL),
        "prior": round(score(prior), 4),
        "reader": round(score(reader), 4),
        "exact": round(score(exact), 4),
    }


def gains(rows):
    """Gain of the reader over the prior, as a share of the exact posterior's, and the two gains."""
    reader = np.mean([row["reader"] - row["prior"] for row in rows])
    exact = np.mean([row["exact"] - row["prior"] for row in rows])
    return float(reader / exact), float(reader), float(exact)


def agreement(rows):
    """Of the cases in which the exact posterior knows nothing better than even: share in which the reader says so."""
    open_cases = [row for row in rows if row["exact_cannot"]]
    sure_cases = [row for row in rows if not row["exact_cannot"]]
    return (
        float(np.mean([row["cannot"] for row in open_cases])) if open_cases else float("nan"),
        float(np.mean([row["cannot"] for row in sure_cases])) if sure_cases else float("nan"),
    )


def main():
    given = sys.argv[1:] + ["600", "1"][len(sys.argv) - 1 :]
    cases, seed = int(given[0]), int(given[1])
    seeds, half = range(100_000 * seed, 100_000 * seed + cases), cases // 2
    with ProcessPoolExecutor() as workers:
        rows = list(workers.map(one_case, seeds, [i < half for i in range(cases)], chunksize=25))
    with Path(__file__).with_name("honest_reading.csv").open("w", newline="") as file:
        file.write(
            f"# honest reading, seed {seed}, {platform.machine()}, Python {platform.python_version()}\n"
        )
        writer = csv.DictWriter(file, rows[0])
        writer.writeheader()
        writer.writerows(rows)
    for same in (1, 0):
        some = [row for row in rows if row["same"] == same]
        share, reader, exact = gains(some)
        told, needless = agreement(some)
        print(f"{'same' if same else 'other'} assumptions, {len(some)} cases: gain {reader:.3f} of {exact:.3f} ({share:.2f}); "
              f"'cannot tell' where it cannot: {told:.2f}, where it could: {needless:.2f}")  # fmt: skip
        print("  true \\ first named: " + ", ".join(CAUSES))
        for cause in CAUSES:
            count = Counter(row["first_named"] for row in some if row["true"] == cause)
            print(f"  {cause:18}", [count[name] for name in CAUSES])


if __name__ == "__main__":
    main()
