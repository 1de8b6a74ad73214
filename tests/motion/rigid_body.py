"""A second, separate integration for the tests: Newton and Euler in full, over time, with scipy.

State x, y, vx, vy, three spin rates. Force and torque are worked out as vectors at the contact point;
nothing of the shortcut in bowlcore.motion.slide is used. Own-side metres, y towards rising boards.
"""

from math import cos, hypot, radians, sin

import numpy as np
from scipy.integrate import solve_ivp

BOARD_M, FOOT_M = 41.5 / 39 * 0.0254, 0.3048
MPH, RPM = 0.44704, 2 * np.pi / 60
G = 9.80665


def follow(release, friction, ball, rtol=1e-9, atol=1e-11, breaks_ft=(), outermost=True):
    """(entry board, entry angle [deg], roll-out [ft] or NaN, time [s], lowest board of all).

    friction(own_board, distance_ft, slip) is called with plain floats.
    """
    radius, beta = ball.diameter_in / 2 * 0.0254, (ball.rg_in / (ball.diameter_in / 2)) ** 2
    heading = np.arctan2((release.target_board - release.laydown_board) * BOARD_M, 15 * FOOT_M)
    speed, spin = release.speed_mph * MPH, release.rev_rate_rpm * RPM
    tilt, along = radians(release.axis_tilt_deg), heading + radians(release.axis_rotation_deg)
    level = spin * cos(tilt)
    state = np.array([
        0.0, (release.laydown_board - 20) * BOARD_M, speed * cos(heading), speed * sin(heading),
        -level * sin(along), level * cos(along), spin * sin(tilt),
    ])  # fmt: skip
    first = (state[2] - radius * state[5], state[3] + radius * state[4])

    def rates(t, s):
        x, y, vx, vy, wx, wy, wz = s
        # contact velocity = v + omega x (0, 0, -radius)
        ux, uy = vx - radius * wy, vy + radius * wx
        slip = hypot(ux, uy)
        if slip == 0.0 or x < release.loft_ft * FOOT_M:
            return np.array([vx, vy, 0.0, 0.0, 0.0, 0.0, 0.0])
        mu = friction(20 + y / BOARD_M, x / FOOT_M, slip)
        fx, fy = -mu * G * ux / slip, -mu * G * uy / slip  # force per unit mass
        # torque (0, 0, -radius) x F, moment of inertia beta radius^2 per unit mass
        return np.array(
            [vx, vy, fx, fy, radius * fy / (beta * radius**2), -radius * fx / (beta * radius**2), 0.0]
        )

    def at_pins(t, s):
        return s[0] - 60 * FOOT_M

    def rolls(t, s):
        return (s[2] - radius * s[5]) * first[0] + (s[3] + radius * s[4]) * first[1]

    at_pins.terminal = rolls.terminal = True
    ends = []
    for ft in (*breaks_ft, release.loft_ft):

        def there(t, s, ft=ft):
            return s[0] - ft * FOOT_M

        there.terminal = True
        if ft > 0:
            ends.append(there)
    t, low, events = 0.0, state[1], [at_pins, rolls, *ends]
    roll_ft = float("nan") if hypot(*first) > 0 else 0.0
    while True:
        run = solve_ivp(
            rates, (t, t + 30), state, "DOP853", events=events, rtol=rtol, atol=atol, dense_output=outermost
        )
        if outermost:
            low = min(low, run.sol(np.linspace(t, run.t[-1], 200))[1].min())
        t, state = run.t[-1], run.y[:, -1].copy()
        if len(run.t_events[1]):
            roll_ft = state[0] / FOOT_M
        if len(run.t_events[0]) or roll_ft == roll_ft:
            break
        state[0] += 1e-12  # past the break
        events = [at_pins, rolls, *(e for e in ends if e(t, state) < 0)]
    rest = 60 * FOOT_M - state[0]
    board = 20 + (state[1] + rest * state[3] / state[2]) / BOARD_M
    return (
        board,
        np.degrees(np.arctan2(state[3], state[2])),
        roll_ft,
        t + rest / state[2],
        min(20 + low / BOARD_M, board),
    )
