"""A page for a phone in a real browser: opened from a file, 360 pixels wide, by keyboard, without scripts."""

import re
from contextlib import contextmanager

import pytest
from browser_page import new_page
from lesson_page import serious_for_axe

from bowlcore.display.first_shot import first_shot_panel
from bowlcore.display.phone_lessons import lesson_page
from bowlcore.display.phone_page import MOST_BYTES
from bowlcore.display.picture import narrow

pytestmark = pytest.mark.browser
PHONE = {"width": 360, "height": 740}
GRID = {"axis_rotation_deg": (30, 45, 60), "axis_tilt_deg": (0, 13), "pattern": ("house", "flat")}


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    """A page of twelve settings, written by the panel."""
    path = tmp_path_factory.mktemp("phone") / "first_shot.html"
    first_shot_panel().phone_page(path, GRID, title="One shot", width_in=6)
    return path


@contextmanager
def on_a_phone(chromium, file):
    """A page opened from its file on a phone's screen; page.faults lists what went wrong in it."""
    with new_page(chromium) as page:
        page.faults = []
        page.on("console", lambda message: page.faults.append(message.text))
        page.on("pageerror", lambda fault: page.faults.append(str(fault)))
        page.set_viewport_size(PHONE)
        page.goto(file.as_uri())
        yield page


@pytest.fixture
def opened(chromium, file):
    """That page, opened."""
    with on_a_phone(chromium, file) as page:
        yield page


def shown(page):
    """Sentence, words for those who cannot see the picture, and what is drawn."""
    svg = page.locator("#picture svg")
    return page.locator("#said").inner_text(), svg.get_attribute("aria-label"), svg.inner_html()


def narrow_picture(panel):
    """What the panel draws where it stands, as narrow as on the page."""
    with narrow(6):
        return panel.drawn_at().svg


def test_keys_move_the_sentence_and_the_picture_to_what_the_panel_shows(opened):
    panel = first_shot_panel()
    assert shown(opened)[0] == panel.sentence
    assert not opened.get_by_text("Scripts are off here").is_visible()
    for key, moved in (
        ("ArrowLeft", {"axis_rotation_deg": 30}),
        ("ArrowLeft", {"axis_tilt_deg": 0}),
        ("ArrowDown", {"pattern": "flat"}),
    ):
        opened.keyboard.press("Tab")
        before = shown(opened)
        opened.keyboard.press(key)
        after = shown(opened)
        assert after[0] == panel.set(**moved).sentence and after[1].startswith(after[0])
        assert after[2] != before[2]
    assert opened.get_by_label("Axis rotation").get_attribute("aria-valuetext") == "30"
    drawn = opened.locator("#picture svg text").all_text_contents()
    assert drawn == [text.strip() for text in re.findall(r"<text[^>]*>([^<]*)", narrow_picture(panel))]
    assert opened.faults == []


def test_nothing_is_wider_than_the_phone_and_letters_can_be_read(opened):
    assert opened.evaluate("document.documentElement.scrollWidth") == PHONE["width"]
    sizes = opened.locator("#picture svg text").evaluate_all(
        "all => all.map(one => one.getScreenCTM().a * parseFloat(getComputedStyle(one).fontSize)).filter(Boolean)"
    )
    assert min(sizes) > 8 and sorted(sizes)[len(sizes) // 2] > 9.5
    for control in opened.locator("#controls input, #controls select").all():
        assert control.bounding_box()["height"] >= 40


def test_nothing_is_asked_for_outside_and_the_file_is_small(opened, file):
    assert opened.outside == [file.as_uri()]
    assert file.stat().st_size < MOST_BYTES


def test_axe_finds_nothing_serious(opened):
    opened.locator("summary").click()
    assert serious_for_axe(opened) == []


def test_without_scripts_the_picture_and_the_table_are_there(chromium, file):
    context = chromium.new_context(viewport=PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(file.as_uri())
    assert page.locator("#all tbody tr").count() == 12
    assert page.locator("#all tbody tr").last.is_visible()
    assert page.locator("#picture svg").is_visible() and not page.locator("#controls").is_visible()
    assert page.get_by_text("Scripts are off here").is_visible()
    context.close()


@pytest.mark.parametrize("lesson", ["02", "05", "08"])
def test_a_shipped_page_answers_a_key_with_its_sentence_in_sight(chromium, tmp_path, lesson):
    path = tmp_path / "page.html"
    path.write_text(lesson_page(lesson), encoding="utf-8")
    with on_a_phone(chromium, path) as page:
        said = page.locator("#said")
        before = said.inner_text()
        page.keyboard.press("Tab")
        page.keyboard.press("ArrowDown" if page.locator("#controls select").count() else "ArrowRight")
        assert said.inner_text() != before
        place, picture = said.bounding_box(), page.locator("#picture").bounding_box()
        assert place["y"] + 60 < PHONE["height"] and place["y"] < picture["y"]
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"]
        assert serious_for_axe(page) == []
        assert page.faults == [] and page.outside == [path.as_uri()]


def test_a_script_that_is_not_ours_is_not_run(chromium, file, tmp_path):
    """A script that somebody added to the file is not one of ours, and is not run."""
    changed = tmp_path / "changed.html"
    changed.write_text(
        file.read_text(encoding="utf-8").replace("</main>", "</main><script>document.title = 'run'</script>")
    )
    with new_page(chromium) as page:
        page.goto(changed.as_uri())
        assert page.title() == "One shot"
