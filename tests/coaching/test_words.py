"""Numbers as a coach says them."""

import pytest

from bowlcore.coaching import telling, words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release


@pytest.mark.parametrize(
    "value, text",
    [(17.0, "17"), (17.2, "17"), (17.3, "17.5"), (16.76, "17"), (-0.2, "0"), (0.5, "0.5"), (-1.5, "-1.5")],
)
def test_halves(value, text):
    assert words.halves(value) == text


def test_units_and_plurals():
    assert words.distance(43.2) == "43 ft" and words.distance(43.2, metric=True) == "13.2 m"
    assert words.speed(17.0) == "17 mph" and words.speed(17.0, metric=True) == "27 km/h"
    assert words.degrees(1.1) == "1 degree" and words.degrees(4.4) == "4.5 degrees"
    assert words.revs(304) == "300 rpm"
    assert words.launch(-1.84) == "1.8 degrees out" and words.launch(0.3) == "0.3 degrees in"
    assert words.launch(0.02) == "straight"


@pytest.mark.parametrize(
    "board, text",
    [
        (17.5, "in the pocket"), (16.0, "in the pocket"), (19.0, "in the pocket"), (15.4, "2 boards light"),
        (20.4, "3 boards high"), (12.0, "past the head pin on the near side"), (30.0, "past the head pin on the far side"),
    ],
)  # fmt: skip
def test_hits(board, text):
    assert words.hit(board) == text


def test_a_straight_ball_does_not_start_to_hook_and_a_backing_one_moves_out():
    straight = simulate(Release(17, 0, 0, 0, 17, 17), lane_of("house"))
    assert "hook" not in telling.tell(straight)
    backing = simulate(Release(17, 300, -45, 13, 10, 15), lane_of("house"))
    assert telling.tell(backing).endswith("moving out")
