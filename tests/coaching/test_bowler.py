"""A bowler's scatter is what it says, the same for everyone, and refused when it cannot be."""

import numpy as np
import pytest

from bowlcore import Ball, Bowler, Release, Spread
from bowlcore.coaching.bowler import SCATTERED

LINE = Release(17, 300, 45, 13, 17, 13)


def test_defaults_are_the_contract():
    assert Spread() == Spread(0.4, 15, 4, 2, 0.4, 0.7)
    bowler = Bowler(LINE)
    assert bowler.can_change == {"feet": 8, "target": 8, "speed_mph": 1.0} and bowler.ball == Ball()


@pytest.mark.parametrize("count", [64, 256])
def test_shots_have_the_asked_mean_and_scatter(count):
    shots = Bowler(LINE).shots(count)
    for name in SCATTERED:
        assert len(shots[name]) == count
        size = getattr(Spread(), name)
        assert shots[name].mean() == pytest.approx(getattr(LINE, name), abs=0.05 * size)
        assert shots[name].std() == pytest.approx(size, rel=0.08)


def test_correlations_are_met():
    spread = Spread(
        correlations={("speed_mph", "rev_rate_rpm"): 0.6, ("laydown_board", "target_board"): -0.5}
    )
    shots = Bowler(LINE, spread).shots(256)
    assert np.corrcoef(shots["speed_mph"], shots["rev_rate_rpm"])[0, 1] == pytest.approx(0.6, abs=0.05)
    assert np.corrcoef(shots["laydown_board"], shots["target_board"])[0, 1] == pytest.approx(-0.5, abs=0.05)


def test_every_bowler_meets_the_same_accidents():
    one, other = Bowler(LINE).shots(64), Bowler(Release(18, 300, 45, 13, 20, 15)).shots(64)
    assert np.allclose(one["speed_mph"] - 17, other["speed_mph"] - 18)


def test_no_scatter_is_one_shot():
    still = Spread(0, 0, 0, 0, 0, 0)
    assert np.unique(Bowler(LINE, still).shots(64)["target_board"]).tolist() == [13.0]


def test_scatter_stays_within_what_a_release_may_be():
    shots = Bowler(Release(4, 5, 0, 0, 2, 2), Spread(speed_mph=2, rev_rate_rpm=50)).shots(256)
    assert shots["rev_rate_rpm"].min() >= 0 and shots["speed_mph"].min() >= 3


@pytest.mark.parametrize(
    "make, message",
    [
        (lambda: Spread(speed_mph=-1), "spread of speed_mph must be a number between 0 and 5, got -1"),
        (lambda: Spread(target_board=40), "spread of target_board must be a number between 0 and 8, got 40"),
        (lambda: Spread(correlations={("speed_mph", "hand"): 0.5}), "a correlation is between two of"),
        (
            lambda: Spread(correlations={("speed_mph", "rev_rate_rpm"): 1.5}),
            "between -0.95 and 0.95, got 1.5",
        ),
        (lambda: Bowler(LINE, can_change={"shoes": 1}), "can_change knows .*, got 'shoes'"),
        (lambda: Bowler(LINE, can_change={"feet": -2}), "can_change.* must be a number between 0"),
        (lambda: Bowler(LINE, can_change={"ball": ["red"]}), "must be a list of Ball"),
    ],
)
def test_what_cannot_be_is_one_sentence(make, message):
    with pytest.raises(ValueError, match=message):
        make()


def test_correlations_that_cannot_hold_together_are_refused():
    names = ("speed_mph", "rev_rate_rpm"), ("rev_rate_rpm", "axis_tilt_deg"), ("speed_mph", "axis_tilt_deg")
    with pytest.raises(ValueError, match="cannot hold together"):
        Spread(correlations=dict(zip(names, (0.9, 0.9, -0.9), strict=True)))
