"""The ball's way through the deck with pins and ball as flat discs: quick enough to follow a slider.

Good for where the ball goes; never for odds or leaves, which need pins that tumble (the table has those).
Boards here are at first touch, as in ``deck_model``. Inside: inches and seconds, x down the lane from the
head pin's spot, y towards rising boards.
"""

from dataclasses import dataclass
from math import atan2, cos, degrees, hypot, inf, isfinite, radians, sin, sqrt

import numpy as np

from bowlcore.motion.units import G_MPS2, INCH_M, MPH_MPS
from bowlcore.rack.pins import (
    BALL_DIAMETER_IN,
    BOARD_IN,
    CENTRE_BOARD,
    HEAD_PIN_FT,
    LANE_WIDTH_IN,
    PIN_DIAMETER_IN,
    PIN_X_IN,
    PIN_Y_IN,
    TAIL_PLANK_IN,
    TOUCH_DISTANCE_IN,
)

IN_PER_S_PER_MPH = MPH_MPS / INCH_M  # 17.6
GRAVITY_IN_S2 = G_MPS2 / INCH_M  # 386.089
PIN_LB = 3.5  # middle of 3 lb 6 oz to 3 lb 10 oz (a retailer's article "Bowling Pins")
BALL_PIN_RESTITUTION = 0.65  # as in the deck simulation
PIN_PIN_RESTITUTION = 0.35  # fitted to the deck simulation
BALL_PIN_FRICTION = 0.10  # as in the deck simulation
PIN_PIN_FRICTION = 0.05  # fitted to the deck simulation
DECK_BALL_FRICTION = 0.20  # as in the deck simulation
# The ball meets a standing pin 1.4 in below its centre of gravity, so the pin gives way more easily than its
# mass says: 1 + (1.4 in / 3.62 in)^2, our own calculation from the pin's shape.
PIN_YIELDS = 1.15
_RADIUS = np.array([BALL_DIAMETER_IN / 2] + [PIN_DIAMETER_IN / 2] * 10)
_I, _J = np.triu_indices(11, 1)
_REACH_SQ = (_RADIUS[_I] + _RADIUS[_J]) ** 2
_LONGEST_EVENTS = 400


@dataclass(frozen=True)
class DiscResult:
    """The ball's way, and a cartoon of the pins.

    ``distance_ft``, ``board``: the ball's centre at the start, at each event and at the end of the deck.
    ``exit_board``: board at the end of the deck (NaN if it left over the side). ``contacts``: pins the ball
    touched, in order. ``time_s``, ``pin_x_in``, ``pin_y_in``: when, and where all pins were then (one row an
    event, inches from the head pin's spot).
    """

    distance_ft: np.ndarray
    board: np.ndarray
    exit_board: float
    contacts: tuple
    time_s: np.ndarray
    pin_x_in: np.ndarray
    pin_y_in: np.ndarray


def head_pin_blow(offset_boards, entry_angle_deg, ball_lb=15.0, *, restitution=0.70, pin_lb=PIN_LB):
    """Smooth disc against the head pin at rest: one formula, for the lesson.

    Parameters
    ----------
    offset_boards : float
        Ball's centre to the right of the head pin's at first touch [board].
    entry_angle_deg, ball_lb, pin_lb : float
        Heading towards rising boards [deg], weights [lb].
    restitution : float
        Speed apart over speed together [-]; 0.70 from memory, 0.65 to 0.75 plausible.

    Returns
    -------
    heading_deg, ball_speed_share, pin_speed_share : float
        Heading of the ball afterwards [deg], and both speeds over the ball's speed before [-].
    """
    across = -offset_boards * BOARD_IN / TOUCH_DISTANCE_IN
    normal = (sqrt(1 - across**2), -across)
    angle = radians(entry_angle_deg)
    before = (cos(angle), sin(angle))
    closing = before[0] * normal[0] + before[1] * normal[1]
    pin = (1 + restitution) * ball_lb / (ball_lb + pin_lb) * closing
    after = [b - pin * pin_lb / ball_lb * n for b, n in zip(before, normal, strict=True)]
    return degrees(atan2(after[1], after[0])), hypot(*after), pin


