"""Friction of the lane under the ball: from oil, or given in zones.

Lane frame: boards counted from the right edge; distances from the foul line [ft].
A surface is anything with `friction(lane_board, distance_ft, slip_mps)`, and optionally `breaks_ft`,
`breaks_board` (where friction jumps) and `for_ball(ball)`.
"""

from bisect import bisect_right
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from bowlcore.motion.checks import number_in, of_kind
from bowlcore.motion.friction_table import FrictionTable
from bowlcore.motion.oil import OilPattern

MU_LOW, MU_HIGH = 0.001, 0.32  # 0.32: limit for a ball in the rules, read second-hand


@dataclass(frozen=True)
class FrictionLaw:
    """Friction coefficient under oil of a given thickness.

    friction = oil + (dry - oil) exp(-thickness / scale_um). Chosen so that ordinary lines reach the
    pocket on the demo house shape; nothing here was measured on a lane. The low end lies below the
    two-zone values (0.03 to 0.04) that published models use.

    Parameters
    ----------
    oil, dry : float
        Coefficients under thick oil and without oil, 0.001 to 0.32, oil not above dry.
    scale_um : float
        Thickness over which the oil takes effect [um], 0.01 to 10.
    """

    oil: float = 0.0125
    dry: float = 0.215
    scale_um: float = 0.271

    def __post_init__(self):
        number_in("oil", self.oil, MU_LOW, MU_HIGH)
        number_in("dry", self.dry, MU_LOW, MU_HIGH)
        number_in("scale_um", self.scale_um, 0.01, 10, "um")
        if self.oil > self.dry:
            raise ValueError(f"oil must not be above dry ({self.dry:g}), got {self.oil:g}")

    def scaled(self, factor: float) -> "FrictionLaw":
        """A house that plays looser (factor above 1: hooks more) or tighter (below 1).

        The dry end stops at 0.32, the oil end at the dry end.
        """
        number_in("factor", factor, 0.25, 2)
        dry = min(self.dry * factor, MU_HIGH)
        return replace(self, oil=max(min(self.oil * factor, dry), MU_LOW), dry=max(dry, MU_LOW))

    def friction(self, oil_um, cover_in_oil=1.0, cover_on_dry=1.0):
        """Coefficient under oil_um [um] (float or array); a ball's two cover numbers scale the two ends."""
        oil, dry = self.oil * cover_in_oil, self.dry * cover_on_dry
        return oil + (dry - oil) * np.exp(-np.asarray(oil_um) / self.scale_um)


@dataclass(frozen=True)
class OiledLane:
    """A lane with an oil pattern and a friction law.

    Compiled once for each ball into a friction table, half a board by one foot, read bilinearly: the
    table *is* the model, so one shot and a batch, and any other integrator, see the same lane.
    """

    pattern: OilPattern
    law: FrictionLaw = FrictionLaw()

    def __post_init__(self):
        of_kind("pattern", self.pattern, OilPattern, "an OilPattern, such as load_pattern gives")
        of_kind("law", self.law, FrictionLaw, "a FrictionLaw")

    def for_ball(self, ball) -> FrictionTable:
        """The friction table of this lane for one ball."""
        return _compiled(self.pattern, self.law, ball.cover_in_oil, ball.cover_on_dry)

    def friction(self, lane_board, distance_ft, slip_mps=0.0):
        """Coefficient at a place, for a ball with cover numbers 1 (floats or arrays)."""
        return _compiled(self.pattern, self.law, 1.0, 1.0).friction(lane_board, distance_ft, slip_mps)


@lru_cache(maxsize=64)
def _compiled(pattern, law, cover_in_oil, cover_on_dry):
    boards, distances = FrictionTable.nodes()
    if np.array_equal(pattern.lane_board, boards) and np.array_equal(pattern.distance_ft, distances):
        oil_um = pattern.thickness_um  # a worn lane lies on the table's own nodes
    else:
        oil_um = pattern.oil_um(boards[None, :], distances[:, None])
    return FrictionTable(law.friction(oil_um, cover_in_oil, cover_on_dry))


class ZonedLane:
    """Constant friction in zones down the lane; the ball's cover numbers are ignored.

    Parameters
    ----------
    zones : sequence of (end_ft, friction)
        Rising ends, the last at 60 ft or beyond; friction 0 to 1.

    >>> ZonedLane([(40, 0.04), (60, 0.20)]).friction(17, 41, 5.0)
    0.2
    """

    def __init__(self, zones):
        try:
            self.zones = tuple((float(end), float(friction)) for end, friction in zones)
        except (TypeError, ValueError):
            raise ValueError(f"zones must be pairs (end_ft, friction), got {str(zones)[:60]}") from None
        ends = [end for end, _ in self.zones]
        if not ends or not all(a < b for a, b in zip([0.0, *ends], ends, strict=False)):
            raise ValueError(f"zones must end at rising distances above 0 ft, got {ends}")
        if ends[-1] < 60:
            raise ValueError(f"the last zone must end at 60 ft or beyond, got {ends[-1]:g} ft")
        for _, friction in self.zones:
            number_in("friction", friction, 0, 1)
        self.breaks_ft = tuple(end for end in ends if end < 60)
        self._values = np.array([friction for _, friction in self.zones])

    def friction(self, lane_board, distance_ft, slip_mps=0.0):
        """Coefficient at a place; at a break, that of the zone beyond it."""
        if isinstance(distance_ft, float | int):
            return self.zones[min(bisect_right(self.breaks_ft, distance_ft), len(self.zones) - 1)][1]
        return self._values[np.searchsorted(self.breaks_ft, distance_ft, side="right")]
