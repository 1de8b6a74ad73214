"""Where to stand for a spare: the line into the middle of a window, and how often a bowler's scatter makes it.

Boards from the bowler's own side. Beyond 60 ft the ball is taken straight on.
"""

from dataclasses import dataclass, replace
from math import isfinite
from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import line_words
from bowlcore.coaching.odds import SHOWN
from bowlcore.coaching.path_lab import ball_of
from bowlcore.coaching.spare_windows import aimed_window, board_at, spare_leave, touched
from bowlcore.coaching.telling import gutter
from bowlcore.motion.many import sweep_each
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import FIELD_NAMES, Release
from bowlcore.motion.units import EDGE_HIGH_BOARD, EDGE_LOW_BOARD
from bowlcore.rack.pins import CENTRE_BOARD

STRIKE_BALL, PLAIN_BALL = "strike ball", "plain spare ball"
BALLS = (PLAIN_BALL, STRIKE_BALL)
COMMON = ("10", "7", "6", "4", "3", "2", "5", "9", "8", "1", "6-10", "4-7", "3-10", "2-7", "2-8", "2-4-5-8",
          "3-6-10", "1-2-4-7", "7-10")  # fmt: skip
_TRIED = np.arange(1.0, 39.01, 0.5)  # boards of feet or target
_MOVED = {"target": "laydown_board", "feet": "target_board"}
_CLOSE = 0.02  # board off the middle that is good enough


class Chance(NamedTuple):
    """Shares of a bowler's balls: that touch every pin, that touch the pin in front, that fall in a gutter."""

    every: float
    front: float
    gutter: float


def ball_for(bowler, kind):
    """The bowler's strike ball, or a plain spare ball of the same weight."""
    if kind not in BALLS:
        raise ValueError(f"ball must be one of {', '.join(BALLS)}, got {kind!r}")
    return bowler.ball if kind == STRIKE_BALL else replace(ball_of(PLAIN_BALL), mass_lb=bowler.ball.mass_lb)


def spare_chance(bowler, surface, leave, ball=None, shots=SHOWN) -> Chance:
    """How often this bowler, on the line of `bowler.release`, touches what stands.

    Parameters
    ----------
    bowler : Bowler
    surface : as for `simulate`
    leave : Leave, text, or pins
    ball : Ball
        The bowler's own if left out.
    shots : int
        Releases tried, the same accidents for every bowler and line.

    Returns
    -------
    Chance
        For several pins the truth lies somewhere between `every` and `front`, mostly.

    Raises
    ------
    ValueError
        As `spare_leave`.
    """
    return chances_of([bowler], surface, [spare_leave(leave)], ball or bowler.ball, shots)[0]


def chances_of(bowlers, surface, leaves, ball, shots=SHOWN) -> list[Chance]:
    """`spare_chance` of many bowlers, each at a leave of its own, in one batch.

    surface, ball : one for all, or a list with one a bowler
    """
    thrown = [bowler.shots(shots) for bowler in bowlers]
    columns = {name: np.concatenate([one[name] for one in thrown]) for name in FIELD_NAMES}
    which, lanes = _lanes(surface, ball, len(bowlers))
    marks = sweep_each(columns, np.repeat(which, shots), lanes)
    found = []
    for i, (bowler, leave) in enumerate(zip(bowlers, leaves, strict=True)):
        mine = slice(i * shots, (i + 1) * shots)
        board, angle = marks["entry_board"][mine], marks["entry_angle_deg"][mine]
        every, front = touched(leave, board, angle, bowler.release.hand)
        found.append(Chance(float(every.mean()), float(front.mean()), float(np.isnan(board).mean())))
    return found


def _lanes(surface, ball, count):
    """Which lane and ball each of `count` has, as array of int, and the (lane, ball) there are, each once."""
    pairs = [tuple(one[i] if isinstance(one, list) else one for one in (surface, ball)) for i in range(count)]
    there = {tuple(map(id, pair)): pair for pair in pairs}
    place = {key: i for i, key in enumerate(there)}
    return np.array([place[tuple(map(id, pair))] for pair in pairs], dtype=int), list(there.values())


