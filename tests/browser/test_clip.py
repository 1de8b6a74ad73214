"""A phone clip in a real browser: consent, the demo clip, clicks by mouse and by key, undo, and gone for good.

Where the ball and its tape are in each frame, and how it spins, comes from the renderer alone.
"""

import json
import re

import numpy as np
import pytest
from browser_page import new_page
from lesson_page import OUTPUT, serious_for_axe

from bowlcore.coaching.clip_folder import FOLDER
from bowlcore.coaching.clip_write import DEMO_NAME, demo_scene, write_mp4

pytestmark = [pytest.mark.browser, pytest.mark.usefixtures("av")]
WAIT_MS = 60_000
ROUND = np.radians([20, 140, 260])


@pytest.fixture(scope="module")
def drawn():
    return demo_scene()


@pytest.fixture(scope="module")
def lesson(lab, chromium):
    """The lesson, opened and run once for all tests here."""
    from playwright.sync_api import expect

    with new_page(chromium) as page:
        page.faults = []
        page.on(
            "console", lambda message: page.faults.append(message.text) if message.type == "error" else None
        )
        page.set_viewport_size({"width": 1280, "height": 1000})
        page.goto(lab.address("09_measure_a_release.ipynb"))
        expect(page.locator(".bowlcore-ran")).to_have_count(1, timeout=WAIT_MS)
        yield page


@pytest.fixture
def panel(lab, lesson):
    """The panel with the consent just ticked; what it keeps is swept out after."""
    panel = lesson.locator(".bm-panel:visible", has_text="The bowler agrees")
    assert panel.locator("select, img, button").count() == 0 and not (lab.folder / FOLDER).exists()
    panel.get_by_label("The bowler agrees").check()
    panel.get_by_label("Clip", exact=True).wait_for(timeout=WAIT_MS)
    yield panel
    panel.get_by_label("The bowler agrees").uncheck()
    panel.get_by_label("Clip", exact=True).wait_for(state="detached", timeout=WAIT_MS)
    for left in (lab.folder / FOLDER).glob("*"):
        left.unlink()
    (lab.folder / FOLDER).rmdir()


@pytest.fixture
def demo(panel):
    panel.get_by_label("Clip", exact=True).select_option(DEMO_NAME)
    panel.locator(".bm-clip[data-frame='0']").wait_for(timeout=WAIT_MS)
    return panel


def kept(lab, name=DEMO_NAME):
    return json.loads((lab.folder / FOLDER / f"{name}.clicks.json").read_text())["places"]


def go_to(panel, frame):
    box = panel.get_by_label("Frame, counted from 0").first
    box.fill(str(frame))
    box.press("Enter")
    panel.locator(f".bm-clip[data-frame='{frame}']").wait_for(timeout=5000)


def places(drawn, frame):
    """Three places on the rim, and the tape: where the renderer has them, in pixels of the clip."""
    (x, y), r, seen = drawn.scene.centre_px(frame), drawn.scene.radius_px, drawn.tape_seen()[frame]
    return [(x + r * np.cos(a), y + r * np.sin(a)) for a in ROUND] + [(x + r * seen[0], y - r * seen[1])]


def click(panel, drawn, x, y):
    """With the mouse, on a picture that shows the whole frame; the clip is even-sized, as mp4 wants it."""
    picture = panel.locator(".bm-clip")
    box = picture.bounding_box()
    high, wide = (size + size % 2 for size in drawn.scene.size_px)
    picture.click(position={"x": (x + 0.5) / wide * box["width"], "y": (y + 0.5) / high * box["height"]})


def numbers(sentence):
    """Rotation, tilt and rev rate that were said."""
    found = [
        re.search(rf"{name} (-?[\d.]+)", sentence) for name in ("axis rotation", "axis tilt", "rev rate")
    ]
    return [float(one[1]) for one in found]


