"""A few balls measured the same way: their mean, its error, and how many would be enough."""

from math import ceil, sqrt
from typing import NamedTuple

import numpy as np

from bowlcore.coaching.measuring import NAMES, Measured, give_or_take, shown, told
from bowlcore.motion.checks import number_in

_MOST = 400  # balls; beyond that the answer is "more than one evening"


class Several(NamedTuple):
    """Several balls together, in the unit of the name.

    value, error : the mean and its one standard deviation, widened for few balls so that two times of
        three the truth lies within
    scatter : from ball to ball, one standard deviation (hand and eye together); NaN for one ball
    """

    name: str
    value: float
    error: float
    scatter: float
    count: int
    sentence: str


def of_several(balls: list[Measured], metric=False) -> Several:
    """Mean and error of several readings of the same number.

    The scatter between balls holds the bowler's own changes as well as the eye's. Where the balls agree by
    luck better than an eye can read, the eye's error stands.

    Raises ValueError for no ball, or for different numbers mixed.
    """
    from scipy.special import stdtrit

    if not balls or len({ball.name for ball in balls}) != 1:
        raise ValueError("balls must be one or more readings of the same number")
    name, count = balls[0].name, len(balls)
    values = np.array([ball.value for ball in balls])
    reading = sqrt(float(np.mean([ball.error**2 for ball in balls])))
    if count == 1:
        return Several(name, balls[0].value, reading, float("nan"), 1, f"One ball: {balls[0].sentence}")
    scatter = float(values.std(ddof=1))
    wide = float(stdtrit(count - 1, 0.8413))  # 1 for many balls, 1.32 for three
    error = max(wide * scatter, reading) / sqrt(count)
    text = f"{count} balls: {told(name, values.mean(), error, metric)}."
    return Several(name, float(values.mean()), error, scatter, count, text)


def balls_needed(scatter, wanted) -> int:
    """How many balls until the mean is good to `wanted` (one standard deviation each, same unit).

    (scatter / wanted) squared, rounded up; at least 2, since one ball shows no scatter. 401 stands for
    more than 400.
    """
    number_in("scatter", scatter, 0, 1000)
    number_in("wanted", wanted, 1e-6, 1000)
    return max(2, min(ceil((scatter / wanted) ** 2 - 1e-9), _MOST + 1))


def needed_words(several: Several, wanted, metric=False) -> str:
    """ "about 5 balls for an axis rotation good to 2 degrees"."""
    good = f"{NAMES[several.name]} good to {give_or_take(several.name, wanted, metric)}"
    if several.count < 2:
        return f"{good}: throw at least 3 balls to see the scatter"
    count = balls_needed(several.scatter, wanted)
    return f"{good}: " + (f"more than {_MOST} balls" if count > _MOST else f"about {count} balls")


def row(balls: list[Measured], several: Several, wanted, metric=False) -> dict:
    """One number as a row of a table: each ball, the mean, its error, the scatter, the balls needed."""
    name = several.name
    cells = {"number": NAMES[name]}
    cells |= {f"ball {i + 1}": shown(name, ball.value, metric) for i, ball in enumerate(balls)}
    reading = sqrt(float(np.mean([ball.error**2 for ball in balls])))
    return cells | {
        "the eye, one ball": give_or_take(name, reading, metric),
        "mean": shown(name, several.value, metric),
        "give or take": give_or_take(name, several.error, metric),
        "from ball to ball": give_or_take(name, several.scatter, metric) if several.count > 1 else "",
        "balls needed": needed_words(several, wanted, metric).split(": ")[1],
    }
