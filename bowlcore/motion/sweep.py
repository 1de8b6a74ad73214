"""The same slide for many shots at once: numpy over shots, SI, nothing checked.

Every shot steps over the same nodes. A shot in the air, or one that rolls, has gain 0: the same step
then carries it straight on. Agrees with `slide` to rounding.
"""

import numpy as np

from bowlcore.motion.slide import Motion


def start_many(vx, vy, wx, wy, inertia_factor) -> Motion:
    """`slide.start` for arrays [m/s]."""
    ux, uy = vx - wx, vy - wy
    slip = np.hypot(ux, uy)
    fall = 1.0 + 1.0 / inertia_factor
    moving = slip > 0
    safe = np.where(moving, slip, 1.0)
    ex, ey = np.where(moving, ux / safe, 1.0), np.where(moving, uy / safe, 0.0)
    return Motion(vx - ex * slip / fall, vy - ey * slip / fall, ex / fall, ey / fall, fall, slip)


def sweep(field, motion, nodes, y, g, loft):
    """Follow many balls over the nodes.

    Parameters
    ----------
    field : object
        .on_step(k, stage, y, slip) at the start (0), middle (1) and end (2) of step k;
        .within(k, x, y, slip) anywhere in step k, with arrays k and x or a single k; .of(shots): the same
        for some of the shots.
    motion : Motion of arrays
    nodes : array [m]
    y, loft : arrays [m]

    Returns
    -------
    (Y, S, roll_x) : arrays (node, shot), (node, shot), (shot); roll_x NaN where it still slips.
    """
    count = len(y)
    places, slips = np.empty((len(nodes), count)), np.empty((len(nodes), count))
    y, slip = y.copy(), motion.slip.copy()
    places[0], slips[0] = y, slip
    gain = np.where((slip > 0) & (loft <= nodes[0]), g * motion.fall, 0.0)
    roll_x = np.where(slip > 0, np.nan, nodes[0])
    any_loft = bool((loft > nodes[0]).any())
    rx, ry, ax, ay = motion[:4]
    ends = []  # (shots, step, x, y, slip) where a shot's last slipping step begins
    for k in range(len(nodes) - 1):
        x, end = nodes[k], nodes[k + 1]
        new_y, new_slip = _full_step(field, k, end - x, rx, ry, ax, ay, gain, y, slip)
        if any_loft:
            landing = np.flatnonzero((loft > x) & (loft <= end) & (slip > 0))
            if len(landing):
                m, s0 = _take(motion, landing), slip[landing]
                y0 = y[landing] + m.slope(s0) * (loft[landing] - x)
                gain[landing] = landing_gain = g * m.fall
                new_y[landing], new_slip[landing] = _free_step(
                    field.of(landing), k, m, landing_gain, loft[landing], end - loft[landing], y0, s0
                )
                out = landing[new_slip[landing] <= 0]
                if len(out):
                    ends.append(
                        (
                            out,
                            k,
                            loft[out],
                            y[out] + _take(motion, out).slope(slip[out]) * (loft[out] - x),
                            slip[out],
                        )
                    )
                    gain[out], new_slip[out] = 0.0, 0.0
        out = np.flatnonzero((new_slip <= 0) & (gain > 0))
        if len(out):
            ends.append((out, k, np.full(len(out), x), y[out], slip[out]))
            gain[out], new_slip[out] = 0.0, 0.0
        y, slip = new_y, new_slip
        places[k + 1], slips[k + 1] = y, slip
    if ends:
        _roll_out(field, motion, nodes, g, ends, places, roll_x)
    return places, slips, roll_x


