"""Why a light ball leaves other pins: strikes over the entry board for each ball weight, seen through a scatter.

Mass, not talent: a light ball is thrown aside more by the pins, so another board is best for it.
"""

from dataclasses import dataclass

import numpy as np

from bowlcore.coaching import words
from bowlcore.motion.checks import number_in
from bowlcore.rack import carry
from bowlcore.rack.discs import head_pin_blow
from bowlcore.rack.pins import CENTRE_BOARD

WEIGHTS_LB = (6, 8, 10, 12, 15)
_BOARDS = np.arange(13.0, 23.01, 0.25)


@dataclass(frozen=True)
class WeightAnswer:
    """strike and pinfall: one row a weight, one column a board (mean over the scatter)."""

    board: np.ndarray
    strike: np.ndarray
    pinfall: np.ndarray
    best_board: np.ndarray  # of pinfall, one for each weight
    sentence: str
    rows: list


def answer(entry_angle_deg=3.0, speed_at_pins_mph=11.0, scatter_boards=1.5, *, metric=False) -> WeightAnswer:
    """Odds for every weight at one angle and speed, for a bowler whose hits scatter by `scatter_boards` (one s.d.).

    Raises ValueError naming the field, the value and the range.
    """
    number_in("scatter_boards", scatter_boards, 0.5, 6, "boards")
    fine = np.arange(1.0, 39.01, 0.25)
    weights = np.exp(-0.5 * ((fine[None, :] - _BOARDS[:, None]) / scatter_boards) ** 2)
    weights /= weights.sum(axis=1, keepdims=True)
    odds = [carry.strike_odds(fine, entry_angle_deg, speed_at_pins_mph, float(lb)) for lb in WEIGHTS_LB]
    strike = np.array([weights @ one.strike for one in odds])
    pinfall = np.array([weights @ one.mean_pinfall for one in odds])
    near = np.where(_BOARDS <= CENTRE_BOARD, pinfall, 0.0)  # beyond the head pin lies the other pocket
    best = _BOARDS[near.argmax(axis=1)]
    light, heavy = near.max(axis=1)[0], near.max(axis=1)[-1]
    thrown = [head_pin_blow(2.5, entry_angle_deg, float(lb))[0] for lb in (WEIGHTS_LB[0], WEIGHTS_LB[-1])]
    sentence = (
        f"In this pin model, with the same angle, speed and scatter, a ball of {WEIGHTS_LB[-1]} lb takes {heavy:.1f} pins "
        f"at its best board ({words.halves(best[-1])}), one of {WEIGHTS_LB[0]} lb {light:.1f} at its best "
        f"({words.halves(best[0])}). Off the head pin the heavy ball is turned to {_heading(thrown[1])}, "
        f"the light one to {_heading(thrown[0])}."
    )
    rows = [
        {
            "ball (lb)": str(lb),
            "best board": words.halves(best[i]),
            "pins there": f"{near[i].max():.1f}",
            "strikes there": words.percent(strike[i][near[i].argmax()]),
        }
        for i, lb in enumerate(WEIGHTS_LB)
    ]
    return WeightAnswer(_BOARDS, strike, pinfall, best, sentence, rows)


def _heading(deg):
    return words.launch(deg)
