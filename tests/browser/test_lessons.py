"""The lessons in a real browser: they run, a key on a slider is answered, and anyone can use them."""

import pytest
from browser_page import new_page
from lesson_page import (
    LESSONS,
    OUTPUT,
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

pytestmark = pytest.mark.browser
QUESTIONS = {
    "00_start_here": 3,
    "01_what_leaves_the_hand": 3,
    "02_skid_hook_roll": 5,
    "03_oil_on_the_lane": 5,
    "04_shape_the_path": 5,
    "05_into_the_pocket": 3,
    "06_read_the_reaction": 4,
    "07_a_lane_that_changes": 5,
    "08_spares": 5,
    "09_measure_a_release": 3,
    "10_keep_a_log": 4,
    "11_run_a_clinic": 5,
    "12_rules_of_thumb": 5,
}  # questions in it


@pytest.fixture(scope="module", params=LESSONS)
def lesson(request, lab, chromium):
    """A lesson, opened and run to its end once for all tests; each leaves it in feet and for the right hand."""
    from playwright.sync_api import expect

    with new_page(chromium) as page:
        opened(page, lab.address(request.param))
        questions = QUESTIONS[request.param.removesuffix(".ipynb")]
        expect(page.locator(".bm-question:visible")).to_have_count(questions, timeout=WAIT_MS)
        page.name = request.param
        yield page


def last_lab(page):
    """The last panel with sliders: in 04 the path lab."""
    return page.locator(".bm-panel:visible").last


def test_every_panel_answers_the_keyboard(lesson):
    every_panel_answers(lesson)
    keep_screen(lesson, "lab", lesson.name)
    assert lesson.locator(OUTPUT_GONE_WRONG).count() == 0
    assert lesson.faults == [] and lesson.outside == []


def test_an_arrow_key_on_a_slider_changes_the_sentence(lesson):
    from playwright.sync_api import expect

    panel = last_lab(lesson)
    panel.scroll_into_view_if_needed()
    before = panel.locator(".bm-sentence").inner_text()
    handle = panel.locator(".noUi-handle").first
    handle.focus()
    start = float(handle.get_attribute("aria-valuetext"))
    for _ in range(12):  # as fast as a held key
        lesson.keyboard.press("ArrowRight")
    expect(panel.locator(".bm-sentence")).not_to_have_text(before, timeout=30_000)
    assert handle.get_attribute("aria-label"), "the handle has no name"
    moved = handle.get_attribute("aria-valuetext")
    assert len(moved) < 6, "floating noise"
    step = float(panel.locator("input[type=number]").first.get_attribute("step"))
    assert float(moved) == pytest.approx(start + 12 * step), "a key press was lost"
    expect(panel.locator("input[type=number]").first).to_have_value(moved, timeout=30_000)
    assert lesson.outside == []
    assert lesson.locator(".jp-Dialog").count() == 0
    assert lesson.faults == []


def test_a_typed_number_out_of_range_gets_a_sentence_and_stays(lesson):
    panel = last_lab(lesson)
    box = panel.locator("input[type=number]").first
    box.fill("400")
    box.press("Enter")
    message = panel.locator(".bm-message")
    message.wait_for(timeout=30_000)
    assert "must be between" in message.inner_text() and "got 400" in message.inner_text()
    assert box.input_value() == "400"


def test_units_and_hand_switch_every_panel_live(lesson):
    from playwright.sync_api import expect

    with_lane = lesson.locator(".bm-panel:visible", has_text="distance from the foul line, ft")
    if not with_lane.count():
        pytest.skip("no lane is drawn in this lesson")
    place = lesson.locator(".bm-panel:visible").evaluate_all(
        "panels => panels.findLastIndex(p => p.textContent.includes('distance from the foul line, ft'))"
    )
    panel = lesson.locator(".bm-panel:visible").nth(place)
    sentence, picture = panel.locator(".bm-sentence"), panel.locator(".bm-picture")
    before = sentence.inner_text()
    lesson.get_by_role("button", name="metres and km/h").first.click()
    expect(picture).to_contain_text("distance from the foul line, m", timeout=30_000)
    lesson.get_by_role("button", name="feet and mph").first.click()
    expect(sentence).to_have_text(before, timeout=30_000)
    lesson.get_by_role("button", name="metres and km/h").first.click()
    lesson.get_by_role("button", name="left hand").first.click()
    expect(picture).to_contain_text("board from the left", timeout=30_000)
    lesson.get_by_role("button", name="feet and mph").first.click()
    lesson.get_by_role("button", name="right hand").first.click()
    expect(sentence).to_have_text(before, timeout=30_000)


def test_a_mouse_can_answer_a_question(lesson):
    """Clicks where the circle is: nothing of the lab may lie over it."""
    from playwright.sync_api import expect

    question = lesson.locator(".bm-question:visible").first
    question.scroll_into_view_if_needed()
    circle = question.locator("input[type=radio]").first.bounding_box()
    lesson.mouse.click(circle["x"] + circle["width"] / 2, circle["y"] + circle["height"] / 2)
    expect(question.locator(".bm-answer")).to_contain_text("Your guess", timeout=30_000)


def test_axe_finds_nothing_serious_in_the_output(lesson):
    unfold(lesson)
    lesson.wait_for_timeout(500)
    assert serious_for_axe(lesson, context=OUTPUT) == []


def test_the_tab_key_goes_through_the_panels_in_reading_order(lesson):
    assert stops_out_of_order(lesson) == []


def test_nothing_is_lost_on_a_narrow_page(lesson):
    assert cut_off_when_narrow(lesson) == []


def test_nothing_moves_for_those_who_asked_for_that(lesson):
    assert moves_all_the_same(lesson) == []
