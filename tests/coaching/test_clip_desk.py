"""A clip on the desk: each click on the disk at once, undo, and what the clicks say beside what the renderer knows."""

import json

import numpy as np
import pytest
from drawn_clip import DrawnFile, showing, to_click

from bowlcore.coaching import clip_desk
from bowlcore.coaching.clip_desk import ClipDesk, clip_choices
from bowlcore.coaching.clip_folder import clicks_path
from bowlcore.coaching.clip_render import demo_clip
from bowlcore.coaching.clip_write import DEMO_NAME

DRAWN = demo_clip(radius_px=100.0, frames_per_s=120.0, frames=60)
NAME = "mine.mp4"


@pytest.fixture(autouse=True)
def clips(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(clip_desk, "ClipFile", lambda name: DrawnFile(DRAWN))
    (tmp_path / "clips").mkdir()
    for name in (NAME, DEMO_NAME):
        (tmp_path / "clips" / name).write_bytes(b"stands for a clip")
    return tmp_path / "clips"


@pytest.fixture
def desk(clips):
    return ClipDesk(NAME)


def click_on(desk, frames, noise_px=0.0, seed=1, drawn=DRAWN):
    rng = np.random.default_rng(seed)
    for frame in frames:
        for what, x, y in to_click(drawn, frame, noise_px, rng):
            said = desk.click(frame, what, x, y)
    return said


def on_disk():
    return json.loads(clicks_path(NAME).read_text())["places"]


def test_the_demo_clip_comes_first_and_opening_writes_nothing(desk, clips):
    assert clip_choices() == [DEMO_NAME, NAME]
    assert desk.opened == f"{NAME}: 60 frames; the file says 120 a second."
    assert sorted(p.name for p in clips.iterdir()) == sorted([NAME, DEMO_NAME])


def test_each_click_is_on_the_disk_before_the_next_and_the_sentence_leads_on(desk):
    said = []
    for count, (what, x, y) in enumerate(to_click(DRAWN, 14), start=1):
        said.append(desk.click(14, what, x, y))
        assert len(on_disk()) == count
        assert on_disk()[-1] == {
            "frame": 14, "what": what, "x_px": pytest.approx(x, abs=0.01), "y_px": pytest.approx(y, abs=0.01),
        }  # fmt: skip
    assert said == [
        "Frame 14: click the edge of the ball, place 2 of 3. 0 frames done, 6 is the least.",
        "Frame 14: click the edge of the ball, place 3 of 3. 0 frames done, 6 is the least.",
        "Frame 14: click the middle of the tape. 0 frames done, 6 is the least.",
        "Frame 14 is done: step to another one that shows the tape. 1 frame done, 6 is the least.",
    ]


def test_opened_again_everything_is_there(desk):
    click_on(desk, showing(DRAWN, 7))
    desk.filmed(camera="beside, on the left", hand="left", frames_per_s=240.0)
    again = ClipDesk(NAME, hand="right")
    assert again.places == desk.places and again.places.hand == "left"
    assert again.opened.endswith("28 clicks on it are kept from before.")


def test_undo_goes_back_click_by_click_to_the_beginning(desk):
    click_on(desk, [14, 16])
    frames = [desk.undo()[0] for _ in range(8)]
    assert frames == [16] * 4 + [14] * 4 and on_disk() == []
    with pytest.raises(ValueError, match="no click to take back"):
        desk.undo()


@pytest.mark.parametrize(
    "frame, x, y", [(60, 50, 50), (-1, 50, 50), (3, -20, 50), (3, 50, 300), (3, float("nan"), 5)]
)
def test_a_place_that_is_not_in_the_picture(desk, frame, x, y):
    with pytest.raises(ValueError, match="not in the picture; nothing was taken"):
        desk.click(frame, "rim", x, y)
    assert not clicks_path(NAME).exists()


def test_a_click_that_makes_no_sense_is_not_taken(desk):
    click_on(desk, [14])
    with pytest.raises(ValueError, match="outside its outline of 100. This click was not taken") as said:
        desk.click(14, "tape", 2, 2)
    assert "\n" not in str(said.value) and len(on_disk()) == 4
    for x in (10, 20):
        desk.click(20, "rim", x, 10)
    with pytest.raises(ValueError, match="Frame 20: the rim clicks do not lie round one circle"):
        desk.click(20, "rim", 30, 10)
    assert len(on_disk()) == 6


def test_exact_clicks_give_the_truth_of_the_renderer(desk):
    assert desk.answer() == ""
    click_on(desk, showing(DRAWN, 5))
    assert desk.answer() == ""
    click_on(desk, [f for f in showing(DRAWN, 12) if f not in desk.places.frames])
    fitted = clip_desk._fitted(desk.places.clicked)
    truth = DRAWN.truth(fitted.middle_frame)
    assert fitted.rotation.value == pytest.approx(truth["axis_rotation_deg"], abs=0.5)
    assert fitted.tilt.value == pytest.approx(truth["axis_tilt_deg"], abs=0.5)
    assert fitted.rev_rate.value == pytest.approx(truth["rev_rate_rpm"], rel=0.01)
    assert desk.answer() == fitted.sentence


def test_a_usual_hand_is_good_to_the_limits_that_are_asked_for(desk):
    # 1.5 pixels a click: the limits of the study of clicked marks, 2 degrees (twice that for one clip) and 3 %
    click_on(desk, showing(DRAWN, 12), noise_px=1.5)
    fitted = clip_desk._fitted(desk.places.clicked)
    truth = DRAWN.truth(fitted.middle_frame)
    assert fitted.rotation.value == pytest.approx(truth["axis_rotation_deg"], abs=4)
    assert fitted.tilt.value == pytest.approx(truth["axis_tilt_deg"], abs=4)
    assert fitted.rev_rate.value == pytest.approx(truth["rev_rate_rpm"], rel=0.03)


def test_the_rate_that_the_phone_filmed_overrules_the_files_own(monkeypatch):
    monkeypatch.setattr(clip_desk, "ClipFile", lambda name: DrawnFile(DRAWN, frames_per_s=30.0))
    desk = ClipDesk(NAME)
    assert "the file says 30 a second" in desk.opened
    click_on(desk, showing(DRAWN, 12))
    wrong = clip_desk._fitted(desk.places.clicked)
    desk.filmed(frames_per_s=120.0)
    right = clip_desk._fitted(desk.places.clicked)
    assert right.rev_rate.value == pytest.approx(320, rel=0.02)
    assert isinstance(wrong, str) or wrong.rev_rate.value == pytest.approx(right.rev_rate.value / 4, rel=0.1)
    with pytest.raises(ValueError, match="frames_per_s must be a number between 20 and 1000, got 5"):
        desk.filmed(frames_per_s=5)
    assert desk.places.frames_per_s == 120


def test_frames_that_cannot_tell_are_said_to(desk):
    click_on(desk, range(14, 20))
    assert desk.answer().startswith("The frames cannot tell: fewer than half a turn")


def test_the_truth_is_shown_of_the_demo_clip_only_and_after_an_answer(desk):
    demo = ClipDesk(DEMO_NAME)
    click_on(demo, showing(DRAWN, 5))
    assert demo.truth_rows() == []
    click_on(demo, [f for f in showing(DRAWN, 12) if f not in demo.places.frames])
    truth = DRAWN.truth(clip_desk._fitted(demo.places.clicked).middle_frame)
    rows = {row["number"]: row["true in mid-clip (made up)"] for row in demo.truth_rows()}
    assert rows["axis tilt"] == f"{round(2 * truth['axis_tilt_deg']) / 2:g} degrees"
    assert rows["rev rate"] == f"{round(truth['rev_rate_rpm'], -1):.0f} rpm"
    click_on(desk, showing(DRAWN, 12))
    assert desk.answer() and desk.truth_rows() == []


def test_the_table_says_what_was_clicked(desk):
    click_on(desk, [14])
    desk.click(15, "tape", 100, 100.4)
    x, y = DRAWN.scene.centre_px(14)
    done, begun = desk.rows()
    assert done["ball's middle (pixels across, down)"] == f"{x:.0f}, {y:.0f}"
    assert done["ball's radius (pixels)"] == "100" and done["clicks on the edge"] == 3
    assert begun["ball's radius (pixels)"] == "not yet" and begun["tape (pixels across, down)"] == "100, 100"


def test_lost_frames_are_spoken_of(monkeypatch):
    monkeypatch.setattr(DrawnFile, "gaps", (3, 17, 20, 44))
    assert "lost a frame after 3, 17, 20 and others: click on one side of it only" in ClipDesk(NAME).opened


def test_a_left_hander_starts_as_one():
    assert ClipDesk(NAME, hand="left").places.hand == "left"
