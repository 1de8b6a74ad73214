"""The games in a log: shots put together, scored by the rules, and what each cause took from the score.

A cause's share is what putting it right would win, averaged over all orders in which the causes could be put
right (the Shapley value), so the shares of one game add up to 300 less its score.
"""

from collections import defaultdict
from datetime import date
from itertools import combinations
from math import factorial
from typing import NamedTuple

from bowlcore.coaching.frame_scores import FRAMES, PINS, score_of
from bowlcore.rack.leave import Leave

POCKET = "flush"
CAUSES = ("missed the pocket", "pocket, no strike", "single pins", "several pins", "splits", "hit not noted")
_FIRST_BALL = {"missed the pocket", "pocket, no strike", "hit not noted"}


class Game(NamedTuple):
    """Turns of one bowler's game, and its score; None if it is not finished or a count is missing."""

    bowler: str
    session: str
    day: date
    number: int
    shots: tuple
    score: int | None


def games_of(kept) -> list[Game]:
    """Games among the shots of a log (`PracticeLog.shots`), in order."""
    turns = defaultdict(list)
    for shot in kept:
        if shot.entry.game is not None:
            turns[shot.entry.bowler, shot.session, shot.day, shot.entry.game].append(shot.entry)
    return [Game(*where, tuple(shots), _score(shots)) for where, shots in turns.items()]


def balls_of(shots) -> list[int]:
    """Pins of each ball of the turns of a game.

    Raises
    ------
    ValueError
        When a count is missing that the score needs.
    """
    balls = []
    for number, shot in enumerate(shots, 1):
        if shot.first is None:
            raise ValueError(f"turn {number}: it is not noted what stood")
        balls.append(shot.first)
        if shot.second is not None:
            balls.append(shot.second)
        elif shot.standing and number < len(shots):
            raise ValueError(f"turn {number}: it is not noted what the second ball took")
    return balls


def leave_class(standing) -> str:
    """single pins, splits or several pins: by what the first ball left."""
    if len(standing) == 1:
        return "single pins"
    return "splits" if Leave.of(*standing).is_split else "several pins"


def pins_lost(game: Game) -> dict[str, float]:
    """Pins that each cause took from a finished game; together 300 less the score."""
    turns = [_Turn(shot) for shot in game.shots]
    there = sorted({cause for turn in turns for cause in turn.causes}, key=CAUSES.index)
    worth = {
        frozenset(right): _score_if(turns, frozenset(right))
        for size in range(len(there) + 1)
        for right in combinations(there, size)
    }
    lost, count = dict.fromkeys(CAUSES, 0.0), len(there)
    for cause in there:
        for right, score in worth.items():
            if cause not in right:
                share = factorial(len(right)) * factorial(count - len(right) - 1) / factorial(count)
                lost[cause] += share * (worth[right | {cause}] - score)
    return lost


class _Turn:
    """A turn as pins of two balls, and why it was no strike and no spare."""

    def __init__(self, shot):
        self.first, self.second, self.causes = shot.first, shot.second, []
        if shot.standing:
            why = (
                "hit not noted"
                if shot.hit is None
                else "pocket, no strike"
                if shot.hit == POCKET
                else "missed the pocket"
            )
            self.causes.append(why)
            if shot.second is not None and not shot.made:
                self.causes.append(leave_class(shot.standing))

    def if_right(self, right):
        """Pins of both balls once these causes are put right; the second is None where there was none."""
        if self.first == PINS or self.causes[0] in right:
            return PINS, None
        if self.second is not None and len(self.causes) == 2 and self.causes[1] in right:
            return self.first, PINS - self.first
        return self.first, self.second


def _score_if(turns, right):
    """The score had these causes been put right; balls that would then still be due are as good as the game's mean."""
    put = [turn.if_right(right) for turn in turns]
    balls = [ball for turn in put for ball in turn if ball is not None]
    total, place = 0.0, 0
    for _ in range(FRAMES):
        first, rest = balls[place], balls[place + 1 :]
        if first == PINS:
            total += first + _next_two(rest, put)
            place += 1
        else:
            pins = first + rest[0]
            total += pins + ((rest[1] if len(rest) > 1 else _mean_first(put)) if pins == PINS else 0)
            place += 2
    return total


def _next_two(rest, put):
    """Pins of the two balls after a strike, where they were thrown; else the mean of the game's own."""
    if len(rest) >= 2:
        return rest[0] + rest[1]
    first = rest[0] if rest else _mean_first(put)
    if first == PINS:
        return first + _mean_first(put)
    seconds = [(one, two) for one, two in put if two is not None]
    left = sum(PINS - one for one, _ in seconds)
    return first + (PINS - first) * (sum(two for _, two in seconds) / left if left else 0.0)


def _mean_first(put):
    return sum(first for first, _ in put) / len(put)


def _score(shots):
    try:
        return score_of(balls_of(shots))
    except ValueError:
        return None
