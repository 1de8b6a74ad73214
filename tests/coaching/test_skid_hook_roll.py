"""Lesson 02: slip ends where the closed form says, and what is told of it."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore.coaching import one_number, skid_hook_roll
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion import closed_form, units
from bowlcore.motion.ball import Ball
from bowlcore.motion.oil import pattern_names
from bowlcore.motion.release import Release
from bowlcore.motion.surface import ZonedLane

SHOT = Release(17, 300, 45, 13, 17, 13)


def hand_of(release, ball):
    """v and w [m/s] in the frame of the launch direction."""
    roll, turn = skid_hook_roll.roll_speed_mps(release, ball), np.radians(release.axis_rotation_deg)
    return (release.speed_mph * units.MPH_MPS, 0.0), (roll * np.cos(turn), roll * np.sin(turn))


@pytest.mark.parametrize("friction", [0.09, 0.15, 0.3])
@pytest.mark.parametrize("hand", [SHOT, Release(15, 200, 30, 20, 17, 17), Release(12, 120, 70, 5, 17, 17)])
def test_slip_ends_where_the_closed_form_says_in_constant_friction(hand, friction):
    ball = Ball()
    sent_out = -0.8 * skid_hook_roll.whole_turn_deg(hand, ball)  # so that it stays on the lane
    hand = replace(hand, laydown_board=32).with_heading(sent_out)
    told = skid_hook_roll.answer(hand, ZonedLane([(60.0, friction)]), ball)
    out = closed_form.roll_out(*hand_of(hand, ball), friction, ball.inertia_factor)
    launch = np.radians(hand.launch_heading_deg)
    down_m = out.displacement_m @ [np.cos(launch), -np.sin(launch)]
    assert told.path.roll_start_ft == pytest.approx(down_m / units.FOOT_M, abs=0.001)
    assert skid_hook_roll.parts(told.path)[-1][:2] == (skid_hook_roll.ROLLS, told.path.roll_start_ft)
    # until then it falls evenly with time: u0 - mu g (1 + 1/b) t
    first = np.hypot(*np.subtract(*hand_of(hand, ball)))
    fall = friction * units.G_MPS2 * (1.0 + 1.0 / ball.inertia_factor)
    left = np.clip(first - fall * told.path.time_s, 0.0, None) / units.MPH_MPS
    assert told.slip == pytest.approx(left, abs=0.002)


def test_a_ball_without_spin_rolls_where_our_table_says():
    # V1 of our own calculation: 8 m/s, no spin, b 0.4, friction 0.100, rolls at 15.9825 m
    ball = Ball(rg_in=np.sqrt(0.4) * Ball().diameter_in / 2)
    told = skid_hook_roll.answer(Release(8 / units.MPH_MPS, 0, 0, 0, 20, 20), ZonedLane([(60, 0.1)]), ball)
    assert told.path.roll_start_ft == pytest.approx(15.9825 / units.FOOT_M, abs=0.001)
    assert "It has no turn to give" in told.sentence


@pytest.mark.parametrize("pattern", pattern_names())
def test_the_whole_turn_is_the_same_on_every_lane(pattern):
    path = skid_hook_roll.answer(replace(SHOT, speed_mph=15.5), lane_of(pattern)).path
    turn = skid_hook_roll.whole_turn_deg(replace(SHOT, speed_mph=15.5), Ball())
    assert path.entry_angle_deg - SHOT.launch_heading_deg == pytest.approx(turn, abs=1e-6)


def test_what_is_left_is_told_of_a_ball_that_still_slips():
    told = skid_hook_roll.answer(replace(SHOT, speed_mph=21), lane_of("long_heavy"))
    assert "still skidding at the pins" in told.sentence and "is never used" in told.sentence
    done = told.path.entry_angle_deg - SHOT.launch_heading_deg
    assert 0 < done < told.turn_deg and told.slip[-1] > 0.5


def test_three_parts_one_after_the_other_and_none_in_the_gutter():
    parts = skid_hook_roll.parts(skid_hook_roll.answer(SHOT, lane_of("house")).path)
    assert [name for name, *_ in parts] == ["skids", "hooks", "rolls"]
    assert [high for *_, high in parts[:-1]] == [low for _, low, _ in parts[1:]] and parts[-1][2] == 60
    lost = skid_hook_roll.answer(replace(SHOT, target_board=4), lane_of("house"))
    assert "the gutter came first" in lost.sentence
    assert skid_hook_roll.parts(lost.path)[-1][2] == lost.path.gutter_ft


def test_a_spin_that_fits_the_speed_does_not_slip():
    ball = Ball()
    revs = 10 * units.MPH_MPS / ball.radius_m / units.RPM_RADS
    told = skid_hook_roll.answer(Release(10, revs, 0, 0, 20, 20), lane_of("house"), ball)
    assert "does not slip at all" in told.sentence
    assert skid_hook_roll.parts(told.path) == [(skid_hook_roll.ROLLS, 0.0, 60.0)]


@pytest.mark.claim(
    "How far friction has got fixes speed, direction, rotation, tilt and revs together, on every pattern",
    against="pencil formula from angular momentum, our own calculation",
    kind="exact",
)
@pytest.mark.parametrize("pattern", pattern_names())
def test_one_curve_for_all_oil_patterns(pattern, figure):
    told = one_number.answer(SHOT, (pattern,))
    path, lane = told.lanes[0].path, told.lanes[0]
    by_pencil = one_number.family(SHOT, None, lane.share)
    figure("speed off by", abs(path.speed_mph - by_pencil.speed_mph).max(), "mph", asked="rounding")
    assert path.speed_mph == pytest.approx(by_pencil.speed_mph, abs=1e-9)
    assert path.heading_deg - SHOT.launch_heading_deg == pytest.approx(by_pencil.turned_deg, abs=1e-9)
    assert path.axis_rotation_deg == pytest.approx(by_pencil.rotation_deg, abs=1e-6)
    assert path.axis_tilt_deg == pytest.approx(by_pencil.tilt_deg, abs=1e-9)
    assert path.rev_rate_rpm == pytest.approx(by_pencil.rev_rate_rpm, abs=1e-6)


def test_the_table_says_where_each_lane_gets_there():
    told = one_number.answer(SHOT, ("house", "long_heavy"))
    house, long = told.lanes
    for share in (0.2, 0.5, 0.8):
        assert one_number.share_at(house, one_number.place_of(house, share)) == pytest.approx(share, abs=1e-9)
        assert one_number.place_of(house, share) < one_number.place_of(long, share)
    assert told.rows[-1]["house shape: reached at (ft)"] == "56"
    assert told.rows[-1]["long and heavy shape: reached at (ft)"] == "not before the pins"
    twice = one_number.answer(SHOT, ("house", "house"))
    assert len(twice.lanes) == 1 and twice.sentence.count("house shape") == 2
