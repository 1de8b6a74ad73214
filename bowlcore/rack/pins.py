"""Where the pins stand, which board is meant at the pins, and what a ball touches first.

Frame: boards from the bowler's own side, 1 to 39, board 20 in the middle; distance from the foul line [ft].
Inside the deck code: inches from the head pin's spot, x down the lane, y towards rising boards.
"""

from math import asin, degrees

import numpy as np

from bowlcore.motion.units import BOARDS as BOARD_COUNT
from bowlcore.motion.units import LANE_FT as HEAD_PIN_FT
from bowlcore.motion.units import LANE_WIDTH_IN
from bowlcore.motion.units import MIDDLE_BOARD as CENTRE_BOARD

# --- standards -----------------------------------------------------------------------------------------
# width, boards and 60 ft: Int. J. Sports Sci. & Coaching, doi 10.1177/17479541241306543 (only its opening read)
BOARD_IN = LANE_WIDTH_IN / BOARD_COUNT  # 1.0641 in, our own calculation
PIN_SPACING_IN = 12.0  # same paper gives the triangle's side as 0.914 m = 36 in
ROW_SPACING_IN = PIN_SPACING_IN * 3**0.5 / 2  # 10.392 in, our own calculation
TAIL_PLANK_IN = 34.1875  # head pin's centre to the pit, common practice, no source worth citing
GUTTER_OUTER_IN = 30.125  # half of lane and gutters, 60 1/4 in: common practice, no source worth citing

PIN_DIAMETER_IN = 4.766  # widest, from memory of the USBC table; pages of pin makers say 4.76
PIN_HEIGHT_IN = 15.0  # common practice, no source worth citing
PIN_MASS_KG_RANGE = (1.531, 1.644)  # 3 lb 6 oz to 3 lb 10 oz, a retailer's article "Bowling Pins"
BALL_DIAMETER_IN = 8.545  # middle of the allowed 8.500 to 8.595 in (copies of an encyclopedia article)
TOUCH_DISTANCE_IN = (BALL_DIAMETER_IN + PIN_DIAMETER_IN) / 2  # 6.656 in between centres, our own calculation

# --- spots ---------------------------------------------------------------------------------------------
_ROWS = ((1,), (2, 3), (4, 5, 6), (7, 8, 9, 10))
PIN_X_IN = np.array([row * ROW_SPACING_IN for row, pins in enumerate(_ROWS) for _ in pins])
"""Distance of pins 1 to 10 behind the head pin's spot [in]."""
PIN_Y_IN = np.array([(len(p) - 1 - 2 * i) * PIN_SPACING_IN / 2 for p in _ROWS for i in range(len(p))])
"""Pins 1 to 10 across the lane from its middle [in], positive towards rising boards (the 7-pin's side)."""


def pin_board(pin):
    """Board of a pin's centre from the right-hander's side [board]; pin 1 to 10, a number or an array."""
    return CENTRE_BOARD + PIN_Y_IN[np.asarray(pin) - 1] / BOARD_IN


def pin_distance_ft(pin):
    """Distance of a pin's centre from the foul line [ft]; pin 1 to 10, a number or an array."""
    return HEAD_PIN_FT + PIN_X_IN[np.asarray(pin) - 1] / 12.0


def pocket_middle_board():
    """Board half way between the head pin and the 3-pin [board].

    17.18. The customary 17.5 is not this sum: it stands in the summary of a USBC study of 2008.
    """
    return float(pin_board(1) + pin_board(3)) / 2


def window_boards(pin):
    """Width of the boards from which a ball parallel to the boards touches a pin standing alone [board].

    A corner pin's window ends where the ball's centre reaches the lane's edge.
    """
    reach = TOUCH_DISTANCE_IN
    middle = float(PIN_Y_IN[pin - 1])
    left = min(middle + reach, LANE_WIDTH_IN / 2)
    right = max(middle - reach, -LANE_WIDTH_IN / 2)
    return (left - right) / BOARD_IN


def line_of_centres_deg(offset_boards, touch_distance_in=TOUCH_DISTANCE_IN):
    """Angle between the lane and the line from ball to head pin at first touch [deg].

    ``offset_boards``: how far the ball's centre is to the right of the head pin at first touch [board].
    """
    return degrees(asin(offset_boards * BOARD_IN / touch_distance_in))


# --- the one conversion of boards ----------------------------------------------------------------------
def board_at_touch(entry_board, entry_angle_deg):
    """Board of the ball's centre where it first touches the head pin [board].

    ``entry_board`` is the board of the path extended to 60 ft, the public meaning everywhere else;
    the touch comes up to 6.7 in earlier, so at 6 degrees it is about 0.6 board smaller in the pocket.
    A ball that misses the head pin gets the board where it passes closest, so nothing jumps at the edge.
    Arrays broadcast. Our own calculation: a straight line and a circle of ``TOUCH_DISTANCE_IN``.
    """
    angle = np.radians(entry_angle_deg)
    offset = (np.asarray(entry_board, float) - CENTRE_BOARD) * BOARD_IN
    along = offset * np.sin(angle)
    miss = offset * np.cos(angle)
    back = np.sqrt(np.maximum(TOUCH_DISTANCE_IN**2 - miss**2, 0.0))
    return CENTRE_BOARD + (offset - (along + back) * np.sin(angle)) / BOARD_IN


def entry_board_from_touch(touch_board, entry_angle_deg):
    """Board at 60 ft of a ball whose centre is at ``touch_board`` at first touch [board].

    Inverse of :func:`board_at_touch` for every ball that meets the front of the head pin.
    """
    angle = np.radians(entry_angle_deg)
    offset = (np.asarray(touch_board, float) - CENTRE_BOARD) * BOARD_IN
    ahead = np.sqrt(np.maximum(TOUCH_DISTANCE_IN**2 - offset**2, 0.0))
    return CENTRE_BOARD + (offset + ahead * np.tan(angle)) / BOARD_IN


def misses_head_pin(entry_board, entry_angle_deg):
    """True where the line of the ball passes the head pin without touching it; arrays broadcast."""
    offset = (np.asarray(entry_board, float) - CENTRE_BOARD) * BOARD_IN
    return np.abs(offset * np.cos(np.radians(entry_angle_deg))) >= TOUCH_DISTANCE_IN
