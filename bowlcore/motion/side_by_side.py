"""The same followed on several oiled lanes at once: their friction tables lie side by side in one array.

A sweep costs little more for five thousand shots than for a hundred, so thirty lanes cost as much as a few.
"""

import copy

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.fields import OiledField
from bowlcore.motion.friction_table import FrictionTable


class SideBySide(OiledField):
    """Tables of equal steps, as the integrators want them: each shot reads the one it belongs to.

    Only for `sweep`: a single shot is followed on its own lane.

    Parameters
    ----------
    tables : sequence of FrictionTable, all with the same `steps`
    which : array of int (shots), index of each shot's table
    """

    def __init__(self, tables, which):
        super().__init__(tables[0])
        self.tables, self.which = tables, which

    def field(self, hand):
        return _WideField(self.tables, self.which, hand)


class _WideField:
    """A table's field with the lanes' boards one after the other."""

    def __init__(self, tables, which, hand):
        quarters = [table.quarters(hand) for table in tables]
        self.values, self.differences = (np.hstack([pair[i] for pair in quarters]) for i in (0, 1))
        self.rows = np.stack([table.values for table in tables])
        self.stride = 240 // tables[0].steps
        self.mirror = hand == "left"
        self._belong(which)

    def _belong(self, which):
        self.which, self.first = which, which * 79
        return self

    def of(self, shots):
        """The same for some of the shots."""
        return copy.copy(self)._belong(self.which[shots])

    def on_step(self, k, stage, y, slip):
        row = k * self.stride + stage * self.stride // 2
        q = y * (2.0 / units.BOARD_M)
        q += 39.0
        np.maximum(q, 0.0, out=q)
        np.minimum(q, 78.0, out=q)
        j = q.astype(np.intp)
        q -= j
        j += self.first
        q *= self.differences[row].take(j)
        q += self.values[row].take(j)
        return q

    def within(self, k, x, y, slip):
        own = y / units.BOARD_M + units.MIDDLE_BOARD
        board = 40.0 - own if self.mirror else own
        return FrictionTable.read(self.rows, board, x / units.FOOT_M, self.which)
