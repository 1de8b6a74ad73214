"""Where a bowler stands and looks, as bowlers say it: "slide on 24, over 12, out to 8".

Boards from the bowler's own side. A release counts where the ball is laid down; people count where the
slide foot stops, and read the arrows where these lie, not at 15 ft.
"""

from dataclasses import dataclass, replace

import numpy as np

from bowlcore.coaching import words
from bowlcore.motion.checks import number_in
from bowlcore.motion.units import TARGET_FT

MARKS_NEAR_FT, MARKS_FAR_FT = 12.0, 16.0  # the V of the arrows (clinic slides, known second-hand)
_MARK_SLOPE = (MARKS_FAR_FT - MARKS_NEAR_FT) / 15.0  # ft a board: arrows on boards 5, 10 ... 35
_MIDDLE = 20.0
DRIFTS = ("parallel", "2 to 1")
STYLES = ("one-handed", "two-handed")


@dataclass(frozen=True)
class Feet:
    """How the feet carry the ball to the line.

    Parameters
    ----------
    offset_boards : float
        Slide foot inside the ball's centre at laydown, -5 to 20. The default is common practice, no
        source (some six to eight boards).
    drift : "parallel" or "2 to 1"
        Moved by one board at the start, the slide ends one board further, or half a board.
    style : "one-handed" or "two-handed"
        Which words about the hand fit.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """

    offset_boards: float = 7.0
    drift: str = "parallel"
    style: str = "one-handed"

    def __post_init__(self):
        number_in("offset_boards", self.offset_boards, -5, 20)
        for name, allowed in (("drift", DRIFTS), ("style", STYLES)):
            if getattr(self, name) not in allowed:
                raise ValueError(f"{name} must be one of {', '.join(allowed)}, got {getattr(self, name)!r}")

    def slide_board(self, release) -> float:
        """Board of the slide foot at the foul line."""
        return release.laydown_board + self.offset_boards

    def start_move(self, laydown_move: float) -> float:
        """Boards to move at the start of the approach for a move of the laydown."""
        return laydown_move * (2.0 if self.drift == "2 to 1" else 1.0)


def mark_distance_ft(board):
    """How far down the lane the mark on a board lies: the V runs from 12 ft to 16 ft in the middle."""
    return np.maximum(MARKS_FAR_FT - _MARK_SLOPE * np.abs(board - _MIDDLE), MARKS_NEAR_FT)


def mark_board(release) -> float:
    """Board where the launch line crosses the V of the marks (the ball still runs straight there)."""
    return float(mark_board_of(release.laydown_board, release.target_board))


def mark_board_of(laydown_board, target_board):
    """The same from laydown and target at 15 ft (floats or arrays)."""
    per_foot = (np.asarray(target_board) - laydown_board) / TARGET_FT
    board = np.asarray(target_board, dtype=float)
    for _ in range(
        60
    ):  # the V is flat against the line: this closes in by a factor of four or more each time
        board = laydown_board + per_foot * mark_distance_ft(board)
    return board


def straight_boards(laydown_move, target_move, distance_ft):
    """Boards that a straight line moves at a distance [ft], for moves of laydown and target; positive in."""
    return laydown_move + (target_move - laydown_move) * distance_ft / TARGET_FT


def on_line(release, feet, slide_board: float, over_board: float):
    """The release that slides on one board and rolls over another at the marks: what a bowler says.

    Raises
    ------
    ValueError
        From `Release`, when a board lies off the lane.
    """
    laydown = slide_board - feet.offset_boards
    target = laydown + (over_board - laydown) * TARGET_FT / mark_distance_ft(over_board)
    return replace(release, laydown_board=laydown, target_board=target)


def line_words(release, feet, path=None) -> str:
    """ "slide on 24, over 12, out to 8": spoken as bowlers do, halves of boards."""
    told = f"slide on {words.halves(feet.slide_board(release))}, over {words.halves(mark_board(release))}"
    if path is not None and 0 < path.breakpoint_ft < 60:
        told += f", out to {words.halves(path.breakpoint_board)}"
    return told
