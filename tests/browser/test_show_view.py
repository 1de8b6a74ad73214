"""What a group sees after `bowlcore show`: every lesson runs by itself, large, without code, and answers the keyboard."""

from contextlib import contextmanager
from importlib.util import find_spec

import psutil
import pytest
from browser_page import new_page
from lab_server import lab_server, write_notebook
from lesson_page import (
    LESSONS,
    OUTPUT_GONE_WRONG,
    WAIT_MS,
    cut_off_when_narrow,
    every_panel_answers,
    keep_screen,
    moves_all_the_same,
    opened,
    serious_for_axe,
    stops_out_of_order,
    unfold,
)

from bowlcore.coaching.practice_log import FILE_NAME

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def show(tmp_path_factory, need):
    """`bowlcore show` on a folder with the lessons and one notebook that is none."""
    need(find_spec("voila"), "needs the extra 'show' of this package")
    folder = tmp_path_factory.mktemp("shown")
    write_notebook(folder / "my notes.ipynb", ("markdown", "# Mine"), lesson=False)
    with lab_server(folder, tmp_path_factory.mktemp("jupyter"), "show") as running:
        yield running


@pytest.fixture(scope="module", params=LESSONS)
def lesson(request, show, chromium):
    """A lesson, opened and run to its end once for all tests."""
    with left_at_the_end(chromium) as page:
        page.source, page.name = opened(page, show.address(request.param)), request.param
        yield page


@pytest.fixture
def page(chromium):
    """An empty page of its own."""
    with left_at_the_end(chromium) as page:
        yield page


@contextmanager
def left_at_the_end(chromium):
    """A page that is left as a person leaves it, so that its Python ends."""
    with new_page(chromium) as page:
        yield page
        page.goto("about:blank")


def pythons(server):
    """How many lessons have a running Python."""

    def runs(process):
        try:
            return "ipykernel_launcher" in process.cmdline()
        except psutil.NoSuchProcess:  # it ended since it was listed
            return False

    return sum(map(runs, psutil.Process(server.pid).children(recursive=True)))


def test_a_lesson_runs_by_itself(lesson):
    keep_screen(lesson, "show", lesson.name)
    assert lesson.locator(OUTPUT_GONE_WRONG).count() == 0
    assert lesson.faults == []


def test_every_panel_answers_the_keyboard(lesson):
    every_panel_answers(lesson)
    assert lesson.locator(OUTPUT_GONE_WRONG).count() == 0
    assert lesson.outside == [] and lesson.faults == []


def test_no_code_is_sent_or_seen(lesson):
    unfold(lesson)
    for text in lesson.source, lesson.locator("body").inner_text():
        assert "_panel(" not in text
        assert "import " not in text.replace("important", "")
    assert lesson.locator("h1").first.inner_text().startswith(lesson.title())


def test_a_word_is_explained_on_the_same_page(lesson):
    lesson.locator("main a[href^='#']:not(.anchor-link)").first.click()
    lesson.locator(".show-words[open]").wait_for()
    anchor = lesson.url.rpartition("#")[2]
    assert lesson.locator(f".show-words [id='{anchor}']").bounding_box()["y"] < 720
    assert (
        lesson.locator(".show-words img").count() > 10
        and "$" not in lesson.locator(".show-words").inner_text()
    )
    lesson.locator(".show-words summary").click()


def test_it_is_large_and_nothing_is_cut_off(lesson):
    def size(place):
        return lesson.locator(place).first.evaluate("place => parseFloat(getComputedStyle(place).fontSize)")

    assert size(".jp-MarkdownOutput p") == 20
    assert size(".bm-sentence") == 22
    assert size(".widget-label:visible") == 18
    assert cut_off_when_narrow(lesson) == []


def test_the_tab_key_goes_through_the_panels_in_reading_order(lesson):
    assert stops_out_of_order(lesson) == []


def test_nothing_moves_for_those_who_asked_for_that(lesson):
    assert moves_all_the_same(lesson) == []


def test_axe_finds_nothing_serious(lesson):
    assert serious_for_axe(lesson) == []


def test_contents_links_and_steps_lead_through_the_course(show, page):
    page.goto(show.first_address)
    assert page.title() == "Ball Motion Workbook"
    assert serious_for_axe(page) == []
    links = page.locator(".show-contents a")
    assert [link.get_attribute("href").rpartition("/")[2] for link in links.all()] == LESSONS
    links.first.click()
    title = page.locator("h1").inner_text()
    assert page.locator("a[rel=prev]").count() == 0
    page.locator("a[rel=next]").first.click()
    page.locator("h1", has_text=title).wait_for(state="detached")
    assert page.url.endswith(LESSONS[1])
    page.locator("main").get_by_role("link", name="Start here").first.click()  # a link in the text
    page.locator("h1", has_text=title).wait_for()
    page.go_back()
    page.locator("h1", has_text=title).wait_for(state="detached")
    assert page.url.endswith(LESSONS[1])
    assert page.outside == []


def test_the_first_tab_leads_past_the_links(show, page):
    page.goto(show.address(LESSONS[0]))
    page.locator("main h1").wait_for()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "To the lesson"
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
    page.keyboard.press("Enter")
    page.wait_for_function("document.activeElement.tagName === 'MAIN'")


def test_a_lesson_that_is_left_leaves_no_python_behind(show, page):
    before = pythons(show)
    for name in LESSONS[0], LESSONS[2], LESSONS[0]:
        page.goto(show.address(name))
        page.locator(".bm-panel").first.wait_for(timeout=WAIT_MS)  # left while it still runs
    page.goto(show.first_address)
    for _ in range(100):
        if pythons(show) <= before:
            return
        page.wait_for_timeout(200)
    pytest.fail(f"{pythons(show) - before} are left")


def test_a_page_that_is_not_there_asks_for_nothing_outside(show, page):
    page.goto(show.address("99_nothing.ipynb"))
    assert page.locator("h1").inner_text() == "This page cannot be shown"
    assert serious_for_axe(page) == []
    assert page.outside == []


def test_without_the_token_nothing_is_shown(show, page):
    page.goto(show.address(LESSONS[0]).partition("?")[0])
    assert "/login" in page.url
    assert page.outside == []


def test_a_log_typed_here_lies_where_the_other_lessons_find_it(show, page):
    [name] = [name for name in LESSONS if name.startswith("10")]
    opened(page, show.address(name))
    box = page.locator(".bm-tally-rows textarea")
    box.click()
    page.keyboard.type("AK: 12f0/")
    page.keyboard.press("Enter")
    page.locator(".bm-sentence", has_text="Kept: AK").wait_for(timeout=5000)
    (show.folder / FILE_NAME).unlink()
