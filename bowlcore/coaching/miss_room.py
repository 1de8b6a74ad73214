"""How much area do I have? How far one number of a release may be off and the ball still hits the pocket.

One number at a time, all else the same. Boards from the bowler's own side: down is out, up is in.
"""

from dataclasses import dataclass
from math import erf, sqrt
from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Spread
from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import number_in
from bowlcore.motion.closed_form import final_velocity
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import RANGES, Release

# how far each number is tried, and in what steps; what lies beyond is said as "at least"
_TRIED = {
    "target_board": (8.0, 0.125),
    "laydown_board": (8.0, 0.125),
    "speed_mph": (5.0, 0.2),
    "rev_rate_rpm": (200.0, 10.0),
    "axis_rotation_deg": (45.0, 2.5),
}
_FORWARD_MPS = 0.6  # twice what `simulate` asks of a ball that is not to stand still


class Room(NamedTuple):
    """How far one number may be off, down and up [its own unit], both 0 or more.

    down_to, up_to : what comes beyond: "light", "high" or "gutter"; "" where the end of what was tried
        still hits, so that the room is at least this
    kept : share of balls that stay in the room if this number alone scatters as given; NaN if not given
    """

    down: float
    up: float
    down_to: str
    up_to: str
    kept: float

    @property
    def whole(self):
        """Down and up together."""
        return self.down + self.up


@dataclass(frozen=True)
class MissRoom:
    """The room of each number, and the same in words. Without a hit all rooms are 0 and there are no rows."""

    hits: bool
    path: BallPath
    target_board: Room
    laydown_board: Room
    speed_mph: Room
    rev_rate_rpm: Room
    axis_rotation_deg: Room
    sentence: str
    rows: list


def miss_room(
    release, surface, ball=None, *, entry_board=words.POCKET_BOARD, reach=words.POCKET_REACH, spread=None,
    metric=False,
) -> MissRoom:  # fmt: skip
    """How far target, laydown, speed, revs or rotation may be off, one at a time, and still hit.

    The room is the unbroken stretch around the present value: another line to the pocket further away
    does not count.

    Parameters
    ----------
    release, surface, ball : as for `simulate`
    entry_board, reach : float
        A hit comes in within `reach` boards (0.1 to 5) of this board (1 to 39).
    spread : Spread, optional
        A bowler's scatter: the table then says how many balls stay in each room, if that number alone
        scatters.
    metric : bool
        km/h in the words.

    Returns
    -------
    MissRoom

    Raises
    ------
    ValueError
        Naming the value and the range; from `simulate`, in words.
    """
    if not isinstance(release, Release):
        raise ValueError(f"release must be a Release, got {type(release).__name__}")
    if spread is not None and not isinstance(spread, Spread):
        raise ValueError(f"spread must be a Spread, got {type(spread).__name__}")
    number_in("entry_board", entry_board, 1, 39, "boards")
    number_in("reach", reach, 0.1, 5, "boards")
    ball = Ball() if ball is None else ball
    path = simulate(release, surface, ball)
    hits = abs(path.entry_board - entry_board) <= reach
    tried = {name: _tried(name, release, ball) for name in _TRIED}
    board = _entries(release, tried, surface, ball)
    rooms = {}
    for name, values in tried.items():
        scatter = getattr(spread, name) if spread else np.nan
        moved = values - getattr(release, name)
        rooms[name] = _room(moved, board[name] - entry_board, reach, scatter) if hits else _NONE
    place = _place(entry_board, reach)
    if not hits:
        return MissRoom(False, path, **rooms, sentence=_no_hit(path.entry_board, place), rows=[])
    told = _sentence(rooms, place, metric)
    return MissRoom(True, path, **rooms, sentence=told, rows=_rows(rooms, spread, metric))


_NONE = Room(0.0, 0.0, "", "", np.nan)


def _tried(name, release, ball):
    """Values of one number to try: the present one among them, within what a release may be."""
    span, step = _TRIED[name]
    low, high, _ = RANGES[name]
    values = getattr(release, name) + step * np.arange(-round(span / step), round(span / step) + 1)
    values = values[(values >= low) & (values <= high)]
    now = {field: getattr(release, field) for field in _TRIED} | {name: values}
    spin = now["rev_rate_rpm"] * units.RPM_RADS * np.cos(np.radians(release.axis_tilt_deg))
    roll = ball.radius_m * spin * np.cos(np.radians(now["axis_rotation_deg"]))
    forward = final_velocity(now["speed_mph"] * units.MPH_MPS, roll, ball.inertia_factor)
    return values[np.broadcast_to(forward >= _FORWARD_MPS, values.shape) | (values == getattr(release, name))]


