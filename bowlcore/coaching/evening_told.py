"""A club evening told for one bowler: the oil after each game, the track in it, the feet, move or stay.

The bowlers are the invented demo bowlers; every share is invented.
"""

from dataclasses import dataclass
from functools import lru_cache

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Bowler, load_bowlers
from bowlcore.coaching.evening import LANES, Evening, evening
from bowlcore.coaching.feet import mark_board
from bowlcore.coaching.lane_state import LaneState, read_lane
from bowlcore.coaching.moves import move_words
from bowlcore.coaching.path_lab import lane_of

NAMES = ("league one-hander", "high-rev two-hander", "low-rev senior", "left-hander", "spinner",
         "beginner of eleven")  # fmt: skip
GAMES = 3
_OTHER = {"left": "right", "right": "left"}


@dataclass(frozen=True, eq=False)
class EveningAnswer:
    """Everything a picture of the evening needs.

    looks : list of Look of this bowler on this lane, the fresh lane first, to the end of the games shown
    other_looks : the same on the other lane of the pair
    oils : OiledLane after each game shown
    states : LaneState under the first track after each game shown
    """

    bowler: Bowler
    looks: list
    other_looks: list
    start: object
    oils: list
    states: list
    sentence: str
    rows: list


def label_of(name: str) -> str:
    """How a bowler is called on screens: the left-hander is whoever bowls with the other hand."""
    return "bowler with the other hand" if name == "left-hander" else name


@lru_cache(maxsize=48)
def club_evening(names, pattern, right_percent, taken_percent, carried_percent, moving) -> Evening:
    """Three games of these demo bowlers on a shipped pattern; kept, so that looking again costs nothing.

    `right_percent`: the right lane plays so much looser (+) or tighter (-).
    """
    every = load_bowlers()
    bowlers = [every[name] for name in names]
    lanes = {"left": lane_of(pattern), "right": lane_of(pattern, right_percent)}
    return evening(
        bowlers, lanes, GAMES, taken_up=taken_percent / 100, carried=carried_percent / 100, moving=moving
    )


def on_the_pair(name, bowlers):
    """Names of so many bowlers, this one among them, in bowling order."""
    others = [other for other in NAMES if other != name][: int(bowlers) - 1]
    return tuple(other for other in NAMES if other == name or other in others)


def answer(
    bowler="league one-hander", lane="left", games=GAMES, taken_percent=8, carried_percent=3, *,
    pattern="house", right_percent=0, bowlers=6, moving=True, metric=False,
) -> EveningAnswer:  # fmt: skip
    """One bowler's evening on one lane of the pair; mirrored, hands and lanes, it would be told alike.

    Parameters
    ----------
    bowler : one of NAMES
    lane : "left" or "right"
    games : 1 to 3
    taken_percent, carried_percent : share of the oil taken up at a pass, and of that carried on [%]
    pattern, right_percent : the shape on both lanes, and how much looser (+) the right one plays [%]
    bowlers : 1 to 6 on the pair
    moving : False: nobody moves all evening
    metric : True: the sentence speaks of metres

    Raises
    ------
    ValueError
        From `evening`, in words.
    """
    for field, value, allowed in (("bowler", bowler, NAMES), ("lane", lane, LANES)):
        if value not in allowed:
            raise ValueError(f"{field} must be one of {', '.join(allowed)}, got {str(value)[:40]!r}")
    names = on_the_pair(bowler, bowlers)
    night = club_evening(names, pattern, right_percent, taken_percent, carried_percent, moving)
    number, shown = names.index(bowler), 2 * int(games) + 1
    looks, other = (list(night.looks[number, side])[:shown] for side in (lane, _OTHER[lane]))
    one = night.bowlers[number]
    side = one.release.hand
    states = {
        at: [read_lane(night.lanes[at][0], now, first.path, side) for now in night.lanes[at][:shown]]
        for at, first in ((lane, looks[0]), (_OTHER[lane], other[0]))
    }
    rows = [
        _row(one, at, look, state)
        for at, group in ((lane, looks), (_OTHER[lane], other))
        for look, state in zip(group, states[at], strict=True)
    ]
    sentence = _sentence(one, bowler, lane, looks, states[lane][-1], night, number, metric)
    return EveningAnswer(
        one, looks, other, night.lanes[lane][0], list(night.lanes[lane][2:shown:2]), states[lane][2::2],
        sentence, rows,
    )  # fmt: skip