def test_marks_clicked_on_the_demo_clip_give_its_spin_and_all_of_it_can_be_taken_back(
    demo, drawn, lab, lesson
):
    from playwright.sync_api import expect

    there = np.flatnonzero(drawn.tape_seen()[:, 2] > 0.3)
    frames = [int(frame) for frame in there[np.linspace(0, len(there) - 1, 9).astype(int)]]
    message, said = demo.locator(".bm-message"), demo.locator("[role=status]")
    count = 0
    for frame in frames:
        go_to(demo, frame)
        for x, y in places(drawn, frame):
            click(demo, drawn, x, y)
            count += 1
            expect(demo.locator(".bm-clip svg .bm-clip-over:visible")).not_to_have_count(0)
        expect(said.filter(has_text=f"Frame {frame} is done")).to_have_count(1, timeout=5000)
        assert len(kept(lab)) == count, "a click is not on the disk"
    assert message.count() == 0
    for place, (x, y) in zip(kept(lab)[-4:], places(drawn, frames[-1]), strict=True):
        assert (place["x_px"], place["y_px"]) == pytest.approx(
            (x, y), abs=1.0
        )  # a pixel of the screen or two

    answer = said.filter(has_text="In the middle of the clicked frames")
    expect(answer).to_have_count(1, timeout=10_000)
    truth = drawn.truth((frames[0] + frames[-1]) / 2)
    rotation, tilt, rev_rate = numbers(answer.inner_text())
    assert rotation == pytest.approx(truth["axis_rotation_deg"], abs=2)
    assert tilt == pytest.approx(truth["axis_tilt_deg"], abs=2)
    assert rev_rate == pytest.approx(truth["rev_rate_rpm"], rel=0.03)
    demo.get_by_role("button", name="What is true …").click()
    expect(demo.locator("td", has_text=f"{round(truth['rev_rate_rpm'], -1):.0f} rpm").first).to_be_visible()

    demo.get_by_role("button", name="Undo the last click").click()
    expect(said.filter(has_text="The last click is taken back")).to_have_count(1, timeout=5000)
    assert len(kept(lab)) == count - 1

    demo.get_by_role("button", name="Delete clip and clicks").click()
    demo.get_by_role("button", name="Press again: gone for good").click()
    expect(said.filter(has_text="copies elsewhere are not")).to_have_count(1, timeout=5000)
    assert list((lab.folder / FOLDER).iterdir()) == []
    assert lesson.outside == [] and lesson.faults == [] and lesson.locator(".jp-Dialog").count() == 0


def test_everything_by_keyboard(demo, drawn, lab, lesson):
    from playwright.sync_api import expect

    picture, spoken = demo.locator(".bm-clip"), demo.locator(".bm-clip-said")
    assert picture.get_attribute("role") == "application" and spoken.get_attribute("aria-live") == "polite"
    demo.get_by_role("button", name="Undo the last click").focus()
    lesson.keyboard.press("Tab")  # from the last button above it
    expect(picture).to_be_focused()
    cells = lesson.locator(".jp-Notebook:visible .jp-Cell").count()
    for _ in range(14):
        lesson.keyboard.press("PageDown")
    expect(picture).to_have_attribute("data-frame", "14", timeout=5000)  # 13 is passed on the way there
    lesson.keyboard.press("PageUp")
    expect(picture).to_have_attribute("data-frame", "13", timeout=5000)
    assert "Frame 13: click the edge of the ball" in picture.get_attribute("aria-label")
    for number, (x, y) in enumerate(places(drawn, 13), start=1):
        steer(lesson, spoken, x, y)
        lesson.keyboard.press("Enter")
        demo.locator(
            "[role=status]", has_text=("place 2", "place 3", "middle of the tape", "is done")[number - 1]
        ).wait_for()
        place = kept(lab)[-1]
        assert place["frame"] == 13 and len(kept(lab)) == number
        assert (place["x_px"], place["y_px"]) == pytest.approx((x, y), abs=0.51)
    lesson.keyboard.press("Backspace")
    demo.locator("[role=status]", has_text="taken back").wait_for()
    assert len(kept(lab)) == 3
    expect(picture).to_be_focused()
    slider = demo.locator(".noUi-handle").nth(1)
    slider.focus()
    lesson.keyboard.press("ArrowRight")
    expect(picture).to_have_attribute("data-frame", "14", timeout=5000)
    assert lesson.locator(".jp-Notebook:visible .jp-Cell").count() == cells
    assert lesson.locator(".cm-content:visible").count() == 0, "Enter opened a cell"


