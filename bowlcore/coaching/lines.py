"""All the lines of one release into the pocket: how far in it stands, and the angle each line gives.

Boards from the bowler's own side, angles in degrees, distances in feet.
"""

from dataclasses import replace
from math import isfinite
from typing import NamedTuple

import numpy as np

from bowlcore.coaching.words import IN_TIME_FT, POCKET_BOARD
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.path import simulate
from bowlcore.motion.release import FIELD_NAMES

_FEET = np.arange(4.0, 32.5, 1.0)  # laydown boards tried, from the present one's fraction of a board
REACH = 5.0  # boards of feet or target that count as one move: a big one is "5 and 2" (common practice)
_OPENING = np.arange(-16.0, 5.1, 0.75)  # target minus laydown, boards tried


class Lines(NamedTuple):
    """One entry a line, arrays of equal length."""

    laydown_board: np.ndarray
    target_board: np.ndarray
    entry_angle_deg: np.ndarray
    roll_start_ft: np.ndarray  # inf where the ball still slips at the pins


def lines_to_pocket(release, surface, ball, entry_board=POCKET_BOARD) -> Lines:
    """Every line found on a grid of whole moves of the feet, good to about 0.05 degree.

    Several lines may start from one place: a wide one that rolls early and a straighter one.
    """
    return lines_of_each([release], surface, ball, entry_board)[1]


def lines_of_each(releases, surface, ball, entry_board=POCKET_BOARD, reach=None):
    """The same for several hands on one line, in one sweep: (number of the release, Lines), an entry a line.

    The releases share laydown, target and hand. `reach`: only lines within so many boards of feet and target.
    """
    usual = releases[0]
    stand = _FEET + usual.laydown_board % 1.0
    if reach is not None:
        stand = stand[np.abs(stand - usual.laydown_board) <= reach]
    feet, opening = np.meshgrid(stand, _OPENING, indexing="ij")
    target = feet + opening
    inside = (target >= 1) & (target <= 39)
    if reach is not None:  # one opening beyond it, so that a line just within is still between two balls
        inside &= np.abs(target - usual.target_board) <= reach + _OPENING[1] - _OPENING[0]
    count, lines = len(releases), int(inside.sum())
    shots = {name: np.repeat([getattr(release, name) for release in releases], lines) for name in FIELD_NAMES}
    shots["laydown_board"], shots["target_board"] = (
        np.tile(feet[inside], count),
        np.tile(target[inside], count),
    )
    marks, _ = sweep_columns(shots, surface, ball)
    miss, angle, roll = (np.full((count, *feet.shape), np.nan) for _ in range(3))
    for grid, values in ((miss, "entry_board"), (angle, "entry_angle_deg"), (roll, "roll_start_ft")):
        grid[:, inside] = marks[values].reshape(count, lines)
    miss -= entry_board
    roll[:, inside] = np.where(np.isfinite(roll[:, inside]), roll[:, inside], np.inf)
    with np.errstate(invalid="ignore"):
        which, i, j = np.nonzero(miss[..., :-1] * miss[..., 1:] <= 0)
    a, b = miss[which, i, j], miss[which, i, j + 1]
    part = np.where(a == b, 0.0, a / np.where(a == b, 1.0, a - b))

    def between(values):
        values = np.broadcast_to(values, miss.shape)
        here, there = values[which, i, j], values[which, i, j + 1]
        with np.errstate(invalid="ignore"):
            mixed = here + part * (there - here)
        return np.where(np.isfinite(mixed), mixed, np.where(part < 0.5, here, there))

    found = Lines(feet[i, j], between(target), between(angle), between(roll))
    if reach is None:
        return which, found
    near = np.abs(found.target_board - usual.target_board) <= reach
    return which[near], Lines(*(values[near] for values in found))


def line_within_reach(release, lines, surface, ball, entry_board=POCKET_BOARD):
    """The steepest line within REACH boards that does not roll too early, to 0.001 board; or None.

    If there is none so near: the smallest move (the larger of feet and target) to one that does not roll
    too early, or to any. The feet move by whole boards or not at all; the target is then found exactly.
    """
    if not len(lines.laydown_board):
        return None
    moves = np.maximum(
        np.abs(lines.laydown_board - release.laydown_board), np.abs(lines.target_board - release.target_board)
    )
    good = lines.roll_start_ft >= IN_TIME_FT  # not rolled too early
    near = good & (moves <= REACH)
    if near.any():
        i = int(np.where(near, lines.entry_angle_deg, -np.inf).argmax())
    else:
        i = int(np.where(good | ~good.any(), moves, np.inf).argmin())
    stand = replace(release, laydown_board=float(lines.laydown_board[i]))

    def miss(target):
        return simulate(replace(stand, target_board=target), surface, ball).entry_board - entry_board

    target, before = float(lines.target_board[i]), float(lines.target_board[i]) + 0.1
    off, off_before = miss(target), miss(before)
    for _ in range(8):
        if abs(off) < 1e-3:
            return replace(stand, target_board=target)
        if not isfinite(off) or not isfinite(off_before) or off == off_before:
            return None
        step = -off * (target - before) / (off - off_before)
        before, off_before = target, off
        target += min(max(step, -0.5), 0.5)
        off = miss(min(max(target, 1.0), 39.0))
    return None
