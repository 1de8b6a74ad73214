"""Fresh, drying, carrydown, wet-dry: read from the oil. The shipped shapes are named by what they are for."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore import load_bowlers, simulate
from bowlcore.coaching.evening_told import NAMES, club_evening
from bowlcore.coaching.lane_state import NOTICED_FT, SHARP, read_lane
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.oil import OilPattern
from bowlcore.motion.surface import OiledLane

SHAPES = {"house": "fresh", "dried_out": "drying", "carried_down": "carrydown", "wet_dry": "wet-dry"}


def track(name, hand=None):
    bowler = load_bowlers()[name]
    release = bowler.release if hand is None else replace(bowler.release, hand=hand)
    return simulate(release, lane_of("house"), bowler.ball), release.hand


@pytest.mark.parametrize("pattern", SHAPES)
@pytest.mark.parametrize("name", [name for name in NAMES if name != "beginner of eleven"])
def test_the_shipped_shapes_are_recognised_under_five_tracks(name, pattern):
    path, hand = track(name)
    assert read_lane(lane_of("house"), lane_of(pattern), path, hand).name == SHAPES[pattern]


def test_one_foot_of_bare_boards_counts_as_one_foot():
    """Our own calculation: on an even lane with thick oil, the track wiped bare from 20 to 30 ft."""
    x, boards = np.linspace(0, 60, 121), np.linspace(0.5, 39.5, 79)
    thick = np.full((121, 79), 5.0)
    bare = thick.copy()
    bare[(x >= 20) & (x <= 30)] = 0.0
    one, two = (OiledLane(OilPattern(x, boards, oil)) for oil in (thick, bare))
    path, hand = track("league one-hander")
    state = read_lane(one, two, path, hand)
    assert state.drier_ft == pytest.approx(11.0, abs=0.1) and state.wetter_ft == 0.0  # 20, 21 ... 30 ft
    back = read_lane(two, one, path, hand)
    assert back.wetter_ft == pytest.approx(state.drier_ft) and back.name == "carrydown"


def test_a_lane_compared_with_itself_is_fresh():
    path, hand = track("spinner")
    state = read_lane(lane_of("wet_dry"), lane_of("wet_dry"), path, hand)
    assert state == ("fresh", 0.0, 0.0, 1.0)


def test_both_hands_read_the_same_on_a_symmetric_lane():
    one, two = (track("league one-hander", hand) for hand in ("right", "left"))
    states = [read_lane(lane_of("house"), lane_of("dried_out"), *seen) for seen in (one, two)]
    assert states[0][1:] == pytest.approx(states[1][1:]) and states[0].name == states[1].name


def test_the_side_without_traffic_stays_fresh_while_the_other_dries():
    night = club_evening(NAMES, "house", 0, 8, 3, True)
    for lane in ("left", "right"):
        start, end = night.lanes[lane][0], night.lanes[lane][-1]
        states = {
            name: read_lane(start, end, night.looks[i, lane][0].path, night.bowlers[i].release.hand)
            for i, name in enumerate(NAMES)
        }
        assert states["left-hander"].name == "fresh"
        assert states["league one-hander"].name == states["spinner"].name == "drying"
        assert states["league one-hander"].drier_ft > 4 * max(states["left-hander"].drier_ft, NOTICED_FT / 2)


def test_much_carried_oil_reads_as_carrydown():
    night = club_evening(NAMES, "house", 0, 3, 20, True)
    start, end = night.lanes["left"][0], night.lanes["left"][-1]
    assert read_lane(start, end, night.looks[1, "left"][0].path).name == "carrydown"


def test_a_ball_in_the_gutter_gives_no_nan():
    bowler = load_bowlers()["league one-hander"]
    path = simulate(replace(bowler.release, target_board=2), lane_of("house"))
    assert np.isfinite(read_lane(lane_of("house"), lane_of("dried_out"), path)[1:]).all()


def test_the_two_limits_are_those_that_lesson_07_tells():
    assert (NOTICED_FT, SHARP) == (0.5, 2.0)