def steer(page, spoken, x, y):
    """Arrow keys until the cross is said to be within half a pixel; far ways with Shift."""
    page.keyboard.press("ArrowLeft")
    for _ in range(300):
        at = [int(number) for number in re.findall(r"\d+", spoken.inner_text())]
        off = round(x) - at[0], round(y) - at[1]
        if off == (0, 0):
            return
        axis = 0 if off[0] else 1
        key = ("ArrowRight" if off[0] > 0 else "ArrowLeft", "ArrowDown" if off[1] > 0 else "ArrowUp")[axis]
        page.keyboard.press(f"Shift+{key}" if abs(off[axis]) > 15 else key)
    raise AssertionError("the cross does not get there")


def test_closer_a_click_still_means_the_same_place(demo, drawn, lab):
    from playwright.sync_api import expect

    go_to(demo, 14)
    tape = places(drawn, 14)[3]
    demo.get_by_role("button", name="middle of the tape").click()
    click(demo, drawn, *tape)
    demo.locator("[role=status]", has_text="Frame 14").wait_for()
    for _ in range(2):
        demo.get_by_role("button", name="Closer").click()
    view = demo.locator(".bm-clip svg")
    high, wide = (size + size % 2 for size in drawn.scene.size_px)
    expect(view).to_have_attribute("viewBox", re.compile(rf" {wide // 4} {high // 4}$"), timeout=5000)
    left, top, width, height = map(float, view.get_attribute("viewBox").split())
    picture = demo.locator(".bm-clip")
    box = picture.bounding_box()
    demo.get_by_role("button", name="middle of the tape").click()
    picture.click(position={
        "x": (tape[0] - left) / width * box["width"], "y": (tape[1] - top) / height * box["height"],
    })  # fmt: skip
    demo.page.wait_for_timeout(500)
    assert len(kept(lab)) == 2
    assert (kept(lab)[-1]["x_px"], kept(lab)[-1]["y_px"]) == pytest.approx(tape, abs=0.3)


def test_a_clip_of_ones_own_is_brought_in_whole(panel, lab, tmp_path, lesson):
    """Two and a half pieces of a megabyte; the file chooser as the person meets it."""
    from playwright.sync_api import expect

    rng = np.random.default_rng(3)
    noise = (rng.integers(0, 255, (240, 320, 3), dtype=np.uint8) for _ in range(300))
    write_mp4(tmp_path / "AK 1.mp4", noise, 120)
    with (tmp_path / "AK 1.mp4").open("ab") as file:
        file.write(b"\0\0\0\x08free" * 200_000)  # boxes that mean nothing
    panel.get_by_label("Bring in a clip:").set_input_files(tmp_path / "AK 1.mp4")
    panel.locator(".bm-clip[data-frame='0']").wait_for(timeout=WAIT_MS)
    assert (lab.folder / FOLDER / "AK 1.mp4").read_bytes() == (tmp_path / "AK 1.mp4").read_bytes()
    assert (tmp_path / "AK 1.mp4").stat().st_size > 2_000_000
    expect(panel.get_by_label("Clip", exact=True)).to_have_value("AK 1.mp4")
    (tmp_path / "letter.mp4").write_text("no clip")
    panel.get_by_label("Bring in a clip:").set_input_files(tmp_path / "letter.mp4")
    expect(panel.locator(".bm-message")).to_contain_text("letter.mp4 cannot be read", timeout=10_000)
    assert lesson.faults == []


def test_axe_finds_nothing_serious_in_an_open_clip(demo, lesson):
    for fold in demo.locator("button", has_text="…").all():
        fold.click()
    lesson.wait_for_timeout(500)
    assert serious_for_axe(lesson, context=OUTPUT) == []