def roll_through(board_at_touch, entry_angle_deg, speed_at_pins_mph=15.0, ball_lb=15.0, scatter=None):
    """Way of the ball through a full rack in the flat model.

    Parameters as in ``deck_model.simulate_rack``; returns a :class:`DiscResult`. 1 to 3 ms.
    """
    for name, value in (("board_at_touch", board_at_touch), ("entry_angle_deg", entry_angle_deg)):
        if not isfinite(value):
            raise ValueError(f"{name} must be a number, got {value!r}")
    for name, value in (("speed_at_pins_mph", speed_at_pins_mph), ("ball_lb", ball_lb)):
        if not (isfinite(value) and value > 0):
            raise ValueError(f"{name} must be above 0, got {value!r}")
    place, speed, mass = _start(board_at_touch, entry_angle_deg, speed_at_pins_mph, ball_lb, scatter)
    rolling = speed[0].copy()  # what the ball's spin still wants
    now, contacts, touched = 0.0, [], set()
    times, places = [0.0], [place.copy()]
    while len(times) < _LONGEST_EVENTS:
        wait, pair = _next_blow(place, speed)
        end = _time_to_end(place[0], speed[0])
        step = min(wait, end)
        if not isfinite(step):
            break
        place += speed * step
        now += step
        _rub_on_deck(speed[0], rolling, step)
        if end > wait:
            i, j = _I[pair], _J[pair]
            _blow(place, speed, mass, i, j, touched)
            if i == 0 and j not in contacts:
                contacts.append(int(j))
        times.append(now)
        places.append(place.copy())
        if end <= wait:
            break
    places = np.array(places)
    x, y = places[:, 0, 0], places[:, 0, 1]
    boards = CENTRE_BOARD + y / BOARD_IN
    left_at_end = x[-1] > TAIL_PLANK_IN - 1e-6
    return DiscResult(
        distance_ft=HEAD_PIN_FT + x / 12,
        board=boards,
        exit_board=float(boards[-1]) if left_at_end else float("nan"),
        contacts=tuple(contacts),
        time_s=np.array(times),
        pin_x_in=places[:, 1:, 0],
        pin_y_in=places[:, 1:, 1],
    )


def _start(board, angle_deg, mph, ball_lb, scatter):
    angle = radians(angle_deg)
    side = (board - CENTRE_BOARD) * BOARD_IN
    ahead = sqrt(max(TOUCH_DISTANCE_IN**2 - side**2, 0.0))
    heading = np.array([cos(angle), sin(angle)])
    place = np.zeros((11, 2))
    place[0] = np.array([-ahead, side]) - 0.5 * heading
    place[1:] = np.column_stack([PIN_X_IN, PIN_Y_IN])
    mass = np.array([ball_lb] + [PIN_LB] * 10)
    if scatter is not None:
        place[1:] += np.column_stack([scatter.spot_x_in, scatter.spot_y_in])
        mass[1:] += np.asarray(scatter.mass_oz) / 16
    speed = np.zeros((11, 2))
    speed[0] = mph * IN_PER_S_PER_MPH * heading
    return place, speed, mass


def _next_blow(place, speed):
    """Time to the next blow [s] and the number of its pair; infinity if there is none."""
    apart = place[_J] - place[_I]
    moving = speed[_J] - speed[_I]
    closing = -(apart[:, 0] * moving[:, 0] + apart[:, 1] * moving[:, 1])
    speed_sq = moving[:, 0] ** 2 + moving[:, 1] ** 2
    gap = apart[:, 0] ** 2 + apart[:, 1] ** 2 - _REACH_SQ
    root = closing**2 - speed_sq * gap
    hit = (closing > 1e-9) & (root > 0)
    when = np.full(len(_I), inf)
    when[hit] = np.maximum(gap[hit], 0.0) / (closing[hit] + np.sqrt(root[hit]))
    pair = int(np.argmin(when))
    return float(when[pair]), pair


def _time_to_end(place, speed):
    """Time until the ball's centre passes the end of the deck or a lane edge [s]."""
    end = (TAIL_PLANK_IN - place[0]) / speed[0] if speed[0] > 1e-9 else inf
    side = (LANE_WIDTH_IN / 2 - abs(place[1])) / abs(speed[1]) if place[1] * speed[1] > 1e-9 else inf
    crossing = (LANE_WIDTH_IN / 2 + abs(place[1])) / abs(speed[1]) if place[1] * speed[1] < -1e-9 else inf
    return max(min(end, side, crossing), 0.0)


def _rub_on_deck(speed, rolling, passed_s):
    """Friction turns the ball back towards the way it still spins, by at most friction x g x time."""
    slip = rolling - speed
    size = hypot(slip[0], slip[1])
    if size > 1e-9:
        speed += slip * min(1.0, DECK_BALL_FRICTION * GRAVITY_IN_S2 * passed_s / size)


def _blow(place, speed, mass, i, j, touched):
    """Blow between two discs: along the line of centres, and rubbing across it."""
    apart = place[j] - place[i]
    normal = apart / hypot(apart[0], apart[1])
    across = np.array([-normal[1], normal[0]])
    moving = speed[j] - speed[i]
    closing = -float(moving[0] * normal[0] + moving[1] * normal[1])
    with_ball = i == 0
    yields_j = PIN_YIELDS if with_ball and j not in touched else 1.0
    give = 1.0 / mass[i] + yields_j / mass[j]
    push = (1 + (BALL_PIN_RESTITUTION if with_ball else PIN_PIN_RESTITUTION)) * closing / give
    sliding = float(moving[0] * across[0] + moving[1] * across[1])
    most = abs(sliding) / (3 * (1 / mass[i] + 1 / mass[j]))  # a third stops the sliding of solid discs
    rub = min((BALL_PIN_FRICTION if with_ball else PIN_PIN_FRICTION) * push, most)
    rub = -rub if sliding > 0 else rub
    speed[i] -= (push * normal + rub * across) / mass[i]
    speed[j] += (push * normal + rub * across) / mass[j]
    touched.update((int(i), int(j)))
