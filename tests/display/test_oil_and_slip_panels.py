"""The pictures of lessons 02 and 03 draw what their answers hold; a folded panel waits to be asked."""

import numpy as np
import pytest

from bowlcore.display import five_patterns, pattern_builder, skid_hook_roll
from bowlcore.display.five_patterns import five_patterns_panel
from bowlcore.display.folded import folded
from bowlcore.display.one_number import one_number_panel
from bowlcore.display.pattern_builder import pattern_builder_panel
from bowlcore.display.settings import SETTINGS
from bowlcore.display.skid_hook_roll import skid_hook_roll_panel


def press(panel, label):
    next(b for b in panel.widget.children[4].children if b.description == label).click()


def test_slip_is_drawn_in_three_looks_that_meet_and_ends_at_nothing():
    skid_hook_roll_panel()
    skids, hooks, rolls = (line.get_xydata() for line in skid_hook_roll._moving().parts)
    assert skids[-1] == pytest.approx(hooks[0]) and hooks[-1] == pytest.approx(rolls[0])
    assert np.all(rolls[:, 1] < 1e-9) and np.all(np.diff(np.r_[skids[:, 1], hooks[:, 1]]) <= 1e-9)
    assert skid_hook_roll._moving().end.get_text() == "no slip left"
    skid_hook_roll_panel(speed_mph=21)
    assert skid_hook_roll._moving().end.get_text().endswith("mph left")
    assert len(skid_hook_roll._moving().parts[2].get_xdata()) == 0


def test_a_kept_shot_stays_in_both_pictures_and_can_be_let_go():
    panel = skid_hook_roll_panel()
    press(panel, "Keep this shot")
    house = panel.memory["kept"]
    panel.set(pattern="dried_out")
    moving = skid_hook_roll._moving()
    assert moving.kept.get_ydata()[[0, -1]] == pytest.approx(house.slip_mps[[0, -1]] / 0.44704)
    assert moving.lane.kept.get_ydata() == pytest.approx(house.board)
    SETTINGS.metric = True
    panel.shown()
    panel.redraw()
    assert moving.kept.get_ydata()[0] == pytest.approx(house.slip_mps[0] * 3.6)
    press(panel, "Let it go")
    assert len(moving.kept.get_xdata()) == 0


def test_a_fast_slip_gets_a_taller_axis():
    assert "kept" not in skid_hook_roll_panel(speed_mph=24, axis_rotation_deg=100, rev_rate_rpm=600).memory
    top = skid_hook_roll._moving().axes.get_ylim()[1]
    assert top > skid_hook_roll._moving().parts[0].get_ydata().max()


def test_five_directions_end_on_one_line_and_names_keep_apart():
    five_patterns_panel()
    moving = five_patterns._moving()
    final = moving.final.get_ydata()[0]
    assert [line.get_ydata()[-1] for line in moving.turns] == pytest.approx([final] * 5, abs=1e-6)
    at = sorted(text.get_position()[1] for text in moving.ends)
    assert np.diff(at).min() > 3.3
    five_patterns_panel(target_board=10)
    assert [text.get_text() for text in moving.ends].count("") == 1, "one of them is in the gutter"
    assert any("gutter" in text.get_text() for text in moving.titles)


def test_all_directions_lie_on_the_axis():
    five_patterns_panel(rev_rate_rpm=600, axis_rotation_deg=100, speed_mph=8)
    moving = five_patterns._moving()
    low, high = moving.directions
    every = np.concatenate([line.get_ydata() for line in moving.turns])
    assert low <= np.nanmin(every) and np.nanmax(every) <= high


def test_a_shape_that_cannot_be_is_said_and_the_panel_lives_on():
    panel = pattern_builder_panel()
    panel.controls["length_ft"].slider.value = 55
    assert "would end beyond the pins" in panel.message.value and panel.picture.value == ""
    panel.controls["end_ramp_ft"].slider.value = 5
    assert panel.message.value == "" and panel.sentence.startswith("Built: 55 ft, 24 mL, 16 to 1.")
    dot, diamond = pattern_builder._moving().here, pattern_builder._moving().rule
    assert dot.get_xdata()[0] == diamond.get_xdata()[0] == pytest.approx(55)
    assert diamond.get_ydata()[0] == pytest.approx(24)


def test_a_folded_panel_is_made_when_asked_for_and_follows_the_units():
    made = []
    shown = folded(
        "Some more", lambda **start: made.append(one_number_panel(**start)) or made[-1], speed_mph=15
    )
    (button,) = shown.children
    assert not made and "press to open" in shown._repr_mimebundle_()["text/html"]
    button.value = True
    assert shown.children[1] is made[0].widget and made[0].values["speed_mph"] == 15
    SETTINGS.metric = True
    assert "km/h" in made[0].sentence and "km/h" in made[0].result.value
    assert "<svg" in shown._repr_mimebundle_()["text/html"]
    button.value = False
    assert made[0].widget.layout.display == "none"
    button.value = True
    assert len(made) == 1


def test_the_five_curves_carry_their_units():
    text = one_number_panel().picture.value
    for title in (
        "ball speed, mph",
        "turned so far, degrees",
        "axis rotation left, degrees",
        "rev rate, rpm",
    ):
        assert title in text
