"""A ball that slips on a plane, one shot at a time: plain floats, SI, nothing checked.

With equal moments of inertia the slip direction never turns, whatever the friction field, so the
whole state is one number (the slip speed) and the place. Both are integrated over distance.
Frame: x down the lane [m], y positive towards rising own-side boards [m]. The "roll velocity" w is
the ground speed the spin is asking for: radius x spin, turned a quarter. Slip u = v - w.
"""

from bisect import bisect_right
from math import hypot
from typing import NamedTuple

_NUDGE = 1e-9  # [m] keeps a stage on its own side of a declared break


class Motion(NamedTuple):
    """What stays fixed while the ball slips (floats, or arrays over shots).

    velocity = (roll_x, roll_y) + (along_x, along_y) * slip, for every friction field.
    """

    roll_x: float  # velocity once it rolls [m/s]
    roll_y: float
    along_x: float  # unit slip direction divided by `fall` [-]
    along_y: float
    fall: float  # 1 + 1/inertia factor: slip speed lost per speed change
    slip: float  # slip speed at release [m/s]

    def slope(self, slip):
        """dy/dx of the path at this slip speed [-]."""
        return (self.roll_y + self.along_y * slip) / (self.roll_x + self.along_x * slip)


def start(vx, vy, wx, wy, inertia_factor) -> Motion:
    """The motion that begins with velocity v and roll velocity w [m/s]."""
    slip = hypot(vx - wx, vy - wy)
    fall = 1.0 + 1.0 / inertia_factor
    ex, ey = ((vx - wx) / slip, (vy - wy) / slip) if slip > 0 else (1.0, 0.0)
    return Motion(vx - ex * slip / fall, vy - ey * slip / fall, ex / fall, ey / fall, fall, slip)


class Track(NamedTuple):
    """Place, slip speed and time at the nodes; roll_x is NaN if the ball still slips at the end."""

    y: list
    slip: list
    t: list
    roll_x: float


def slide(mu, motion, nodes, y, g, loft=0.0, y_breaks=()) -> Track:
    """Follow one ball over the nodes.

    Parameters
    ----------
    mu : sequence of callables, one for each step between nodes
        mu(x, y, slip) -> friction coefficient, smooth within its step.
    motion : Motion
    nodes : sequence of float
        Distances [m], rising; a step ends on each.
    y : float
        Sideways place at nodes[0] [m].
    g : float
        Gravity [m/s^2].
    loft : float
        No friction before this distance [m].
    y_breaks : sorted sequence of float
        Places across the lane where mu jumps; a step ends on each crossing.
    """
    y_breaks = list(y_breaks)
    gain, slip, t, x = g * motion.fall, motion.slip, 0.0, nodes[0]
    roll_x = x if slip <= 0 else float("nan")
    ys, slips, ts = [y], [slip], [t]
    for end, mu_here in zip(nodes[1:], mu, strict=True):
        if slip > 0 and loft < end:
            if x < loft:
                y, t, x = _straight(motion, y, slip, t, x, loft)
            if y_breaks:
                y, slip, t, x = _cross(mu_here, motion, gain, x, end, y, slip, t, y_breaks)
            else:
                y, slip, t, x = _advance(mu_here, motion, gain, x, end, y, slip, t)
            if slip <= 0:
                roll_x = x
        if x < end:
            y, t, x = _straight(motion, y, slip, t, x, end)
        ys.append(y)
        slips.append(slip)
        ts.append(t)
    return Track(ys, slips, ts, roll_x)


def _straight(motion, y, slip, t, x, end):
    """No friction, or none that matters: on along the heading."""
    return y + motion.slope(slip) * (end - x), t + (end - x) / (motion.roll_x + motion.along_x * slip), end


def _advance(mu, motion, gain, x, end, y, slip, t):
    """One step to `end`, or to the place where the ball begins to roll (slip 0)."""
    h = end - x
    y1, slip1, t1 = _rk4(mu, motion, gain, x, h, y, slip, t)
    if slip1 > 0:
        return y1, slip1, t1, end
    part = h * _first_zero(slip, slip1, h * _fall(mu, motion, gain, x, y, slip),
                           h * _fall(mu, motion, gain, end, y1, slip1))  # fmt: skip
    y1, _, t1 = _rk4(mu, motion, gain, x, part, y, slip, t)
    return y1, 0.0, t1, x + part


