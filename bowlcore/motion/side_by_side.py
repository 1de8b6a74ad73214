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
    hands : sequence of "right" or "left", whose boards each table is read in
    which : array of int (shots), index of each shot's table
    """

    def __init__(self, tables, hands, which):
        super().__init__(tables[0])
        self.tables, self.hands, self.which = tables, hands, which

    def field(self, hand):
        return _WideField(self.tables, self.hands, self.which)


class _WideField:
    """A table's field with the lanes' boards one after the other."""

    def __init__(self, tables, hands, which):
        quarters = [table.quarters(hand) for table, hand in zip(tables, hands, strict=True)]
        self.values, self.differences = (np.hstack([pair[i] for pair in quarters]) for i in (0, 1))
        self.rows = np.stack([table.values for table in tables])
        self.stride = 240 // tables[0].steps
        self.mirrored = np.array(hands) == "left"
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
        board = np.where(self.mirrored[self.which], 40.0 - own, own)
        return FrictionTable.read(self.rows, board, x / units.FOOT_M, self.which)
