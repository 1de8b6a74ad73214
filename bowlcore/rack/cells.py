"""The plan of the carry table: which cells, in which order, how many racks each.

A cell is one ball weight and one speed at the pins, and a small box of boards and angles; its racks are
spread evenly over the box, so a cell is the mean over its box and not one point of a rugged map. Boards are
at first touch of the head pin (``pins.board_at_touch``), right-hander's numbers.
"""

from dataclasses import dataclass
from math import floor

BALLS_LB = (6, 8, 10, 12, 15)
SPEEDS_MPH = (5, 8, 11, 14, 17)
FULL_BLOCKS = ((15, 14), (8, 8))  # (lb, mph): an adult's and a child's ordinary ball
FINE_OFFSETS = tuple(i / 2 for i in range(-12, 13))  # boards from the head pin's board, its whole reach
FINE_ANGLES = tuple(range(9))
SPARSE_OFFSETS = (-6, -5, -4, -3.5, -3, -2.5, -2, -1.5, -1, 0, 1, 2, 2.5, 3, 4, 5, 6)
SPARSE_ANGLES = (0, 2, 5, 8)
WIDE_OFFSETS = tuple(sign * away for away in (7, 8, 9.5, 11, 13, 15, 17, 18.5) for sign in (-1, 1))
WIDE_ANGLES = (0, 5)  # for balls that miss the head pin, with the two full blocks' balls
BOARD_WIDTH = 0.5
ANGLE_WIDTH_DEG = 1.0
CHECK_CELLS = tuple(  # never used by the look-up: they test its interpolation
    (lb, mph, angle, offset)
    for lb, mph in ((15, 15.5), (13.5, 14), (10, 9.5), (7, 6.5))
    for angle, offset in ((1, -2.25), (1, 2.25), (3.5, -3.25), (3.5, -2.25), (6.5, -2.75), (6.5, -0.5))
)


@dataclass(frozen=True)
class Cell:
    """One box of the table: weight [lb], speed at the pins [mph], angle [deg], board at first touch."""

    ball_lb: float
    speed_mph: float
    angle_deg: float
    board: float
    in_table: bool = True  # False: a check cell

    @property
    def name(self):
        """Short unique text, such as 15lb-14mph-5deg-17.5."""
        return f"{self.ball_lb:g}lb-{self.speed_mph:g}mph-{self.angle_deg:g}deg-{self.board:g}"

    def shot(self, rack):
        """Board at touch and angle [deg] of rack number 0, 1, 2 ... in this cell.

        An additive sequence of two irrational steps fills the box evenly however many racks are run, and is
        the same in every cell.
        """
        across, turn = _spread(rack)
        return self.board + BOARD_WIDTH * (across - 0.5), self.angle_deg + ANGLE_WIDTH_DEG * (turn - 0.5)


def _spread(rack):
    first, second = 0.5 + (rack + 1) * 0.7548776662466927, 0.5 + (rack + 1) * 0.5698402909980532
    return first - floor(first), second - floor(second)


@dataclass(frozen=True)
class Job:
    """Racks ``first`` to ``first + count - 1`` of a cell: the unit that a worker does and can lose."""

    cell: Cell
    first: int
    count: int


def full_cells():
    """Cells of the two full blocks."""
    return [
        Cell(lb, mph, angle, 20.0 + offset)
        for lb, mph in FULL_BLOCKS
        for angle in FINE_ANGLES
        for offset in FINE_OFFSETS
    ]


def sparse_cells():
    """Cells of every other weight and speed."""
    return [
        Cell(lb, mph, angle, 20.0 + offset)
        for lb in BALLS_LB
        for mph in SPEEDS_MPH
        if (lb, mph) not in FULL_BLOCKS
        for angle in SPARSE_ANGLES
        for offset in SPARSE_OFFSETS
    ]


def wide_cells():
    """Cells of balls that pass the head pin without touching it."""
    return [
        Cell(lb, mph, angle, 20.0 + offset)
        for lb, mph in FULL_BLOCKS
        for angle in WIDE_ANGLES
        for offset in WIDE_OFFSETS
    ]


def check_cells():
    """Cells between the table's cells, to test the look-up; left out of it."""
    return [Cell(lb, mph, angle, 20.0 + offset, in_table=False) for lb, mph, angle, offset in CHECK_CELLS]


def pocket_cells():
    """Cells around the pocket of the adult's block, where the most racks go."""
    adult = [cell for cell in full_cells() if (cell.ball_lb, cell.speed_mph) == FULL_BLOCKS[0]]
    return [cell for cell in adult if 16 <= cell.board <= 18.5]


def plan():
    """All passes in order: (what it is for, list of jobs). Each pass leaves a complete, finer table."""
    full, sparse = full_cells(), sparse_cells()
    return [
        ("the two full blocks, coarse", [Job(cell, 0, 16) for cell in full]),
        ("all other weights and speeds, coarse", [Job(cell, 0, 8) for cell in sparse]),
        ("balls past the head pin", [Job(cell, 0, 24) for cell in wide_cells()]),
        ("full blocks to 40 racks", [Job(cell, 16, 24) for cell in full]),
        ("check cells", [Job(cell, 0, 64) for cell in check_cells()]),
        ("other weights and speeds to 16 racks", [Job(cell, 8, 8) for cell in sparse]),
        ("full blocks to 64 racks", [Job(cell, 40, 24) for cell in full]),
        ("adult's pocket to 128 racks", [Job(cell, 64, 64) for cell in pocket_cells()]),
    ]