def _sentence(bowler, name, lane, looks, state, night, number, metric):
    fresh, now = looks[0], looks[-1]
    in_games = words.count(now.games, "game")
    fell = night.falls_after(number, lane)
    who = f"the {label_of(name)}"
    parts = [
        f"After {in_games} the {lane} lane {_state_words(state, metric)} where {who} began.",
        f"On the first line {_stood(fresh, now)}, and {_hundred(now.first.pocket)} find the pocket"
        f" ({_hundred(fresh.first.pocket, False)} when fresh).",
    ]
    if fell is not None and fell <= now.games:
        parts.append(f"That count had first fallen by ten after {words.count(fell, 'game')}.")
    moves = [look for look in looks if look.feet or look.target]
    if not moves:
        parts.append("So far: stay. No move was worth ten more balls in a hundred.")
        return " ".join(parts)
    last = moves[-1]
    when = f"once, after {words.count(last.games, 'game')}"
    if len(moves) > 1:
        when = f"{words.times(len(moves))}, the last time after {words.count(last.games, 'game')}"
    parts.append(
        f"Moved {when}: {move_words(last.feet, last.target)}. "
        f"Now {_line(bowler, now.line)}: {_hundred(now.odds.pocket)} find it."
    )
    return " ".join(parts)


def _state_words(state: LaneState, metric=False) -> str:
    if state.name in ("drying", "carrydown"):
        size = state.drier_ft if state.name == "drying" else state.wetter_ft
        feet = words.count(size, "foot").replace("foots", "feet")  # halves, as a lane is read
        length = words.distance(size, metric) if metric else feet
        verb = "is" if state.name == "drying" else "shows"
        return (
            f"{verb} {state.name} (as if {length} {'more' if state.name == 'drying' else 'fewer'} were dry)"
        )
    return {"fresh": "is still fresh", "wet-dry": "is wet-dry (a sharp edge beside the track)"}[state.name]


def _stood(fresh, now):
    """Where the first line's usual ball comes in now, against the fresh lane."""
    then, board = fresh.first_path.entry_board, now.first_path.entry_board
    if board != board:
        return "the usual ball now ends in the gutter"
    told = f"the usual ball now comes in on {words.board(board)}"
    by = words.to_half(board) - words.to_half(then)
    if by != by:
        return told
    if not by:
        return f"{told} as when fresh"
    return f"{told}, {words.count(abs(by), 'board')} {'higher' if by > 0 else 'lower'} than when fresh"


def _hundred(share, long=True):
    return f"{100 * share:.0f}{' of 100 balls' if long else ''}"


def _line(bowler, release):
    slide, over = bowler.feet.slide_board(release), mark_board(release)
    return f"slide on {words.halves(slide)}, over {words.halves(over)}"


def _row(bowler, lane, look, state):
    return {
        "lane": lane,
        "after games": words.halves(look.games),
        "the lane there": state.name,
        "first line: comes in on board": _entry(look.first_path),
        "in the pocket": words.percent(look.first.pocket),
        "strikes in 100, this pin model": words.between(*look.first.interval),
        "then": move_words(look.feet, look.target) if look.games else "begin",
        "slide": words.halves(bowler.feet.slide_board(look.line)),
        "over": words.halves(mark_board(look.line)),
        "now in the pocket": words.percent(look.odds.pocket),
        "strikes now": words.between(*look.odds.interval),
    }


def _entry(path):
    return "gutter" if path.gutter_ft == path.gutter_ft else words.halves(path.entry_board)
