"""Strikes over board and angle, seen only through a bowler's own scatter, with the doubt as the message.

A map of single cells would show the noise of the racks and the pin model's own holes, not carry.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.changes import TIE_SHARE
from bowlcore.motion.checks import number_in
from bowlcore.rack import carry
from bowlcore.rack.model_spread import model_spread
from bowlcore.rack.pins import CENTRE_BOARD

BOARDS = np.arange(14.0, 21.01, 0.25)
ANGLES = np.arange(0.0, 8.01, 0.5)
SCATTER_DEG = 0.7  # one standard deviation of the entry angle: chosen, about what the demo bowlers show
_ACROSS, _TURNS = np.linspace(-2.4, 2.4, 25), np.linspace(-2.4, 2.4, 9)  # deviations at which it is summed


@dataclass(frozen=True)
class CarryMap:
    """strike (angle, board): mean over the scatter; low, high, best_board, tie for the angle asked for.

    low, high : 95 % interval from the counts; spread : doubt from the pin model, half range, one a board
    tie : boards between which it makes no difference of ten points
    """

    strike: np.ndarray
    row: np.ndarray
    low: np.ndarray
    high: np.ndarray
    spread: np.ndarray
    best_board: float
    tie: tuple
    sentence: str
    rows: list


def answer(scatter_boards=1.5, entry_angle_deg=4.5, ball_lb=15.0, speed_at_pins_mph=14.0, *, metric=False):
    """The map for a scatter of hits (one standard deviation), and its slice at one angle.

    Raises ValueError naming the field, the value and the range.
    """
    number_in("scatter_boards", scatter_boards, 0.5, 4, "boards")
    number_in("entry_angle_deg", entry_angle_deg, 0, 8, "degrees")
    scatter = float(scatter_boards), float(speed_at_pins_mph), float(ball_lb)
    strike = strike_map(*scatter)
    row, error = _slice(float(entry_angle_deg), *scatter)
    spread = np.array([_doubt(board, entry_angle_deg, scatter_boards) for board in BOARDS])
    near = BOARDS < CENTRE_BOARD - 0.5  # beyond the head pin begins the other pocket
    best = int(np.where(near, row, 0).argmax())
    even = BOARDS[near & (row > row[best] - TIE_SHARE)]
    low, high = np.clip(row - 2 * error, 0, 1), np.clip(row + 2 * error, 0, 1)
    sentence = (
        f"Seen through a scatter of {words.count(scatter_boards, 'board')}, at {words.degrees(entry_angle_deg)} the best "
        f"board is {words.halves(BOARDS[best])}: {words.share_between(low[best], high[best])} strike in this pin model, and "
        f"another pin model may differ by {words.percent(spread[best])} either way. From board {words.halves(even[0])} to "
        f"{words.halves(even[-1])} it is a tie (less than ten in a hundred)."
    )
    rows = [
        {
            "comes in on (board)": words.halves(BOARDS[i]),
            "strikes in 100, from the counts": words.between(low[i], high[i]),
            "doubt about the pin model, either way": words.percent(spread[i]),
        }
        for i in range(0, len(BOARDS), 2)
    ]
    return CarryMap(
        strike, row, low, high, spread, float(BOARDS[best]), (float(even[0]), float(even[-1])), sentence, rows
    )


def best_place(scatter_boards=1.5, ball_lb=15.0, speed_at_pins_mph=14.0):
    """Board and angle of the largest strike share of the map, before the head pin."""
    near = BOARDS < CENTRE_BOARD - 0.5
    strike = np.where(near, strike_map(float(scatter_boards), float(speed_at_pins_mph), float(ball_lb)), 0.0)
    angle, board = np.unravel_index(strike.argmax(), strike.shape)
    return float(BOARDS[board]), float(ANGLES[angle])


def _around(boards, angles, scatter_boards):
    """Entries around each place and the share of each: arrays (place, entry)."""
    across, turn = np.meshgrid(_ACROSS, _TURNS, indexing="ij")
    weight = np.exp(-0.5 * (across**2 + turn**2)).ravel()
    at = np.asarray(boards)[:, None] + scatter_boards * across.ravel()
    return np.clip(at, 1, 39), np.asarray(angles)[:, None] + SCATTER_DEG * turn.ravel(), weight / weight.sum()


@lru_cache(maxsize=64)
def strike_map(scatter_boards, speed, lb):
    """Strike share over ANGLES and BOARDS through a scatter, at a speed at the pins [mph] and a ball's weight [lb]."""
    for name, value in (("speed_at_pins_mph", speed), ("ball_lb", lb)):
        number_in(name, value, *carry.RANGES[name])
    boards, angles = (grid.ravel() for grid in np.meshgrid(BOARDS, ANGLES))
    at, turn, weight = _around(boards, angles, scatter_boards)
    (strike,) = carry.mixed(at, turn, speed, lb, ("strike",))
    return (np.clip(strike, 0.0, 1.0) @ weight).reshape(len(ANGLES), len(BOARDS))


def _slice(angle, scatter_boards, speed, lb):
    """Strike share along the boards at one angle, and its standard error from the counts."""
    at, turn, weight = _around(BOARDS, np.full(len(BOARDS), angle), scatter_boards)
    nodes, parts = carry.corners(at, turn, speed, lb)
    row = (parts * weight * carry.node_values("strike")[nodes]).sum(axis=(0, 2))
    return row, np.array(
        [carry.sampling_error(nodes[:, i], parts[:, i] * weight) for i in range(len(BOARDS))]
    )


def _doubt(board, angle, scatter_boards):
    """Doubt about the pin model over the same scatter, evenly weighted places."""
    steps = np.array([-1.4, -0.8, -0.4, 0.0, 0.4, 0.8, 1.4])
    return model_spread(board + scatter_boards * steps, np.full(7, angle))
