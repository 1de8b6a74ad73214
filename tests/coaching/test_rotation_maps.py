"""The map over tilt and rotation agrees with single shots and the lab; the peaks over rotation."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore.coaching import best_rotation, response_map
from bowlcore.coaching.lines import line_within_reach, lines_of_each, lines_to_pocket
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.coaching.response_map import FEW_ROTATIONS, FEW_TILTS, ROTATIONS, TILTS
from bowlcore.motion.ball import Ball
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release

SHOT = Release(17, 300, 45, 13, 17, 13)
HOUSE, BENCHMARK = lane_of("house"), ball_of("benchmark")


def test_lines_of_several_hands_are_the_lines_of_each():
    hands = [replace(SHOT, axis_rotation_deg=turn) for turn in (10.0, 45.0, 80.0)]
    which, together = lines_of_each(hands, HOUSE, BENCHMARK)
    for i, hand in enumerate(hands):
        alone = lines_to_pocket(hand, HOUSE, BENCHMARK)
        for one, many in zip(alone, together, strict=True):
            assert many[which == i] == pytest.approx(one, abs=1e-9)
    _, near = lines_of_each(hands, HOUSE, BENCHMARK, reach=5.0)
    assert np.abs(near.laydown_board - 17).max() <= 5 and np.abs(near.target_board - 13).max() <= 5
    far = (np.abs(together.laydown_board - 17) > 5) | (np.abs(together.target_board - 13) > 5)
    assert len(near.laydown_board) == (~far).sum()


@pytest.mark.parametrize("i, j", [(0, 0), (0, 40), (40, 40), (12, 20), (25, 5)])
def test_each_place_of_the_same_line_map_is_that_shot(i, j):
    told = response_map.answer(SHOT)
    hand = replace(SHOT, axis_tilt_deg=float(TILTS[i]), axis_rotation_deg=float(ROTATIONS[j]))
    path = simulate(hand, HOUSE, BENCHMARK)
    assert told.board[i, j] == pytest.approx(path.entry_board, abs=1e-6, nan_ok=True)
    assert told.angle_deg[i, j] == pytest.approx(path.entry_angle_deg, abs=1e-6, nan_ok=True)


@pytest.mark.parametrize("i, j", [(0, 3), (2, 6), (4, 8), (6, 11)])
def test_re_aimed_is_re_aimed_as_in_the_lab(i, j):
    told = response_map.answer(SHOT)
    hand = replace(SHOT, axis_tilt_deg=float(FEW_TILTS[i]), axis_rotation_deg=float(FEW_ROTATIONS[j]))
    line = line_within_reach(hand, lines_to_pocket(hand, HOUSE, BENCHMARK), HOUSE, BENCHMARK)
    assert told.re_aimed_deg[i, j] == pytest.approx(simulate(line, HOUSE, BENCHMARK).entry_angle_deg, abs=0.1)


def test_the_spot_is_the_hand_and_tilt_takes_turn_away():
    told = response_map.answer(SHOT)
    path = simulate(SHOT, HOUSE, BENCHMARK)
    assert told.here[:2] == pytest.approx((path.entry_board, path.entry_angle_deg), abs=1e-6)
    assert (np.diff(told.angle_deg[:, 1:16], axis=0) < 0.02).all()
    assert len(told.rows) == 4 * 7
    far = response_map.answer(replace(SHOT, target_board=39)).sentence
    assert (
        "the far gutter" in far
        and "the gutter" in response_map.answer(replace(SHOT, target_board=1)).sentence
    )


def test_three_peaks_lie_apart_and_the_push_peaks_lower_with_more_revs():
    low, high = (best_rotation.curves(name) for name in best_rotation.TWO)
    # 15 mph with 200 rpm: 70.7 degrees at 13 of tilt (our own calculation)
    assert low.best_push_deg == pytest.approx(70.7, abs=0.5) and high.best_push_deg < 55
    for told in (low, high):
        push, hook, angle, aimed = map(
            best_rotation.peak, (told.push_share, told.entry_board, told.angle_deg, told.re_aimed_deg)
        )
        assert push == pytest.approx(told.best_push_deg, abs=2.5)
        assert push < hook < angle <= aimed
        assert told.hook_boards[0] == pytest.approx(0.0, abs=1e-6) or np.isnan(told.hook_boards[0])


def test_as_good_stays_about_the_peak():
    values = np.zeros(len(best_rotation.ROTATIONS))
    values[[2, 8, 9, 10]] = 1.0, 0.9, 1.0, 0.8
    values[2] = 0.95
    assert best_rotation.as_good(values, 0.15) == (40.0, 45.0)
    told = best_rotation.answer()
    assert [row["bowler"].split(":")[0] for row in told.rows] == list(best_rotation.TWO)
    usual = best_rotation.BOWLERS["high revs"]
    straight = simulate(replace(usual, rev_rate_rpm=0, target_board=26), HOUSE, Ball()).entry_board
    assert straight == pytest.approx(27 - 4, abs=0.01)  # what hook is counted from: plain geometry
