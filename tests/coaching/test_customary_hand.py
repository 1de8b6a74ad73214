"""What the customary change of the hand is worth here. A change of model that flips a finding is noticed.

The rules are common practice without source; the findings are this model's.
"""

from dataclasses import replace

import pytest

from bowlcore import load_bowlers
from bowlcore.coaching.customary_hand import CUSTOMS, SHAPES, TIE, answer, compare_hands
from bowlcore.coaching.evening_told import NAMES
from bowlcore.coaching.path_lab import lane_of

ABLE = [name for name in NAMES if not load_bowlers()[name].young_or_sore]
AT_45 = ("league one-hander", "high-rev two-hander", "left-hander")


@pytest.mark.claim(
    "On a drying lane moving the feet brings more balls into the pocket than the customary change of the "
    "hand",
    against="common practice, no source; both hands on their best line",
    kind="disagrees",
)
@pytest.mark.parametrize("name", ABLE)
def test_dried_out_moving_the_feet_is_worth_at_least_as_much_as_the_customary_hand(name, figure):
    dry = answer(name).compared["drying"]
    figure(
        "at least", 100 * (dry.own.pocket - dry.custom.pocket), "more in 100", asked="more than 0", least=True
    )
    assert dry.own.pocket > dry.custom.pocket
    assert dry.own.pocket > dry.custom_here.pocket


@pytest.mark.parametrize("name", ["league one-hander", "high-rev two-hander", "left-hander", "spinner"])
def test_dried_out_the_customary_hand_helps_whoever_stands_still(name):
    dry = answer(name).compared["drying"]
    assert dry.custom_here.pocket > dry.own_here.pocket + TIE


@pytest.mark.claim(
    "The customary change of tilt alone neither helps nor harms here, once both hands are re-aimed",
    against="common practice, no source; both hands on their best line",
    kind="disagrees",
)
@pytest.mark.parametrize("state", ["fresh", "carrydown", "wet-dry"])
@pytest.mark.parametrize("name", AT_45)
def test_tilt_alone_is_a_tie_once_both_are_re_aimed(name, state, figure):
    found = answer(name).compared[state]
    figure(
        "apart by", 100 * abs(found.own.pocket - found.custom.pocket), "balls in 100", asked=f"{100 * TIE:g}"
    )
    assert abs(found.own.pocket - found.custom.pocket) < TIE


@pytest.mark.claim(
    "Coming up to 45 degrees of rotation is a gain for one who has less",
    against="common practice, no source; both hands on their best line",
    kind="practice",
)
def test_coming_up_to_45_degrees_is_a_gain_for_one_who_has_less(figure):
    fresh = answer("low-rev senior").compared["fresh"]
    assert load_bowlers()["low-rev senior"].release.axis_rotation_deg < 45
    figure("gain", 100 * (fresh.custom.pocket - fresh.own.pocket), "balls in 100", asked="more than 5")
    assert fresh.custom.pocket > fresh.own.pocket + 0.05


@pytest.mark.parametrize("name", ABLE)
def test_both_hands_are_on_their_best_line_and_only_the_hand_differs(name):
    bowler = load_bowlers()[name]
    found = compare_hands(bowler, lane_of("dried_out"), "drying")
    assert (found.custom_line.axis_rotation_deg, found.custom_line.axis_tilt_deg) == CUSTOMS["drying"][1:]
    assert found.own_line.axis_tilt_deg == bowler.release.axis_tilt_deg
    for line in (found.own_line, found.custom_line):
        assert abs(line.laydown_board - bowler.release.laydown_board) <= bowler.can_change["feet"]
        assert line.speed_mph == bowler.release.speed_mph and line.rev_rate_rpm == bowler.release.rev_rate_rpm
    assert found.own.pocket >= found.own_here.pocket - 0.05  # chosen on 64 balls, told on 256


def test_no_other_hand_is_told_to_the_young():
    told = answer("beginner of eleven")
    assert not told.hand_offered and "no change of rotation or tilt" in told.sentence
    assert not any("customary" in title for row in told.rows for title in row)


def test_the_sentence_and_rows_carry_the_numbers():
    told = answer("league one-hander")
    dry = told.compared["drying"]
    assert f"{100 * dry.own_here.pocket:.0f} of 100 balls find the pocket with the own hand" in told.sentence
    assert (
        f"Feet moved as well: {100 * dry.own.pocket:.0f} and {100 * dry.custom.pocket:.0f}." in told.sentence
    )
    assert [row["the lane"] for row in told.rows] == list(SHAPES)


def test_left_hand_is_the_mirror():
    bowler = load_bowlers()["spinner"]
    other = replace(bowler, release=replace(bowler.release, hand="left"))
    one, two = (compare_hands(b, lane_of("dried_out"), "drying") for b in (bowler, other))
    assert (one.own.pocket, one.custom.pocket) == (two.own.pocket, two.custom.pocket)
    assert one.own.strike == pytest.approx(two.own.strike)


def test_bad_input_is_one_sentence():
    with pytest.raises(
        ValueError, match="state must be one of fresh, drying, carrydown, wet-dry, got 'damp'"
    ):
        compare_hands(load_bowlers()["spinner"], lane_of("house"), "damp")
    with pytest.raises(ValueError, match="bowler must be one of .* got 'nobody'"):
        answer("nobody")
