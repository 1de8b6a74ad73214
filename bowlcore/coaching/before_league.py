"""Ten minutes before league: eight balls a lane, in an order that asks the lane one thing at a time, and what to write.

The order is common practice, no source; where each ball should come in is computed for this bowler on the lane believed.
"""

from typing import NamedTuple

from bowlcore.coaching import words
from bowlcore.coaching.bowler_card import card_line, corner_pin
from bowlcore.coaching.feet import line_words
from bowlcore.coaching.moves import moved
from bowlcore.motion.path import simulate

_PLAN = (
    ("easy, any line: loosen up", None),
    ("your line", (0, 0)),
    ("your line again", (0, 0)),
    ("same feet, look 2 out", (0, -2)),
    ("same feet, look 2 in", (0, 2)),
    ("feet and target 3 in", (3, 3)),
    ("the corner pin, spare ball", "corner"),
    ("your line, as in frame 1", (0, 0)),
)
WRITE = (
    "Write: the board it was over, the hit (f flush in the pocket, l light, h high, n nose, m missed), the end "
    "(s skids, t turns, r rolls)."
)
READ = (
    "Ball 4 comes back and ball 5 holds: there is room on both sides, stay.",
    "4 stays out: play no further out. 5 goes high: there is no room inside, aim further out or move in.",
    "2 and 3 light and skidding: the lane is slicker than thought. Light and rolled: ask the hand first.",
    "2 and 3 high, over the target: move in before the first frame, not after it.",
    "The two lanes differ? Then two lines: write both on the card.",
)


class WarmUp(NamedTuple):
    """One ball: what it is for, the line as bowlers say it, where it comes in if the lane is as believed ("" if open)."""

    what: str
    line: str
    expected: str


def warm_up(bowler, lane) -> list[WarmUp]:
    """The eight balls on a lane for this bowler.

    Parameters
    ----------
    bowler : Bowler
        On the usual line; the line of the card is taken.
    lane : as for `simulate`
    """
    start = card_line(bowler, lane).bowler
    balls = []
    for what, move in _PLAN:
        if move is None:
            balls.append(WarmUp(what, "", ""))
        elif move == "corner":
            corner = corner_pin(bowler, lane)
            line = line_words(corner.line, bowler.feet) if corner.line else "your own place"
            balls.append(WarmUp(what.replace("corner pin", f"{corner.pin}-pin"), line, ""))
        else:
            balls.append(_ball(what, start, lane, move))
    return balls


def _ball(what, start, lane, move):
    """A ball on the line moved by feet and target; off the lane it is left to the bowler."""
    try:
        thrown = moved(start, *move).release
    except ValueError:
        return WarmUp(what, "as far as you can", "")
    board = simulate(thrown, lane, start.ball).entry_board
    expected = words.hit(board) if board == board else "in the gutter"
    return WarmUp(what, line_words(thrown, start.feet), expected)
