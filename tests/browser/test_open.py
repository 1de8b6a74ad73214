"""What a person meets after `bowlcore open`: a page that has run, no questions, nothing sent anywhere."""

from urllib.parse import urlsplit

import pytest
from lab_server import lab_server, write_notebook

pytestmark = pytest.mark.browser
WAIT_MS = 60_000

PANEL = """\
import ipywidgets
slider = ipywidgets.IntSlider(25, 1, 39, description="Board")
said = ipywidgets.HTML()
def draw(change=None):
    said.value = f'<p class="said">It starts at board {slider.value}.</p>'
slider.observe(draw, "value")
draw()
ipywidgets.VBox([slider, said])"""
LESSON = [("markdown", "# One\n\n[Next](two.ipynb)"), ("code", PANEL), ("markdown", "word " * 2000)]


@pytest.fixture
def lesson(lab, page):
    """A small lesson, opened, and its panel there."""
    write_notebook(lab.folder / "one.ipynb", *LESSON)
    write_notebook(lab.folder / "two.ipynb", ("markdown", "# Two"), ("code", PANEL))
    page.goto(lab.address("one.ipynb"))
    said(page).wait_for(timeout=WAIT_MS)
    return page


def said(page):
    return page.locator(".said:visible")


def expect_text(page, text):
    page.locator(".said:visible", has_text=text).wait_for(timeout=WAIT_MS)


def test_a_lesson_runs_without_a_key_press(lesson):
    assert said(lesson).inner_text() == "It starts at board 25."
    assert lesson.locator(".jp-Dialog").count() == 0
    assert lesson.get_by_role("heading", name="One").bounding_box()["y"] < 200, "not at the top of the page"
    assert lesson.locator(".cm-content:visible").count() == 0, "code is not folded"
    lesson.locator(".noUi-handle").focus()
    lesson.keyboard.press("ArrowRight")
    expect_text(lesson, "It starts at board 26.")
    assert lesson.outside == []


def test_a_second_start_finds_a_place_of_its_own(lab, tmp_path):
    """The first keeps its port; the second one takes the next."""
    (tmp_path / "work").mkdir()
    with lab_server(tmp_path / "work", tmp_path / "jupyter") as second:
        ports = [urlsplit(one.first_address).port for one in (lab, second)]
    assert ports[0] != ports[1]


def test_folded_code_can_be_shown(lesson):
    lesson.locator(".jp-InputPlaceholder .jp-Placeholder-content").click()
    lesson.locator(".cm-content", has_text="ipywidgets.IntSlider").wait_for()


@pytest.mark.parametrize("place", ["h1", ".noUi-handle"])
def test_a_key_pressed_by_accident_takes_nothing_away(place, lesson):
    cells = lesson.locator(".jp-Notebook:visible .jp-Cell").count()
    lesson.locator(".jp-Notebook:visible").locator(place).first.click()
    for key in ["d", "d", "x", "a", "b", "r", "ArrowLeft", "1"]:
        lesson.keyboard.press(key)
    assert lesson.locator(".jp-Notebook:visible .jp-Cell").count() == cells
    assert said(lesson).count() == 1


def test_links_and_the_back_button_lead_from_page_to_page(lesson):
    lesson.locator(".noUi-handle").focus()
    lesson.keyboard.press("ArrowRight")
    expect_text(lesson, "board 26")
    lesson.get_by_role("link", name="Next").click()
    lesson.locator("h1:visible", has_text="Two").wait_for()
    expect_text(lesson, "board 25")
    lesson.go_back()
    lesson.locator("h1:visible", has_text="One").wait_for()
    assert said(lesson).inner_text() == "It starts at board 26.", "the page lost its place"


def test_a_notebook_that_is_no_lesson_is_not_run(lab, page):
    write_notebook(lab.folder / "mine.ipynb", ("code", "print('ran')"), lesson=False)
    page.goto(lab.address("mine.ipynb"))
    page.locator(".jp-NotebookPanel-toolbar .jp-Notebook-ExecutionIndicator[data-status=idle]").wait_for(
        timeout=WAIT_MS
    )
    page.wait_for_timeout(2000)
    assert page.locator(".jp-OutputArea-output").count() == 0
    assert page.locator(".jp-Dialog").count() == 0


def test_the_first_lesson_opens(lab, page, need):
    need((lab.folder / "00_start_here.ipynb").exists(), "needs the lessons")
    page.goto(lab.first_address)
    page.locator(".jp-OutputArea-output").first.wait_for(timeout=WAIT_MS)
    assert page.locator(".jp-Dialog").count() == 0
    assert page.locator(".jp-RenderedText[data-mime-type='application/vnd.jupyter.error']").count() == 0
    assert page.outside == []


def test_a_word_leads_to_its_meaning(lab, page):
    page.goto(lab.address("00_start_here.ipynb"))
    page.locator("a[href*='#Foul-line']").first.click(timeout=WAIT_MS)
    told = page.locator(".jp-MarkdownViewer h3:visible", has_text="Foul line")
    told.wait_for()
    for _ in range(50):  # it scrolls there a moment later
        if 0 <= told.bounding_box()["y"] < 720:
            break
        page.wait_for_timeout(100)
    assert 0 <= told.bounding_box()["y"] < 720
    assert page.locator(".jp-Dialog").count() == 0 and page.outside == []
