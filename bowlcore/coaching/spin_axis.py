"""Where a point of the ball goes as it spins, and how a camera sees it: unit vectors, angles in degrees.

Frame of the lane, from the bowler's own side: ahead (to the pins), in (away from the own gutter), up. The
axis point with the tape is where the spin looks anticlockwise. A left-hander's lane is the mirror.
"""

import numpy as np

from bowlcore.motion.units import RPM_RADS

CAMERAS = ("behind", "beside, on the right", "beside, on the left")
# rows: what is to the right in the picture, up, and towards the camera, in (ahead, in, up) of a right-hander
_VIEWS = {
    "behind": ((0, -1, 0), (0, 0, 1), (-1, 0, 0)),
    "beside, on the right": ((1, 0, 0), (0, 0, 1), (0, -1, 0)),
    "beside, on the left": ((-1, 0, 0), (0, 0, 1), (0, 1, 0)),
}


def view(camera="behind", hand="right"):
    """Matrix from lane directions to (right, up, towards the camera).

    Raises ValueError for an unknown camera or hand.
    """
    if camera not in CAMERAS:
        raise ValueError(f"camera must be one of {'; '.join(CAMERAS)}, got {camera!r}")
    if hand not in ("right", "left"):
        raise ValueError(f'hand must be "right" or "left", got {hand!r}')
    rows = np.array(_VIEWS[camera], float)
    return rows if hand == "right" else rows * (1.0, -1.0, 1.0)


def axis_point(axis_rotation_deg, axis_tilt_deg, heading_deg=0.0):
    """Unit vector (..., 3) to the axis point.

    Rotation 0: straight in, to the side; 90: back at the bowler. Tilt lifts it. The heading of the ball
    counts away from the own gutter.

    >>> axis_point(0.0, 0.0).round(3).tolist(), axis_point(90.0, 0.0).round(3).tolist()
    ([0.0, 1.0, 0.0], [-1.0, 0.0, 0.0])
    """
    turn = np.radians(np.asarray(axis_rotation_deg, float) + heading_deg)
    up = np.radians(np.asarray(axis_tilt_deg, float))
    return _unit_from(turn, up)


def _unit_from(turn, up):
    """The same from radians; writes +0 for -0."""
    level = np.cos(up)
    return (
        np.stack(np.broadcast_arrays(-level * np.sin(turn), level * np.cos(turn), np.sin(up)), axis=-1) + 0.0
    )


def turning(spin):
    """Rotation matrices (..., 3, 3) for turn vectors (..., 3) [rad]: about the vector, by its length."""
    spin = np.asarray(spin, float)
    angle = np.sqrt((spin * spin).sum(axis=-1))
    x, y, z = (spin[..., i] / np.maximum(angle, 1e-12) for i in range(3))
    c, s = np.cos(angle), np.sin(angle)
    k = 1.0 - c
    matrix = np.empty((*angle.shape, 3, 3))
    for i, row in enumerate(
        (
            (c + x * x * k, x * y * k - z * s, x * z * k + y * s),
            (y * x * k + z * s, c + y * y * k, y * z * k - x * s),
            (z * x * k - y * s, z * y * k + x * s, c + z * z * k),
        )
    ):
        for j, value in enumerate(row):
            matrix[..., i, j] = value
    return matrix


def steady_spin(turn, up, spin_rads, drift_rads, times_s):
    """How the ball has turned (k, n, 3, 3) at times (n,), from time 0, for k sets of numbers [rad, rad/s].

    The spin keeps its size and its tilt while its axis swings round the upright at a steady rate: seen from
    a frame that swings along, the axis stands still, so the motion is two plain turns.

    turn, up, spin_rads, drift_rads : (k,) arrays
    """
    swing = np.multiply.outer(drift_rads, times_s)
    upright = np.zeros(swing.shape + (3,))
    upright[..., 2] = swing
    about = _unit_from(turn, up) * np.asarray(spin_rads)[:, None]
    about[:, 2] -= drift_rads
    return turning(upright) @ turning(about[:, None, :] * times_s[None, :, None])


def turned_along(path, heading_deg, times_s, steps_per_s=2000.0):
    """How the ball of a simulated path has turned (n, 3, 3) at times [s] after the foul line.

    Follows the path's own spin, which changes all the way, in small steps; nothing steady is assumed.

    path : BallPath ; heading_deg is added to its headings (0: the camera looks straight up the lane)
    """
    times_s = np.asarray(times_s, float)
    count = int(np.ceil(times_s.max() * steps_per_s)) + 1
    grid = np.arange(count) / steps_per_s
    middle = grid[:-1] + 0.5 / steps_per_s if count > 1 else grid[:0]
    axis = axis_point(
        np.interp(middle, path.time_s, path.axis_rotation_deg),
        np.interp(middle, path.time_s, path.axis_tilt_deg),
        np.interp(middle, path.time_s, path.heading_deg) + heading_deg,
    )
    spin = np.interp(middle, path.time_s, path.rev_rate_rpm) * RPM_RADS / steps_per_s
    steps = turning(axis * spin[:, None])
    at, turned, found = np.eye(3), [np.eye(3)], []
    for step in steps:
        at = step @ at
        turned.append(at)
    for time in times_s:
        i = min(int(time * steps_per_s), count - 1)
        part = time - grid[i]
        found.append(turning(axis[min(i, len(axis) - 1)] * spin[min(i, len(spin) - 1)] * part * steps_per_s) @ turned[i]
                     if part > 0 and len(axis) else turned[i])  # fmt: skip
    return np.array(found)
