"""A bowler's evening on one lane in one sentence: pocket, strikes, pins a game, and where the balls come in."""

from dataclasses import dataclass, replace

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.odds import SHOWN, Odds, odds_of_entries
from bowlcore.motion.many import sweep_columns

PUBLISHED_BOX = (17.0, 18.0, 4.0, 6.0)  # boards and degrees: P. Ridenour (USBC), known second-hand


@dataclass(frozen=True)
class BowlerAnswer:
    odds: Odds
    entry_board: np.ndarray
    entry_angle_deg: np.ndarray
    sentence: str
    rows: list


def answer(bowler, surface, *, hand="right") -> BowlerAnswer:
    """256 balls of this bowler; the interval first, and the published box beside the pocket."""
    mirrored = replace(bowler, release=replace(bowler.release, hand=hand))
    marks, _ = sweep_columns(mirrored.shots(SHOWN), surface, bowler.ball)
    odds = odds_of_entries(marks, mirrored)
    board, angle = marks["entry_board"], marks["entry_angle_deg"]
    low, high, flat, steep = PUBLISHED_BOX
    with np.errstate(invalid="ignore"):
        in_box = ((board >= low) & (board <= high) & (angle >= flat) & (angle <= steep)).mean()
    sentence = (
        f"Of {SHOWN} balls {words.percent(odds.pocket)} come in within {words.halves(words.POCKET_REACH)} boards of "
        f"{words.halves(words.POCKET_BOARD)}, and in this pin model {words.share_between(*odds.interval)} strike. "
        f"With the spares that is about {5 * round(odds.pins_per_game / 5):.0f} pins a game."
    )
    rows = [
        {"what": "in the pocket (17.5, 1.5 boards either side)", "share": words.percent(odds.pocket)},
        {"what": "in the published box (boards 17-18, 4-6 degrees)", "share": words.percent(in_box)},
        {"what": "strikes, in this pin model", "share": words.percent(odds.strike)},
        {
            "what": "  doubt from the counts of racks, either way",
            "share": words.percent(2 * odds.sampling_error),
        },
        {"what": "  doubt from the pin model itself, either way", "share": words.percent(odds.model_spread)},
        {"what": "in the gutter", "share": words.percent(odds.gutter)},
    ]
    return BowlerAnswer(odds, board, angle, sentence, rows)
