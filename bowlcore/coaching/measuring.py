"""What a release really is, by eye: a clip or a stop-watch, a strip of tape, and counting.

Every reading carries one standard deviation. Trade units; tape on the axis point (where the line
that the ball spins round comes out of it, on the inner side, away from the own gutter). The track ring is in `track_ring`.
"""

from dataclasses import dataclass, replace
from functools import cache
from math import hypot, sqrt

import numpy as np

from bowlcore.coaching import words
from bowlcore.motion import units
from bowlcore.motion.checks import number_in
from bowlcore.motion.path import simulate
from bowlcore.motion.release import RANGES

_MPH_SECONDS = units.LANE_FT * units.FOOT_M / units.MPH_MPS  # mean speed [mph] x time [s]: 40.91
_FRAME = 1.0  # frames by which the start or end of the lane is misread: one standard deviation, together
_TURN_FRAMES = sqrt(0.5)  # half a frame at each end of the count
TAPE_ERROR_DEG, WORDS_ERROR_DEG = 5.0, 15.0  # by eye: common practice, no source

NAMES = {
    "speed_mph": "ball speed",
    "rev_rate_rpm": "rev rate",
    "axis_rotation_deg": "axis rotation",
    "axis_tilt_deg": "axis tilt",
}


@dataclass(frozen=True)
class Measured:
    """One number of one release.

    name : as in `Release`: speed_mph, rev_rate_rpm, axis_rotation_deg or axis_tilt_deg
    value, error : in the unit of the name; error is one standard deviation: two readings of three lie
        within it
    sentence : the same in words, with what to mind
    """

    name: str
    value: float
    error: float
    sentence: str

    def __post_init__(self):
        if self.name not in NAMES:
            raise ValueError(f"name must be one of {', '.join(NAMES)}, got {self.name!r}")


def shown(name, value, metric=False) -> str:
    """A number of a release as a coach says it."""
    if name == "speed_mph":
        return words.speed(value, metric)
    if name == "rev_rate_rpm":
        return words.revs(value)
    way = (
        {"axis_tilt_deg": " down", "axis_rotation_deg": " the other way"}[name]
        if words.to_half(value) < 0
        else ""
    )
    return words.degrees(abs(value)) + way


def give_or_take(name, error, metric=False) -> str:
    """An error in words, never finer than the screen's own step."""
    if name == "speed_mph":
        return shown(name, max(error, 1.0 / units.KMH_PER_MPH if metric else 0.5), metric)
    return shown(name, max(error, 10.0 if name == "rev_rate_rpm" else 0.5), metric)


def told(name, value, error, metric=False) -> str:
    """ "axis rotation 45 degrees, give or take 5 degrees"."""
    return f"{NAMES[name]} {shown(name, value, metric)}, give or take {give_or_take(name, error, metric)}"


def measured(name, value, error, extra="", metric=False) -> Measured:
    """A reading with its sentence; `extra` is what to mind."""
    text = told(name, value, error, metric)
    return Measured(name, float(value), float(error), f"{text[0].upper()}{text[1:]}.{extra}")


def mean_speed(time_s, time_error_s=0.1, metric=False) -> Measured:
    """Mean speed [mph] from the time between foul line and head pin: 40.91 / time.

    Parameters
    ----------
    time_s : float
        1.3 to 15 s: ball over the foul line to ball at the head pin.
    time_error_s : float
        0.001 to 1 s; 0.1 for a stop-watch in a hand.

    Notes
    -----
    60 ft; the ball meets the pin half a foot sooner, which makes this a hundredth too fast (our own geometry).
    """
    number_in("time_s", time_s, 1.3, 15, "s")
    number_in("time_error_s", time_error_s, 0.001, 1, "s")
    value = _MPH_SECONDS / time_s
    extra = " This is the mean over the lane; the ball left the hand faster."
    return measured("speed_mph", value, value * time_error_s / time_s, extra, metric)


def mean_speed_from_frames(frames, frames_per_s, metric=False) -> Measured:
    """The same from a clip: frames between foul line and head pin, give or take one."""
    _frame_rate(frames_per_s)
    number_in("frames", frames, 1.3 * frames_per_s, 15 * frames_per_s, "frames")
    return mean_speed(frames / frames_per_s, _FRAME / frames_per_s, metric)


