"""Luck or better? Two small groups of balls compared, with bands, and how many balls would tell."""

from dataclasses import dataclass
from math import isfinite, sqrt

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.luck import band_of_mean, band_of_share, bootstrap_means, chance_better, in_hundred

SURE = 0.95  # the chance of being better from which this course says so: our choice
POWER = 0.80  # how often the number of balls named should tell
_Z_SURE, _Z_POWER = 1.645, 0.842  # normal quantiles of 0.95 and 0.80
_MOST_BALLS = 1000
FEWEST = 8  # balls from which boards are compared
_SMALL_SHARE, _SMALL_BOARDS = 0.10, 1.0  # a change that is worth finding: our choice


@dataclass(frozen=True)
class Group:
    """One side of a comparison: how many balls, the value seen, its band (shares 0 to 1, or boards)."""

    name: str
    balls: int
    value: float
    low: float
    high: float


@dataclass(frozen=True)
class Helped:
    """The comparison.

    better : chance that the second group is really better
    needed : balls each that would tell, four times in five, if the groups differ as much as was seen;
        None when more than a thousand
    """

    before: Group
    after: Group
    better: float
    needed: int | None
    sentence: str
    rows: list

    @property
    def told(self) -> bool:
        """Is one side surely the better one?"""
        return not 1.0 - SURE < self.better < SURE


def shares(before, after, names=("before", "after"), what="good") -> Helped:
    """Compare two shares.

    Parameters
    ----------
    before, after : (good, balls)
        Counts; 0 to 10,000 balls.
    names : the two groups in words
    what : what a good ball is, in words

    Raises
    ------
    ValueError
        Naming the count, its value and the range.
    """
    groups = [_share_group(name, *counts) for name, counts in zip(names, (before, after), strict=True)]
    better = chance_better(*before, *after)
    middle = [(good + 1) / (balls + 2) for good, balls in (before, after)]
    noise = sqrt(sum(share * (1 - share) for share in middle))
    needed = _needed(middle[1] - middle[0], noise)
    small = _needed(_SMALL_SHARE, sqrt(2 * np.mean(middle) * (1 - np.mean(middle))))
    sentence = _sentence(groups, better, needed, "10 in 100 more", small)
    rows = [
        {"": group.name, "balls": group.balls, what: f"{round(group.value * group.balls)}",
         "in 100": f"{100 * group.value:.0f}", "could be, in 100": in_hundred(group.low, group.high)}
        for group in groups
    ]  # fmt: skip
    return Helped(*groups, better, needed, sentence, rows)


def boards(before, after, names=("before", "after"), what="missed by") -> Helped:
    """Compare two lists of misses in boards; fewer boards are better. Eight balls each at least.

    A bootstrap of few balls makes its band too narrow (tests/coaching/test_did_it_help.py has the figures).

    Raises
    ------
    ValueError
        When there are fewer, or a miss is no finite number.
    """
    given = [np.asarray(group, dtype=float) for group in (before, after)]
    for name, group in zip(names, given, strict=True):
        if len(group) < FEWEST or not np.isfinite(group).all():
            raise ValueError(f"{name}: boards are compared from {FEWEST} balls on, got {len(group)}")
    means = [bootstrap_means(group, seed) for seed, group in enumerate(given)]
    edges = [band_of_mean(mean) for mean in means]
    groups = [
        Group(name, len(group), float(group.mean()), float(low), float(high))
        for name, group, (low, high) in zip(names, given, edges, strict=True)
    ]
    ties = float((means[1] == means[0]).mean())
    better = float((means[1] < means[0]).mean()) + ties / 2
    noise = sqrt(sum(group.var(ddof=1) for group in given))
    needed = _needed(groups[1].value - groups[0].value, noise)
    sentence = _sentence(groups, better, needed, "a board less", _needed(_SMALL_BOARDS, noise))
    rows = [
        {"": group.name, "balls": group.balls, f"{what}, boards": words.halves(group.value),
         "could be": f"{words.halves(group.low)} to {words.halves(group.high)}"}
        for group in groups
    ]  # fmt: skip
    return Helped(*groups, better, needed, sentence, rows)


def _share_group(name, good, balls):
    return Group(name, int(balls), good / balls if balls else 0.0, *band_of_share(good, balls))


def _needed(difference, noise):
    """Balls each: the usual formula for two means, one side, 95 % sure, four times in five; rounded."""
    if difference == 0 or not isfinite(difference):
        return None
    balls = ((_Z_SURE + _Z_POWER) * noise / difference) ** 2
    if balls > _MOST_BALLS:
        return None
    step = 5 if balls < 100 else 50
    return max(int(step * round(balls / step + 0.499)), 5)


def _sentence(groups, better, needed, small_change, needed_small):
    first, second = groups
    same = first.balls == second.balls
    balls = (
        f"{first.balls} balls each"
        if same
        else f"{first.balls} balls ({first.name}) and {second.balls} ({second.name})"
    )
    if better >= SURE:
        return f"{balls}: {second.name} is better, {_sure(better)}. What else was different that day?"
    if better <= 1 - SURE:
        return f"{balls}: {second.name} is worse, {_sure(1 - better)}. What else was different that day?"
    if not first.balls or not second.balls:
        return f"No balls yet ({(second if first.balls else first).name}): nothing to compare."
    if needed is not None and needed <= min(first.balls, second.balls):
        return (
            f"{balls}: cannot tell yet. Throw as many again, and settle now how many, not when it looks good."
        )
    if needed is not None:
        return f"{balls}: cannot tell; about {needed} each would, if the difference is what it seems."
    if needed_small and needed_small <= min(first.balls, second.balls):
        return f"{balls}: cannot tell; {small_change} would most likely have shown, so any difference is smaller."
    small = f"about {needed_small}" if needed_small else "more than a thousand"
    return (
        f"{balls}: cannot tell. If there is a difference it is small: {small_change} would need {small} each."
    )


def _sure(chance):
    """How sure, with what that rests on in the same breath."""
    said = "more than 99" if chance > 0.99 else f"{100 * chance:.0f}"
    return f"{said} in 100 sure if all else was alike"
