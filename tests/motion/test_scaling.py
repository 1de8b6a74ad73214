"""Scaling: speed and spin times k, friction times k squared, and the path is the same, in 1/k of the time.

Source: our own calculation (only spin over speed, friction x g x length / speed squared count). Lower
floor, so that k need not be a speed a bowler has.
"""

import numpy as np
import pytest

from bowlcore.motion.slide import slide, start

NODES = np.linspace(0.0, 18.288, 61).tolist()


def field(strength):
    return [lambda x, y, slip: strength * (0.02 + 0.004 * x + 0.05 * np.sin(2 * y) ** 2)] * 60


@pytest.mark.claim(
    "Speed and spin doubled with four times the friction give the same path in half the time",
    against="scaling of the equations, our own calculation",
    kind="exact",
)
@pytest.mark.parametrize("k", [0.25, 0.5, 2.0, 10.0])
def test_scaling_of_speed_and_friction(k, figure):
    base = slide(field(1.0), start(8.0, -0.3, 2.5, 2.8, 0.36), NODES, 0.1, 9.80665)
    more = slide(field(k * k), start(8.0 * k, -0.3 * k, 2.5 * k, 2.8 * k, 0.36), NODES, 0.1, 9.80665)
    figure("place off by", np.abs(np.subtract(more.y, base.y)).max(), "m", asked="rounding")
    assert more.y == pytest.approx(base.y, abs=1e-9)
    assert np.array(more.slip) == pytest.approx(k * np.array(base.slip), abs=1e-9 * k)
    assert np.array(more.t) == pytest.approx(np.array(base.t) / k, abs=1e-9)


@pytest.mark.parametrize("k", [0.5, 6.0])
def test_scaling_of_gravity_against_friction(k):
    base = slide(field(1.0), start(8.0, -0.3, 2.5, 2.8, 0.36), NODES, 0.1, 9.80665)
    moon = slide(field(k), start(8.0, -0.3, 2.5, 2.8, 0.36), NODES, 0.1, 9.80665 / k)
    assert moon.y == pytest.approx(base.y, abs=1e-12)


def test_doubling_every_length_and_speed_squared():
    # lengths x 2 with speeds x sqrt(2): the path is twice as large at the same friction
    root = 2**0.5
    small = slide(field(1.0), start(8.0, -0.3, 2.5, 2.8, 0.36), NODES, 0.1, 9.80665)
    large = slide(
        [lambda x, y, slip: field(1.0)[0](x / 2, y / 2, slip)] * 60,
        start(8.0 * root, -0.3 * root, 2.5 * root, 2.8 * root, 0.36),
        [2 * x for x in NODES],
        0.2,
        9.80665,
    )
    assert np.array(large.y) / 2 == pytest.approx(small.y, abs=1e-9)