def lines_to_middle(releases, leaves, surface, ball, keep="target") -> list[Release | None]:
    """For each release the nearest line whose ball comes into the middle of the window of its leave.

    Parameters
    ----------
    releases : list of Release
    leaves : list of Leave
    surface : as for `simulate`
    ball : Ball, or a list with one a release
    keep : "target" or "feet"
        What stays; the other one moves, anywhere from board 1 to 39.

    Returns
    -------
    list
        Releases, good to 0.02 board; None where there is no such line.
    """
    columns = {name: np.array([getattr(one, name) for one in releases]) for name in FIELD_NAMES}
    present = columns[_MOVED[keep]].astype(float)
    which, lanes = _lanes(surface, ball, len(releases))

    def off(rows, boards):
        shots = {name: columns[name][rows] for name in FIELD_NAMES} | {_MOVED[keep]: boards}
        marks = sweep_each(shots, which[rows], lanes)
        result = np.empty(len(rows))
        for row in np.unique(rows):
            mine = rows == row
            entry, angle = marks["entry_board"][mine], marks["entry_angle_deg"][mine]
            window = aimed_window(leaves[row], angle, releases[row].hand)
            result[mine] = board_at(entry, angle, window.row_ft) - window.middle
        return result

    rows = np.repeat(np.arange(len(releases)), len(_TRIED))
    misses = off(rows, np.tile(_TRIED, len(releases))).reshape(len(releases), -1)
    with np.errstate(invalid="ignore"):
        crossing = misses[:, :-1] * misses[:, 1:] <= 0
    away = np.where(crossing, np.abs(_TRIED[:-1] + 0.25 - present[:, None]), np.inf)
    best = away.argmin(axis=1)
    rows = np.flatnonzero(np.isfinite(away[np.arange(len(releases)), best]))
    lines = [None] * len(releases)
    if len(rows):
        found, missed = _closed_in(off, rows, best, misses)
        for row, board, miss in zip(rows, found, missed, strict=True):
            if abs(miss) <= _CLOSE:
                lines[row] = replace(releases[row], **{_MOVED[keep]: float(board)})
    return lines


def _closed_in(off, rows, best, misses):
    """Chord steps inside each bracket (Illinois form): boards, and how far off they still are."""
    a, b = _TRIED[best[rows]], _TRIED[best[rows] + 1]
    fa, fb = misses[rows, best[rows]], misses[rows, best[rows] + 1]
    for _ in range(8):
        x = np.where(fa == fb, a, b - fb * (b - a) / np.where(fa == fb, 1.0, fb - fa))
        f = off(rows, x)
        if np.abs(f).max() <= _CLOSE / 2:
            break
        flip = f * fb < 0
        a, fa = np.where(flip, b, a), np.where(flip, fb, 0.5 * fa)
        b, fb = x, f
    return x, f


@dataclass(frozen=True)
class SpareAnswer:
    """One line at one leave; `low` to `high` is the window at 60 ft for a ball with this path's direction."""

    path: BallPath
    other: BallPath
    low: float
    high: float
    chance: Chance
    better: Release | None
    sentence: str
    rows: list


