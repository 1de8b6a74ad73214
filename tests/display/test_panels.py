"""Every control of every panel does something, in words, at both ends; bad input is one sentence."""

import asyncio
import re
from xml.etree import ElementTree

import pytest
from panels_help import ALL_PANELS, at_both_ends, drive, path_lab_panel

from bowlcore.display.settings import SETTINGS
from bowlcore.rack.leave import Leave

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("make", ALL_PANELS)
def test_every_control_changes_the_answer(make):
    panel = make()
    hand = (
        {"hand_steps": 2} if "hand_steps" in panel.controls else {}
    )  # its steps matter once the hand has moved
    for name, said in at_both_ends(panel, **hand):
        assert len(said) > 1, f"{name} does nothing"
        assert not any(re.search(r"\bnan\b|\binf\b|None", text) for text in said), name


@pytest.mark.parametrize("make", ALL_PANELS)
def test_picture_is_well_formed_and_carries_its_point_in_words(make):
    panel = make()
    root = ElementTree.fromstring(panel.picture.value)
    assert root.tag == SVG + "svg" and root.get("role") == "img"
    assert root.get("aria-label").startswith(panel.sentence)
    texts = {element.text.strip() for element in root.iter(SVG + "text") if element.text}
    assert any("distance from the foul line" in text for text in texts), "text must stay text"
    names = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("make", ALL_PANELS)
def test_two_pictures_on_a_page_share_no_names(make):
    one, two = (set(re.findall(r' id="([^"]+)"', make().set().picture.value)) for _ in range(2))
    moving = {name for name in one & two}
    background = {name for name in one if name in two}
    assert moving == background  # only the cached background may stand twice, with the same content


@pytest.mark.parametrize("make", ALL_PANELS)
def test_one_change_redraws_once(make):
    panel, drawn = make(), []
    panel.picture.observe(lambda change: drawn.append(change.new), "value")
    drive(panel, "axis_tilt_deg", 25)
    assert len(drawn) == 1


def test_the_last_value_wins_and_nothing_queues():
    panel, drawn = ALL_PANELS[-1](), []
    panel.picture.observe(lambda change: drawn.append(change.new), "value")

    async def hold_a_key_down():
        for value in range(46, 76):
            panel.controls["axis_rotation_deg"].slider.value = value
        while not panel._task.done():
            await asyncio.sleep(0.001)

    asyncio.run(hold_a_key_down())
    assert len(drawn) == 1
    assert panel.sentence == ALL_PANELS[-1](axis_rotation_deg=75).sentence


@pytest.mark.parametrize(("last_took_s", "pale"), [(0.05, []), (1.0, [True, False])])
def test_a_picture_that_takes_long_goes_pale_while_it_is_made(last_took_s, pale):
    panel, seen = ALL_PANELS[0](), []
    panel._took_s = last_took_s
    panel.widget.observe(lambda change: seen.append("bm-busy" in change.new), "_dom_classes")

    async def press_a_key():
        panel.controls["axis_tilt_deg"].slider.value = 25
        await panel._task

    asyncio.run(press_a_key())
    assert seen == pale


@pytest.mark.parametrize("make", ALL_PANELS)
@pytest.mark.parametrize("typed", [1e9, -999.0, float("nan"), float("inf")])
def test_a_typed_number_out_of_range_is_named_and_kept(make, typed):
    panel = make()
    control = panel.controls["axis_tilt_deg"]
    before = panel.sentence
    control.box.value = typed
    assert re.search(
        r"Axis tilt must be between 0 and \d+ degrees, got .*; the picture still shows", panel.message.value
    )
    assert panel.sentence == before and control.value == control.start
    assert control.box.value == typed or typed != typed, "what was typed is lost"
    other = next(name for name in panel.controls if name != "axis_tilt_deg")
    drive(panel, other, panel.controls[other].ends[0])
    assert "Axis tilt must" in panel.message.value, "the warning is gone while the wrong number stands"
    control.slider.value = 20
    assert panel.message.value == "" and control.box.value == 20


