"""Lesson 03: five patterns and one direction; a pattern built is the pattern asked for, or the call says why not."""

from dataclasses import replace
from math import isfinite

import numpy as np
import pytest

from bowlcore.coaching import five_patterns, pattern_builder
from bowlcore.coaching.rules_of_boards import exit_by_31
from bowlcore.motion.release import Release
from bowlcore.motion.shapes import make_pattern
from bowlcore.motion.units import LANE_FT

SHOT = Release(16, 300, 45, 13, 17, 13)


@pytest.mark.parametrize(
    "hand",
    [SHOT, Release(14, 180, 30, 15, 12, 11), Release(15, 350, 60, 5, 22, 16.5), replace(SHOT, hand="left")],
)
def test_rolled_out_it_runs_in_one_direction_whatever_the_oil(hand):
    told = five_patterns.answer(hand)
    rolled = [shot.path for shot in told.shots if isfinite(shot.path.roll_start_ft)]
    assert len(rolled) >= 4
    assert [path.entry_angle_deg for path in rolled] == pytest.approx(
        [told.final_deg] * len(rolled), abs=1e-6
    )
    assert np.ptp([path.roll_start_ft for path in rolled]) > 4, "it should come to roll in different places"


def test_a_ball_that_does_not_roll_is_named_and_has_not_come_so_far():
    told = five_patterns.answer(replace(SHOT, speed_mph=19))
    skids = [shot for shot in told.shots if not isfinite(shot.path.roll_start_ft)]
    assert {shot.title for shot in skids} == {"flat", "long"}
    assert "On the flat and long shapes it still skids at the pins" in told.sentence
    assert all(shot.path.entry_angle_deg < told.final_deg - 0.1 for shot in skids)
    assert "On the short, wet-dry and house shapes it rolls before the pins" in told.sentence


def test_gutters_and_straight_balls_are_said():
    assert (
        "On the flat shape it falls in the gutter."
        in five_patterns.answer(replace(SHOT, target_board=10)).sentence
    )
    straight = five_patterns.answer(Release(14, 250, 0, 0, 20, 20)).sentence
    assert "straight down the boards" in straight and "breakpoint" not in straight


@pytest.mark.parametrize(
    "length_ft, volume_ml, side_ratio, taper", [(34, 18, 3, 90), (40, 24, 16, 66), (44, 30, 1, 50)]
)
def test_built_is_what_was_asked_for(length_ft, volume_ml, side_ratio, taper):
    told = pattern_builder.answer(replace(SHOT, target_board=14), length_ft, volume_ml, side_ratio, taper, 10)
    assert told.pattern.length_ft == pytest.approx(length_ft, abs=1e-6)
    assert told.pattern.volume_ml == pytest.approx(volume_ml, rel=1e-9)
    assert told.pattern.side_ratio == pytest.approx(side_ratio, rel=1e-6)
    assert told.sentence.startswith(f"Built: {length_ft} ft, {volume_ml} mL, {side_ratio} to 1.")
    numbers = {row["number"]: row["of this pattern"] for row in told.rows}
    assert numbers["length (ft)"] == str(length_ft) and numbers["volume (mL)"] == f"{volume_ml:.1f}"


def test_what_cannot_be_built_says_why():
    for asked, said in (
        (
            {"length_ft": 55},
            "would end beyond the pins at length_ft 55; take a shorter ramp or a shorter pattern",
        ),
        ({"volume_ml": 61}, "volume_ml must be .* 3 .* 60 mL, got 61"),
        ({"taper_percent": 20}, "taper must be .* 0.35 .* got 0.2"),
        ({"side_ratio": 0.5}, r"side_ratio must be a number from 1 \(flat\) upwards, got 0.5"),
        ({"line": "mine"}, "line must be one of same line, re-aimed, got 'mine'"),
    ):
        with pytest.raises(ValueError, match=said):
            pattern_builder.answer(SHOT, **asked)


@pytest.mark.parametrize(
    "length_ft, volume_ml, units", [(38, 18, 8.2), (40, 25, 10.8), (42, 27, 11.1), (42, 30, 12.4)]
)
def test_mean_film_is_volume_over_length_and_width(length_ft, volume_ml, units):
    # our own calculation; one unit is 0.0167 mL on a square foot (from memory)
    pattern = make_pattern(length_ft, volume_ml, 10, end_ramp_ft=8)
    assert pattern_builder.mean_film_units(pattern) == pytest.approx(units, abs=0.05)


@pytest.mark.parametrize("length_ft, board", [(35, 4), (38, 7), (39, 8), (43, 12)])
def test_the_rule_of_31_as_it_is_told(length_ft, board):
    assert exit_by_31(length_ft) == board  # a web page and a magazine, known second-hand
    told = pattern_builder.answer(SHOT, length_ft, end_ramp_ft=8)
    assert told.rule_board == pytest.approx(board, abs=1e-6)
    at_end = np.interp(length_ft, told.path.distance_ft, told.path.board)
    assert told.exit_board == pytest.approx(at_end, abs=1e-6) and told.path.distance_ft[-1] == LANE_FT


def test_where_the_ball_leaves_the_oil_is_said_against_the_rule():
    assert (
        "The rule of 31 says the same board." in pattern_builder.answer(replace(SHOT, speed_mph=17)).sentence
    )
    assert "has no board for so short an oil" in pattern_builder.answer(SHOT, 30, end_ramp_ft=8).sentence
    assert "boards further out" in pattern_builder.answer(SHOT, 45, 30).sentence
    lost = pattern_builder.answer(replace(SHOT, target_board=3))
    assert "It never comes to the end of the oil" in lost.sentence and not isfinite(lost.exit_board)


def test_re_aimed_comes_into_the_pocket_and_an_unreachable_one_is_refused():
    told = pattern_builder.answer(SHOT, line="re-aimed")
    assert told.path.entry_board == pytest.approx(17.5, abs=0.01) and told.release != SHOT
    with pytest.raises(ValueError, match="none of the lines tried, from board 4 to 32"):
        pattern_builder.answer(Release(8, 600, 90, 0, 39, 39), 25, 3, line="re-aimed", end_ramp_ft=5)


def test_the_same_sheet_may_play_boards_apart():
    boards = [pattern_builder.answer(SHOT, taper_percent=taper).path.entry_board for taper in (35, 100)]
    assert boards[1] > boards[0] + 2


def test_a_higher_side_ratio_gives_more_room():
    def apart(ratio):
        found = [
            pattern_builder.answer(
                replace(SHOT, speed_mph=17, target_board=target), side_ratio=ratio
            ).path.entry_board
            for target in (12, 14)
        ]
        return found[1] - found[0]

    assert apart(1) == pytest.approx(8.0, abs=0.3)  # plain geometry: four boards for one, twice
    assert apart(16) < 2 < apart(4) < apart(1)
