"""Limits of every input are exact at the edge; beyond it one sentence names field, value and range.

Ball limits: equipment rules of 2012, read second-hand; the others are physical sense, our own.
"""

from dataclasses import FrozenInstanceError, replace
from math import inf, nan, nextafter

import numpy as np
import pandas as pd
import pytest

from bowlcore.motion.aiming import aim
from bowlcore.motion.ball import Ball
from bowlcore.motion.many import simulate_many
from bowlcore.motion.oil import load_pattern
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import FrictionLaw, OiledLane, ZonedLane

RELEASE = Release(17, 300, 45, 13, 17, 13)
# thing, field, low, high
LIMITS = [
    (RELEASE, "speed_mph", 3, 30),
    (RELEASE, "rev_rate_rpm", 0, 700),
    (RELEASE, "axis_rotation_deg", -180, 180),
    (RELEASE, "axis_tilt_deg", -90, 90),
    (RELEASE, "laydown_board", 1, 39),
    (RELEASE, "target_board", 1, 39),
    (RELEASE, "loft_ft", 0, 15),
    (Ball(), "mass_lb", 4, 16),
    (Ball(), "diameter_in", 8.5, 8.595),
    (Ball(mass_lb=13), "rg_in", 2.46, 2.80),
    (Ball(mass_lb=16), "rg_in", 2.46, 2.80),
    (Ball(mass_lb=12.9), "rg_in", 2.40, 2.95),
    (Ball(), "cover_in_oil", 0.2, 2),
    (Ball(), "cover_on_dry", 0.2, 2),
    (FrictionLaw(oil=0.001, dry=0.32), "oil", 0.001, 0.32),
    (FrictionLaw(oil=0.001), "dry", 0.001, 0.32),
    (FrictionLaw(), "scale_um", 0.01, 10),
]
each_limit = pytest.mark.parametrize(
    ("thing", "field", "low", "high"),
    LIMITS,
    ids=[f"{type(t).__name__}.{f}.{low}" for t, f, low, _ in LIMITS],
)


@each_limit
def test_the_edges_themselves_are_allowed(thing, field, low, high):
    for value in (low, high, float(low), np.float64(high)):
        assert getattr(replace(thing, **{field: value}), field) == value


@pytest.mark.claim(
    "A number that cannot be is refused in one sentence with its name, the value and the allowed range",
    against="ball limits: equipment rules of 2012, read second-hand; the other limits are our own",
    kind="own",
)
@each_limit
def test_just_beyond_is_refused_with_field_value_and_range(thing, field, low, high):
    for value in (nextafter(low, -inf), nextafter(high, inf)):
        with pytest.raises(ValueError, match=field) as caught:
            replace(thing, **{field: value})
        assert not str(caught.value).endswith(f"got {low:g}")  # not rounded to the edge itself
        assert not str(caught.value).endswith(f"got {high:g}")
    far = high + 1000
    with pytest.raises(ValueError) as caught:
        replace(thing, **{field: far})
    said = str(caught.value)
    assert "\n" not in said
    assert field in said and f"{far:g}" in said and f"{high:g}" in said


@each_limit
@pytest.mark.parametrize("value", [True, "17", None, nan, inf, [17], 3 + 0j, np.array([1.0, 2.0])], ids=repr)
def test_what_is_no_finite_number_is_refused(thing, field, low, high, value):
    with pytest.raises(ValueError, match=field):
        replace(thing, **{field: value})


@pytest.mark.parametrize("value", ["Right", "", None, True, 1, "both"])
def test_hand_is_right_or_left(value):
    with pytest.raises(ValueError, match='hand must be "right" or "left"'):
        replace(RELEASE, hand=value)


def test_oil_may_equal_dry_but_not_exceed_it():
    assert FrictionLaw(oil=0.1, dry=0.1).oil == 0.1
    with pytest.raises(ValueError, match=r"oil must not be above dry \(0.1\), got 0.2"):
        FrictionLaw(oil=0.2, dry=0.1)


@pytest.mark.parametrize("thing", [RELEASE, Ball(), FrictionLaw()])
def test_nothing_is_changed_in_place(thing):
    field = next(iter(vars(thing)))
    with pytest.raises(FrozenInstanceError):
        setattr(thing, field, 1)


@pytest.mark.parametrize(
    ("zones", "words"),
    [
        ([], "rising"),
        ([(40, 0.04)], "60 ft or beyond, got 40"),
        ([(40, 0.04), (40, 0.2), (60, 0.2)], "rising"),
        ([(50, 0.04), (40, 0.2), (60, 0.2)], "rising"),
        ([(0, 0.04), (60, 0.2)], "rising"),
        ([(-5, 0.04), (60, 0.2)], "rising"),
        ([(60, -0.01)], "friction must be a number between 0 and 1, got -0.01"),
        ([(60, 1.01)], "friction must be a number between 0 and 1, got 1.01"),
        ([(60, nan)], "friction"),
        ([(nan, 0.1), (60, 0.1)], "rising"),
        ([("far", 0.1)], "pairs"),
        ([40, 60], "pairs"),
        (None, "pairs"),
    ],
)
def test_zones_must_rise_to_the_pins_with_friction_between_0_and_1(zones, words):
    with pytest.raises(ValueError, match=words) as caught:
        ZonedLane(zones)
    assert "\n" not in str(caught.value)


