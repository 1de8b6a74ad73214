"""Small accidents of a rack: where the pins are set, what they weigh, how they rub.

The same numbered accidents are used in every cell of the table (common random numbers), so two cells differ
by the shot and not by luck. The board, the angle and the speed of the ball are never scattered here: that is
the bowler's part. All sizes are our own choice; no measurement was found.
"""

from dataclasses import dataclass

import numpy as np

from bowlcore.rack.leave import MIRROR

SPOT_ERROR_IN = 1 / 16  # largest distance of a pin from its spot, uniform in a disc
MASS_ERROR_OZ = 1.0  # a set of synthetic pins differs by up to 2 oz (copy of an encyclopedia article, 2009)
FRICTION_ERROR = 0.10  # relative, uniform
_MIRROR_ORDER = np.array([MIRROR[pin] - 1 for pin in range(1, 11)])


@dataclass(frozen=True)
class Scatter:
    """Accidents of one rack; index 0 of every array is pin 1.

    Parameters
    ----------
    spot_x_in, spot_y_in : tuple of 10 floats
        Shift of each pin down the lane and towards rising boards [in].
    mass_oz : tuple of 10 floats
        Added to the standard mass [oz].
    friction_factor : tuple of 10 floats
        Multiplies the friction between pins [-].
    """

    spot_x_in: tuple = (0.0,) * 10
    spot_y_in: tuple = (0.0,) * 10
    mass_oz: tuple = (0.0,) * 10
    friction_factor: tuple = (1.0,) * 10

    @property
    def mirrored(self):
        """The same accidents seen in a mirror along the lane's middle."""

        def swap(values, sign=1.0):
            return tuple(float(sign * values[i]) for i in _MIRROR_ORDER)

        return Scatter(
            swap(self.spot_x_in), swap(self.spot_y_in, -1.0), swap(self.mass_oz), swap(self.friction_factor)
        )


def scatter(number, seed=2026, *, spot_error_in=SPOT_ERROR_IN):
    """Accidents number 0, 1, 2 ... of a seed; the same number gives the same accidents anywhere."""
    rng = np.random.default_rng([seed, number])
    radius = spot_error_in * np.sqrt(rng.random(10))
    turn = 2 * np.pi * rng.random(10)
    mass = MASS_ERROR_OZ * (2 * rng.random(10) - 1)
    friction = 1 + FRICTION_ERROR * (2 * rng.random(10) - 1)
    return Scatter(
        tuple(map(float, radius * np.cos(turn))),
        tuple(map(float, radius * np.sin(turn))),
        tuple(map(float, mass)),
        tuple(map(float, friction)),
    )
