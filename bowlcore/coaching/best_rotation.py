"""Which axis rotation is best? It depends on what is asked: four questions, three bowlers, one lane."""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import straight_boards
from bowlcore.coaching.lines import lines_of_each
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.ball import Ball
from bowlcore.motion.closed_form import best_rotation_deg, sideways_share
from bowlcore.motion.many import simulate_many
from bowlcore.motion.release import Release
from bowlcore.motion.units import LANE_FT, MPH_MPS, RPM_RADS

# Ordinary lines on an ordinary house lane (common practice, no source).
BOWLERS = {
    "lower revs": Release(15, 200, 35, 15, 12, 10),
    "medium revs": Release(17, 300, 45, 13, 17, 13),
    "high revs": Release(18, 450, 45, 10, 27, 18.5),
}
TWO = ("lower revs", "high revs")
ROTATIONS = np.arange(0.0, 90.1, 5.0)
_TOP = 5.0  # a best rotation is told to the nearest five degrees
SEEN_SHARE, SEEN_BOARDS, SEEN_DEG = 0.02, 0.5, 0.5  # steps that nobody sees; the first is our choice


@dataclass(frozen=True)
class Curves:
    """What one hand does at each of ROTATIONS, all else the same.

    push_share : share of friction that pushes sideways as the ball leaves the hand, 0 to 1
    best_push_deg : rotation of the largest push; NaN where the spin outruns the ball
    hook_boards, angle_deg : on the same line, against a straight ball; entry angle
    re_aimed_deg : entry angle of the steepest line into the pocket; NaN without one
    """

    release: Release
    push_share: np.ndarray
    best_push_deg: float
    entry_board: np.ndarray
    hook_boards: np.ndarray
    angle_deg: np.ndarray
    re_aimed_deg: np.ndarray


@lru_cache(maxsize=32)
def curves(name: str, pattern="house", hand="right") -> Curves:
    """The curves of one of BOWLERS on a pattern."""
    lane, ball = lane_of(pattern), Ball()
    usual = replace(BOWLERS[name], hand=hand)
    spin_mps = ball.radius_m * usual.rev_rate_rpm * RPM_RADS * np.cos(np.radians(usual.axis_tilt_deg))
    speed_mps = usual.speed_mph * MPH_MPS
    releases = [replace(usual, axis_rotation_deg=float(rotation)) for rotation in ROTATIONS]
    shots = simulate_many(releases, lane, ball)
    which, lines = lines_of_each(releases, lane, ball)
    steepest = [
        lines.entry_angle_deg[which == i].max() if (which == i).any() else np.nan
        for i in range(len(releases))
    ]
    board = shots["entry_board"].to_numpy()
    straight = usual.laydown_board + straight_boards(0.0, usual.target_board - usual.laydown_board, LANE_FT)
    return Curves(
        usual,
        sideways_share(speed_mps, spin_mps, ROTATIONS),
        float(best_rotation_deg(speed_mps, spin_mps)),
        board,
        board - straight,
        shots["entry_angle_deg"].to_numpy(),
        np.array(steepest),
    )


def peak(values) -> float:
    """The rotation [deg] tried at which something is largest; NaN if it never is."""
    return float(ROTATIONS[int(np.nanargmax(values))]) if np.isfinite(values).any() else np.nan


def as_good(values, step) -> tuple[float, float]:
    """From which rotation to which [deg] something lies within a step of its largest, without a gap around it."""
    good = np.asarray(values) >= np.nanmax(values) - step
    low = high = int(np.nanargmax(values))
    while low > 0 and good[low - 1]:
        low -= 1
    while high < len(ROTATIONS) - 1 and good[high + 1]:
        high += 1
    return float(ROTATIONS[low]), float(ROTATIONS[high])


def rows(metric=False, hand="right", pattern="house", names=tuple(BOWLERS)) -> list[dict]:
    """One row a bowler: the rotation [deg, to 5] that is largest in each sense."""
    table = []
    for name in names:
        told = curves(name, pattern, hand)
        usual = told.release
        table.append(
            {
                "bowler": f"{name}: {words.speed(usual.speed_mph, metric)}, {words.revs(usual.rev_rate_rpm)}",
                "most push sideways while it skids": f"{_TOP * round(told.best_push_deg / _TOP):.0f}°",
                "comes in highest, same line": _best(told.entry_board),
                "comes in steepest, same line": _best(told.angle_deg),
                "comes in steepest, re-aimed": _best(told.re_aimed_deg),
            }
        )
    return table


def _best(values):
    rotation = peak(values)
    if rotation != rotation:
        return "no line"
    return f"{rotation:.0f}°" + (" (the most tried)" if rotation == ROTATIONS[-1] else "")


@dataclass(frozen=True)
class PushAnswer:
    """Curves of the two bowlers, the sentence, the table."""

    curves: dict
    sentence: str
    rows: list


def answer(pattern="house", *, metric=False, hand="right") -> PushAnswer:
    """Push sideways, hook and angle against rotation, for a low and a high rev rate."""
    table = rows(metric, hand, pattern, TWO)
    said = []
    for row in table:
        bowler, push, high, same, aimed = row.values()
        said.append(
            f"{bowler[0].upper()}{bowler[1:]}: most push while it skids at {push}, comes in highest on the same line at "
            f"{high}, steepest on the same line at {same}, steepest re-aimed at {aimed}."
        )
    return PushAnswer({name: curves(name, pattern, hand) for name in TWO}, " ".join(said), table)
