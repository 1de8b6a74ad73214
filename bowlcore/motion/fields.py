"""A surface made ready for the integrators: nodes, and friction in own-side metres.

Every declared break in distance becomes a node, and a step sees only its own side of it.
"""

from bisect import bisect_right

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import of_kind
from bowlcore.motion.friction_table import FrictionTable

_STEPS = 60
_NUDGE_FT = 1e-9


def compile_surface(surface, ball):
    """A surface for one ball, as the integrators want it.

    Raises ValueError when the object has no friction(lane_board, distance_ft, slip_mps), or the ball is none.
    """
    of_kind("ball", ball, Ball, "a Ball, such as load_balls gives")
    if hasattr(surface, "for_ball"):
        surface = surface.for_ball(ball)
    if isinstance(surface, FrictionTable):
        return OiledField(surface)
    if not callable(getattr(surface, "friction", None)):
        raise ValueError(
            f"a surface needs a method friction(lane_board, distance_ft, slip_mps), got {type(surface).__name__}"
        )
    return _AnySurface(surface)


class OiledField:
    """An oiled lane: equal steps, no breaks (the end of the oil is a ramp of at least one cell)."""

    has_board_breaks = False

    def __init__(self, table):
        self.table = table
        self.nodes_ft = np.linspace(0.0, units.LANE_FT, table.steps + 1)
        self.nodes_m = self.nodes_ft * units.FOOT_M

    def mu(self, hand):
        return [self.table.one_shot(hand)] * self.table.steps

    def field(self, hand):
        return self.table.many(hand)

    def y_breaks(self, hand):
        return ()


class _AnySurface:
    """Any callable surface: called as it is, between its declared breaks."""

    def __init__(self, surface):
        self.surface = surface
        self.breaks_ft = sorted(float(x) for x in getattr(surface, "breaks_ft", ()) if 0 < x < units.LANE_FT)
        self.breaks_board = sorted(float(b) for b in getattr(surface, "breaks_board", ()))
        self.has_board_breaks = bool(self.breaks_board)
        self.nodes_ft = np.union1d(np.linspace(0.0, units.LANE_FT, _STEPS + 1), self.breaks_ft)
        self.nodes_m = self.nodes_ft * units.FOOT_M
        walls = [0.0, *self.breaks_ft, units.LANE_FT]
        zone = [bisect_right(self.breaks_ft, x) for x in self.nodes_ft[:-1]]
        self.low_ft = np.array([walls[i] + _NUDGE_FT for i in zone])  # what each step may see
        self.high_ft = np.array([walls[i + 1] - _NUDGE_FT for i in zone])

    def mu(self, hand):
        friction, sign = self.surface.friction, 1.0 if hand == "right" else -1.0

        def between(low, high):
            def mu(x, y, slip):
                board = units.MIDDLE_BOARD + sign * y / units.BOARD_M
                return float(friction(board, min(max(x / units.FOOT_M, low), high), max(slip, 0.0)))

            return mu

        return [
            between(low, high) for low, high in zip(self.low_ft.tolist(), self.high_ft.tolist(), strict=True)
        ]

    def field(self, hand):
        return _CalledField(self, hand)

    def y_breaks(self, hand):
        own = self.breaks_board if hand == "right" else [40.0 - b for b in reversed(self.breaks_board)]
        return [(b - units.MIDDLE_BOARD) * units.BOARD_M for b in own]


class _CalledField:
    """The same for `sweep`: arrays over shots."""

    def __init__(self, lane, hand):
        self.lane, self.sign = lane, 1.0 if hand == "right" else -1.0

    def of(self, shots):
        """The same for some of the shots."""
        return self

    def on_step(self, k, stage, y, slip):
        a, b = self.lane.nodes_m[k], self.lane.nodes_m[k + 1]
        return self.within(k, np.full(len(y), a + 0.5 * stage * (b - a)), y, slip)

    def within(self, k, x, y, slip):
        low, high = self.lane.low_ft[k], self.lane.high_ft[k]
        board = units.MIDDLE_BOARD + self.sign * y / units.BOARD_M
        x_ft = np.clip(x / units.FOOT_M, low, high)
        return np.asarray(self.lane.surface.friction(board, x_ft, np.maximum(slip, 0.0)), dtype=float)
