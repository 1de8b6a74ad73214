"""What a coach reads off a path: entry, breakpoint, hook start, roll start, gutter.

Works on columns of shots (node, shot), so one shot and a batch are read by the same rule. The
heading of a slipping ball only ever turns one way, so a path has at most one turning point.
"""

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.slide import hermite
from bowlcore.motion.sweep import first_zero_many

HOOK_SHARE = 0.2  # of all that friction does before the pins


def landmarks(nodes_m, y, slip, motion, roll_x):
    """Scalars of each shot as a dict of arrays, in the trade's units.

    Parameters
    ----------
    nodes_m : array (n) [m]
    y, slip : arrays (n, shots) [m], [m/s]
    motion : Motion (floats or arrays over shots)
    roll_x : array (shots) [m]
    """
    with np.errstate(invalid="ignore", divide="ignore"):
        first, last = motion.slope(slip[0]), motion.slope(slip[-1])
    turn_x, turn_y = _turning_point(nodes_m, y, slip, motion, first, last)
    gutter_m = _gutter(nodes_m, y, slip, motion, turn_x, turn_y)
    end_m = nodes_m[-1]
    # a turn from out to in is the outermost point; otherwise one of the two ends is
    outward = (first < 0) & (last > 0) & np.isfinite(turn_x)  # a slope of 1e-200 turns nowhere
    falls = y[-1] < y[0]
    break_x = np.where(outward, turn_x, np.where(falls, end_m, 0.0))
    break_y = np.where(outward, turn_y, np.where(falls, y[-1], y[0]))
    lost = np.isfinite(gutter_m)
    off_turn = lost & ~(gutter_m > break_x)
    vx = motion.roll_x + motion.along_x * slip[-1]
    vy = motion.roll_y + motion.along_y * slip[-1]
    board = y[-1] / units.BOARD_M + units.MIDDLE_BOARD
    break_board = break_y / units.BOARD_M + units.MIDDLE_BOARD
    hook_m = _hook_start(nodes_m, slip)
    hook_m = np.where(hook_m > roll_x, roll_x, hook_m)  # both may lie within one step
    feet = 1.0 / units.FOOT_M
    return {
        "entry_board": np.where(lost, np.nan, board),
        "entry_angle_deg": np.where(lost, np.nan, np.degrees(np.arctan2(vy, vx))),
        "entry_speed_mph": np.where(lost, np.nan, np.hypot(vx, vy) / units.MPH_MPS),
        "breakpoint_board": np.where(off_turn, np.clip(break_board, 0.5, 39.5), break_board),
        "breakpoint_ft": np.where(off_turn, gutter_m, break_x) * feet,
        "hook_start_ft": np.where(hook_m < np.where(lost, gutter_m, np.inf), hook_m, np.nan) * feet,
        "roll_start_ft": np.where(roll_x < np.where(lost, gutter_m, np.inf), roll_x, np.nan) * feet,
        "gutter_ft": gutter_m * feet,
    }


def _turning_point(nodes, y, slip, motion, first, last):
    """Where the path runs straight down the boards for a moment: (x, y), NaN if nowhere."""
    shots = y.shape[1]
    turn_x, turn_y = np.full(shots, np.nan), np.full(shots, np.nan)
    turns = np.flatnonzero(first * last < 0)
    if len(turns):
        slopes = _slope_of(motion, slip[:, turns], turns)
        k = np.argmax(np.sign(slopes) != np.sign(slopes[0]), axis=0) - 1
        pick = np.arange(len(turns))
        h = nodes[k + 1] - nodes[k]
        d0, d1 = slopes[k, pick] * h, slopes[k + 1, pick] * h
        f0, f1 = y[k, turns], y[k + 1, turns]
        # the cubic's own turning point, from its derivative d0 + 2 c2 p + 3 c3 p^2
        c3 = 2.0 * (f0 - f1) + d0 + d1
        c2 = f1 - f0 - d0 - c3
        root = np.sqrt(np.maximum(c2 * c2 - 3.0 * c3 * d0, 0.0))
        p = np.clip(-d0 / (c2 + np.copysign(root, d1)), 0.0, 1.0)
        turn_x[turns] = nodes[k] + p * h
        turn_y[turns] = hermite(p, f0, f1, d0, d1)
    return turn_x, turn_y


def _slope_of(motion, slip, which):
    pick = [part[which] if np.ndim(part) else part for part in motion]
    return (pick[1] + pick[3] * slip) / (pick[0] + pick[2] * slip)


def _gutter(nodes, y, slip, motion, turn_x, turn_y):
    """Where the ball's centre first leaves the lane [m]; NaN if it stays."""
    low = (units.EDGE_LOW_BOARD - units.MIDDLE_BOARD) * units.BOARD_M
    high = (units.EDGE_HIGH_BOARD - units.MIDDLE_BOARD) * units.BOARD_M
    where = np.full(y.shape[1], np.nan)
    over = (turn_y < low) | (turn_y > high)  # False where there is no turning point
    lost = np.flatnonzero(over | (y.min(axis=0) < low) | (y.max(axis=0) > high))
    if not len(lost):
        return where
    outside = (y[:, lost] < low) | (y[:, lost] > high)
    j = np.where(outside.any(axis=0), outside.argmax(axis=0), len(nodes) - 1)
    x1, y1, s1 = nodes[j], y[j, lost], slip[j, lost]
    # over the edge and back between two nodes: the crossing lies before the turning point
    early = over[lost] & (turn_x[lost] < x1)
    k = np.searchsorted(nodes, turn_x[lost], side="right") - 1
    k = np.where(early, k, j - 1)
    x0, y0, s0 = nodes[k], y[k, lost], slip[k, lost]
    d0 = _slope_of(motion, s0, lost)
    d1 = np.where(early, 0.0, _slope_of(motion, s1, lost))
    x1, y1 = np.where(early, turn_x[lost], x1), np.where(early, turn_y[lost], y1)
    edge = np.where(y1 < low, low, high)
    part = first_zero_many(y0 - edge, y1 - edge, d0 * (x1 - x0), d1 * (x1 - x0))
    where[lost] = x0 + part * (x1 - x0)
    return where


def _hook_start(nodes, slip):
    """Where slip has fallen by HOOK_SHARE of all it loses; linear between nodes (good to 0.05 ft)."""
    wanted = slip[0] - HOOK_SHARE * (slip[0] - slip[-1])
    passed = slip <= wanted
    k = np.maximum(np.argmax(passed, axis=0), 1)
    shots = np.arange(slip.shape[1])
    before, after = slip[k - 1, shots], slip[k, shots]
    with np.errstate(invalid="ignore", divide="ignore"):
        part = np.where(before > after, (before - wanted) / (before - after), 0.0)
    return np.where(slip[0] > slip[-1], nodes[k - 1] + part * (nodes[k] - nodes[k - 1]), np.nan)
