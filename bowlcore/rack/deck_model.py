"""The pin deck: one ball into one rack, as rigid bodies in MuJoCo (optional extra ``rack``).

Trade units at the door, SI inside. Boards here are where the ball first touches the head pin
(``pins.board_at_touch``), counted from the right; angles are positive towards rising boards.
A computed rack, fitted to published totals: use it to compare, never to predict one shot.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import atan2, cos, degrees, exp, hypot, isfinite, radians, sin, sqrt

import numpy as np

from bowlcore.motion.units import EDGE_HIGH_BOARD, EDGE_LOW_BOARD, POUND_KG
from bowlcore.motion.units import MPH_MPS as MPH
from bowlcore.rack.deck_params import DeckParams
from bowlcore.rack.deck_xml import (
    BALL_IN_PLAY,
    IN,
    PIN_ON_DECK,
    PIN_OVER_GUTTER,
    PLAYING,
    SHELF,
    deck_xml,
)
from bowlcore.rack.leave import Leave
from bowlcore.rack.pin_shape import (
    BASE_RADIUS_IN,
    CENTRE_OF_GRAVITY_IN,
    GYRATION_ACROSS_IN,
    GYRATION_ALONG_IN,
    MASS_KG,
    TOP_RADIUS_IN,
)
from bowlcore.rack.pins import (
    BALL_DIAMETER_IN,
    BOARD_IN,
    CENTRE_BOARD,
    LANE_WIDTH_IN,
    PIN_DIAMETER_IN,
    PIN_X_IN,
    PIN_Y_IN,
    TAIL_PLANK_IN,
    TOUCH_DISTANCE_IN,
)
from bowlcore.rack.scatter import Scatter

OZ = POUND_KG / 16  # kg
GRAVITY_MPS2 = 9.81  # MuJoCo's default, with which the shipped table was built; units.G_MPS2 is 0.03 % less
RANGES = {
    "board_at_touch": (EDGE_LOW_BOARD, EDGE_HIGH_BOARD),
    "entry_angle_deg": (-20.0, 20.0),
    "speed_at_pins_mph": (2.0, 30.0),
    "ball_lb": (4.0, 16.0),
}
_GYRATION_SQ = (np.array([GYRATION_ACROSS_IN, GYRATION_ACROSS_IN, GYRATION_ALONG_IN]) * IN) ** 2  # m^2
_TOPPLE_HEIGHT_IN = hypot(CENTRE_OF_GRAVITY_IN, BASE_RADIUS_IN) - CENTRE_OF_GRAVITY_IN
_TOPPLE_ENERGY = GRAVITY_MPS2 * _TOPPLE_HEIGHT_IN * IN  # J/kg
_ROCKING = cos(radians(10.0))  # a standing pin that leans less than this rocks on its base
_SLOW_MPH = 12.0
_START_BACK_IN = 0.5  # the ball starts this far before first touch
_HEADING_AFTER_S = 0.012  # heading after the head pin is read this long after first touch


@dataclass(frozen=True)
class RackResult:
    """What one ball did to one rack.

    ``leave``: pins that stand. ``exit_board``: the ball's centre where it passes the deck's end [board], NaN
    if it left over the side or never got there. ``heading_after_head_pin_deg``: its heading 12 ms after first
    touch [deg], NaN if it touched nothing. ``contacts``: pins the ball touched, in order. ``time_s``:
    simulated time. ``finished``: False if something still moved when the longest time was over.
    """

    leave: Leave
    exit_board: float
    heading_after_head_pin_deg: float
    contacts: tuple
    time_s: float
    finished: bool


def simulate_rack(
    board_at_touch, entry_angle_deg, speed_at_pins_mph, ball_lb=15.0, scatter=None, params=None, log=None
):
    """Roll one ball into one rack and say what stands.

    Parameters
    ----------
    board_at_touch : float
        Board of the ball's centre at first touch [board from the right, 0.5 to 39.5].
    entry_angle_deg : float
        Heading towards rising boards [deg, -20 to 20].
    speed_at_pins_mph : float
        Speed at the pins [mph, 2 to 30].
    ball_lb : float
        Ball weight [lb, 4 to 16].
    scatter : Scatter, optional
        Accidents of this rack; none if absent.
    params : DeckParams, optional
    log : list, optional
        Receives (time_s, copies of the positions [m]) each millisecond or so, ball first, for pictures.

    Returns
    -------
    RackResult
    """
    given = (board_at_touch, entry_angle_deg, speed_at_pins_mph, ball_lb)
    for (name, (low, high)), value in zip(RANGES.items(), given, strict=True):
        if not (isfinite(value) and low <= value <= high):
            raise ValueError(f"{name} must be between {low:g} and {high:g}, got {value!r}")
    return _Run(*map(float, given), scatter or Scatter(), params or DeckParams()).play(log)


@lru_cache(maxsize=8)
def _model(params, ball_lb):
    import mujoco

    model = mujoco.MjModel.from_xml_string(deck_xml(params, ball_lb))
    return mujoco, model, mujoco.MjData(model)


class _Run:
    """One rack being played; positions in metres, index 0 the ball, 1 to 10 the pins."""

    def __init__(self, board, angle_deg, mph, ball_lb, scatter, params):
        self.params = params
        self.ball_step_ms = params.slow_step_ms if mph < _SLOW_MPH else params.step_ms
        self.mujoco, self.model, self.data = _model(params, ball_lb)
        self._set_pins(scatter)
        self._set_ball(board, angle_deg, mph)
        self.mujoco.mj_forward(self.model, self.data)
        self.pos = self.data.qpos.reshape(11, 7)
        self.vel = self.data.qvel.reshape(11, 6)
        self.on_deck = np.ones(11, bool)  # False: over the gutter
        self.in_play = np.ones(11, bool)
        self.contacts = []
        self.first_touch_s = None
        self.heading = float("nan")
        self.exit_board = float("nan")

    def _set_pins(self, scatter):
        model, data = self.model, self.data
        mass = MASS_KG + np.asarray(scatter.mass_oz) * OZ
        model.body_mass[2:] = mass
        model.body_inertia[2:] = mass[:, None] * _GYRATION_SQ
        body = model.geom_bodyid
        model.geom_contype[body > 0] = PLAYING
        model.geom_conaffinity[body > 1] = PIN_ON_DECK
        model.geom_conaffinity[body == 1] = BALL_IN_PLAY
        of_pin = np.asarray(scatter.friction_factor)
        model.geom_friction[body > 1, 0] = self.params.pin_pin_friction * of_pin[body[body > 1] - 2]
        self.mujoco.mj_setConst(model, data)
        self.mujoco.mj_resetData(model, data)
        place = data.qpos.reshape(11, 7)
        place[1:, 0] = (PIN_X_IN + np.asarray(scatter.spot_x_in)) * IN
        place[1:, 1] = (PIN_Y_IN + np.asarray(scatter.spot_y_in)) * IN

    def _set_ball(self, board, angle_deg, mph):
        angle, speed, radius = radians(angle_deg), mph * MPH, BALL_DIAMETER_IN / 2 * IN
        side = (board - CENTRE_BOARD) * BOARD_IN
        back = sqrt(max(TOUCH_DISTANCE_IN**2 - side**2, 0.0))
        place = self.data.qpos[:7]
        place[0] = (-back - _START_BACK_IN * cos(angle)) * IN
        place[1] = (side - _START_BACK_IN * sin(angle)) * IN
        place[2:] = radius, 1, 0, 0, 0
        self.data.qvel[:6] = (
            speed * cos(angle),
            speed * sin(angle),
            0,
            -speed / radius * sin(angle),
            speed / radius * cos(angle),
            0,
        )

    # --- playing ------------------------------------------------------------------------------------
    def play(self, log):
        finished = False
        while self.data.time < self.params.longest_s:
            chunk, step = (1, self.ball_step_ms) if self.in_play[0] else (4, self.params.late_step_ms)
            before = self.pos[0, :2].copy()
            self.model.opt.timestep = step * 1e-3
            self.mujoco.mj_step(self.model, self.data, round(chunk / step))
            if self.in_play[0]:
                self._watch_ball(before)
            self._watch_pins(chunk * 1e-3)
            if log is not None:
                log.append((self.data.time, self.pos[:, :7].copy()))
            if self._is_over():
                finished = True
                break
        standing = self._standing()
        leave = Leave.of(*(pin for pin in range(1, 11) if standing[pin - 1]))
        return RackResult(
            leave, self.exit_board, self.heading, tuple(self.contacts), float(self.data.time), finished
        )

    def _watch_ball(self, before):
        data = self.data
        if data.ncon:
            bodies = self.model.geom_bodyid[data.contact.geom]
            for one, two in bodies:
                if one == 1 and two > 1 and two - 1 not in self.contacts:
                    self.contacts.append(int(two - 1))
        if self.contacts and self.first_touch_s is None:
            self.first_touch_s = data.time
        if self.first_touch_s is not None and data.time - self.first_touch_s < _HEADING_AFTER_S + 5e-4:
            self.heading = degrees(atan2(self.vel[0, 1], self.vel[0, 0]))
        x, y = self.pos[0, :2]
        end = TAIL_PLANK_IN * IN
        if x >= end:
            share = (end - before[0]) / (x - before[0])
            self.exit_board = float(CENTRE_BOARD + (before[1] + share * (y - before[1])) / IN / BOARD_IN)
            self._put_away(0)
        elif abs(y) > LANE_WIDTH_IN / 2 * IN:
            self._put_away(0)
        elif sqrt(self.vel[0, 0] ** 2 + self.vel[0, 1] ** 2) < 0.1:
            self._put_away(0)  # too slow to topple a pin

    def _watch_pins(self, passed_s):
        model, params = self.model, self.params
        x, y, z = self.pos[1:, 0], self.pos[1:, 1], self.pos[1:, 2]
        over_gutter = (np.abs(y) > LANE_WIDTH_IN / 2 * IN) | (x > TAIL_PLANK_IN * IN)
        change = self.in_play[1:] & (over_gutter == self.on_deck[1:])
        above = self._lowest() > -0.3 * IN
        for i in np.flatnonzero(change):
            if over_gutter[i] or above[i]:
                self.on_deck[i + 1] = not over_gutter[i]
                model.geom_conaffinity[model.geom_bodyid == i + 2] = (
                    PIN_OVER_GUTTER if over_gutter[i] else PIN_ON_DECK
                )
        gone = self.in_play[1:] & ((x > (TAIL_PLANK_IN + 6) * IN) | (~self.on_deck[1:] & (z < -0.5 * IN)))
        gone |= self.in_play[1:] & (x < -80 * IN)
        for i in np.flatnonzero(gone):
            self._put_away(i + 1)
        upright = self._upright()
        lying = self.in_play[1:] & (upright < 0.5) & (z < 4.0 * IN)
        self.vel[1:][lying] *= exp(-passed_s / params.lying_decay_s)
        rocking = self.in_play[1:] & (upright > _ROCKING) & (z < 6.1 * IN)
        self.vel[1:, 3:][rocking] *= exp(-passed_s / params.rocking_decay_s)

    def _put_away(self, index):
        """Take a body out of play: it stands on a shelf far behind, touching nothing else."""
        body = index + 1
        mine = self.model.geom_bodyid == body
        self.model.geom_contype[mine] = 0
        self.model.geom_conaffinity[mine] = SHELF
        height = (CENTRE_OF_GRAVITY_IN if index else BALL_DIAMETER_IN / 2) * IN
        self.pos[index] = 20.0 + index, 0, height, 1, 0, 0, 0
        self.vel[index] = 0.0
        self.data.qacc_warmstart[6 * index : 6 * index + 6] = 0.0
        self.in_play[index] = False

    # --- looking ------------------------------------------------------------------------------------
    def _upright(self):
        """Cosine of each pin's lean."""
        return 1 - 2 * (self.pos[1:, 4] ** 2 + self.pos[1:, 5] ** 2)

    def _lowest(self):
        """Height of each pin's lowest point over the deck, roughly [m]: foot, belly or head."""
        z, upright = self.pos[1:, 2], self._upright()
        lean = np.sqrt(np.maximum(1 - upright**2, 0.0))
        foot = z - (CENTRE_OF_GRAVITY_IN * upright + BASE_RADIUS_IN * lean) * IN
        belly = z - (1.3 * upright + PIN_DIAMETER_IN / 2) * IN
        head = z + (7.93 * upright - TOP_RADIUS_IN) * IN
        return np.minimum(np.minimum(foot, belly), head)

    def _standing(self):
        return self.in_play[1:] & self.on_deck[1:] & (self._upright() > 0.9) & (self.pos[1:, 2] > 5.0 * IN)

    def _is_over(self):
        if self.in_play[0]:
            return False
        upright = self._upright()
        maybe = self.in_play[1:] & (upright > 0.5)
        if not maybe.any():
            return True
        # Over when nothing on the deck has half the energy that topples a pin.
        energy = 0.5 * (self.vel[1:, :3] ** 2).sum(axis=1)
        energy += 0.5 * (self.vel[1:, 3:] ** 2 * _GYRATION_SQ).sum(axis=1)
        raised = np.maximum(self.pos[1:, 2] - CENTRE_OF_GRAVITY_IN * IN, 0.0)
        energy += GRAVITY_MPS2 * np.where(upright > 0.9, raised, 0.0)
        return bool((energy[self.in_play[1:]] < 0.5 * _TOPPLE_ENERGY).all())
