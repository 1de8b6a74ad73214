"""Expected scores of frames that are all alike, against the rules of play (IBF playing rules, ch. 1.1)."""

import pytest

from bowlcore.coaching.bowler import Spread
from bowlcore.coaching.odds import pins_per_game, spare_chances

NOTHING = {"strike": 0.0, "pinfall": 0.0, "lone": 0.0, "corner": 0.0, "cluster": 0.0, "split": 0.0,
           "left in clusters": 0.0, "left in splits": 0.0}  # fmt: skip
ALWAYS = {"lone": 1.0, "corner": 1.0, "cluster": 1.0, "split": 1.0}
NEVER = dict.fromkeys(ALWAYS, 0.0)


def test_twelve_strikes_are_300():
    assert pins_per_game(NOTHING | {"strike": 1.0, "pinfall": 10.0}, NEVER) == pytest.approx(300)


def test_nine_and_a_spare_ten_times_and_nine_are_190():
    assert pins_per_game(NOTHING | {"lone": 1.0, "pinfall": 9.0}, ALWAYS) == pytest.approx(190)


def test_nine_and_a_miss_ten_times_are_90():
    assert pins_per_game(NOTHING | {"lone": 1.0, "pinfall": 9.0}, NEVER) == pytest.approx(90)


def test_five_and_a_spare_ten_times_and_five_are_150():
    mean = NOTHING | {"cluster": 1.0, "pinfall": 5.0, "left in clusters": 5.0}
    assert pins_per_game(mean, ALWAYS) == pytest.approx(150)


def test_corner_pins_are_harder_and_less_scatter_is_better():
    """Windows 12.51 boards for a free pin, 8.84 for a corner pin: our own geometry."""
    usual, steady = spare_chances(Spread()), spare_chances(Spread(laydown_board=0.2, target_board=0.4))
    assert usual["corner"] < usual["lone"] < steady["lone"] <= 1
    assert usual["cluster"] < usual["lone"] and usual["split"] < 0.1
    assert spare_chances(Spread(laydown_board=0, target_board=0))["lone"] == 1
