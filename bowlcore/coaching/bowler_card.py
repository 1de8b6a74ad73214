"""A card for a bowler on a lane or a pair: the line, what to do if it comes in otherwise, the corner pin, and later on.

Every line is what the change engine says for this person, this ball and this lane: if the ball does so, the lane is
another one than was thought (`hypotheses`), and the change is the best one there that can be made on the next ball.
"""

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.changes import suggest_changes
from bowlcore.coaching.evening import LANES, evening
from bowlcore.coaching.hypotheses import EARLY, LATE, ROLLS, possible_lanes
from bowlcore.coaching.odds import bowler_odds
from bowlcore.coaching.spare_windows import own_pin
from bowlcore.coaching.spares import PLAIN_BALL, ball_for, chances_of, lines_to_middle
from bowlcore.coaching.words import POCKET_BOARD, POCKET_REACH
from bowlcore.motion.checks import number_in
from bowlcore.motion.path import simulate
from bowlcore.rack.leave import Leave

GAMES = 3
_HIGH_BY = (2.0, 4.0)  # boards: a high ball, and one on the nose
_LIGHT_BY = -3.0
_SEEN_LIGHT = 1.0  # boards: less than that nobody calls light
_ACROSS = np.arange(20.0, 37.1, 1.0)  # laydown boards tried for the corner pin
_STAY = "stay"


class CardLine(NamedTuple):
    """If `seen`, then `change`: a Change on the lane that this would mean, for the bowler as thrown.

    weak_hand : the ball would be thrown with less turn than usual, so the hand is the first thing to ask about
    """

    seen: str
    change: object
    weak_hand: bool = False


class Corner(NamedTuple):
    """The corner pin on the own side: where to stand, over what, and how often it is hit well; line None if nowhere."""

    pin: int
    line: object
    chance: float


class Later(NamedTuple):
    """After so many games: the line then, and the share in the pocket on it."""

    games: int
    line: object
    pocket: float


class Column(NamedTuple):
    """One lane. `lane` is "" or a side of the pair; `start` is the Change that gives the line; `bowler` is on it."""

    lane: str
    start: object
    bowler: object
    path: object
    pocket: float
    lines: tuple
    corner: Corner
    later: tuple


class Card(NamedTuple):
    """A card: one column a lane."""

    bowler: object
    columns: tuple
    on_the_pair: int


def bowler_card(bowler, surface, *, company=(), games=GAMES) -> Card:
    """The card of a bowler.

    Parameters
    ----------
    bowler : Bowler
    surface : OiledLane, or {"left": OiledLane, "right": OiledLane}
        As the coach believes the lane or the pair to be.
    company : sequence of Bowler
        Who else bowls on the pair and takes up oil, at most 11.
    games : int, 1 to 6
        How far to look ahead.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """
    number_in("games", games, 1, 6)
    lanes = surface if isinstance(surface, dict) else {"": surface}
    if isinstance(surface, dict) and set(surface) != set(LANES):
        raise ValueError('surface must be a lane, or name two, {"left": ..., "right": ...}')
    columns = tuple(
        _column(bowler, name, lane, lanes, tuple(company), int(games)) for name, lane in lanes.items()
    )
    return Card(bowler, columns, 1 + len(company))


def card_line(bowler, lane):
    """The Change that gives the line of the card: another line where that is worth it, else the usual one."""
    changes = suggest_changes(bowler, lane)
    return next((change for change in changes if change.kind in (_STAY, "line")), changes[0])


def _column(bowler, name, lane, lanes, company, games):
    start = card_line(bowler, lane)
    there = start.bowler
    path = simulate(there.release, lane, there.ball)
    odds = bowler_odds(there, lane)
    later = _later(there, name, lane, lanes, company, games)
    return Column(name, start, there, path, odds.pocket, _lines(there, lane), corner_pin(there, lane), later)


def _lines(bowler, lane):
    """High by so much, light and skidding, stood up early: the nearest lane of each kind, and what to do there."""
    seen = {}
    for possible in possible_lanes(bowler, lane):
        thrown = possible.thrown_by(bowler)
        board = simulate(thrown.release, possible.lane, thrown.ball).entry_board
        if board == board and possible.cause in (EARLY, LATE, ROLLS):
            seen.setdefault(possible.cause, []).append((board - POCKET_BOARD, possible, thrown))
    found = []
    for by in _HIGH_BY:
        if nearest := _nearest(seen, EARLY, by):
            told = f"high by {words.count(nearest[0], 'board')}"
            if told not in [line.seen for line in found]:
                found.append(CardLine(told, _next_ball(*nearest[1:])))
    for cause, told in ((LATE, "still skidding"), (ROLLS, "it stands up early")):
        if nearest := _nearest(seen, cause, _LIGHT_BY):
            by, possible, thrown = nearest
            seen_as = f"light by {words.count(-by, 'board')}, {told}"
            found.append(CardLine(seen_as, _next_ball(possible, thrown), bool(possible.hand)))
    return tuple(found)


def _nearest(seen, cause, by):
    """(miss, lane as possible, bowler as thrown) whose miss is nearest to `by`, on that side of the pocket."""
    side = [
        one for one in seen.get(cause, ()) if (one[0] > POCKET_REACH if by > 0 else one[0] < -_SEEN_LIGHT)
    ]
    return min(side, key=lambda one: abs(one[0] - by), default=None)


def _next_ball(possible, thrown):
    """The best change that can be made on the next ball, or the best at all."""
    changes = suggest_changes(thrown, possible.lane)
    return next((change for change in changes if change.when == "next ball"), changes[0])


def corner_pin(bowler, lane) -> Corner:
    """The line at the own corner pin that this bowler's scatter makes most often, with a plain spare ball.

    Feet from board 20 to 37 are tried; for each the target is found that leads into the middle of the window.
    """
    pin, ball = own_pin(10, bowler.release.hand), ball_for(bowler, PLAIN_BALL)
    stands = [replace(bowler.release, laydown_board=float(board)) for board in _ACROSS]
    leaves = [Leave.of(pin)] * len(stands)
    lines = [line for line in lines_to_middle(stands, leaves, lane, ball, keep="feet") if line is not None]
    if not lines:
        return Corner(pin, None, 0.0)
    chances = chances_of(
        [replace(bowler, release=line) for line in lines], lane, leaves[: len(lines)], ball, 128
    )
    best = max(range(len(lines)), key=lambda i: chances[i].front)
    return Corner(pin, lines[best], chances[best].front)


def _later(bowler, name, lane, lanes, company, games):
    """The line after each game of everyone on the pair."""
    pair = lanes if name else dict.fromkeys(LANES, lane)
    looks = evening([bowler, *company], pair, games).looks[0, name or LANES[0]]
    return tuple(
        Later(round(look.games), look.line, look.odds.pocket)
        for look in looks
        if look.games >= 1 and look.games % 1 == 0
    )
