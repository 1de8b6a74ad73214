"""The sideways push while slipping is greatest at rotation arccos(spin speed / ball speed).

Source: data/best_rotation.csv, our own calculation.
"""

from math import cos, radians

import numpy as np
import pytest
from motion_help import rows

from bowlcore.motion import closed_form, units
from bowlcore.motion.ball import Ball
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import ZonedLane

ROWS = rows("best_rotation")
each_style = pytest.mark.parametrize(
    "row", ROWS, ids=[f"{r['speed_mph']:g} mph {r['rev_rate_rpm']:g} rpm" for r in ROWS]
)


def roll_speed(row):
    return Ball().radius_m * row["rev_rate_rpm"] * units.RPM_RADS * cos(radians(13))


@pytest.mark.claim(
    "A skidding ball is pushed sideways most at the rotation whose cosine is spin speed over ball speed",
    against=(
        "the push worked out at every hundredth of a degree; our own calculation "
        "(tests/data/best_rotation.csv)"
    ),
    kind="exact",
)
@each_style
def test_best_rotation_is_arccos_of_spin_over_speed(row, figure):
    speed, roll = row["speed_mph"] * units.MPH_MPS, roll_speed(row)
    assert closed_form.best_rotation_deg(speed, roll) == pytest.approx(row["best_rotation_deg"], abs=0.051)
    phi = np.radians(np.arange(0, 120, 0.01))
    share = roll * np.sin(phi) / np.sqrt(speed**2 + roll**2 - 2 * speed * roll * np.cos(phi))
    off = abs(np.degrees(phi[share.argmax()]) - row["best_rotation_deg"])
    figure("rotation off by", off, "degrees", asked="0.07, the table has one decimal")
    assert np.degrees(phi[share.argmax()]) == pytest.approx(row["best_rotation_deg"], abs=0.07)


@each_style
def test_largest_final_turn_comes_past_ninety_degrees(row):
    speed, roll, beta = row["speed_mph"] * units.MPH_MPS, roll_speed(row), Ball().inertia_factor
    turns = closed_form.final_heading_deg(speed, roll, np.arange(0, 180.0, 0.1), beta)
    assert turns.max() == pytest.approx(row["largest_turn_deg"], abs=0.051)
    assert np.arange(0, 180.0, 0.1)[turns.argmax()] > 90


@each_style
def test_a_ball_that_hardly_slows_hooks_most_at_its_best_rotation(row):
    slick = ZonedLane([(60, 0.002)])  # so slick that speed and spin stay what they were
    rotations = np.arange(30, 91, 1.0)
    entries = [
        simulate(Release(row["speed_mph"], row["rev_rate_rpm"], turn, 13, 20, 20), slick).entry_board
        for turn in rotations
    ]
    assert rotations[np.argmax(entries)] == pytest.approx(row["best_rotation_deg"], abs=1.5)


def test_with_more_revs_the_best_rotation_is_lower():
    speed = 18 * units.MPH_MPS
    spins = Ball().radius_m * np.array([200, 300, 400, 500]) * units.RPM_RADS
    assert (np.diff(closed_form.best_rotation_deg(speed, spins)) < 0).all()


def test_there_is_none_when_the_spin_outruns_the_ball():
    assert np.isnan(closed_form.best_rotation_deg(5.0, 5.0))
    assert np.isnan(closed_form.best_rotation_deg(5.0, 6.0))
