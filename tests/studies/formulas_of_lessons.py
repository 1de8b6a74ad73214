"""What the symbols in the lessons' formulas mean, their units, and an example worked by the core.

The formulas themselves stand only in the lessons; `make_words_page.py` takes them from there, in order.
"""

from math import cos, radians
from typing import NamedTuple

from bowlcore.coaching import luck, measuring, track_ring
from bowlcore.coaching.transition import TAKEN_UP
from bowlcore.coaching.trust import ORDINARY
from bowlcore.motion import closed_form
from bowlcore.motion.ball import Ball
from bowlcore.motion.surface import FrictionLaw
from bowlcore.motion.units import G_MPS2, MPH_MPS, POUND_KG, RPM_RADS
from bowlcore.rack.deck_params import DeckParams
from bowlcore.rack.pins import PIN_MASS_KG_RANGE


class Formula(NamedTuple):
    """`symbols`: (symbol, meaning, unit); `example`: a sentence whose numbers the core has worked out.

    `tex` is given only for what a lesson says in words.
    """

    name: str
    symbols: tuple[tuple[str, str, str], ...]
    example: str
    tex: str = ""


BALL, SHOT = Ball(), ORDINARY
B = BALL.inertia_factor
SPEED = SHOT.speed_mph * MPH_MPS
SPIN = BALL.radius_m * SHOT.rev_rate_rpm * RPM_RADS * cos(radians(SHOT.axis_tilt_deg))
V = (SPEED, 0.0)
W = (SPIN * cos(radians(SHOT.axis_rotation_deg)), SPIN * cos(radians(90 - SHOT.axis_rotation_deg)))
SHOT_WORDS = (
    f"The ordinary shot ({SHOT.speed_mph:g} mph, {SHOT.rev_rate_rpm:g} rpm, {SHOT.axis_rotation_deg:g} degrees "
    f"of rotation, {SHOT.axis_tilt_deg:g} of tilt)"
)

_B = ("b", "inertia factor: (radius of gyration / radius) squared", "none")
_TURN_DEG = closed_form.final_heading_deg(SPEED, SPIN, SHOT.axis_rotation_deg, B)
_FINAL = closed_form.final_velocity(V, W, B)
_DRY = FrictionLaw().dry
_ROLL_S = closed_form.roll_out(V, W, _DRY, B).time_s
_PIN_KG = sum(PIN_MASS_KG_RANGE) / 2
_SHARE = (1 + DeckParams().ball_pin_restitution) * _PIN_KG / (BALL.mass_lb * POUND_KG + _PIN_KG)
_LINE = (("laydown, feet", "boards at the foul line", "boards"), ("target", "board at the arrows", "boards"))


def _oil_after(passes: int, oil: float) -> float:
    return oil * (1 - TAKEN_UP) ** passes