def test_slider_and_box_move_together_without_floating_noise():
    control = ALL_PANELS[-1]().controls["target_board"]
    control.slider.value = 26.000000000000004  # what a float slider sends after one key press
    assert control.box.value == 26.0 and control.value == 26.0
    assert control.slider.value == 26.000000000000004, "a slider must not be moved under the finger"
    control.box.value = 12.25
    assert control.slider.value == 12.25 and control.value == 12.25


@pytest.mark.parametrize("make", ALL_PANELS)
def test_unknown_and_impossible_starting_values_are_refused(make):
    with pytest.raises(ValueError, match="no control 'tilt'.*axis_tilt_deg"):
        make(tilt=3)
    with pytest.raises(ValueError, match="axis_tilt_deg must be between 0 and .* got 400"):
        make(axis_tilt_deg=400)


@pytest.mark.parametrize("make", ALL_PANELS)
def test_back_to_the_start_and_the_settings_line(make):
    panel = make()
    before = panel.sentence
    drive(panel, "axis_tilt_deg", 22)
    assert f"bowlcore.{make.__name__}(axis_tilt_deg=22)" in panel._line.value
    assert make(axis_tilt_deg=22).sentence == panel.sentence
    panel.reset()
    assert panel.sentence == before


def test_names_come_escaped_into_the_page():
    from bowlcore.display.panel import table

    assert "<script" not in table([{"<script>": '"><script>alert(1)</script>'}])


@pytest.mark.parametrize("make", ALL_PANELS)
def test_metric_shows_the_same_shot_in_other_units(make):
    panel = make()
    values = panel.values
    SETTINGS.metric = True
    assert " m" in panel.sentence and " ft" not in panel.sentence and " mph" not in panel.sentence
    assert panel.values == values, "switching units moved a control"
    feet = [float(x) for x in re.findall(r"at ([\d.]+) ft", make.__call__().set().sentence)]
    SETTINGS.metric = False
    metres = re.findall(r"at (\d+) ft", panel.sentence)
    assert panel.values == values and metres and not feet


@pytest.mark.claim(
    "For a left-hander every panel says the mirrored words and the same numbers",
    against="the right-hander's panel",
    kind="own",
)
@pytest.mark.parametrize("make", ALL_PANELS)
def test_left_hand_gives_the_same_numbers_on_a_symmetric_lane(make):
    panel = make()
    right = panel.sentence, panel._drawn.rows
    SETTINGS.hand = "left"
    assert mirrored((panel.sentence, panel._drawn.rows)) == str(right)
    assert "board from the left" in panel.picture.value


def mirrored(told):
    """Text with each leave named as the other hand names it; "10 (25 %)" and "left: 10)" are leaves."""

    def other(found):
        return found[1] + Leave.from_text(found[2]).mirror.text + found[3]

    return re.sub(r"(left: |')(\d[\d-]*)(\)| \(\d+ %)", other, str(told))


def test_export_carries_sentence_picture_and_table():
    bundle = path_lab_panel()._repr_mimebundle_()
    assert "application/vnd.jupyter.widget-view+json" in bundle
    assert "<svg" in bundle["text/html"] and "<table" in bundle["text/html"]
    assert bundle["text/plain"].startswith("On the same line: board")


def test_an_unexpected_error_is_shown_and_the_panel_lives_on(monkeypatch):
    from bowlcore.display.panel import Drawn, Panel

    monkeypatch.setattr(Panel, "strict", False)
    faults = [False]

    def draw(metric, hand):
        if faults[0]:
            raise ZeroDivisionError
        return Drawn("<svg/>", "all is well", [])

    panel = Panel("a_panel", draw, [])
    faults[0] = True
    panel.redraw()
    assert "cannot be drawn" in panel.message.value
    faults[0] = False
    panel.redraw()
    assert panel.message.value == "" and "all is well" in panel.result.value