def _roll_out(field, motion, nodes, g, ends, places, roll_x):
    """Find where each ending shot begins to roll, and carry it straight on from there."""
    shots = np.concatenate([part[0] for part in ends])
    k = np.concatenate([np.full(len(part[0]), part[1]) for part in ends])
    x, y, slip = (np.concatenate([part[i] for part in ends]) for i in (2, 3, 4))
    field, m, h = field.of(shots), _take(motion, shots), nodes[k + 1] - x
    gain = g * m.fall
    y1, slip1 = _free_step(field, k, m, gain, x, h, y, slip)
    fall0 = -h * gain * field.within(k, x, y, slip) / (m.roll_x + m.along_x * slip)
    fall1 = -h * gain * field.within(k, x + h, y1, slip1) / (m.roll_x + m.along_x * slip1)
    part = h * first_zero_many(slip, slip1, fall0, fall1)
    y_roll, _ = _free_step(field, k, m, gain, x, part, y, slip)
    roll_x[shots] = x + part
    beyond = np.arange(len(nodes))[:, None] > k
    straight = y_roll + m.slope(0.0) * (nodes[:, None] - roll_x[shots])
    places[:, shots] = np.where(beyond, straight, places[:, shots])


def _take(motion, which):
    return Motion(*(part[which] if np.ndim(part) else part for part in motion))


def _full_step(field, k, h, rx, ry, ax, ay, gain, y, slip):
    half = 0.5 * h
    q = 1.0 / (rx + ax * slip)
    y_sum = (ry + ay * slip) * q
    s_sum = gain * field.on_step(k, 0, y, slip) * q
    s = slip - half * s_sum
    q = 1.0 / (rx + ax * s)
    y2 = (ry + ay * s) * q
    s2 = gain * field.on_step(k, 1, y + half * y_sum, s) * q
    s = slip - half * s2
    q = 1.0 / (rx + ax * s)
    y3 = (ry + ay * s) * q
    s3 = gain * field.on_step(k, 1, y + half * y2, s) * q
    s = slip - h * s3
    q = 1.0 / (rx + ax * s)
    y_end = y + h * y3
    y2 += y3
    y2 *= 2.0
    y_sum += y2
    y_sum += (ry + ay * s) * q
    s2 += s3
    s2 *= 2.0
    s_sum += s2
    s_sum += gain * field.on_step(k, 2, y_end, s) * q
    sixth = h / 6.0
    y_sum *= sixth
    y_sum += y
    s_sum *= -sixth
    s_sum += slip
    return y_sum, s_sum


def _free_step(field, k, m, gain, x, h, y, slip):
    """RK4 with a place and a length of its own for each shot."""
    half = 0.5 * h

    def rates(x, y, s):
        q = 1.0 / (m.roll_x + m.along_x * s)
        return (m.roll_y + m.along_y * s) * q, -gain * field.within(k, x, y, s) * q

    y1, s1 = rates(x, y, slip)
    y2, s2 = rates(x + half, y + half * y1, slip + half * s1)
    y3, s3 = rates(x + half, y + half * y2, slip + half * s2)
    y4, s4 = rates(x + h, y + h * y3, slip + h * s3)
    return y + h / 6.0 * (y1 + 2.0 * (y2 + y3) + y4), slip + h / 6.0 * (s1 + 2.0 * (s2 + s3) + s4)


def first_zero_many(f0, f1, d0, d1):
    """Where the cubic with these ends and slopes passes zero in 0..1 (signs differ): bisected Newton."""
    low, high = np.zeros_like(f0), np.ones_like(f0)
    p = np.where(f1 == f0, 1.0, f0 / np.where(f1 == f0, 1.0, f0 - f1))
    c3 = 2.0 * (f0 - f1) + d0 + d1
    c2 = f1 - f0 - d0 - c3
    for _ in range(30):
        value = f0 + p * (d0 + p * (c2 + p * c3))
        same = (value > 0) == (f0 > 0)
        low, high = np.where(same, p, low), np.where(same, high, p)
        slope = d0 + p * (2.0 * c2 + 3.0 * p * c3)
        new = p - value / np.where(slope == 0, 1.0, slope)
        new = np.where((new > low) & (new < high), new, 0.5 * (low + high))
        if np.abs(new - p).max() < 1e-12:
            return new
        p = new
    return p
