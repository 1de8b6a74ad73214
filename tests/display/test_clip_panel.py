"""The clip panel round a clip: nothing before the consent, a sentence where packages are missing, in, and gone for good."""

import sys

import numpy as np
import pytest
from clip_help import NAME, fill

from bowlcore.coaching.clip_file import NEEDS
from bowlcore.coaching.clip_folder import clicks_path
from bowlcore.coaching.clip_places import Places
from bowlcore.coaching.clip_write import DEMO_NAME
from bowlcore.display.clip_panel import CONSENT, DELETE, NONE, READY, SURE, clip_panel
from bowlcore.display.clip_view import CLOSEST, ClipView


@pytest.fixture(autouse=True)
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return tmp_path


def shown(panel):
    return [panel.consent.value, *panel._inside.children]


# -- before anything is opened; these need no extra --


def test_nothing_is_shown_looked_for_or_written_before_the_consent(here):
    panel = clip_panel()
    assert shown(panel) == [False] and panel.chooser.options == (NONE,)
    assert list(here.iterdir()) == []
    bundle = panel._repr_mimebundle_()
    assert bundle["text/plain"] == CONSENT and "<script" not in bundle["text/html"]


@pytest.mark.parametrize("missing", ["av", "anywidget"])
def test_without_its_packages_the_panel_says_what_to_type(missing, here, monkeypatch):
    monkeypatch.setitem(sys.modules, missing, None)
    monkeypatch.delitem(sys.modules, "bowlcore.display.clip_picture", raising=False)
    panel = clip_panel()
    panel.consent.value = True
    assert shown(panel) == [True] and ">" + NEEDS.replace("'", "&#x27;") in panel._message.value
    assert "pip install -e '.[clip]'" in NEEDS and "\n" not in NEEDS
    panel.consent.value = False
    assert panel._message.value == "" and list(here.iterdir()) == []


# -- which part of a frame is on the screen --


def test_the_window_stays_in_the_frame_and_holds_the_cross():
    frame = np.arange(270 * 480 * 3).reshape(270, 480, 3)
    view = ClipView((270, 480))
    assert np.array_equal(view.cut(frame), frame)
    for closer in (2, 4, 8, 8):
        for cross in ((0, 0), (479, 269), (200, 100), (479, 0)):
            view.cross = cross
            view.frame_on_cross()
            assert 0 <= view.left <= cross[0] < view.left + view.width <= 480
            assert 0 <= view.top <= cross[1] < view.top + view.height <= 270
            told = view.told(3, Places(120.0), "a frame")
            cut = view.cut(frame)
            assert cut.shape[:2] == (told["height"], told["width"])
            assert np.array_equal(cut[0, 0], frame[told["top"], told["left"]])
        view.go(closer=True)
        assert view.width == 480 // min(closer, CLOSEST)
    for _ in range(4):
        view.go(closer=False)
    assert (view.left, view.top, view.width, view.height) == (0, 0, 480, 270)


# -- with the extra --


@pytest.mark.slow
def test_the_consent_brings_the_list_and_taking_it_back_puts_all_away(panel_of_clips):
    assert panel_of_clips.chooser.options == (NONE, DEMO_NAME, NAME) and panel_of_clips.sentence == READY
    panel_of_clips.chooser.value = NAME
    desk = panel_of_clips.clip.desk
    assert (
        "48 frames; the file says 120 a second. Frame 0: click the edge of the ball, place 1 of 3"
        in panel_of_clips.sentence
    )
    panel_of_clips.consent.value = False
    assert shown(panel_of_clips) == [False] and panel_of_clips.clip is None
    assert desk.clip._running is None


@pytest.mark.slow
def test_deleting_asks_once_and_anything_else_calls_it_off(opened, here):
    fill(opened, 1)
    opened.delete.click()
    assert opened.delete.description == SURE and NAME in opened.sentence and (here / "clips" / NAME).exists()
    opened.clip.buttons["Step on"].click()
    assert opened.delete.description == DELETE
    opened.delete.click()
    opened.delete.click()
    assert list((here / "clips").iterdir()) == []
    assert "deleted for good" in opened.sentence and opened.clip is None
    assert opened.chooser.value == NONE and NAME not in opened.chooser.options


@pytest.mark.slow
def test_a_broken_clip_is_one_sentence_can_be_deleted_and_the_panel_lives_on(panel_of_clips, here):
    bad = here / "clips" / "<b>bad.mp4"
    bad.write_text("no clip")
    panel_of_clips.again.click()
    panel_of_clips.chooser.value = bad.name
    assert (
        "&lt;b&gt;bad.mp4 cannot be read" in panel_of_clips._message.value
        and "<b>bad" not in panel_of_clips._message.value
    )
    assert panel_of_clips.clip is None and panel_of_clips.sentence == "No clip is open."
    panel_of_clips.delete.click()
    panel_of_clips.delete.click()
    assert not bad.exists()
    panel_of_clips.chooser.value = NAME
    assert panel_of_clips._message.value == "" and panel_of_clips.clip.picture.view["frame"] == 0


@pytest.mark.slow
def test_a_clip_brought_in_piece_by_piece_is_opened(panel_of_clips, here, written):
    picker, sent = panel_of_clips.picker, []
    picker.send = sent.append
    picker.take({"do": "begin", "name": "../IMG 7.mp4", "size": len(written)}, [])
    while sent[-1]["do"] == "more":
        at = sent[-1]["from"]
        picker.take({"do": "piece", "from": at}, [memoryview(written[at : at + 5000])])
    assert (here / "clips" / "IMG 7.mp4").read_bytes() == written
    assert panel_of_clips.chooser.value == "IMG 7.mp4" and panel_of_clips.clip.desk.last_frame == 47


@pytest.mark.slow
@pytest.mark.parametrize("name, size, words", [
    ("holiday.avi", 10, "must end in .mp4, .mov, .m4v"), ("a.mp4", 0, "is empty"), ("a.mp4", 2_000_000_000, "2.0 GB"),
])  # fmt: skip
def test_a_file_that_cannot_be_brought_in(name, size, words, panel_of_clips, here):
    before = sorted(p.name for p in (here / "clips").iterdir())
    panel_of_clips.picker.take({"do": "begin", "name": name, "size": size}, [])
    assert words in panel_of_clips._message.value
    panel_of_clips.picker.take({"do": "piece", "from": 0}, [b"late"])  # nothing waits for it any more
    assert sorted(p.name for p in (here / "clips").iterdir()) == before


@pytest.mark.slow
def test_bad_clicks_beside_a_clip_are_spoken_of(panel_of_clips, here):
    clicks_path(NAME).write_text("broken")
    panel_of_clips.chooser.value = NAME
    assert "The clicks beside this clip cannot be used (it is no JSON)" in panel_of_clips.sentence
    assert (here / "clips" / f"{NAME}.clicks kept.json").read_text() == "broken"


@pytest.mark.slow
def test_the_list_can_be_looked_at_again_without_closing_what_is_open(opened, here, written):
    opened.clip.frame.slider.value = 12
    (here / "clips" / "new.mov").write_bytes(written)
    opened.again.click()
    assert "new.mov" in opened.chooser.options
    assert opened.chooser.value == NAME and opened.clip.frame.value == 12
