"""A lesson on paper, as File, Print in the lab makes it: prose, pictures and formulas, no code, nothing fetched."""

from urllib.parse import urlsplit

import pytest
from lesson_page import serious_for_axe

pytestmark = pytest.mark.browser
WAIT_MS = 90_000


@pytest.fixture
def on_paper(lab, page):
    """Lesson 01, run in the lab, saved, and opened as the lab hands it to the printer."""
    page.goto(lab.address("01_what_leaves_the_hand.ipynb"))
    page.locator(".bm-picture svg").last.wait_for(timeout=WAIT_MS)
    page.locator(".jp-Notebook-ExecutionIndicator[data-status=idle]").wait_for(
        state="attached", timeout=WAIT_MS
    )
    page.locator("h1").first.click()
    page.keyboard.press("Control+s")
    page.wait_for_timeout(1000)
    address = urlsplit(lab.first_address)
    page.goto(address._replace(path="/nbconvert/html/01_what_leaves_the_hand.ipynb").geturl())
    return page


def test_it_prints_as_it_is(on_paper):
    text = on_paper.locator("body").inner_text()
    assert "import bowlcore" not in text and "_panel(" not in text
    assert "Words of this lesson" in text and "Run me first" not in text
    assert on_paper.locator("svg").count() >= 2  # the panels' pictures
    formula = on_paper.locator("img[alt*='ball speed']")
    assert formula.count() == 1 and formula.evaluate("picture => picture.naturalWidth") > 100
    assert "$" not in text
    assert on_paper.locator("a[href], script, button, input").count() == 0
    assert serious_for_axe(on_paper) == []
    assert on_paper.outside == []
    assert on_paper.pdf().count(b"/Type /Page\n") <= 12
