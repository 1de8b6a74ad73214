"""One number fixes everything: how much of its job friction has done, from 0 in the hand to 1 where the ball rolls.

The job is the friction impulse that brings rolling. The slip never turns its direction, so speed, heading,
rotation, tilt and rev rate each follow one curve against that number, whatever the lane; the lane only says
where each value of it is reached.
"""

from dataclasses import dataclass
from math import isfinite

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.skid_hook_roll import roll_speed_mps
from bowlcore.motion.ball import Ball
from bowlcore.motion.closed_form import after_impulse, friction_impulse_to_roll
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.units import KMH_PER_MPH, MPH_MPS, RPM_RADS

SHARES = np.linspace(0.0, 1.0, 101)
LOOK_FT = 40.0, 50.0  # where two lanes are compared in words
MARKS_FT = 15.0, 40.0, 45.0, 50.0, 55.0  # places marked on the curves


@dataclass(frozen=True)
class Family:
    """What the ball does at each share of friction's job, by pencil: arrays over the shares."""

    share: np.ndarray
    speed_mph: np.ndarray
    turned_deg: np.ndarray
    rotation_deg: np.ndarray
    tilt_deg: np.ndarray
    rev_rate_rpm: np.ndarray


@dataclass(frozen=True)
class OnLane:
    """One lane: its title, the path, and the share of friction's job done at each of the path's distances."""

    title: str
    path: BallPath
    share: np.ndarray


@dataclass(frozen=True)
class OneNumber:
    family: Family
    lanes: list[OnLane]
    sentence: str
    rows: list


def family(release, ball=None, share=SHARES) -> Family:
    """The closed forms along friction's job, share 0 to 1 of the impulse that brings the ball to roll."""
    ball, share = Ball() if ball is None else ball, np.asarray(share, float)
    speed, spin = release.speed_mph * MPH_MPS, roll_speed_mps(release, ball)
    turn = np.radians(release.axis_rotation_deg)
    upright = release.rev_rate_rpm * RPM_RADS * np.sin(np.radians(release.axis_tilt_deg))  # never changes
    hand = (speed, 0.0), (spin * np.cos(turn), spin * np.sin(turn))
    whole = friction_impulse_to_roll(*hand, ball.inertia_factor)
    v, w = after_impulse(*hand, share * whole, ball.inertia_factor)
    rolls = np.hypot(w[..., 0], w[..., 1])
    heading = np.degrees(np.arctan2(v[..., 1], v[..., 0]))
    rotation = np.where(rolls > 1e-9, np.degrees(np.arctan2(w[..., 1], w[..., 0])) - heading, 0.0)
    return Family(
        share,
        np.hypot(v[..., 0], v[..., 1]) / MPH_MPS,
        heading,
        (rotation + 180.0) % 360.0 - 180.0,
        np.degrees(np.arctan2(ball.radius_m * upright, rolls)),
        np.hypot(rolls / ball.radius_m, upright) / RPM_RADS,
    )


def share_along(path: BallPath) -> np.ndarray:
    """Share of friction's job done along a path, 0 to 1; NaN in the gutter, 1 all along if it rolls at once."""
    first = path.slip_mps[0]
    return 1.0 - path.slip_mps / first if first > 1e-9 else np.ones_like(path.slip_mps)


def answer(release, patterns=("house", "dried_out"), ball=None, *, metric=False) -> OneNumber:
    """The five curves of a release, and where two lanes reach each value of the number.

    Raises ValueError from `simulate`, in words.
    """
    ball = Ball() if ball is None else ball
    told = family(release, ball)
    lanes = []
    for name in dict.fromkeys(patterns):
        lane = lane_of(name)
        path = simulate(release, lane, ball)
        lanes.append(OnLane(lane.pattern.title.split(":")[0].lower(), path, share_along(path)))
    return OneNumber(told, lanes, _sentence(told, lanes, metric), _rows(release, ball, lanes, metric))


def share_at(lane: OnLane, distance_ft) -> float:
    """Share of friction's job done at a distance; NaN in the gutter."""
    return float(np.interp(distance_ft, lane.path.distance_ft, lane.share))


def place_of(lane: OnLane, share) -> float:
    """The distance [ft] where a lane reaches a share; NaN if it never does."""
    there = np.isfinite(lane.share)
    work, feet = lane.share[there], lane.path.distance_ft[there]
    if share >= 1.0:
        return lane.path.roll_start_ft
    return float(np.interp(share, work, feet)) if work[-1] >= share else np.nan


def _sentence(told, lanes, metric):
    start, end = (
        [getattr(told, name)[i] for name in ("speed_mph", "rotation_deg", "tilt_deg", "rev_rate_rpm")]
        for i in (0, -1)
    )
    parts = [
        f"While friction does its job, from 0 to 1, on any lane, the ball goes from {words.speed(start[0], metric)} to "
        f"{words.speed(end[0], metric)}, turns by {words.degrees(abs(told.turned_deg[-1]))}, its rotation goes from "
        f"{words.halves(start[1])} to {words.degrees(end[1])}, its tilt from {words.halves(start[2])} to "
        f"{words.degrees(end[2])} and its revs from {words.revs(start[3])} to {words.revs(end[3])}."
    ]
    for at in LOOK_FT:
        there = [f"{lane.title} {_share(share_at(lane, at))}" for lane in lanes]
        parts.append(f"Done at {words.distance(at, metric)}: {', '.join(there)}.")
    return " ".join(parts)


def _share(value):
    return f"{value:.1f}" if isfinite(value) else "gutter"


def _rows(release, ball, lanes, metric):
    steps = family(release, ball, np.linspace(0.0, 1.0, 6))
    factor, fast = (KMH_PER_MPH, "km/h") if metric else (1.0, "mph")
    rows = []
    for i, share in enumerate(steps.share):
        row = {
            "friction's job done": f"{share:.1f}",
            f"speed ({fast})": words.halves(steps.speed_mph[i] * factor),
            "turned (degrees)": words.halves(steps.turned_deg[i]),
            "rotation (degrees)": words.halves(steps.rotation_deg[i]),
            "tilt (degrees)": words.halves(steps.tilt_deg[i]),
            "rev rate (rpm)": words.revs(steps.rev_rate_rpm[i]).split(" ")[0],
        }
        for lane in lanes:
            at = place_of(lane, share)
            unit = "m" if metric else "ft"
            row[f"{lane.title}: reached at ({unit})"] = (
                words.distance(at, metric).split(" ")[0] if isfinite(at) else "not before the pins"
            )
        rows.append(row)
    return rows
