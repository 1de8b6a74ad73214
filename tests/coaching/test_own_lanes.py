"""Fitted lanes kept by name: what is written is read back, nothing is overwritten, a bad file is one sentence."""

import json

import pytest

from bowlcore import Release
from bowlcore.coaching import own_lanes
from bowlcore.coaching.path_lab import lane_of
from bowlcore.display.my_lane import my_lane_panel
from bowlcore.display.path_lab import path_lab_panel, pattern_options
from bowlcore.motion.path import simulate
from bowlcore.motion.surface import FrictionLaw

LAW = FrictionLaw(0.011, 0.2)
pytestmark = pytest.mark.usefixtures("here")


def test_a_kept_lane_is_read_back_and_stands_among_the_patterns():
    name = own_lanes.keep("Thursday left", "house", LAW, 2.5)
    assert name in [value for _, value in pattern_options()]
    lane = lane_of(name)
    assert lane.law == LAW
    assert lane.pattern.length_ft == pytest.approx(lane_of("house").pattern.length_ft + 2.5, abs=0.1)
    looser = lane_of(name, 10)
    assert looser.law == LAW.scaled(1.1)
    release = Release(17, 300, 45, 13, 17, 13)
    assert simulate(release, looser).entry_board > simulate(release, lane).entry_board


def test_a_panel_draws_on_it():
    name = own_lanes.keep("slick", "house", LAW, 4)
    on_house, on_own = path_lab_panel(), path_lab_panel(pattern=name)
    assert on_own.sentence != on_house.sentence and "svg" in on_own.picture.value


def test_a_name_is_never_overwritten_nor_used_again():
    one, two = (own_lanes.keep("league", "house", LAW, longer) for longer in (0, 5))
    assert (one, two) == ("my lane: league", "my lane: league 2")
    own_lanes.remove(two)
    assert own_lanes.keep("league", "flat", LAW, 0) == "my lane: league 3"
    assert own_lanes.own_names() == ["my lane: league", "my lane: league 3"]


@pytest.mark.parametrize("name", ["", "../away", "a/b", "x" * 31, "<b>", ".hidden", "nul\0"])
def test_a_name_that_is_none(name, here):
    with pytest.raises(ValueError, match="1 to 30 letters"):
        own_lanes.keep(name, "house", LAW, 0)
    assert list(here.rglob("*.json")) == []


@pytest.mark.parametrize(
    "text",
    [
        "", "[]", "{", "null", '{"version": 9}', "\x00\xff", "x" * 6000, '{"version": 1}',
        json.dumps({"version": 1, "shape": "../x", "longer_ft": 0, "oil": 0.01, "dry": 0.2, "scale_um": 0.3}),
        json.dumps({"version": 1, "shape": "house", "longer_ft": 99, "oil": 0.01, "dry": 0.2, "scale_um": 0.3}),
        json.dumps({"version": 1, "shape": "house", "longer_ft": 0, "oil": 0.3, "dry": 0.2, "scale_um": 0.3}),
        json.dumps({"version": 1, "shape": ["house"], "longer_ft": 0, "oil": 0.01, "dry": 0.2, "scale_um": 0.3}),
        '{"version": 1, "shape": "house", "longer_ft": NaN, "oil": 0.01, "dry": 0.2, "scale_um": 0.3}',
    ],
)  # fmt: skip
def test_a_file_that_holds_no_lane_is_one_sentence_and_stays(text, here):
    (here / own_lanes.FOLDER).mkdir()
    path = here / own_lanes.FOLDER / "odd.json"
    path.write_text(text, encoding="utf-8")
    before = path.read_bytes()
    with pytest.raises(ValueError, match="left as it is") as problem:
        lane_of("my lane: odd")
    assert "\n" not in str(problem.value) and path.read_bytes() == before
    panel = path_lab_panel(pattern="my lane: odd")  # the panel says it and lives on
    assert "left as it is" in panel.sentence
    assert "left as it is" not in panel.set(pattern="house").sentence


def test_no_such_lane():
    with pytest.raises(ValueError, match="no lane of your own called 'nobody'"):
        lane_of("my lane: nobody")


def test_the_panel_keeps_what_it_fitted(here):
    panel = my_lane_panel(keep_as="Thursday")
    press(panel, "Keep this lane")
    assert "Kept as my lane: Thursday" in panel.sentence
    lane = lane_of("my lane: Thursday")
    assert lane.law.dry == pytest.approx(0.215, rel=0.3)
    assert "Kept as" not in panel.set(speed_mph=18).sentence


def test_without_a_name_nothing_is_kept(here):
    panel = my_lane_panel()
    press(panel, "Keep this lane")
    assert "Not kept" in panel.sentence and not (here / own_lanes.FOLDER).exists()


def press(panel, label):
    import ipywidgets

    def inside(widget):
        yield widget
        for child in getattr(widget, "children", ()):
            yield from inside(child)

    button = next(
        one for one in inside(panel.widget) if isinstance(one, ipywidgets.Button) and one.description == label
    )
    button.click()
