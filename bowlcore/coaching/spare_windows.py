"""Which balls touch a pin or a leave: windows in boards, our own geometry.

A ball and a pin are circles seen from above; the ball goes straight through the deck, undisturbed, in the
direction it has at 60 ft, and must still be on the lane when it touches. That is what counts here. Real
balls are thrown aside by pins, and pins fell pins: for more than one pin this is only a bound.
Boards are the ball's centre, from the bowler's own side, at the row of the pin (or of the pin in front).
"""

from typing import NamedTuple

import numpy as np

from bowlcore.motion.units import EDGE_HIGH_BOARD, EDGE_LOW_BOARD, LANE_FT
from bowlcore.rack.leave import MIRROR, Leave
from bowlcore.rack.pins import (
    BOARD_IN,
    CENTRE_BOARD,
    TOUCH_DISTANCE_IN,
    entry_board_from_touch,
    pin_board,
    pin_distance_ft,
)

THIN_BOARDS = 1.0  # taken off each side: a very thin touch may leave the pin (common practice)


class Window(NamedTuple):
    """From `low` to `high` [board] at `row_ft`; empty where high lies below low. Arrays for many headings."""

    low: np.ndarray
    high: np.ndarray
    row_ft: float

    @property
    def width(self):
        return self.high - self.low

    @property
    def middle(self):
        return (self.low + self.high) / 2


def spare_leave(pins) -> Leave:
    """The standing pins as a leave: a `Leave`, text such as "3-10", a pin's number, or several.

    Raises
    ------
    ValueError
        For a pin that does not exist, a pin named twice, or no pin at all.
    """
    if isinstance(pins, Leave):
        named, leave = pins.pins, pins
    elif isinstance(pins, str):
        named, leave = pins.split("-"), Leave.from_text(pins)
    else:
        named = tuple(pins) if np.iterable(pins) else (pins,)
        leave = Leave.of(*named)
    if leave.is_strike:
        raise ValueError("a spare needs at least one standing pin, got none")
    if len(named) != len(leave.pins):
        raise ValueError(f"a leave names each pin once, got {pins!r}")
    return leave


def own_pin(pin, hand="right"):
    """The pin of a right-hander's rack that stands where this one does, seen from the own side."""
    return pin if hand == "right" else MIRROR[pin]


def front_pin(leave, hand="right"):
    """The pin a spare ball must not miss: the one in front; of two in one row the one on the own side."""
    return min(leave.pins, key=lambda pin: (pin_distance_ft(pin), pin_board(own_pin(pin, hand))))


def board_at(entry_board, heading_deg, distance_ft):
    """Board of the straight way beyond (or before) 60 ft, from the board and the heading there."""
    return entry_board + np.tan(np.radians(heading_deg)) * (distance_ft - LANE_FT) * 12.0 / BOARD_IN


def pin_window(pin, heading_deg=0.0, hand="right", thin_boards=0.0) -> Window:
    """Boards at the pin's row from which a ball touches a pin standing alone.

    Parameters
    ----------
    pin : int
        As it stands: a left-hander's own corner is the 7.
    heading_deg : float or array
        Direction at the pins, positive away from the own gutter.
    hand : "right" or "left"
    thin_boards : float
        Taken off each side.

    Notes
    -----
    12.51 boards for a free pin and 8.84 for a corner pin when the ball runs along the boards. A corner
    pin's window ends where the ball's centre is over the lane's edge as it touches.
    """
    here = own_pin(spare_leave(pin).pins[0], hand)
    middle = float(pin_board(here))
    reach = TOUCH_DISTANCE_IN / BOARD_IN
    half = reach / np.cos(np.radians(heading_deg))
    shift = CENTRE_BOARD - middle  # the head pin's formula, moved to this pin
    low, high = middle - half, middle + half
    if middle - reach < EDGE_LOW_BOARD:
        low = entry_board_from_touch(EDGE_LOW_BOARD + shift, heading_deg) - shift
    if middle + reach > EDGE_HIGH_BOARD:
        high = entry_board_from_touch(EDGE_HIGH_BOARD + shift, heading_deg) - shift
    return Window(low + thin_boards, high - thin_boards, float(pin_distance_ft(here)))


def leave_window(leave, heading_deg=0.0, hand="right", thin_boards=0.0) -> Window:
    """Boards at the row of the front pin from which an undisturbed ball touches every pin of a leave."""
    leave = spare_leave(leave)
    row_ft = float(pin_distance_ft(front_pin(leave, hand)))
    lows, highs = [], []
    for pin in leave.pins:
        one = pin_window(pin, heading_deg, hand, thin_boards)
        lows.append(board_at(one.low, heading_deg, LANE_FT + row_ft - one.row_ft))
        highs.append(board_at(one.high, heading_deg, LANE_FT + row_ft - one.row_ft))
    return Window(np.max(lows, axis=0), np.min(highs, axis=0), row_ft)


def has_window(leave) -> bool:
    """True if a straight ball along the boards can touch every pin."""
    return bool(leave_window(leave).width > 0)


def aimed_window(leave, heading_deg=0.0, hand="right") -> Window:
    """The window to aim into: of every pin where a straight ball has one, else of the pin in front (any touch).

    At a steep heading the window of every pin may be empty; its middle is still the best place.
    """
    if has_window(leave):
        return leave_window(leave, heading_deg, hand)
    return pin_window(front_pin(leave, hand), heading_deg, hand)


def touched(leave, entry_board, heading_deg, hand="right", thin_boards=THIN_BOARDS):
    """Which balls touch every pin, and which the pin in front: two arrays of bool.

    A board is taken off each side for a pin alone. Where several stand any touch counts: leaves such as
    the 3-10 are made by thin ones.
    """
    front = front_pin(leave, hand)
    if len(leave.pins) == 1:
        alone = _inside(pin_window(front, heading_deg, hand, thin_boards), entry_board, heading_deg)
        return alone, alone
    every = _inside(leave_window(leave, heading_deg, hand), entry_board, heading_deg)
    return every, _inside(pin_window(front, heading_deg, hand), entry_board, heading_deg)


def _inside(window, entry_board, heading_deg):
    board = board_at(entry_board, heading_deg, window.row_ft)
    with np.errstate(invalid="ignore"):
        return (board >= window.low) & (board <= window.high)