# Lesson: its formulas, in the order in which they stand there.
OF_LESSONS = {
    "00": (
        Formula(
            "Velocity once it rolls",
            (("velocity at release", "speed and direction of the ball", "m/s"),
             ("spin velocity", "speed of the surface of the ball from its spin, with its direction", "m/s"), _B),
            f"{SHOT_WORDS} leaves the hand at {SPEED:.2f} m/s and rolls at {float((_FINAL**2).sum() ** 0.5):.2f} m/s.",
        ),
    ),
    "01": (
        Formula(
            "Ratio of spin to speed",
            (("radius", "radius of the ball", "m"), ("spin", "rev rate as an angle a second", "1/s"),
             ("tilt", "axis tilt", "degrees"), ("ball speed", "at release", "m/s")),
            f"{SHOT_WORDS} has a ratio of {SPIN / SPEED:.2f}.",
        ),
    ),
    "02": (
        Formula(
            "Slip on a lane with one friction",
            (("slip", "speed of the bottom of the ball over the lane", "m/s"), _B,
             (r"\mu", "coefficient of friction", "none"), ("g", "acceleration of free fall", "m/s²"),
             ("time", "since the ball met the lane", "s")),
            f"{SHOT_WORDS} on dry boards with a friction of {_DRY:g} all the way rolls after {_ROLL_S:.2f} s "
            f"(g = {G_MPS2:.2f} m/s²).",
        ),
        Formula(
            "Rotation of the largest sideways push while skidding",
            (("rotation", "axis rotation", "degrees"), ("spin speed", "as in the ratio above", "m/s"),
             ("ball speed", "at that moment", "m/s")),
            f"With the ratio {SPIN / SPEED:.2f} it is {float(closed_form.best_rotation_deg(SPEED, SPIN)):.0f} degrees.",
        ),
    ),
    "03": (
        Formula(
            "Final direction",
            (("direction you sent it", "from straight down the lane, at the foul line", "degrees"),
             ("turn", "how far the direction has turned when the ball rolls", "degrees")),
            f"A ball sent {abs(SHOT.launch_heading_deg):.1f} degrees out that turns {_TURN_DEG:.1f} degrees "
            f"ends {_TURN_DEG - abs(SHOT.launch_heading_deg):.1f} degrees in.",
        ),
    ),
    "04": (
        Formula(
            "Turn of a ball that reaches its roll",
            (("turn", "from the direction you sent it", "degrees"), _B,
             ("w", "spin speed", "m/s"), ("v", "ball speed", "m/s"),
             ("rotation, tilt", "of the spin axis", "degrees")),
            f"{SHOT_WORDS} turns {_TURN_DEG:.1f} degrees.",
        ),
    ),
    "05": (
        Formula(
            "Speed a pin takes over from the ball",
            (("e", "how lively the blow is, 0 to 1", "none"), ("m", "masses of pin and ball", "kg")),
            f"With e = {DeckParams().ball_pin_restitution:g}, a pin of {_PIN_KG:.2f} kg and a ball of "
            f"{BALL.mass_lb:g} lb the share is {_SHARE:.2f}.",
        ),
    ),
    "06": (
        Formula(
            "Weight of a cause",
            (("chance before", "how likely the cause was before you looked", "none"),
             ("share of its balls", "of the simulated balls of that cause, how many look like yours", "none")),
            "All weights together are made to be one.",
        ),
    ),
    "07": (
        Formula(
            "Oil that is left, and the friction on it",
            (("oil", "thickness of the oil", "units or µm"), ("n", "balls that passed there", "none"),
             ("s", "share that a ball takes up", "none"), ("f", "coefficient of friction", "none"),
             ("scale", "how much oil it takes to be slick", "as oil")),
            f"With s = {TAKEN_UP:g}, 10 units become {_oil_after(10, 10.0):.1f} after 10 balls.",
        ),
    ),
    "08": (
        Formula(
            "A straight ball",
            (*_LINE, ("d", "distance from the foul line", "ft")),
            f"From board 20 over board 18 at 15 ft it is on board {20 + (18 - 20) * 60 / 15:.0f} at 60 ft.",
        ),
    ),
    "09": (
        Formula(
            "Doubt of a mean",
            (("scatter", "standard deviation from ball to ball", "as measured"),
             ("number of balls", "that were measured", "none")),
            f"Nine balls with a scatter of 15 rpm leave a doubt of {15 / 9**0.5:.0f} rpm.",
        ),
        Formula(
            "Mean speed over the lane",
            (("t", "time from foul line to head pin, 60 ft", "s"),),
            f"2.40 s is {measuring.mean_speed(2.40).value:.2f} mph.",
            r"\text{mean speed} = \frac{60\ \text{ft}}{t}",
        ),
        Formula(
            "Axis tilt from the track ring",
            (("W", "from ring to ring along the surface, across the smaller side of the ring", "in"),
             ("C", "circumference of the ball", "in")),
            f"With W = 10.5 in and C = 27 in the tilt is {track_ring.tilt_from_width(10.5, 27.0).value:.0f} degrees.",
            r"\text{tilt} = 90\,\left(1 - \frac{W}{C/2}\right)",
        ),
    ),
    "10": (
        Formula(
            "Chance of each true share",
            (("k", "good balls", "none"), ("n", "balls", "none"), ("x", "true share of good balls, 0 to 1", "none")),
            "After 6 good balls of 12 the middle nine tenths lie from "
            + " to ".join(f"{100 * end:.0f}" for end in luck.band_of_share(6, 12)) + " in 100.",
        ),
    ),
    "11": (
        Formula(
            "Balls each in a round",
            (("t", "minutes of the round", "min"), ("n", "people on the fullest lane", "none"),
             ("s", "from ball to ball", "s")),
            f"With t = 20, n = 3 and s = 45 it is {60 * (20 - 2) // (3 * 45)}.",
        ),
    ),
    "12": (
        Formula(
            "What a move does to a straight ball",
            (*_LINE, ("x", "distance from the foul line", "ft")),
            f"Feet 2 boards in and target 1 board in move it {(1 - 2) * -60 / 15 - 2:.0f} boards out at 60 ft.",
        ),
    ),
}  # fmt: skip
