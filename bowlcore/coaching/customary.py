"""The customary remedy for a hit, and what it would be worth to this bowler here.

Common practice, no source, except "3 and 1 or 2" and "5 and 2" for balls that come in high (a web page of
2004, known second-hand).
"""

from bowlcore.coaching import words
from bowlcore.coaching.moves import moved
from bowlcore.coaching.odds import RANKING, bowler_odds
from bowlcore.motion.path import simulate

# what is seen -> feet and target inwards, and the words
_MOVES = {
    "nose": (5.0, 2.0, "feet 5 in, target 2 in"),
    "high": (2.0, 1.0, "feet 2 in, target 1 in"),
    "light": (-1.0, 0.0, "feet 1 out, same target"),
    "rolled": (2.0, 2.0, "move in 2 and 2 into the oil, or a cleaner ball"),
    "flat": (2.0, 1.0, "move in 2 and 1 for angle, or a cleaner ball"),
}


def remedy(bowler, surface, before) -> str:
    """ "Customary: feet 2 in, target 1 in; here 41 % in the pocket become 66 %." """
    seen = _seen(simulate(bowler.release, surface, bowler.ball))
    if seen is None:
        return "Customary: stay."
    feet, target, told = _MOVES[seen]
    try:
        there = moved(bowler, feet, target)
    except ValueError:
        return f"Customary: {told}; here the lane's edge is in the way."
    after = bowler_odds(there, surface, RANKING).pocket
    drift = ""
    if feet != target and bowler.feet.drift == "2 to 1":
        drift = " (at the foul line; with your drift the start moves twice as far)"
    return f"Customary: {told}{drift}; here {words.percent(before.pocket)} in the pocket become {words.percent(after)}."


def _seen(path):
    """Which customary case the centre ball is, None when all is well."""
    if path.entry_board != path.entry_board:
        return None
    off = words.to_half(path.entry_board) - words.POCKET_BOARD
    if off > 4:
        return "nose"
    if off > words.POCKET_REACH:
        return "high"
    early = path.roll_start_ft < words.IN_TIME_FT
    if off < -words.POCKET_REACH:
        return "rolled" if early else "light"
    return "flat" if early else None