def answer(bowler, surface, leave, kind=PLAIN_BALL) -> SpareAnswer:
    """The line of `bowler.release` at a leave, with one ball, and the other ball on the same line.

    Parameters
    ----------
    bowler : Bowler
    surface : as for `simulate`
    leave : Leave, text, or pins
    kind : "plain spare ball" or "strike ball"

    Raises
    ------
    ValueError
        As `spare_leave` and `ball_for`.
    """
    leave = spare_leave(leave)
    other_kind = BALLS[1 - BALLS.index(kind)] if kind in BALLS else kind
    names = kind, other_kind
    balls = [ball_for(bowler, name) for name in names]
    middle = lines_to_middle([bowler.release] * 2, [leave] * 2, surface, balls)
    tried = [(0, bowler.release), (1, bowler.release), *((i, line) for i, line in enumerate(middle) if line)]
    chances = chances_of(
        [replace(bowler, release=line) for _, line in tried],
        surface,
        [leave] * len(tried),
        [balls[i] for i, _ in tried],
    )
    there = {i: chance for (i, _), chance in list(zip(tried, chances, strict=True))[2:]}
    seen = {
        name: (simulate(bowler.release, surface, balls[i]), chances[i], middle[i], there.get(i))
        for i, name in enumerate(names)
    }
    path, chance, better, _ = seen[kind]
    hand = bowler.release.hand
    window = aimed_window(leave, path.entry_angle_deg if isfinite(path.entry_angle_deg) else 0.0, hand)
    low, high = (float(board_at(edge, path.entry_angle_deg, 120.0 - window.row_ft)) for edge in window[:2])
    sentence = " ".join(
        [
            f"{line_words(bowler.release, bowler.feet).capitalize()}: the {kind} "
            f"{_comes(path, leave, hand)}. {_often(chance, leave)}",
            _advice(bowler, better),
            f"The {other_kind} on the same line {_comes(seen[other_kind][0], leave, hand)}.",
        ]
    )
    rows = []
    for name, (_, here, line, there) in seen.items():
        rows.append(_row(name, "on this line", bowler, bowler.release, here, leave))
        if line is not None:
            rows.append(_row(name, "feet moved to the middle", bowler, line, there, leave))
    return SpareAnswer(path, seen[other_kind][0], low, high, chance, better, sentence, rows)


def pins_words(leave) -> str:
    """ "the 10-pin", "the 3-10"."""
    return f"the {leave.text}-pin" if len(leave.pins) == 1 else f"the {leave.text}"


def move_words(bowler, line) -> str:
    """How the feet move at the start of the approach: "2.5 boards in", "stay"."""
    move = words.to_half(bowler.feet.start_move(line.laydown_board - bowler.release.laydown_board))
    return "stay" if move == 0 else f"{words.count(abs(move), 'board')} {'in' if move > 0 else 'out'}"


def _comes(path, leave, hand):
    """Where the ball is against the window."""
    if isfinite(path.gutter_ft):
        return f"ends in the {gutter(path)} before the pins"
    window = aimed_window(leave, path.entry_angle_deg, hand)
    board = float(board_at(path.entry_board, path.entry_angle_deg, window.row_ft))
    low, high = max(float(window.low), EDGE_LOW_BOARD), min(float(window.high), EDGE_HIGH_BOARD)
    off = max(float(window.low) - board, board - float(window.high), 0.0)
    if off and not EDGE_LOW_BOARD <= board <= EDGE_HIGH_BOARD:
        return (
            f"drops into the {'' if board < CENTRE_BOARD else 'far '}gutter just before {pins_words(leave)}"
        )
    board = min(max(board, EDGE_LOW_BOARD), EDGE_HIGH_BOARD)  # it touches just before it would leave the lane
    row = f"comes to {pins_words(leave)} on {words.board(board)}"
    if low >= high:
        return f"{row}, too steep to touch every pin"
    edges = f"(boards {words.halves(low)} to {words.halves(high)})"
    if off:
        return f"{row} and misses the window {edges} by {words.count(max(off, 0.5), 'board')}"
    return f"{row}, inside the window {edges}"


def _often(chance, leave):
    if len(leave.pins) == 1:
        return f"With this bowler's scatter about {words.percent(chance.front)} hit it well."
    return (
        f"With this bowler's scatter about {words.percent(chance.front)} touch the pin in front, and "
        f"{words.percent(chance.every)} would touch every pin if nothing threw the ball aside."
    )


def _advice(bowler, better):
    if better is None:
        return "With this target no place to stand brings it into the middle of the window."
    move = move_words(bowler, better)
    if move == "stay":
        return "That is the middle of the window: stay."
    return f"For the middle of the window: feet {move}, same target."


def _row(name, what, bowler, line, chance, leave):
    alone = len(leave.pins) == 1
    row = {"ball": name, "line": f"{what}: {line_words(line, bowler.feet)}"}
    row["hits it well" if alone else "touches the pin in front"] = words.percent(chance.front)
    if not alone:
        row["touches every pin"] = words.percent(chance.every)
    return row | {"in the gutter": words.percent(chance.gutter)}
