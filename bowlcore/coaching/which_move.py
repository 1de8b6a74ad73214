"""Which move brings back most balls, on a lane that six bowlers have worn for three games without moving."""

from dataclasses import replace
from functools import lru_cache

from bowlcore.coaching import words
from bowlcore.coaching.evening_told import NAMES, club_evening, label_of
from bowlcore.coaching.moves import STAY, move_words, moved
from bowlcore.coaching.odds import SHOWN, bowler_odds
from bowlcore.coaching.transition import CARRIED, TAKEN_UP

MOVES = (STAY, (1, 1), (2, 2), (3, 3), (1, 0), (2, 0), (2, 1), (3, 2), (5, 2), (-1, -1), (-2, -1))
BOWLERS = ("league one-hander", "high-rev two-hander", "spinner", "left-hander")


def worn_lane():
    """The left lane of the pair after three games in which nobody moved, and the bowlers on their first lines."""
    night = club_evening(NAMES, "house", 0, 100 * TAKEN_UP, 100 * CARRIED, False)
    people = {
        name: replace(bowler, release=night.looks[i, "left"][0].line)
        for i, (name, bowler) in enumerate(zip(NAMES, night.bowlers, strict=True))
    }
    return night.lanes["left"][-1], people


@lru_cache(maxsize=1)
def rows() -> list[dict]:
    """One row a move: balls of a hundred in the pocket for four bowlers, each from the first line."""
    lane, people = worn_lane()
    return [
        {"move": move_words(*move)}
        | {
            label_of(name): words.percent(bowler_odds(moved(people[name], *move), lane, SHOWN).pocket)
            for name in BOWLERS
        }
        for move in MOVES
    ]