def test_zones_at_their_edges():
    assert ZonedLane([(60, 0)]).friction(20, 30) == 0
    assert ZonedLane([(60, 1)]).friction(20, 30) == 1
    assert ZonedLane([(59.9999, 0.1), (1000, 0.2)]).breaks_ft == (59.9999,)
    assert ZonedLane([(60, 0.1), (61, 0.2)]).breaks_ft == ()


def test_friction_of_zones_for_numbers_and_arrays():
    lane = ZonedLane([(20, 0.01), (40, 0.04), (60, 0.2)])
    at = [0, 19.99, 20, 39.99, 40, 60]
    wanted = [0.01, 0.01, 0.04, 0.04, 0.2, 0.2]
    assert [lane.friction(5, x, 1.0) for x in at] == wanted
    assert lane.friction(np.full(6, 5.0), np.array(at, float), 1.0) == pytest.approx(wanted)


def test_friction_law_at_no_oil_at_one_scale_and_under_thick_oil():
    law = FrictionLaw(oil=0.02, dry=0.22, scale_um=0.5)
    assert law.friction(0) == pytest.approx(0.22)
    assert law.friction(0.5) == pytest.approx(0.02 + 0.2 * 0.36787944)
    assert law.friction(50) == pytest.approx(0.02)
    assert law.friction(0, 0.5, 0.5) == pytest.approx(0.11)
    assert law.friction(50, 0.5, 0.5) == pytest.approx(0.01)


def test_scaled_law_stays_a_law():
    law = FrictionLaw()
    assert law.scaled(1) == law
    assert law.scaled(1.2).oil == pytest.approx(0.015)
    for factor in (0.25, 0.5, 1.4, 2):
        scaled = law.scaled(factor)
        assert 0.001 <= scaled.oil <= scaled.dry <= 0.32
    assert FrictionLaw(oil=0.2, dry=0.3).scaled(2) == FrictionLaw(oil=0.32, dry=0.32)
    for factor in (0.24, 2.01, nan, "2"):
        with pytest.raises(ValueError, match="factor must be a number between 0.25 and 2"):
            law.scaled(factor)


def test_a_release_may_not_be_sent_off_the_lane():
    with pytest.raises(ValueError, match="target_board must be a number between 1 and 39"):
        RELEASE.with_heading(-10)


def test_heading_there_and_back():
    for heading in (-2.5, 0, 1.8):
        assert RELEASE.with_heading(heading).launch_heading_deg == pytest.approx(heading, abs=1e-12)
    one_board = np.degrees(np.arctan(41.5 / 39 / 180))  # one board of 41.5/39 in over 15 ft
    assert replace(RELEASE, target_board=16).launch_heading_deg == pytest.approx(-one_board)


def test_inertia_factor_is_the_square_of_rg_over_radius():
    assert Ball(rg_in=2.5, diameter_in=8.545).inertia_factor == pytest.approx((2.5 / 4.2725) ** 2)
    uniform = 8.545 / 2 * 0.4**0.5
    assert Ball(rg_in=uniform).inertia_factor == pytest.approx(0.4)


LANE = OiledLane(load_pattern("house"))


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (
            lambda: OiledLane("house"),
            "pattern must be an OilPattern, such as load_pattern gives, got 'house'",
        ),
        (lambda: OiledLane(LANE.pattern, 0.2), "law must be a FrictionLaw, got 0.2"),
        (lambda: simulate(17, LANE), "release must be a Release, got 17"),
        (lambda: simulate(RELEASE, "house"), "a surface needs a method friction"),
        (lambda: simulate(RELEASE, LANE, 15), "ball must be a Ball, such as load_balls gives, got 15"),
        (lambda: aim("x", LANE), "release must be a Release, got 'x'"),
        (lambda: simulate_many(RELEASE, LANE), "releases must be a DataFrame or a sequence of Release"),
        (lambda: RELEASE.with_heading("out"), "deg must be a number between -60 and 60 degrees, got 'out'"),
        (
            lambda: simulate_many(pd.DataFrame({"sped_mph": [17]}), LANE),
            "'sped_mph'; a release has 'speed_mph'",
        ),
    ],
)
def test_another_kind_of_thing_is_refused_in_one_sentence(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_columns_of_ones_own_stay_out_of_the_way():
    table = pd.DataFrame({"speed_mph": [17.0], "bowler": ["AK"], "tried": ["eyes on the arrow"]})
    assert simulate_many(table, LANE).entry_board[0] == simulate(RELEASE, LANE).entry_board
