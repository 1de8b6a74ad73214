"""A bowler: the usual release, its scatter, the ball, and what can be changed on demand."""

from dataclasses import dataclass, field, fields
from functools import lru_cache

import numpy as np

from bowlcore.coaching.feet import Feet
from bowlcore.locate import data_folder
from bowlcore.motion.ball import Ball, load_balls
from bowlcore.motion.checks import number_in
from bowlcore.motion.release import RANGES, Release

SCATTERED = (
    "speed_mph",
    "rev_rate_rpm",
    "axis_rotation_deg",
    "axis_tilt_deg",
    "laydown_board",
    "target_board",
)
_MOST = {"speed_mph": 5, "rev_rate_rpm": 150, "axis_rotation_deg": 45, "axis_tilt_deg": 30,
         "laydown_board": 8, "target_board": 8}  # fmt: skip
CHANGEABLE = {
    "feet",
    "target",
    "ball",
    "loft_ft",
    "speed_mph",
    "rev_rate_rpm",
    "axis_rotation_deg",
    "axis_tilt_deg",
}


@dataclass(frozen=True)
class Spread:
    """Scatter of a release from ball to ball: one standard deviation of each number.

    Parameters
    ----------
    speed_mph, rev_rate_rpm, axis_rotation_deg, axis_tilt_deg, laydown_board, target_board : float
        0 to 5 mph, 150 rpm, 45 and 30 degrees, 8 boards. The defaults describe a practised bowler; they
        are chosen, not measured.
    correlations : dict, optional
        {("speed_mph", "rev_rate_rpm"): 0.4, ...}, each between -0.95 and 0.95.

    Raises
    ------
    ValueError
        Naming the field, the value and the range, or saying that the correlations cannot hold together.
    """

    speed_mph: float = 0.4
    rev_rate_rpm: float = 15
    axis_rotation_deg: float = 4
    axis_tilt_deg: float = 2
    laydown_board: float = 0.4
    target_board: float = 0.7
    correlations: dict = field(default_factory=dict)

    def __post_init__(self):
        for name in SCATTERED:
            number_in(f"spread of {name}", getattr(self, name), 0, _MOST[name])
        self.factor()

    def factor(self):
        """Lower triangle L with L L^T = the covariance of the six numbers."""
        matrix = np.eye(6)
        for (one, two), value in self.correlations.items():
            if one not in SCATTERED or two not in SCATTERED or one == two:
                raise ValueError(
                    f"a correlation is between two of {', '.join(SCATTERED)}, got {(one, two)!r}"
                )
            number_in(f"correlation of {one} and {two}", value, -0.95, 0.95)
            i, j = SCATTERED.index(one), SCATTERED.index(two)
            matrix[i, j] = matrix[j, i] = value
        try:
            half = np.linalg.cholesky(matrix)
        except np.linalg.LinAlgError:
            raise ValueError(f"these correlations cannot hold together: {self.correlations}") from None
        return np.array([getattr(self, name) for name in SCATTERED])[:, None] * half

    def __hash__(self):
        return hash((*(getattr(self, name) for name in SCATTERED), *sorted(self.correlations.items())))


@dataclass(frozen=True)
class Bowler:
    """Who bowls.

    Parameters
    ----------
    release : Release
        The usual one.
    spread : Spread
    ball : Ball
    can_change : dict
        How far, up or down, on demand; what is absent cannot be changed at all. Keys: feet, target
        (boards), ball (a list of Ball), loft_ft, speed_mph, rev_rate_rpm, axis_rotation_deg, axis_tilt_deg.
    name : str
    feet : Feet
        Where the slide foot stops against the ball, and how the walk drifts.
    young_or_sore : bool
        A child, or a sore wrist or back: no change of the hand is ever suggested.

    Raises
    ------
    ValueError
        For an unknown key, or an amount that is no number of 0 or more.
    """

    release: Release
    spread: Spread = Spread()
    ball: Ball = Ball()
    can_change: dict = field(default_factory=lambda: {"feet": 8, "target": 8, "speed_mph": 1.0})
    name: str = ""
    feet: Feet = Feet()
    young_or_sore: bool = False

    def __post_init__(self):
        for key, amount in self.can_change.items():
            if key not in CHANGEABLE:
                raise ValueError(f"can_change knows {', '.join(sorted(CHANGEABLE))}, got {key!r}")
            if key == "ball":
                if not all(isinstance(ball, Ball) for ball in amount):
                    raise ValueError("can_change['ball'] must be a list of Ball")
            else:
                number_in(f"can_change[{key!r}]", amount, 0, 700)

    def shots(self, count=256):
        """A dict of arrays: `count` releases of this bowler, the same accidents for every bowler."""
        values = _accidents(count) @ self.spread.factor().T
        columns = {"loft_ft": np.full(count, float(self.release.loft_ft))}
        columns["hand"] = np.full(count, self.release.hand, dtype=object)
        for name, column in zip(SCATTERED, values.T, strict=True):
            low, high, _ = RANGES[name]
            columns[name] = np.clip(getattr(self.release, name) + column, low, high)
        return columns


@lru_cache(maxsize=8)
def _accidents(count):
    """Quasi-random standard normal numbers (count, 6): Sobol points, scrambled with a fixed seed."""
    from scipy.special import ndtri
    from scipy.stats import qmc

    with_room = 1 << max(count - 1, 0).bit_length()
    points = qmc.Sobol(6, scramble=True, seed=20).random(with_room)[:count]
    return ndtri(np.clip(points, 1e-6, 1 - 1e-6))


_TEXT = ("name", "hand", "ball", "change_balls", "drift", "style")


def load_bowlers() -> dict[str, Bowler]:
    """The invented demo bowlers by name (data/bowlers.csv)."""
    return dict(_shipped())


@lru_cache(maxsize=1)
def _shipped():
    return {row["name"]: _from_row(row) for row in _rows()}


def usual_averages() -> dict[str, tuple[float, float]]:
    """Pins a game between which each demo bowler's average should lie on the house shape (invented)."""
    return {row["name"]: (row["average_low"], row["average_high"]) for row in _rows()}


def _rows():
    from bowlcore.motion.data_file import read_table

    table, _ = read_table(data_folder() / "bowlers.csv", text_columns=_TEXT)
    return table.to_dict("records")


def _from_row(row):
    balls = load_balls()
    release = Release(**{item.name: row[item.name] for item in fields(Release)})
    spread = Spread(**{name: row[f"spread_{name}"] for name in SCATTERED})
    amounts = {name: row[f"change_{name}"] for name in sorted(CHANGEABLE - {"ball"})}
    can_change = {name: amount for name, amount in amounts.items() if amount > 0}
    if row["change_balls"] != "none":
        can_change["ball"] = [balls[name] for name in row["change_balls"].split(";")]
    feet = Feet(row["feet_offset_boards"], row["drift"], row["style"])
    return Bowler(
        release, spread, balls[row["ball"]], can_change, row["name"], feet, bool(row["young_or_sore"])
    )
