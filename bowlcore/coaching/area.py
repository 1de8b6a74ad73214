"""One release on two lanes: the boards its target may lie on, what a miss does, and what else may be off."""

from dataclasses import dataclass, replace
from math import isfinite

import numpy as np

from bowlcore.coaching import telling, words
from bowlcore.coaching.bowler import Spread
from bowlcore.coaching.miss_room import MissRoom, both_ways, miss_room
from bowlcore.motion import units
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import FIELD_NAMES, Release

ORDINARY = Spread()  # a practised bowler's, invented
LINES = ("middle of the area", "as it stands")
_STEP = 0.25  # boards between the targets tried


@dataclass(frozen=True)
class Fan:
    """A release on one lane: aimed, missed out and missed in by the same boards, and its room."""

    name: str
    release: Release | None
    room: MissRoom | None
    missed_out: BallPath | None = None
    missed_in: BallPath | None = None


@dataclass(frozen=True)
class AreaAnswer:
    """Everything the picture of the area needs."""

    fans: list
    sentence: str
    rows: list


def middle_of_area(release, surface, ball) -> Release | None:
    """The same release from the same laydown, over the middle of the targets that hit the pocket.

    Of several unbroken stretches of such targets, the one nearest the present target; None if none is
    found on a grid of a quarter of a board.
    """
    targets = np.arange(1.0, 39.0 + _STEP, _STEP)
    columns = {name: np.full(len(targets), getattr(release, name)) for name in FIELD_NAMES}
    columns["target_board"] = targets
    marks, _ = sweep_columns(columns, surface, ball)
    with np.errstate(invalid="ignore"):
        hits = np.abs(marks["entry_board"] - words.POCKET_BOARD) <= words.POCKET_REACH
    edges = np.flatnonzero(np.diff(np.r_[False, hits, False].astype(int)))
    first, last = targets[edges[::2]], targets[edges[1::2] - 1]
    if not len(first):
        return None
    away = np.maximum(np.maximum(first - release.target_board, release.target_board - last), 0.0)
    i = int(np.argmin(away))
    return replace(release, target_board=float(first[i] + last[i]) / 2.0)


def answer(release, lanes, ball, *, missed_boards=1.0, line=LINES[0], metric=False) -> AreaAnswer:
    """The area of one release on each of two lanes.

    Parameters
    ----------
    release, ball : as for `simulate`
    lanes : list of (name in words, surface)
        Two: the upper and the lower lane of the picture.
    missed_boards : float
        How far the target is missed, out and in.
    line : "middle of the area" or "as it stands"
        Whether the target is moved to the middle of the area first; the laydown stays.
    """
    fans = [_fan(name, lane, release, ball, missed_boards, line, metric) for name, lane in lanes]
    told = [_words(fan, missed_boards, metric) for fan in fans]
    return AreaAnswer(fans, " ".join(told), _rows(fans, missed_boards, metric))


def _fan(name, lane, release, ball, missed_boards, line, metric):
    aimed = middle_of_area(release, lane, ball) if line == LINES[0] else release
    if aimed is None:
        return Fan(name, None, None)

    def missed(boards):
        target = aimed.target_board + boards
        return simulate(replace(aimed, target_board=target), lane, ball) if 1 <= target <= 39 else None

    room = miss_room(aimed, lane, ball, spread=ORDINARY, metric=metric)
    return Fan(name, aimed, room, missed(-missed_boards), missed(missed_boards))


def _words(fan, missed_boards, metric):
    name = fan.name[0].upper() + fan.name[1:]
    if fan.release is None:
        return f"{name}: from this laydown no target brings the ball to the pocket."
    aimed = (
        f"{name}: over {words.halves(fan.release.target_board)} at {words.distance(units.TARGET_FT, metric)}"
    )
    if not fan.room.hits:
        return f"{aimed} the ball is {state(fan.room.path)}, so the target has no room."
    either = " or ".join(both_ways("target_board", fan.room.target_board, metric))
    told = f"{aimed}, the target may be missed by {either}."
    if not missed_boards:
        return told
    room, size = fan.room.target_board, words.count(missed_boards, "board")
    out = _again(state(fan.missed_out), missed_boards - room.down)
    into = _again(state(fan.missed_in), missed_boards - room.up)
    if out == into:
        return f"{told} Missed by {size} either way, the ball is {out}."
    return f"{told} Missed by {size} out, the ball is {out}; by {size} in, {into}."


def _again(place, beyond):
    """A ball that hits from clearly beyond the room (half a board and more) has found another area."""
    return f"{place} again" if beyond >= 0.5 and place == words.hit(words.POCKET_BOARD) else place


def state(path) -> str:
    """Where a ball comes in, in a few words."""
    if path is None:
        return "sent off the lane"
    return "in the gutter" if isfinite(path.gutter_ft) else words.hit(path.entry_board)


def _rows(fans, missed_boards, metric):
    """One line a question, one column a lane."""
    columns = [_column(fan, missed_boards, metric) for fan in fans]
    titles = [f"{place} lane: {fan.name}" for place, fan in zip(("upper", "lower"), fans, strict=True)]
    return [
        {"what": what} | {title: column.get(what, "") for title, column in zip(titles, columns, strict=True)}
        for what in dict.fromkeys(key for column in columns for key in column)
    ]


def _column(fan, missed_boards, metric):
    if fan.release is None:
        return {"aimed over board": "no target found"}
    path, size = fan.room.path, words.count(missed_boards, "board")
    told = {
        "aimed over board": words.halves(fan.release.target_board),
        "ball": telling.tell(path, metric),
        f"target {size} out": state(fan.missed_out),
        f"target {size} in": state(fan.missed_in),
    }
    for row in fan.room.rows:
        name, one, other, kept = row.values()
        told[f"{name} may be off"] = f"{one}; {other}"
        told[f"{name}: balls that stay, if it alone scatters"] = kept
    return told
