"""A lane that is like another one but plays looser, longer, worn or sharper; and a mixture of such lanes.

The changes act on friction, not on oil, so they fit any surface. Lane frame: boards from the right edge,
distances from the foul line [ft].
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import number_in
from bowlcore.motion.friction_table import FrictionTable
from bowlcore.motion.surface import MU_HIGH, MU_LOW

_BOARDS, _FEET = FrictionTable.nodes()
_WORN_HALF_WIDTH = 3.0  # boards either side of the track that wear with it: chosen


@dataclass(frozen=True)
class LaneChange:
    """How a lane differs from the one believed.

    Parameters
    ----------
    looser : float
        Factor on all friction, 0.3 to 3; below 1 it plays tighter (oilier).
    longer_ft : float
        The whole pattern reaches so much further, -12 to 12 ft.
    flatter : float
        0 to 1: how far the outside boards play like the most oily board at the same distance.
    sharper : float
        0 to 1: how far the step from oil to dry across the boards becomes a wall, with more oil on its
        inside and less on its outside.
    edge_board : float, optional
        Lane board of that wall; where friction is half way between its two ends if left out.
    worn : float
        0 to 1: share of the way to dry that friction has gone along `track`.
    track : tuple of (distance_ft, lane_board), optional
        Where the worn track lies.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """

    looser: float = 1.0
    longer_ft: float = 0.0
    flatter: float = 0.0
    sharper: float = 0.0
    edge_board: float | None = None
    worn: float = 0.0
    track: tuple = ()

    def __post_init__(self):
        for name, low, high in (
            ("looser", 0.3, 3), ("longer_ft", -12, 12), ("flatter", 0, 1), ("sharper", 0, 1), ("worn", 0, 1),
        ):  # fmt: skip
            number_in(name, getattr(self, name), low, high)

    def on(self, values):
        """A friction table's values (61, 79) after this change."""
        if self.longer_ft:
            values = _shifted(values, self.longer_ft)
        if self.flatter:
            values = values - self.flatter * (values - values.min(axis=1, keepdims=True))
        if self.sharper:
            values = _sharpened(values, self.sharper, self.edge_board)
        if self.worn and self.track:
            values = self._worn(values)
        return np.clip(values * self.looser, MU_LOW, MU_HIGH)

    def _worn(self, values):
        feet, boards = np.array(self.track).T
        middle = np.interp(_FEET, feet, boards)
        near = np.exp(-(((_BOARDS[None, :] - middle[:, None]) / _WORN_HALF_WIDTH) ** 2))
        return values + self.worn * near * np.maximum(values.max() - values, 0.0)


def _shifted(values, by_ft):
    """Friction read so much nearer to the foul line: the pattern reaches further."""
    at = np.clip(_FEET - by_ft, 0.0, 60.0)
    below = np.minimum(at.astype(int), 59)
    part = (at - below)[:, None]
    return values[below] + part * (values[below + 1] - values[below])


def _sharpened(values, amount, edge_board):
    """At each distance, oily boards become oilier and dry ones drier, with a wall between them."""
    low, high = values.min(axis=1, keepdims=True), values.max(axis=1, keepdims=True)
    wide = np.maximum(high - low, 1e-9)
    odds = _odds((values - low) / wide)
    if edge_board is not None:
        at = int(round(2 * (edge_board - 0.5)))
        odds = odds - odds[:, at : at + 1]
    wall = 1.0 / (1.0 + np.exp(-(1.0 + 3.0 * amount) * odds))
    ends = 1.0 - 0.2 * amount, 1.0 + 0.2 * amount
    return low * ends[0] + wall * (high * ends[1] - low * ends[0])


def _odds(share):
    """Logarithm of the odds of a share."""
    share = np.clip(share, 1e-6, 1.0 - 1e-6)
    return np.log(share / (1.0 - share))


@dataclass(frozen=True)
class ChangedLane:
    """A surface and a change of it; itself a surface."""

    base: object
    change: LaneChange

    def for_ball(self, ball) -> FrictionTable:
        """The friction table of the changed lane for one ball."""
        return _changed(self.base, self.change, ball)

    def friction(self, lane_board, distance_ft, slip_mps=0.0):
        """Coefficient at a place, for the default ball."""
        return self.for_ball(Ball()).friction(lane_board, distance_ft, slip_mps)


class MixedLane:
    """The mean friction of several lanes: what is believed when none of them is sure.

    Parameters
    ----------
    parts : sequence of (weight, surface)
        Weights above 0; they are scaled to add to 1.
    """

    def __init__(self, parts):
        parts = tuple((float(weight), lane) for weight, lane in parts)
        total = sum(weight for weight, _ in parts)
        if not parts or not total > 0 or min(weight for weight, _ in parts) < 0:
            raise ValueError("a mixture needs lanes with weights of 0 or more, and one above 0")
        whole = {}
        for weight, lane in parts:  # a mixture of mixtures is one mixture
            for share, part in lane.parts if isinstance(lane, MixedLane) else ((1.0, lane),):
                whole[part] = whole.get(part, 0.0) + weight * share / total
        self.parts = tuple((weight, lane) for lane, weight in whole.items() if weight > 0)

    @lru_cache(maxsize=4)  # noqa: B019  a lane lives as long as its page
    def for_ball(self, ball) -> FrictionTable:
        """The friction table of the mixture for one ball."""
        return FrictionTable(sum(weight * table_values(lane, ball) for weight, lane in self.parts))

    def friction(self, lane_board, distance_ft, slip_mps=0.0):
        """Coefficient at a place, for the default ball."""
        return self.for_ball(Ball()).friction(lane_board, distance_ft, slip_mps)


def table_values(surface, ball):
    """Friction of any surface on a table's nodes (61, 79), for one ball."""
    lane = surface.for_ball(ball) if hasattr(surface, "for_ball") else surface
    if isinstance(lane, FrictionTable):
        return lane.values
    return np.broadcast_to(lane.friction(_BOARDS[None, :], _FEET[:, None], 5.0), (61, 79)).astype(float)


@lru_cache(maxsize=256)
def _changed(base, change, ball):
    return FrictionTable(change.on(np.array(table_values(base, ball))))
