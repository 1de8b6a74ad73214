"""Odds of a bowler: bounds, what is averaged, and the averages that demo bowlers are said to have."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore import Bowler, Release, Spread, bowler_odds, strike_odds
from bowlcore.coaching.bowler import load_bowlers, usual_averages
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.path import simulate

LINE = Release(17, 300, 45, 13, 17, 14)
HOUSE = lane_of("house")
BOWLERS = load_bowlers()


@pytest.mark.claim(
    "The demo bowlers average on the house shape about what such bowlers have",
    against="common practice, no source",
    kind="practice",
)
@pytest.mark.parametrize("name", BOWLERS)
def test_averages_on_the_house_shape_are_about_what_such_bowlers_have(name, figure):
    """Common practice, no source; 15 pins are allowed on each side for the table's own errors."""
    low, high = usual_averages()[name]
    average = bowler_odds(BOWLERS[name], HOUSE).pins_per_game
    figure("outside the usual range by", max(low - average, average - high, 0), "pins a game", asked="15")
    assert low - 15 <= average <= high + 15


@pytest.mark.parametrize("name", BOWLERS)
def test_odds_are_within_their_bounds(name):
    odds = bowler_odds(BOWLERS[name], HOUSE)
    for share in (odds.strike, odds.pocket, odds.gutter):
        assert 0 <= share <= 1
    assert 0 <= odds.mean_pinfall <= 10 and 0 <= odds.pins_per_game <= 300
    assert 0 < odds.sampling_error < 0.1


def test_without_scatter_it_is_the_odds_of_the_one_shot():
    still = Bowler(LINE, Spread(0, 0, 0, 0, 0, 0))
    path, odds = simulate(LINE, HOUSE), bowler_odds(still, HOUSE)
    one = strike_odds(path.entry_board, path.entry_angle_deg, path.entry_speed_mph, 15.0)
    assert odds.strike == pytest.approx(one.strike) and odds.mean_pinfall == pytest.approx(one.mean_pinfall)
    assert odds.pocket == float(abs(path.entry_board - 17.5) <= 1.5)


def test_more_scatter_is_worth_less():
    sizes = (0.5, 1.0, 2.0)
    scored = [
        bowler_odds(Bowler(LINE, Spread(*(size * np.array([0.4, 15, 4, 2, 0.4, 0.7])))), HOUSE).pins_per_game
        for size in sizes
    ]
    assert scored == sorted(scored, reverse=True)


def test_a_left_hander_on_a_symmetric_lane_scores_the_same():
    right, left = Bowler(LINE), Bowler(replace(LINE, hand="left"))
    assert bowler_odds(right, HOUSE) == bowler_odds(left, HOUSE)


def test_gutter_balls_score_nothing():
    odds = bowler_odds(Bowler(Release(17, 0, 0, 0, 5, 1), Spread()), HOUSE)
    assert odds.gutter > 0.9 and odds.strike < 0.05 and odds.pocket == 0


def test_fewer_shots_give_about_the_same():
    bowler = BOWLERS["league one-hander"]
    assert bowler_odds(bowler, HOUSE, 64).pins_per_game == pytest.approx(
        bowler_odds(bowler, HOUSE).pins_per_game, abs=8
    )
