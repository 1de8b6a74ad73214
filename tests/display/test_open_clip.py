"""An open clip in its panel: frames, clicks, undo, closer, and the answer beside what the renderer knows."""

from io import BytesIO

import numpy as np
import pytest
from clip_help import DRAWN, click, fill, on_disk, places_of

from bowlcore.coaching.clip_fit import fit_clip
from bowlcore.coaching.clip_places import RIM, TAPE

pytestmark = pytest.mark.slow


def picture_of(panel):
    from PIL import Image

    return np.asarray(Image.open(BytesIO(panel.clip.picture.picture)), float)


def test_the_picture_is_the_frame_whatever_brought_it_there(opened):
    clip = opened.clip
    ways = {
        "slider": lambda: setattr(clip.frame.slider, "value", 30), "box": lambda: setattr(clip.frame.box, "value", 31),
        "on": clip.buttons["Step on"].click, "back": clip.buttons["Step back"].click,
        "ten on": clip.buttons["Ten on"].click, "ten back": clip.buttons["Ten back"].click,
        "key": lambda: clip.heard("step", {"by": 1}),
    }  # fmt: skip
    for way, number in zip(ways, (30, 31, 32, 31, 41, 31, 32), strict=True):
        ways[way]()
        assert clip.picture.view["frame"] == number == clip.frame.value, way
        high, wide = DRAWN.scene.size_px
        off = [np.abs(picture_of(opened)[:high, :wide] - DRAWN.frame(n)).mean() for n in (number, number - 3)]
        assert off[0] < 4 and off[0] < off[1], way
        assert f"Frame {number}: click the edge" in opened.sentence
    for _ in range(3):
        clip.buttons["Ten on"].click()
    assert clip.frame.value == 47, "the last frame is the last"


def test_clicks_lead_on_are_kept_at_once_and_drawn(opened):
    clip = opened.clip
    clip.frame.slider.value = 14
    kinds = []
    for count, (x, y) in enumerate(places_of(14), start=1):
        kinds.append(clip.next_is.value)
        click(opened, 14, x, y)
        assert len(on_disk()["places"]) == count
    assert kinds == [RIM, RIM, RIM, TAPE] and [p["what"] for p in on_disk()["places"]] == kinds
    assert [mark["kind"] for mark in clip.picture.view["marks"]] == ["rim"] * 3 + ["outline", "tape"]
    outline = clip.picture.view["marks"][3]
    assert (outline["x"], outline["y"]) == pytest.approx(DRAWN.scene.centre_px(14), abs=0.1)
    assert "Frame 14 is done" in opened.sentence and "Frame 14 is done" in clip.picture.view["label"]
    assert ">14<" in clip._numbers.value
    clip.buttons["Step on"].click()
    assert clip.next_is.value == RIM and clip.picture.view["marks"] == []


def test_the_tape_may_be_clicked_first(opened):
    opened.clip.frame.slider.value = 14
    opened.clip.next_is.value = TAPE
    click(opened, 14, *places_of(14)[3])
    assert on_disk()["places"][0]["what"] == TAPE


def test_a_click_counts_for_the_frame_that_was_on_the_screen(opened):
    opened.clip.frame.slider.value = 20
    click(opened, 19, *places_of(19)[0])  # the next picture was on its way
    assert on_disk()["places"][0]["frame"] == 19
    assert opened.clip.picture.view["frame"] == 20 and opened.clip.picture.view["marks"] == []


def test_the_answer_comes_from_the_clicks_and_lies_at_the_truth(opened):
    fill(opened, 8)
    fitted = fit_clip(opened.clip.desk.places.clicked)
    truth = DRAWN.truth(fitted.middle_frame)
    assert fitted.rotation.value == pytest.approx(truth["axis_rotation_deg"], abs=2)
    assert fitted.tilt.value == pytest.approx(truth["axis_tilt_deg"], abs=2)
    assert fitted.rev_rate.value == pytest.approx(truth["rev_rate_rpm"], rel=0.03)
    assert opened.clip.answer == fitted.sentence and fitted.sentence in opened.clip._answered.value
    assert fitted.sentence in opened._repr_mimebundle_()["text/plain"]


@pytest.mark.parametrize(
    "control, value", [("rate", 240), ("camera", "beside, on the right"), ("hand", "left")]
)
def test_how_it_was_filmed_changes_the_answer_and_is_kept(control, value, opened):
    fill(opened, 8)
    before, made = opened.clip.answer, getattr(opened.clip, control)
    if control == "rate":
        made.box.value = value
    else:
        made.widget.value = value
    assert opened.clip.answer != before and on_disk()[made.name] == value
    assert len(on_disk()["places"]) == 32


def test_an_impossible_rate_is_one_sentence_and_the_clicks_stay(opened):
    fill(opened, 6)
    opened.clip.rate.box.value = 5
    assert "Clip must be between 20 and 1000 frames a second, got 5" in opened._message.value
    assert on_disk()["frames_per_s"] == 120 and opened.clip.rate.box.value == 5
    opened.clip.frame.box.value = 300
    assert "Frame must be between 0 and 47 counted from 0, got 300" in opened._message.value


def test_closer_and_farther_show_a_part_round_the_cross(opened):
    clip = opened.clip
    clip.heard("cross", {"x": 40, "y": 30})
    whole = clip.picture.view
    clip.buttons["Closer"].click()
    near = clip.picture.view
    assert (near["width"], near["height"]) == (whole["width"] // 2, whole["height"] // 2)
    assert near["left"] <= 40 < near["left"] + near["width"] and near["top"] <= 30
    high, wide = picture_of(opened).shape[:2]
    assert (high, wide) == (near["height"], near["width"])
    clip.buttons["Farther"].click()
    assert {**clip.picture.view, "label": ""} == {**whole, "cross": [40, 30], "label": ""}


def test_undo_by_button_and_key_goes_back_to_the_frame(opened):
    clip = opened.clip
    fill(opened, 2)
    first = on_disk()["places"][0]["frame"]
    for way in [clip.buttons["Undo the last click"].click, lambda: clip.heard("undo", {})] * 4:
        way()
    assert on_disk()["places"] == [] and clip.picture.view["frame"] == first
    assert "The last click is taken back" in opened.sentence and clip.next_is.value == RIM
    clip.heard("undo", {})
    assert "There is no click to take back" in opened._message.value


def test_a_click_that_makes_no_sense_is_one_sentence_and_goes_with_the_next_step(opened):
    opened.clip.frame.slider.value = 14
    for x, y in places_of(14)[:3]:
        click(opened, 14, x, y)
    click(opened, 14, 1, 1)
    assert "outside its outline" in opened._message.value and len(on_disk()["places"]) == 3
    click(opened, 14, *places_of(14)[3])
    assert opened._message.value == "" and len(on_disk()["places"]) == 4
