"""Panels about the pins: every control does something in words, pictures carry their point, hands mirror."""

import re
from xml.etree import ElementTree

import pytest
from panels_help import RACK_PANELS, at_both_ends

from bowlcore.display.settings import SETTINGS


@pytest.mark.parametrize("make", RACK_PANELS)
def test_every_control_changes_the_answer(make):
    panel = make()
    for name, said in at_both_ends(panel):
        assert len(said) > 1, f"{name} does nothing"
        assert not any(re.search(r"\bnan\b|\binf\b|None", text) for text in said), name
        assert panel.message.value == "", name


@pytest.mark.parametrize("make", RACK_PANELS)
def test_picture_carries_its_point_in_words(make):
    panel = make()
    root = ElementTree.fromstring(panel.picture.value)
    assert root.get("role") == "img" and root.get("aria-label").startswith(panel.sentence)


@pytest.mark.parametrize("make", RACK_PANELS)
def test_a_left_hander_sees_the_mirror(make):
    panel = make()
    before = panel.sentence
    SETTINGS.hand = "left"
    assert len(panel.sentence) > 20
    assert (
        re.sub(r"\d[\d-]*", "", panel.sentence) == re.sub(r"\d[\d-]*", "", before)
        or make.__name__ == "twenty_balls_panel"
    )


def test_twenty_others_are_others():
    panel = RACK_PANELS[1]()
    said = {panel.sentence}
    button = next(b for b in panel.widget.children[4].children if b.description == "Throw twenty others")
    for _ in range(4):
        button.click()
        said.add(panel.sentence)
    assert len(said) > 2
    panel.reset()
    assert panel.sentence == RACK_PANELS[1]().sentence
