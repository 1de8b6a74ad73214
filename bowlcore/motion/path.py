"""One shot: from a release and a surface to the ball's path, in the trade's units."""

from dataclasses import dataclass
from math import cos, nan, radians, sin

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import of_kind
from bowlcore.motion.fields import compile_surface
from bowlcore.motion.landmarks import landmarks
from bowlcore.motion.release import Release
from bowlcore.motion.slide import slide, start


@dataclass(frozen=True, eq=False)
class BallPath:
    """The path of one ball from the foul line to the head pin's line.

    Boards from the bowler's own side; headings positive away from the own gutter. The arrays run over
    `distance_ft` (first at the foul line, last at 60 ft). From `gutter_ft` on, every array but
    `distance_ft` and `time_s` is NaN, and so are the entry values.

    Attributes
    ----------
    distance_ft, board, speed_mph, heading_deg, slip_mps, rev_rate_rpm, axis_rotation_deg,
    axis_tilt_deg, time_s : arrays
        Axis rotation is measured from the ball's present direction of travel.
    entry_board, entry_angle_deg, entry_speed_mph : float
        At 60 ft, the ball's centre.
    breakpoint_board, breakpoint_ft : float
        The outermost point (nearest the own gutter); 0 ft if the ball never moves out.
    hook_start_ft : float
        Where the ball "starts to read the lane": the distance by which friction has done a fifth of
        all the turning and slowing it will do before the pins; NaN where friction does nothing. A
        step of the hand's controls (1 degree, 0.1 mph, 10 rpm) moves it by less than a foot on
        ordinary shots; half a board of feet or target may move it by several, as the dry edge is
        met elsewhere.
    roll_start_ft : float
        Where slip ends; NaN if the ball still slips at 60 ft.
    gutter_ft : float
        Where the ball's centre leaves the lane; NaN if it stays on it.
    """

    distance_ft: np.ndarray
    board: np.ndarray
    speed_mph: np.ndarray
    heading_deg: np.ndarray
    slip_mps: np.ndarray
    rev_rate_rpm: np.ndarray
    axis_rotation_deg: np.ndarray
    axis_tilt_deg: np.ndarray
    time_s: np.ndarray
    entry_board: float
    entry_angle_deg: float
    entry_speed_mph: float
    breakpoint_board: float
    breakpoint_ft: float
    hook_start_ft: float
    roll_start_ft: float
    gutter_ft: float


def simulate(release: Release, surface, ball: Ball | None = None) -> BallPath:
    """The path of one release on a surface.

    Parameters
    ----------
    release : Release
    surface : OiledLane, ZonedLane or anything with `friction(lane_board, distance_ft, slip_mps)`
        Lane boards count from the right edge; for a left-hander board 40 - n is read.
    ball : Ball
        The default ball if left out.

    Raises
    ------
    ValueError
        When the spin would bring the ball to a stand before the pins.

    Notes
    -----
    Equal moments of inertia, friction against the slip: C. Frohlich, Am. J. Phys. 72, 1170 (2004),
    treats the general ball (known second-hand). 60 steps of RK4, or 120 where the table asks for it.
    """
    of_kind("release", release, Release, "a Release")
    ball = Ball() if ball is None else ball
    lane = compile_surface(surface, ball)
    speed, spin = release.speed_mph * units.MPH_MPS, release.rev_rate_rpm * units.RPM_RADS
    heading, turn = radians(release.launch_heading_deg), radians(release.axis_rotation_deg)
    roll = ball.radius_m * spin * cos(radians(release.axis_tilt_deg))
    vx, vy = speed * cos(heading), speed * sin(heading)
    wx, wy = roll * cos(heading + turn), roll * sin(heading + turn)
    motion = start(vx, vy, wx, wy, ball.inertia_factor)
    if motion.roll_x < MIN_FORWARD_MPS:
        raise ValueError(stands_still(release.speed_mph, release.rev_rate_rpm, release.axis_rotation_deg))
    track = slide(
        lane.mu(release.hand),
        motion,
        lane.nodes_m,
        (release.laydown_board - units.MIDDLE_BOARD) * units.BOARD_M,
        units.G_MPS2,
        release.loft_ft * units.FOOT_M,
        lane.y_breaks(release.hand),
    )
    y, slip = np.array(track.y), np.array(track.slip)
    marks = landmarks(lane.nodes_m, y[:, None], slip[:, None], motion, np.array([track.roll_x]))
    arrays = _along(motion, slip, ball, spin * sin(radians(release.axis_tilt_deg)))
    arrays["board"] = y / units.BOARD_M + units.MIDDLE_BOARD
    scalars = {name: float(value[0]) for name, value in marks.items()}
    gutter_ft = scalars["gutter_ft"]
    if gutter_ft == gutter_ft:
        off = lane.nodes_ft >= gutter_ft
        for values in arrays.values():
            values[off] = nan
    return BallPath(distance_ft=lane.nodes_ft.copy(), time_s=np.array(track.t), **arrays, **scalars)


MIN_FORWARD_MPS = 0.3


def stands_still(speed_mph, rev_rate_rpm, axis_rotation_deg):
    """The sentence for a ball whose spin would stop it."""
    return (
        f"with axis_rotation_deg {axis_rotation_deg:g} and {rev_rate_rpm:g} rpm a ball of {speed_mph:g} mph would come "
        "to a stand before the pins; rotation between -90 and 90 always reaches them"
    )


def _along(motion, slip, ball, vertical_spin):
    """Speeds and spin along the path, from slip alone."""
    vx, vy = motion.roll_x + motion.along_x * slip, motion.roll_y + motion.along_y * slip
    # roll velocity = velocity - slip vector, the slip vector being along * fall * slip
    wx = vx - motion.along_x * motion.fall * slip
    wy = vy - motion.along_y * motion.fall * slip
    roll = np.hypot(wx, wy)
    heading = np.degrees(np.arctan2(vy, vx))
    rotation = np.where(roll > 1e-9, np.degrees(np.arctan2(wy, wx)) - heading, 0.0)
    return {
        "speed_mph": np.hypot(vx, vy) / units.MPH_MPS,
        "heading_deg": heading,
        "slip_mps": slip.copy(),
        "rev_rate_rpm": np.hypot(roll / ball.radius_m, vertical_spin) / units.RPM_RADS,
        "axis_rotation_deg": (rotation + 180.0) % 360.0 - 180.0,
        "axis_tilt_deg": np.degrees(np.arctan2(ball.radius_m * vertical_spin, roll)),
    }
