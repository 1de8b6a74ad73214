"""What can be worked out with a pencil about a slipping ball: SI, floats or arrays, any size of ball.

Equal moments of inertia, friction against the slip. v is the velocity, w the roll velocity (radius x
spin, as a ground speed), both as (down the lane, sideways); the inertia factor is (radius of gyration /
radius) squared. Derived here; G. Coriolis (1835) found the parabola (known from memory).
"""

from math import sqrt
from typing import NamedTuple

import numpy as np

from bowlcore.motion.units import G_MPS2


def final_velocity(v, w, inertia_factor):
    """Velocity once it rolls [m/s], whatever the friction was: (v + b w) / (1 + b).

    Angular momentum about a point of the lane stays: v + b w is constant.

    >>> [round(float(part), 4) for part in final_velocity((8.0, 0.0), (0.0, 0.0), 0.4)]
    [5.7143, 0.0]
    """
    v, w = np.asarray(v, float), np.asarray(w, float)
    return (v + inertia_factor * w) / (1.0 + inertia_factor)


def final_heading_deg(speed_mps, roll_speed_mps, axis_rotation_deg, inertia_factor):
    """Heading after roll-out, from the launch heading [deg].

    The lane decides where the turn happens, not how large it gets.
    """
    phi = np.radians(axis_rotation_deg)
    b_w = inertia_factor * np.asarray(roll_speed_mps, float)
    return np.degrees(np.arctan2(b_w * np.sin(phi), speed_mps + b_w * np.cos(phi)))


def friction_impulse_to_roll(v, w, inertia_factor):
    """Friction impulse per unit mass that brings rolling [m/s]: b |v - w| / (1 + b)."""
    slip = np.linalg.norm(np.asarray(v, float) - np.asarray(w, float), axis=-1)
    return inertia_factor / (1.0 + inertia_factor) * slip


def after_impulse(v, w, impulse, inertia_factor):
    """Velocity and roll velocity [m/s] once friction has given so much impulse per unit mass [m/s].

    The slip never turns, so this one number fixes speed, heading, rotation, tilt and rev rate together,
    on any lane; at `friction_impulse_to_roll` the two are equal. `impulse`: a float, or an array over places,
    which then comes first in both results.

    >>> [velocity.round(3).tolist() for velocity in after_impulse((8.0, 0.0), (0.0, 0.0), 16 / 7, 0.4)]
    [[5.714, 0.0], [5.714, 0.0]]
    """
    v, w = np.asarray(v, float), np.asarray(w, float)
    slip = v - w
    size = np.linalg.norm(slip)
    push = np.multiply.outer(impulse, slip / size if size else slip)
    return v - push, w + push / inertia_factor


class RollOut(NamedTuple):
    """Time [s], displacement [m] and velocity [m/s] when rolling begins."""

    time_s: float
    displacement_m: np.ndarray
    velocity_mps: np.ndarray


def roll_out(v, w, friction, inertia_factor, g=G_MPS2) -> RollOut:
    """The slide to rolling under one friction coefficient."""
    final = final_velocity(v, w, inertia_factor)
    time = friction_impulse_to_roll(v, w, inertia_factor) / (friction * g)
    return RollOut(float(time), time * (np.asarray(v, float) + final) / 2.0, final)


class TwoZone(NamedTuple):
    """A path over a front and a back zone; roll_m and roll_time_s are NaN if it still slips at the end."""

    zone_time_s: float  # at the end of the front zone
    zone_y_m: float
    roll_m: float
    roll_time_s: float
    y_m: float  # at the end
    velocity_mps: tuple
    time_s: float


def two_zone_path(
    v, w, front_friction, front_m, back_friction, length_m, inertia_factor, g=G_MPS2
) -> TwoZone:
    """The exact path over two zones of constant friction: a parabola in each, then a straight line."""
    (vx, vy), (wx, wy) = v, w
    ux, uy = vx - wx, vy - wy
    slip = sqrt(ux * ux + uy * uy)
    ex, ey = (ux / slip, uy / slip) if slip else (1.0, 0.0)
    fall = 1.0 + 1.0 / inertia_factor
    x = y = t = 0.0
    zone_t = zone_y = roll_x = roll_t = float("nan")
    for friction, end in ((front_friction, front_m), (back_friction, length_m)):
        if slip > 0:
            push = friction * g
            t_roll = slip / (push * fall) if push else float("inf")
            root = vx * vx - 2.0 * push * ex * (end - x)
            t_end = 2.0 * (end - x) / (vx + sqrt(root)) if root >= 0 else float("inf")
            step = min(t_roll, t_end)
            x += vx * step - 0.5 * push * ex * step * step
            y += vy * step - 0.5 * push * ey * step * step
            t += step
            vx, vy = vx - push * ex * step, vy - push * ey * step
            slip -= push * fall * step
            if t_roll <= t_end:
                slip, roll_x, roll_t = 0.0, x, t
        if slip <= 0 and x < end:
            y, t, x = y + vy / vx * (end - x), t + (end - x) / vx, end
        if end == front_m:
            zone_t, zone_y = t, y
    return TwoZone(zone_t, zone_y, roll_x, roll_t, y, (vx, vy), t)


def sideways_share(speed_mps, roll_speed_mps, axis_rotation_deg):
    """Share of friction that pushes sideways to the ball's travel while it slips, 0 to 1."""
    phi, w = np.radians(axis_rotation_deg), np.asarray(roll_speed_mps, float)
    return w * np.sin(phi) / np.hypot(speed_mps - w * np.cos(phi), w * np.sin(phi))


def best_rotation_deg(speed_mps, roll_speed_mps):
    """Axis rotation of the largest sideways push while slipping [deg]: arccos(spin speed / ball speed).

    NaN where the spin is as fast as the ball or faster: then there is no largest one.
    """
    share = np.asarray(roll_speed_mps, float) / speed_mps
    with np.errstate(invalid="ignore"):
        return np.degrees(np.arccos(np.where(share < 1, share, np.nan)))


def kinetic_energy_j(mass_kg, v, w, inertia_factor):
    """Energy of travel and of the horizontal spin [J] (the upright spin keeps its own)."""
    v, w = np.asarray(v, float), np.asarray(w, float)
    return 0.5 * mass_kg * ((v * v).sum(axis=-1) + inertia_factor * (w * w).sum(axis=-1))


def energy_lost_j(mass_kg, slip_before_mps, slip_after_mps, inertia_factor):
    """Energy that friction has taken [J], from the slip alone."""
    b = inertia_factor
    return 0.5 * mass_kg * b / (1.0 + b) * (slip_before_mps**2 - slip_after_mps**2)
