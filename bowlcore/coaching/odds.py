"""How often a bowler hits the pocket and strikes, and what that is worth in pins a game."""

from dataclasses import dataclass
from math import erf, sqrt

import numpy as np

from bowlcore.coaching.words import POCKET_BOARD, POCKET_REACH
from bowlcore.motion.many import sweep_together
from bowlcore.rack import carry
from bowlcore.rack.model_spread import model_spread
from bowlcore.rack.pins import window_boards

SHOWN, RANKING = 256, 64
_CLASSES = ("lone", "corner", "cluster", "split")
_THIN_TOUCH = 1.0  # board taken off each side of a window: a thin touch may leave the pin (common practice)
_CLUSTER_SHARE, _SPLIT_CHANCE = 0.6, 0.08  # of a lone pin's chance; of any split: chosen, not measured
_PICKED_OFF = 0.5  # share of the pins that a missed cluster or split still loses: chosen
# boards at the second row for one board at the foul line, and for one at 15 ft: our own geometry
_FEET_LEVER, _TARGET_LEVER = 3.06, 4.06


@dataclass(frozen=True)
class Odds:
    """What a bowler's scatter makes of one lane, in this pin model.

    strike : share of strikes; sampling_error : one standard error from the counts of the table
    model_spread : half the range of the strike share over other pin models that suit published totals
    pocket : share of balls with entry_board within 1.5 boards of 17.5, whatever the angle
    mean_pinfall : with the first ball, gutters counted as 0
    pins_per_game : by a simple frame model with spare chances from the bowler's own scatter
    gutter : share of balls in the gutter
    """

    strike: float
    sampling_error: float
    pocket: float
    mean_pinfall: float
    pins_per_game: float
    gutter: float
    model_spread: float

    @property
    def interval(self):
        """Strike share between which sampling alone leaves it, two standard errors either way."""
        wide = 2.0 * self.sampling_error
        return max(self.strike - wide, 0.0), min(self.strike + wide, 1.0)


def bowler_odds(bowler, surface, shots=SHOWN) -> Odds:
    """Odds of a bowler on a surface.

    Parameters
    ----------
    bowler : Bowler
    surface : as for `simulate`
    shots : int
        Releases tried; the same quasi-random accidents for every bowler and lane, so that two
        alternatives differ by themselves and not by luck.

    Returns
    -------
    Odds
    """
    return odds_together([(bowler, surface)], shots)[0]


def odds_together(lines, shots=SHOWN) -> list[Odds]:
    """The same for several (bowler, surface), all in one batch."""
    bowlers = [bowler for bowler, _ in lines]
    marks = sweep_together(
        [(bowler.shots(shots), surface) for bowler, surface in lines], [b.ball for b in bowlers]
    )
    return [odds_of_entries(mine, bowler) for mine, bowler in zip(marks, bowlers, strict=True)]


def odds_of_entries(marks, bowler) -> Odds:
    """The same from landmarks of shots that were already followed."""
    there, entries = entries_of(marks, bowler.ball)
    board, count = marks["entry_board"], len(there)
    nodes, weights = carry.corners(*entries)
    mean, gutter = _means(nodes, weights, count), 1.0 - there.mean()
    return Odds(
        mean["strike"],
        carry.sampling_error(nodes, weights / count),
        float((np.abs(board[there] - POCKET_BOARD) <= POCKET_REACH).sum()) / count,
        mean["pinfall"],
        pins_per_game(mean, spare_chances(bowler.spread)),
        float(gutter),
        model_spread(entries[0], entries[1]) * float(there.mean()) if there.any() else 0.0,
    )


def mean_first_ball(marks, ball) -> dict[str, float]:
    """Shares of strikes and of the classes of leave, pins down and pins left, gutters counted as ten left."""
    there, entries = entries_of(marks, ball)
    return _means(*carry.corners(*entries), len(there))


def _means(nodes, weights, count):
    names = ("strike", "pinfall", *_CLASSES, "left in clusters", "left in splits")
    mean = {name: float((weights * carry.node_values(name)[nodes]).sum()) / count for name in names}
    gutter = 1.0 - nodes.shape[1] / count
    mean["cluster"] += gutter  # all ten stand for the second ball
    mean["left in clusters"] += 10.0 * gutter
    return mean


def entries_of(marks, ball):
    """Which balls stay on the lane, and board, angle, speed and weight of those as the table takes them."""
    there = np.isfinite(marks["entry_board"])
    angle = np.clip(marks["entry_angle_deg"][there], -20, 20)
    speed = np.clip(marks["entry_speed_mph"][there], 2, 30)
    return there, (marks["entry_board"][there], angle, speed, np.full(there.sum(), max(ball.mass_lb, 6.0)))


def spare_chances(spread) -> dict[str, float]:
    """Chance to make each class of leave with a straight ball, from the scatter at the line and the arrows.

    Windows are our own geometry; what clusters and splits are worth is chosen, and said.
    """
    sideways = sqrt((_FEET_LEVER * spread.laydown_board) ** 2 + (_TARGET_LEVER * spread.target_board) ** 2)

    def within(pin):
        half = window_boards(pin) / 2 - _THIN_TOUCH
        return 1.0 if sideways == 0 else erf(half / sideways / sqrt(2.0))

    lone = within(5)
    return {"lone": lone, "corner": within(10), "cluster": _CLUSTER_SHARE * lone, "split": _SPLIT_CHANCE}


def pins_per_game(mean, chances) -> float:
    """Expected score of ten frames that are all alike.

    Strike: 10 and the next two balls; spare: 10 and the next one (rules of play). `mean` holds the
    shares of strikes and of the four classes of leave, first-ball pins, and pins left.
    """
    left = {
        "lone": mean["lone"], "corner": mean["corner"], "cluster": mean["left in clusters"],
        "split": mean["left in splits"],
    }  # fmt: skip
    missed = {"lone": 0.0, "corner": 0.0, "cluster": _PICKED_OFF, "split": _PICKED_OFF}
    second = sum(left[k] * (chances[k] + (1.0 - chances[k]) * missed[k]) for k in _CLASSES)
    spare = sum(mean[k] * chances[k] for k in _CLASSES)
    first, strike = mean["pinfall"], mean["strike"]
    next_two = first + strike * first + second
    return 10.0 * float(first + second + strike * next_two + spare * first)
