"""The evening's picture shows the numbers of the answer, quickly, and lives on after a bad value."""

import re

import pytest

from bowlcore.coaching.evening_told import GAMES, NAMES, answer, club_evening
from bowlcore.coaching.moves import move_words
from bowlcore.display.a_lane_that_changes import a_lane_that_changes_panel
from bowlcore.display.customary_hand import customary_hand_panel
from bowlcore.display.settings import SETTINGS


def test_sentence_and_table_are_the_answer():
    panel = a_lane_that_changes_panel(bowler="spinner", lane="right")
    told = answer("spinner", "right")
    assert panel.sentence == told.sentence and panel._drawn.rows == told.rows


def test_each_game_has_its_lane_and_each_move_its_words():
    panel, told = a_lane_that_changes_panel(), answer()
    for game, (oil, state) in enumerate(zip(told.oils, told.states, strict=True), start=1):
        assert f"After game {game}: {state.name}, {oil.pattern.volume_ml:.1f} mL left" in panel.picture.value
    for look in told.looks:
        if look.feet or look.target:
            assert move_words(look.feet, look.target) in panel.picture.value
    panel.set(games=1)
    assert panel.picture.value.count("not yet bowled") == GAMES - 1


def test_games_bowlers_and_lanes_are_looked_at_without_bowling_again():
    panel = a_lane_that_changes_panel()
    before = club_evening.cache_info().misses
    for name in NAMES:
        panel.set(bowler=name, games=2)
        panel.set(lane="right", games=3)
    assert club_evening.cache_info().misses == before


def test_units_and_hand_are_said_at_the_axes():
    panel = a_lane_that_changes_panel()
    assert "board from the right" in panel.picture.value
    assert "distance from the foul line, ft" in panel.picture.value
    SETTINGS.metric, SETTINGS.hand = True, "left"
    assert panel.sentence  # a panel that is not on the screen redraws when asked
    assert "of 100 balls" in panel.sentence  # asked for, a panel that is on no screen follows the settings
    assert "board from the left" in panel.picture.value
    assert "distance from the foul line, m" in panel.picture.value
    panel.set(bowler="left-hander")  # whoever bowls with the other hand
    assert "board from the right" in panel.picture.value and "left-hander" not in panel.sentence


def test_the_oil_is_drawn_once_for_an_evening():
    panel, images = a_lane_that_changes_panel(), set()
    for games in (3, 2, 3):
        panel.set(games=games)
        images.add(tuple(re.findall(r'href="(data:image[^"]+)"', panel.picture.value)))
    assert len(images) == 2 and {len(found) for found in images} == {4, 6}  # oil, and what is gone of it


@pytest.mark.parametrize("extreme", [{"taken_percent": 0}, {"taken_percent": 20, "carried_percent": 30}])
@pytest.mark.parametrize("pattern", ["house", "flat", "short", "long_heavy", "wet_dry"])
def test_extreme_settings_give_a_sentence_and_a_picture(extreme, pattern):
    panel = a_lane_that_changes_panel(pattern=pattern, bowlers=2, **extreme)
    assert panel.message.value == "" and "<svg" in panel.picture.value
    assert "nan" not in panel.sentence + str(panel._drawn.rows)


def test_nothing_taken_up_leaves_a_fresh_lane_and_nobody_moves():
    panel = a_lane_that_changes_panel(taken_percent=0)
    assert "still fresh" in panel.sentence and "So far: stay." in panel.sentence


@pytest.mark.parametrize(
    "start, told",
    [
        ({"taken_percent": 40}, "taken_percent must be between 0 and 20 %, got 40"),
        ({"bowler": "nobody"}, "bowler must be one of"),
        ({"share": 1}, "no control 'share'"),
    ],
)
def test_bad_starting_values_are_refused(start, told):
    with pytest.raises(ValueError, match=told):
        a_lane_that_changes_panel(**start)


def test_a_young_hand_gets_no_other_hand_in_the_picture():
    assert "customary hand" in customary_hand_panel().picture.value
    assert (
        "customary hand"
        not in customary_hand_panel(bowler="beginner of eleven")
        .picture.value.split("</svg>")[0]
        .split(">", 1)[1]
    )
