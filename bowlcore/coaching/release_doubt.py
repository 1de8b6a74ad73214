"""Three balls measured by eye: the four numbers with their errors, and what that doubt is worth at the pins."""

from dataclasses import dataclass, replace

import numpy as np

from bowlcore.coaching import three_balls, words
from bowlcore.coaching.bowler import Bowler, Spread
from bowlcore.coaching.measuring import (
    NAMES,
    TAPE_ERROR_DEG,
    mean_speed,
    measured,
    release_speed,
    rev_rate_from_turns,
    shown,
)
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.track_ring import tilt_from_width
from bowlcore.motion.ball import Ball
from bowlcore.motion.many import sweep_together
from bowlcore.motion.path import simulate
from bowlcore.motion.release import FIELD_NAMES, RANGES, Release
from bowlcore.motion.units import KMH_PER_MPH

TIMED = {"clip": None, "stop-watch": 0.1}  # error of a time [s]; a clip: one frame
# how good is good enough, one standard deviation: what an eye sees on the lane (our choice)
WANTED = {"speed_mph": 0.25, "rev_rate_rpm": 10.0, "axis_rotation_deg": 3.0, "axis_tilt_deg": 2.0}
_MOST = {"speed_mph": 5.0, "rev_rate_rpm": 150.0, "axis_rotation_deg": 45.0, "axis_tilt_deg": 30.0}


@dataclass(frozen=True)
class Reading:
    """One ball as it was written down.

    time_s : foul line to head pin
    frames : for the turns counted
    tape_hours : how far the tape on the axis has come round from the side towards the bowler, as clock hours
    width_in : of the track ring, along the surface, across the smaller side
    """

    time_s: float
    frames: float
    tape_hours: float
    width_in: float


@dataclass(frozen=True)
class DoubtAnswer:
    """balls, several : by number; release : of the means

    boards_one, boards_all : by number, how far the entry board moves for the error of one reading, and of the
        mean; together : one standard deviation [boards] of all four at once; by_eye : [boards] and [degrees
        of entry angle] for 5 degrees of rotation
    """

    balls: dict
    several: dict
    release: Release
    boards_one: dict
    boards_all: dict
    together: float
    by_eye: tuple
    sentence: str
    rows: list


def answer(
    readings, *, frames_per_s=120.0, turns=3, timed="clip", pattern="house", laydown_board=17.0,
    target_board=13.0, hand="right", metric=False,
) -> DoubtAnswer:  # fmt: skip
    """Measured numbers of a few balls, and what their doubt does at the pins.

    Parameters
    ----------
    readings : list of Reading
    frames_per_s, turns : of the clip, and how many turns were counted
    timed : "clip" or "stop-watch"
    pattern, laydown_board, target_board : the lane of the model, and the line
    metric : bool

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """
    if timed not in TIMED:
        raise ValueError(f"timed must be one of {', '.join(TIMED)}, got {timed!r}")
    lane = lane_of(pattern)
    revs = [rev_rate_from_turns(turns, one.frames, frames_per_s) for one in readings]
    turned = [measured("axis_rotation_deg", 30.0 * one.tape_hours, TAPE_ERROR_DEG) for one in readings]
    tilts = [tilt_from_width(one.width_in) for one in readings]
    usual = Release(
        17.0, float(np.mean([x.value for x in revs])), float(np.mean([x.value for x in turned])),
        float(np.mean([x.value for x in tilts])), laydown_board, target_board, hand=hand,
    )  # fmt: skip
    error_s = TIMED[timed] or 1.0 / frames_per_s
    speeds = [release_speed(mean_speed(one.time_s, error_s), usual, lane, metric=metric) for one in readings]
    balls = dict(zip(NAMES, (speeds, revs, turned, tilts), strict=True))
    several = {name: three_balls.of_several(found, metric) for name, found in balls.items()}
    release = replace(usual, speed_mph=several["speed_mph"].value)
    ones = {name: float(np.sqrt(np.mean([x.error**2 for x in found]))) for name, found in balls.items()}
    doubts = [ones, {name: one.error for name, one in several.items()}, {"axis_rotation_deg": TAPE_ERROR_DEG}]
    shots = [*(_up_and_down(release, errors) for errors in doubts), _all_unsure(release, several)]
    marks = sweep_together([(columns, lane) for columns in shots], Ball())
    boards_one, boards_all = (
        _moves(errors, seen, "entry_board") for errors, seen in zip(doubts[:2], marks, strict=False)
    )
    by_eye = tuple(
        _moves(doubts[2], marks[2], what)["axis_rotation_deg"] for what in ("entry_board", "entry_angle_deg")
    )
    board = marks[3]["entry_board"]
    together = float(np.nanstd(board)) if np.isfinite(board).mean() > 0.5 else float("nan")
    rows = [
        three_balls.row(balls[name], several[name], WANTED[name], metric)
        | {"one ball, at the pins": _boards_words(boards_one[name])}
        | {"the mean, at the pins": _boards_words(boards_all[name])}
        for name in NAMES
    ]
    sentence = _sentence(several, release, lane, by_eye, together, metric)
    return DoubtAnswer(balls, several, release, boards_one, boards_all, together, by_eye, sentence, rows)


def _up_and_down(release, errors):
    """Two shots for each number: one error up and one down."""
    columns = {name: np.full(2 * len(errors), getattr(release, name)) for name in FIELD_NAMES}
    for i, (name, error) in enumerate(errors.items()):
        low, high, _ = RANGES[name]
        columns[name][2 * i] = min(columns[name][2 * i] + error, high)
        columns[name][2 * i + 1] = max(columns[name][2 * i + 1] - error, low)
    return columns


def _moves(errors, marks, what):
    """Half of what the entry board or angle moves for each number between those two shots."""
    up, down = marks[what].reshape(-1, 2).T
    return dict(zip(errors, map(float, np.abs(up - down) / 2.0), strict=True))


def _all_unsure(release, several):
    """Shots whose four numbers are all as unsure as measured."""
    doubt = {name: min(one.error, _MOST[name]) for name, one in several.items()}
    return Bowler(release, Spread(**doubt, laydown_board=0, target_board=0)).shots(128)


def _boards_words(boards):
    if boards != boards:
        return "some go into the gutter"
    return words.count(boards, "board") if boards >= 0.25 else "too little to see"


def _angle_words(degrees):
    return f", and {words.degrees(degrees)} of entry angle" if degrees == degrees else ""


def _sentence(several, release, lane, by_eye, together, metric):
    parts = []
    for name in NAMES:
        one = several[name]
        doubt = max(one.error, 1.0 / KMH_PER_MPH if metric else 0.5) if name == "speed_mph" else one.error
        doubt = max(doubt, 10.0) if name == "rev_rate_rpm" else doubt
        parts.append(
            f"{NAMES[name]} {shown(name, one.value, metric)} (give or take {shown(name, doubt, metric)})"
        )
    path = simulate(release, lane)
    if path.gutter_ft == path.gutter_ft:
        at_pins = "In this model such a ball goes into the gutter on this line."
    else:
        at_pins = (
            f"In this model such a ball comes in on {words.board(path.entry_board)} on this line. Five degrees of doubt "
            f"about the rotation: {_boards_words(by_eye[0])}{_angle_words(by_eye[1])}. All four doubts together: "
            f"{_boards_words(together)}."
        )
    count = next(iter(several.values())).count
    return f"{count} balls: {'; '.join(parts)}. {at_pins}"
