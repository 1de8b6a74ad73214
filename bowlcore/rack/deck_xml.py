"""The pin deck as text for MuJoCo: ten pins, a ball, deck, gutters, side plates.

SI inside. Frame: x down the lane from the head pin's spot, y towards rising boards, z up from the deck.
Bits decide who touches whom: 1 pins and ball, 2 deck under pins, 4 gutter floor, 8 deck under the ball,
16 side plates, 32 the shelf for pins and balls that are out of play.
"""

from bowlcore.motion.units import INCH_M as IN
from bowlcore.motion.units import POUND_KG as LB
from bowlcore.rack.deck_params import spring_and_damper
from bowlcore.rack.pin_shape import (
    CENTRE_OF_GRAVITY_IN,
    GYRATION_ACROSS_IN,
    GYRATION_ALONG_IN,
    MASS_KG,
    PRIMITIVES,
)
from bowlcore.rack.pins import BALL_DIAMETER_IN, GUTTER_OUTER_IN, PIN_X_IN, PIN_Y_IN

BALL_RG_IN = 2.55  # middle of what is allowed; the same for every weight, our own choice
PLAYING, DECK, GUTTER, BALL_DECK, PLATES, SHELF = 1, 2, 4, 8, 16, 32
PIN_ON_DECK = PLAYING | DECK | PLATES
PIN_OVER_GUTTER = PLAYING | GUTTER | PLATES
BALL_IN_PLAY = PLAYING | BALL_DECK | PLATES


def _contact(restitution, params):
    stiffness, damping = spring_and_damper(restitution, params.contact_time_ms)
    return f'solref="{-stiffness:.10g} {-damping:.10g}" solimp="0.9999 0.9999 0.001 0.5 2"'


def _pin_geoms(params):
    parts = []
    look = f'friction="{params.pin_pin_friction:.10g} 0 0" {_contact(params.pin_pin_restitution, params)}'
    for kind, size, middle in PRIMITIVES:
        numbers = " ".join(f"{value * IN:.10g}" for value in size)
        height = (middle - CENTRE_OF_GRAVITY_IN) * IN
        parts.append(
            f'<geom type="{kind}" size="{numbers}" pos="0 0 {height:.10g}" contype="{PLAYING}" '
            f'conaffinity="{PIN_ON_DECK}" priority="1" mass="0" {look}/>'
        )
    return "".join(parts)


def deck_xml(params, ball_lb):
    """Model text for these contact numbers and this ball weight [lb]."""
    plane = 'type="plane" size="5 5 1" priority="3" contype="{bit}" conaffinity="0"'
    floor = _contact(params.deck_restitution, params)
    plate = (
        f'friction="{params.side_plate_friction:.10g} 0 0" {_contact(params.side_plate_restitution, params)}'
    )
    pin_floor = f'friction="{params.deck_pin_friction:.10g} 0 0" {floor}'
    across = MASS_KG * (GYRATION_ACROSS_IN * IN) ** 2
    along = MASS_KG * (GYRATION_ALONG_IN * IN) ** 2
    geoms = _pin_geoms(params)
    pins = "".join(
        f'<body name="pin{i + 1}" pos="{PIN_X_IN[i] * IN:.10g} {PIN_Y_IN[i] * IN:.10g} '
        f'{CENTRE_OF_GRAVITY_IN * IN:.10g}" sleep="init"><freejoint/>'
        f'<inertial pos="0 0 0" mass="{MASS_KG}" diaginertia="{across:.10g} {across:.10g} {along:.10g}"/>'
        f"{geoms}</body>"
        for i in range(10)
    )
    radius = BALL_DIAMETER_IN / 2 * IN
    spin = ball_lb * LB * (BALL_RG_IN * IN) ** 2
    wall = GUTTER_OUTER_IN * IN
    return f"""<mujoco>
<option timestep="{params.step_ms * 1e-3:.10g}" cone="elliptic" solver="Newton" iterations="30"
 tolerance="1e-10" sleep_tolerance="0.0001"><flag sleep="enable"/></option>
<size memory="4M"/>
<worldbody>
<geom name="deck" {plane.format(bit=DECK)} {pin_floor}/>
<geom name="gutter" {plane.format(bit=GUTTER)} pos="0 0 {-params.gutter_depth_in * IN:.10g}" {pin_floor}/>
<geom name="ball_deck" {plane.format(bit=BALL_DECK)}
 friction="{params.deck_ball_friction:.10g} 0 0" {floor}/>
<geom name="left" {plane.format(bit=PLATES)} pos="0 {wall:.10g} 0" zaxis="0 -1 0" {plate}/>
<geom name="right" {plane.format(bit=PLATES)} pos="0 {-wall:.10g} 0" zaxis="0 1 0" {plate}/>
<geom name="shelf" {plane.format(bit=SHELF)} {pin_floor}/>
<body name="ball" pos="-1 0 {radius:.10g}"><freejoint/>
<inertial pos="0 0 0" mass="{ball_lb * LB:.10g}" diaginertia="{spin:.10g} {spin:.10g} {spin:.10g}"/>
<geom type="sphere" size="{radius:.10g}" contype="{PLAYING}" conaffinity="{BALL_IN_PLAY}" priority="2"
 mass="0" friction="{params.ball_pin_friction:.10g} 0 0"
 {_contact(params.ball_pin_restitution, params)}/></body>
{pins}
</worldbody></mujoco>"""
