"""A line thrown with a scatter: the same odds as a bowler's, and leaves that add up."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore import Ball, Bowler, Release, Spread, bowler_odds
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.scattered import scattered, strikes_and_leave
from bowlcore.motion.path import simulate
from bowlcore.rack.carry import leave_shares, leaves_of_many

LINE, HOUSE, BALL = Release(17, 300, 45, 13, 17, 14), lane_of("house"), Ball()


def test_it_is_the_odds_of_a_bowler_on_that_line():
    assert scattered([LINE], HOUSE, BALL)[0].odds == bowler_odds(Bowler(LINE), HOUSE, shots=128)


def test_leaves_of_many_are_the_mean_of_the_leaves_of_each():
    boards, angles = np.array([16.0, 17.5, 23.0]), np.array([2.0, 5.0, -4.0])
    mean = {}
    for board, angle in zip(boards, angles, strict=True):
        for item in leave_shares(board, angle, 14, 15):
            mean[item.leave] = mean.get(item.leave, 0.0) + item.share / 3
    many = dict(leaves_of_many(boards, angles, np.full(3, 14.0), np.full(3, 15.0)))
    assert many.keys() == mean.keys()
    for leave, share in mean.items():
        assert many[leave] == pytest.approx(share, abs=1e-12)


def test_a_left_hander_leaves_the_mirror_image():
    right, left = scattered([LINE, replace(LINE, hand="left")], HOUSE, BALL)
    assert left.leave == right.leave.mirror and left.odds == right.odds


def test_without_scatter_it_is_the_one_entry():
    path = simulate(LINE, HOUSE)
    [one] = scattered([LINE], HOUSE, BALL, Spread(0, 0, 0, 0, 0, 0))
    entry = path.entry_board, path.entry_angle_deg, path.entry_speed_mph, 15.0
    first = next(item for item in leave_shares(*entry) if not item.leave.is_strike)
    assert (one.leave, one.leave_share) == (first.leave, pytest.approx(first.share))


def test_all_in_the_gutter():
    [lost] = scattered([Release(17, 0, 0, 0, 2, 1)], HOUSE, BALL, Spread(0, 0, 0, 0, 0, 0))
    assert lost.leave is None and strikes_and_leave(lost) == "between 0 and 0 in 100 strike"