def release_speed(mean: Measured, release, surface, ball=None, metric=False) -> Measured:
    """Speed at the foul line that has this mean speed over the lane, in this model.

    Parameters
    ----------
    mean : Measured
        From `mean_speed` or `mean_speed_from_frames`.
    release : Release
        The other numbers; its own speed is not used.
    surface, ball : as for `simulate`

    Returns
    -------
    Measured
        The error is that of the mean, carried through. On an everyday line the
        shipped lanes differ by less than a stop-watch's error either way; a line in the dry asks for more.
    """
    from scipy.optimize import brentq, newton

    if mean.name != "speed_mph":
        raise ValueError(f"mean must be a speed, got {NAMES[mean.name]}")
    low, high, _ = RANGES["speed_mph"]

    @cache
    def mean_at(speed):
        return _MPH_SECONDS / simulate(replace(release, speed_mph=speed), surface, ball).time_s[-1]

    def too_fast(speed):
        return mean_at(min(max(speed, low), high)) - mean.value

    try:
        value = newton(too_fast, 1.04 * mean.value, x1=1.08 * mean.value, tol=1e-4)  # by secants
    except RuntimeError:
        value = np.nan
    if not (low <= value <= high and abs(too_fast(value)) < 1e-3):
        ends = max(0.75 * mean.value, low), min(1.6 * mean.value, high)
        if too_fast(ends[0]) > 0 or too_fast(ends[1]) < 0:
            raise ValueError(
                f"no release between {ends[0]:.1f} and {ends[1]:.1f} mph has a mean of {mean.value:.1f} mph here"
            )
        value = brentq(too_fast, *ends, xtol=1e-4)
    near = min(1.02 * value, high)
    slope = (near - value) / (mean_at(near) - mean_at(value)) if near > value else 1.0
    lost = shown("speed_mph", value - mean.value, metric)
    extra = f" That is {lost} over the mean, in this model and on this lane."
    return measured("speed_mph", value, mean.error * slope, extra, metric)


def display_offset(display_mph, own_mph) -> Measured:
    """What to add to the speed a house displays, found once from balls that you timed yourself.

    Parameters
    ----------
    display_mph, own_mph : sequences of 3 or more
        The same balls: as displayed, and as measured by you.

    Returns
    -------
    Measured
        Offset [mph]; its error is that of the mean of the differences.
    """
    one, two = np.atleast_1d(display_mph).astype(float), np.atleast_1d(own_mph).astype(float)
    if one.shape != two.shape or one.size < 3:
        raise ValueError(
            f"display_mph and own_mph must hold the same 3 or more balls, got {one.size} and {two.size}"
        )
    for name, values in (("display_mph", one), ("own_mph", two)):
        for value in values:
            number_in(name, float(value), 3, 30, "mph")
    apart = two - one
    value, error = float(apart.mean()), float(apart.std(ddof=1) / sqrt(apart.size))
    way = "add" if value >= 0 else "take off"
    size, doubt = words.speed(abs(value)), give_or_take("speed_mph", error)
    text = f"In this house {way} {size} (give or take {doubt}) to what the display says: {apart.size} balls."
    return Measured("speed_mph", value, error, text)


def speed_from_display(display_mph, offset: Measured, metric=False) -> Measured:
    """Your speed [mph] from the house's display and its offset; the display itself is read to half a mph."""
    number_in("display_mph", display_mph, 3, 30, "mph")
    return measured("speed_mph", display_mph + offset.value, hypot(offset.error, 0.5), "", metric)


def rev_rate_from_turns(turns, frames, frames_per_s) -> Measured:
    """Rev rate [rpm] from the frames that some whole turns of the tape take: 60 x turns x rate / frames.

    The error is half a frame at each end of the count.

    Parameters
    ----------
    turns : int
        1 to 20, counted from the frame in which the ball is let go.
    frames : float
        1 to 5000.
    frames_per_s : float
        20 to 1000.
    """
    number_in("turns", turns, 1, 20, "turns")
    if turns != int(turns):
        raise ValueError(
            f"turns must be a whole number, got {turns:g}; the clock reading takes parts of a turn"
        )
    number_in("frames", frames, 1, 5000, "frames")
    _frame_rate(frames_per_s)
    _not_too_fast(turns / frames)
    value = 60.0 * turns * frames_per_s / frames
    error = value * _TURN_FRAMES / frames
    extra = " Count more turns, or film faster." if error > 0.05 * value else ""
    return measured("rev_rate_rpm", value, error, extra)