def _entries(release, tried, surface, ball):
    """Entry boards of all tried values of each number, in one batch."""
    counts = {name: len(values) for name, values in tried.items()}
    columns = {name: np.full(sum(counts.values()), float(getattr(release, name))) for name in RANGES}
    columns["hand"] = np.full(sum(counts.values()), release.hand)
    places, first = {}, 0
    for name, count in counts.items():
        places[name] = slice(first, first + count)
        columns[name][places[name]] = tried[name]
        first += count
    marks, _ = sweep_columns(columns, surface, ball)
    return {name: marks["entry_board"][place] for name, place in places.items()}


def _room(moved, off, reach, scatter):
    """Room both ways from the entries `off` [boards from the middle] of values `moved` from the present."""
    middle = int(np.argmin(np.abs(moved)))
    down, down_to = _way(-moved[middle::-1], off[middle::-1], reach)
    up, up_to = _way(moved[middle:], off[middle:], reach)
    kept = np.nan
    if scatter == scatter:
        kept = 1.0 if scatter == 0 else (_normal(up / scatter) + _normal(down / scatter)) / 2.0
    return Room(down, up, down_to, up_to, kept)


def _way(moved, off, reach):
    """How far one way the ball still hits, to the crossing between two tried values, and what comes then."""
    with np.errstate(invalid="ignore"):
        outside = np.flatnonzero(~(np.abs(off[1:]) <= reach)) + 1
    if not len(outside):
        return float(moved[-1]), ""
    i = outside[0]
    if not np.isfinite(off[i]):
        return float(moved[i - 1]), "gutter"
    edge = np.copysign(reach, off[i])
    part = (edge - off[i - 1]) / (off[i] - off[i - 1])
    return float(moved[i - 1] + part * (moved[i] - moved[i - 1])), "high" if off[i] > 0 else "light"


def _normal(times):
    """Share of a normal scatter within so many standard deviations."""
    return erf(times / sqrt(2.0))


# number in words, less, more
_TITLES = {
    "target_board": ("target (read at {ft})", "out", "in"),
    "laydown_board": ("laydown", "out", "in"),
    "speed_mph": ("speed", "slower", "faster"),
    "rev_rate_rpm": ("revs", "fewer", "more"),
    "axis_rotation_deg": ("rotation", "less", "more"),
}


def title(name: str, metric: bool = False) -> str:
    """One number of the release in words: "target (read at 15 ft)"."""
    return _TITLES[name][0].format(ft=words.distance(units.TARGET_FT, metric))


def both_ways(name: str, room: Room, metric: bool = False) -> tuple[str, str]:
    """Down and up as a coach says it: ("1.5 boards out", "at least 8 boards in")."""
    sides = zip(room[:2], (room.down_to, room.up_to), _TITLES[name][1:], strict=True)
    return tuple(f"{'' if to else 'at least '}{_amount(name, size, metric)} {way}" for size, to, way in sides)


def _amount(name, size, metric):
    if name == "speed_mph":
        small = round(size * units.KMH_PER_MPH) == 0 if metric else words.to_half(size) == 0
        return (
            f"less than {words.speed(0.6 if metric else 0.5, metric)}" if small else words.speed(size, metric)
        )
    if name == "rev_rate_rpm":
        return words.revs(size) if size >= 5 else "less than 10 rpm"
    noun = "board" if name.endswith("board") else "degree"
    return words.count(size, noun) if words.to_half(size) else f"less than half a {noun}"


def _sentence(rooms, place, metric):
    told = [
        f"{title(name, metric)} {' or '.join(both_ways(name, room, metric))}" for name, room in rooms.items()
    ]
    return f"Still {place}, one thing off at a time: {'; '.join(told)}."


def _no_hit(board, place):
    if not np.isfinite(board):
        return "This shot goes into the gutter: it has no room. Aim it first."
    return f"This shot comes in on {words.board(board)}, not {place}: it has no room. Aim it first."


def _place(entry_board, reach):
    if (entry_board, reach) == (words.POCKET_BOARD, words.POCKET_REACH):
        return "in the pocket"
    return f"within {words.count(reach, 'board')} of board {words.halves(entry_board)}"


def _rows(rooms, spread, metric):
    rows = []
    for name, room in rooms.items():
        one, other = both_ways(name, room, metric)
        row = {
            "one thing off": title(name, metric),
            "room one way": one + (f", then {room.down_to}" if room.down_to else ""),
            "room the other way": other + (f", then {room.up_to}" if room.up_to else ""),
        }
        if spread is not None:
            row["balls that stay, if this alone scatters"] = words.percent(room.kept)
        rows.append(row)
    return rows