def _cross(mu, motion, gain, x, end, y, slip, t, y_breaks):
    """To `end`, with a part step to every y break on the way, each side on its own friction."""
    side = bisect_right(y_breaks, y)
    if side and y == y_breaks[side - 1] and motion.slope(slip) < 0:
        side -= 1
    walls = [float("-inf"), *y_breaks, float("inf")]
    while x < end and slip > 0:
        low, high = walls[side], walls[side + 1]

        def one_side(x, y, slip, low=low + _NUDGE, high=high - _NUDGE):
            return mu(x, min(max(y, low), high), slip)

        y1, slip1, t1, x1 = _advance(one_side, motion, gain, x, end, y, slip, t)
        if low <= y1 <= high:
            y, slip, t, x = y1, slip1, t1, x1
            continue
        wall, h = (low if y1 < low else high), x1 - x
        part = h * _first_zero(y - wall, y1 - wall, h * motion.slope(slip), h * motion.slope(slip1))
        _, slip, t = _rk4(one_side, motion, gain, x, part, y, slip, t)
        y, x, side = wall, x + part, side + (1 if wall == high else -1)
    return y, slip, t, x


def _fall(mu, motion, gain, x, y, slip):
    """d(slip)/dx."""
    return -gain * mu(x, y, slip) / (motion.roll_x + motion.along_x * slip)


def _rk4(mu, motion, gain, x, h, y, slip, t):
    """The classical fourth-order step for place, slip speed and time over distance h."""
    rx, ry, ax, ay = motion[:4]
    half, mid = 0.5 * h, x + 0.5 * h
    q1 = 1.0 / (rx + ax * slip)
    y1, s1 = (ry + ay * slip) * q1, -gain * mu(x, y, slip) * q1
    s = slip + half * s1
    q2 = 1.0 / (rx + ax * s)
    y2, s2 = (ry + ay * s) * q2, -gain * mu(mid, y + half * y1, s) * q2
    s = slip + half * s2
    q3 = 1.0 / (rx + ax * s)
    y3, s3 = (ry + ay * s) * q3, -gain * mu(mid, y + half * y2, s) * q3
    s = slip + h * s3
    q4 = 1.0 / (rx + ax * s)
    y4, s4 = (ry + ay * s) * q4, -gain * mu(x + h, y + h * y3, s) * q4
    sixth = h / 6.0
    return (
        y + sixth * (y1 + 2.0 * (y2 + y3) + y4),
        slip + sixth * (s1 + 2.0 * (s2 + s3) + s4),
        t + sixth * (q1 + 2.0 * (q2 + q3) + q4),
    )


def hermite(p, f0, f1, d0, d1):
    """Cubic through f0, f1 with slopes d0, d1 (per unit of p), at p in 0..1."""
    c3 = 2.0 * (f0 - f1) + d0 + d1
    return f0 + p * (d0 + p * (f1 - f0 - d0 - c3 + p * c3))


def _first_zero(f0, f1, d0, d1):
    """Where that cubic passes zero, f0 and f1 having different signs: safeguarded Newton."""
    if f1 == f0:
        return 1.0
    low, high, p = 0.0, 1.0, f0 / (f0 - f1)
    c3 = 2.0 * (f0 - f1) + d0 + d1
    c2 = f1 - f0 - d0 - c3
    for _ in range(30):
        value = f0 + p * (d0 + p * (c2 + p * c3))
        if (value > 0) == (f0 > 0):
            low = p
        else:
            high = p
        slope = d0 + p * (2.0 * c2 + 3.0 * p * c3)
        step = value / slope if slope else 0.0
        new = p - step
        if not low < new < high:
            new = 0.5 * (low + high)
        if abs(new - p) < 1e-12:
            return new
        p = new
    return p
