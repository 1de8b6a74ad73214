"""The friction table of an oiled lane, and how the two integrators read it.

Half a board by one foot, bilinear between; lane frame outside, own-side metres inside.
"""

from functools import cached_property

import numpy as np

from bowlcore.motion import units

_STEEP = 0.04  # a larger change between neighbouring half boards asks for half-foot steps


class FrictionTable:
    """A surface for one ball.

    Parameters
    ----------
    values : array (61, 79)
        Friction at 0, 1 ... 60 ft by lane boards 0.5, 1.0 ... 39.5.
    """

    def __init__(self, values):
        self.values = np.array(values, dtype=float)
        self.values.flags.writeable = False

    @staticmethod
    def nodes():
        """Boards and distances [ft] of the table's nodes."""
        return np.linspace(0.5, 39.5, 79), np.linspace(0.0, 60.0, 61)

    @cached_property
    def steps(self) -> int:
        """Integration steps over 60 ft: 60, or 120 where friction changes fast across the boards."""
        return 120 if np.abs(np.diff(self.values, axis=1)).max() > _STEEP else 60

    def for_ball(self, ball):
        """The table itself: it was made for its ball."""
        return self

    def friction(self, lane_board, distance_ft, slip_mps=0.0):
        """Coefficient at a place (floats or arrays), held constant beyond the lane."""
        return FrictionTable.read(self.values, lane_board, distance_ft)

    @staticmethod
    def read(values, lane_board, distance_ft, which=()):
        """The same from bare values: of one table, or of a stack of them with `which` for each place."""
        q = np.clip((np.asarray(lane_board) - 0.5) * 2.0, 0.0, 78.0)
        p = np.clip(np.asarray(distance_ft), 0.0, 60.0)
        j, i = np.minimum(q.astype(int), 77), np.minimum(p.astype(int), 59)
        fq, fp, table = q - j, p - i, () if len(which) == 0 else (which,)
        near, near_next = values[(*table, i, j)], values[(*table, i, j + 1)]
        far, far_next = values[(*table, i + 1, j)], values[(*table, i + 1, j + 1)]
        near = near + fq * (near_next - near)
        far = far + fq * (far_next - far)
        return near + fp * (far - near)

    def own_side(self, hand):
        """Values with columns in the bowler's own boards."""
        return self.values if hand == "right" else self.values[:, ::-1]

    @cached_property
    def _lists(self):
        return {hand: self.own_side(hand).tolist() for hand in ("right", "left")}

    def one_shot(self, hand):
        """mu(x, y, slip) in own-side metres for plain floats."""
        rows = self._lists[hand]
        per_board, per_foot = 2.0 / units.BOARD_M, 1.0 / units.FOOT_M

        def mu(x, y, slip):
            q = y * per_board + 39.0
            q = 0.0 if q < 0.0 else (78.0 if q > 78.0 else q)
            p = x * per_foot
            p = 0.0 if p < 0.0 else (60.0 if p > 60.0 else p)
            j, i = int(q), int(p)
            if j > 77:
                j = 77
            if i > 59:
                i = 59
            q -= j
            near, far = rows[i], rows[i + 1]
            a = near[j] + q * (near[j + 1] - near[j])
            b = far[j] + q * (far[j + 1] - far[j])
            return a + (p - i) * (b - a)

        return mu

    def quarters(self, hand):
        """Values at every quarter foot and their differences across, for steps of 1 or 1/2 ft."""
        return self._quarters[hand]

    @cached_property
    def _quarters(self):
        at = np.linspace(0.0, 60.0, 241)
        below = np.minimum(at.astype(int), 59)
        part = (at - below)[:, None]
        values = self.values[below] + part * (self.values[below + 1] - self.values[below])
        both = {}
        for hand, rows in (("right", values), ("left", values[:, ::-1])):
            rows = np.ascontiguousarray(rows)
            both[hand] = rows, np.hstack([np.diff(rows, axis=1), np.zeros((len(rows), 1))])
        return both

    def many(self, hand):
        """A field for `sweep` over `steps` equal steps."""
        return _TableField(self, hand)


class _TableField:
    def __init__(self, table, hand):
        self.values, self.differences = table.quarters(hand)
        self.stride = 240 // table.steps  # quarter feet in a step
        self.mirror = hand == "left"
        self.table = table

    def of(self, shots):
        """The same for some of the shots."""
        return self

    def on_step(self, k, stage, y, slip):
        row = k * self.stride + stage * self.stride // 2
        q = y * (2.0 / units.BOARD_M)
        q += 39.0
        np.maximum(q, 0.0, out=q)
        np.minimum(q, 78.0, out=q)
        j = q.astype(np.intp)
        q -= j
        q *= self.differences[row].take(j)
        q += self.values[row].take(j)
        return q

    def within(self, k, x, y, slip):
        own = y / units.BOARD_M + units.MIDDLE_BOARD
        return self.table.friction(40.0 - own if self.mirror else own, x / units.FOOT_M)
