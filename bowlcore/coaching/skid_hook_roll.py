"""Why a ball stops turning: how fast its bottom slips over the lane, and how much turn is left.

Slip is told as a speed, mph or km/h: how fast the lowest point of the ball runs over the lane.
"""

from dataclasses import dataclass
from math import isfinite

import numpy as np

from bowlcore.coaching import first_shot, telling, words
from bowlcore.motion.ball import Ball
from bowlcore.motion.closed_form import final_heading_deg
from bowlcore.motion.path import BallPath
from bowlcore.motion.release import Release
from bowlcore.motion.units import FOOT_M, KMH_PER_MPH, MPH_MPS, RPM_RADS

SKIDS, HOOKS, ROLLS = "skids", "hooks", "rolls"
_STRAIGHT = "feels the lane"  # the middle part of a ball that hardly turns
_SMALL = 0.25  # mph or degrees: less is nothing on a screen of halves


@dataclass(frozen=True)
class Slipping:
    """A shot with its slip.

    slip : how fast the bottom slips at each of the path's distances [mph, km/h if metric]; NaN in the gutter
    turn_deg : the whole turn until it rolls, from the launch direction, whatever the oil
    """

    release: Release
    path: BallPath
    slip: np.ndarray
    turn_deg: float
    sentence: str
    rows: list


def roll_speed_mps(release: Release, ball: Ball) -> float:
    """How fast the cover moves because of the part of the spin that rolls [m/s]."""
    tilt = np.radians(release.axis_tilt_deg)
    return float(ball.radius_m * release.rev_rate_rpm * RPM_RADS * np.cos(tilt))


def whole_turn_deg(release: Release, ball: Ball) -> float:
    """The turn from launch to roll [deg], in closed form: no oil and no friction in it."""
    spin = roll_speed_mps(release, ball)
    turn = final_heading_deg(
        release.speed_mph * MPH_MPS, spin, release.axis_rotation_deg, ball.inertia_factor
    )
    return float(turn)


def shown_slip(path: BallPath, metric=False) -> np.ndarray:
    """Slip along a path in the screen's unit of speed."""
    return path.slip_mps / MPH_MPS * (KMH_PER_MPH if metric else 1.0)


def slip_line(path: BallPath, metric=False):
    """Distances [ft] and slip [screen's unit] to draw: on the lane only, and exactly nothing where the roll begins."""
    feet, slip = path.distance_ft, shown_slip(path, metric)
    if isfinite(path.roll_start_ft):
        at = int(np.searchsorted(feet, path.roll_start_ft))
        feet, slip = np.insert(feet, at, path.roll_start_ft), np.insert(slip, at, 0.0)
    there = np.isfinite(slip)
    return feet[there], slip[there]


def answer(release, surface, ball=None, *, metric=False) -> Slipping:
    """The shot, its slip at every distance, and what is left of its turn.

    Raises ValueError from `simulate`, in words.
    """
    ball = Ball() if ball is None else ball
    shot = first_shot.answer(release, surface, ball, metric=metric)
    turn = whole_turn_deg(release, ball)
    sentence = f"{shot.sentence} {_slip_words(shot.path, metric)} {_turn_words(release, shot.path, turn)}"
    return Slipping(
        release, shot.path, shown_slip(shot.path, metric), turn, sentence, _rows(release, shot.path, metric)
    )


def parts(path) -> list[tuple[str, float, float]]:
    """(what it does; from; to) [ft]: skids, hooks, rolls, those that it comes to before the pins or the gutter."""
    end = path.gutter_ft if isfinite(path.gutter_ft) else 60.0
    hook = path.hook_start_ft if isfinite(path.hook_start_ft) else end
    roll = path.roll_start_ft if isfinite(path.roll_start_ft) else end
    if path.slip_mps[0] < 1e-9:
        hook = roll = 0.0
    middle = HOOKS if telling.first_sign(path) == "starts to hook" else _STRAIGHT
    places = (SKIDS, 0.0, min(hook, roll)), (middle, hook, roll), (ROLLS, roll, end)
    return [place for place in places if place[2] - place[1] > 1e-9]


def _slip_words(path, metric):
    mph = path.slip_mps / MPH_MPS
    if mph[0] < _SMALL:
        return "Its bottom does not slip at all: the spin fits the speed from the first foot on."
    first = words.speed(mph[0], metric)
    if isfinite(path.gutter_ft):
        return f"Its bottom slips over the lane at {first} as it leaves the hand."
    if isfinite(path.roll_start_ft):
        where = words.distance(path.roll_start_ft, metric)
        hooks = isfinite(path.hook_start_ft) and path.hook_start_ft < path.roll_start_ft
        then = ""
        if hooks:
            at = float(np.interp(path.hook_start_ft, path.distance_ft, mph))
            then = f", at {words.speed(at, metric)} where it {telling.first_sign(path)},"
        return f"Its bottom slips over the lane at {first} as it leaves the hand{then} and from {where} on not at all."
    return (
        f"Its bottom slips over the lane at {first} as it leaves the hand and still at {words.speed(mph[-1], metric)} "
        "at the pins."
    )


def _turn_words(release, path, turn):
    if abs(turn) < _SMALL:
        return "It has no turn to give: no part of its spin points sideways."
    if isfinite(path.gutter_ft):
        return f"It had {words.degrees(abs(turn))} of turn to give, and the gutter came first."
    done = path.entry_angle_deg - release.launch_heading_deg
    if isfinite(path.roll_start_ft):
        return f"By then it has turned by {words.degrees(abs(turn))}. That is all the turn it had, so it goes straight."
    return (
        f"It has turned by {words.degrees(abs(done))} of the {words.degrees(abs(turn))} it had: what is left when the pins come "
        "is never used."
    )


def _rows(release, path, metric):
    far, fast = ("m", "km/h") if metric else ("ft", "mph")
    factor = KMH_PER_MPH if metric else 1.0
    every = np.arange(0.0, 18.1, 3.0) / FOOT_M if metric else np.arange(0.0, 60.1, 10.0)
    marks = parts(path)
    starts = [low for _, low, _ in marks[1:]]
    places = sorted([at for at in every if all(abs(at - start) > 2.0 for start in starts)] + starts)
    table = []
    for at in places:
        part = next((name for name, low, high in reversed(marks) if low <= at <= high), "")

        def there(values, at=at):
            return float(np.interp(at, path.distance_ft, values))

        gone = not isfinite(there(path.board))
        table.append(
            {
                f"distance ({far})": words.distance(at, metric).split(" ")[0],
                "the ball": "in the gutter" if gone else part,
                f"slip ({fast})": "" if gone else words.halves(there(path.slip_mps) / MPH_MPS * factor),
                "turned so far (degrees)": (
                    "" if gone else words.halves(there(path.heading_deg) - release.launch_heading_deg)
                ),
                f"speed ({fast})": "" if gone else words.halves(there(path.speed_mph) * factor),
                "rotation left (degrees)": "" if gone else words.halves(there(path.axis_rotation_deg)),
                "tilt (degrees)": "" if gone else words.halves(there(path.axis_tilt_deg)),
                "rev rate (rpm)": "" if gone else words.revs(there(path.rev_rate_rpm)).split(" ")[0],
            }
        )
    return table
