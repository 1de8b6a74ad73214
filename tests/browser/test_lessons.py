"""The lessons in a real browser: they run, a key on a slider is answered, and anyone can use them."""

import pytest
from browser_page import new_page

pytestmark = pytest.mark.browser
WAIT_MS = 60_000
LESSONS = {
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
    with new_page(chromium) as page:
        yield opened(page, lab, request.param)


def opened(page, lab, name):
    """The page with the lesson on it."""
    page.faults = []
    page.on("console", lambda message: page.faults.append(message.text) if message.type == "error" else None)
    page.goto(lab.address(f"{name}.ipynb"))
    from playwright.sync_api import expect

    expect(page.locator(".bowlcore-ran")).to_have_count(1, timeout=WAIT_MS)
    expect(page.locator(".bm-question:visible")).to_have_count(LESSONS[name], timeout=WAIT_MS)
    return page


def last_lab(page):
    """The last panel with sliders: in 04 the path lab."""
    return page.locator(".bm-panel:visible").last


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
    assert (
        lesson.locator(".jp-RenderedText[data-mime-type='application/vnd.jupyter.stderr']:visible").count()
        == 0
    )


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
    from axe_playwright_python.sync_playwright import Axe

    for fold in lesson.locator(".bm-panel:visible button.jupyter-button.widget-toggle-button").all():
        if "…" in fold.inner_text():
            fold.click()
    lesson.wait_for_timeout(500)
    found = Axe().run(lesson, context=".jp-OutputArea-output").response["violations"]
    bad = [
        f"{v['id']}: {v['nodes'][0]['html'][:200]}" for v in found if v["impact"] in ("serious", "critical")
    ]
    assert bad == []