def rev_rate_from_clock(hours, frames, frames_per_s, hours_error=0.5) -> Measured:
    """Rev rate [rpm] from the hours that the tape, read as the hand of a clock, goes round in some frames.

    Parameters
    ----------
    hours : float
        Clock hours, whole turns counted as 12; 0.5 to 240.
    frames, frames_per_s : float
    hours_error : float
        One standard deviation, 0.1 to 3: half an hour by eye, common practice, no source.

    Notes
    -----
    The way of counting: Tauno, a web page of 2006, known second-hand. Seen 45 degrees off the axis a tape
    looks up to a third of an hour wrong (our own geometry).
    """
    number_in("hours", hours, 0.5, 240, "hours")
    number_in("frames", frames, 1, 5000, "frames")
    number_in("hours_error", hours_error, 0.1, 3, "hours")
    _frame_rate(frames_per_s)
    _not_too_fast(hours / 12.0 / frames)
    each = 5.0 * frames_per_s / frames
    return measured("rev_rate_rpm", hours * each, hours_error * each)


def rotation_from_tape(clock, hand="right") -> Measured:
    """Axis rotation [deg] from the tape on the axis point, read as the hand of a clock seen from above.

    The pins are at 12. Right hand: 9:00 (straight to the side) is 0, 7:30 is 45, 6:00 (facing the bowler)
    is 90. Left hand: 3:00, 4:30, 6:00.

    Parameters
    ----------
    clock : float or str
        Hours from 0 to 12, or "7:30".
    hand : "right" or "left"

    Returns
    -------
    Measured
        By eye, give or take 5 degrees (common practice, no source).
    """
    hours = _own_side(clock, hand)
    return measured("axis_rotation_deg", 30.0 * (9.0 - hours), TAPE_ERROR_DEG)


def rotation_from_words(clock, hand="right") -> Measured:
    """Axis rotation [deg] from the direction in which the ball spins, told as a clock: 10:30 is 45 degrees.

    Seen from above, the pins at 12: 11:00 is 30, 10:00 is 60, 9:00 is 90; left-handers 1:00, 2:00, 3:00.
    Only good to about 15 degrees (a coaching page, known second-hand).
    """
    hours = _own_side(clock, hand)
    value = 30.0 * (12.0 - hours) if hours > 3.0 else -30.0 * hours
    return measured("axis_rotation_deg", value, WORDS_ERROR_DEG, " Words are a rough measure.")


def _own_side(clock, hand):
    """Hours on a right-hander's clock."""
    hours = clock_hours(clock)
    if hand not in ("right", "left"):
        raise ValueError(f'hand must be "right" or "left", got {hand!r}')
    return hours if hand == "right" else (12.0 - hours) % 12.0


def clock_hours(clock) -> float:
    """A clock reading as hours, 0 to 12: 7.5 or "7:30"."""
    if isinstance(clock, str):
        hours, colon, minutes = clock.strip().partition(":")
        if not (hours.isdecimal() and (minutes.isdecimal() or not colon)):
            raise ValueError(f'clock must be hours from 0 to 12 or a text such as "7:30", got {clock!r}')
        if colon:
            number_in("minutes", int(minutes), 0, 59)
        clock = int(hours) + (int(minutes) / 60.0 if colon else 0.0)
    return number_in("clock", clock, 0, 12, "hours")


def _frame_rate(frames_per_s):
    number_in("frames_per_s", frames_per_s, 20, 1000)


def _not_too_fast(turns_a_frame):
    if turns_a_frame > 0.5:
        raise ValueError(
            f"{turns_a_frame:.2f} turns in one frame cannot be told from a slower spin the other way; film faster"
        )
