"""The accidents of a rack: repeatable, in bounds, mirrored."""

import numpy as np

from bowlcore.rack.scatter import FRICTION_ERROR, MASS_ERROR_OZ, SPOT_ERROR_IN, scatter


def test_a_number_always_gives_the_same_accidents():
    assert scatter(5) == scatter(5)
    assert scatter(5) != scatter(6) and scatter(5) != scatter(5, seed=1)


def test_accidents_stay_in_their_bounds_and_use_them():
    many = [scatter(k) for k in range(200)]
    shift = np.hypot([s.spot_x_in for s in many], [s.spot_y_in for s in many])
    mass = np.array([s.mass_oz for s in many])
    friction = np.array([s.friction_factor for s in many]) - 1
    for values, bound in (
        (shift, SPOT_ERROR_IN),
        (np.abs(mass), MASS_ERROR_OZ),
        (np.abs(friction), FRICTION_ERROR),
    ):
        assert 0.95 * bound < values.max() <= bound
    assert abs(mass.mean()) < 0.05  # 2,000 values, s.e. 0.013 oz


def test_mirror_swaps_sides_and_comes_back():
    one = scatter(3)
    assert one.mirrored.spot_y_in[6] == -one.spot_y_in[9]
    assert one.mirrored.mass_oz[3] == one.mass_oz[5]
    assert one.mirrored.mirrored == one
