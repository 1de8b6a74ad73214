"""Hidden lanes and bowlers for the studies of reading and advice, drawn otherwise than the reader assumes.

The lane comes from the pattern builder with its own length, volume, ratio and friction law; the bowler
scatters more or less than the coach thinks; the coach sees with the errors of `coaching.perception`.
Everything is invented.
"""

from dataclasses import dataclass, replace

from bowlcore import Bowler, FrictionLaw, OiledLane, Spread, make_pattern
from bowlcore.coaching.bowler import SCATTERED, load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.perception import follow, usual_of
from bowlcore.coaching.seen import Seen
from bowlcore.coaching.watched import note
from bowlcore.motion.path import simulate

WHO = ("league one-hander", "high-rev two-hander", "low-rev senior", "left-hander", "spinner")
LOOKED = {"hit": 0.95, "finish": 0.8, "exit": 0.4, "target_hit": 0.9, "arrow_board": 0.7, "breakpoint_board": 0.6,
          "leave": 0.9}  # fmt: skip  # how often each is noted


@dataclass(frozen=True)
class Evening:
    """What is true, and what the coach believes."""

    bowler: Bowler  # as the coach knows him
    true_bowler: Bowler  # with his real scatter
    true_lane: object
    believed: object


def draw(rng) -> Evening:
    """One evening."""
    known = load_bowlers()[WHO[rng.integers(len(WHO))]]
    size = rng.uniform(0.7, 1.4)
    spread = Spread(**{name: size * getattr(known.spread, name) for name in SCATTERED},
                    correlations={("speed_mph", "rev_rate_rpm"): 0.4})  # fmt: skip
    law = FrictionLaw(
        oil=rng.uniform(0.009, 0.018), dry=rng.uniform(0.17, 0.25), scale_um=rng.uniform(0.22, 0.34)
    )
    while True:
        try:
            pattern = make_pattern(
                length_ft=rng.uniform(36, 44), volume_ml=rng.uniform(20, 28), side_ratio=rng.uniform(4, 18)
            )
            break
        except ValueError:
            continue  # not every triple of numbers is a pattern
    return Evening(known, replace(known, spread=spread), OiledLane(pattern, law), lane_of("house"))


def off_the_pocket(evening) -> bool:
    """The cases that are judged: the centre ball misses the pocket on the true lane."""
    board = simulate(evening.bowler.release, evening.true_lane, evening.bowler.ball).entry_board
    return not abs(board - 17.5) <= 1.5


def watch(evening, rng, count=4):
    """What the coach sees of `count` deliveries."""
    believed = simulate(evening.bowler.release, evening.believed, evening.bowler.ball)
    shots = follow(evening.true_bowler, evening.true_lane, 256, usual_of(believed))
    return [see(shots, int(i), rng) for i in rng.choice(256, size=count, replace=False)]


def see(shots, i, rng) -> Seen:
    """One of the simulated balls as a coach sees it, who does not look at everything."""
    looks = [field for field, often in LOOKED.items() if rng.random() < often]
    return note(shots, i, [int(rng.integers(2**31))], looks)
