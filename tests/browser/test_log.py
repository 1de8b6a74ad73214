"""Copying a tally in, in a real browser: rows typed without a pause are all kept; the sheet prints on one page."""

import pytest

from bowlcore.coaching.practice_log import FILE_NAME, PracticeLog
from bowlcore.display.tally_sheet import PAPERS, tally_html

pytestmark = pytest.mark.browser
TYPED = ["AK: 12f0/", "BN: f x", "h46-", "9 l 2-8 /, tugged it"] * 10


def test_rows_typed_without_a_pause_are_all_kept(lab, page):
    from playwright.sync_api import expect

    page.goto(lab.address("10_keep_a_log.ipynb"))
    expect(page.locator(".bowlcore-ran")).to_have_count(1, timeout=60_000)
    box = page.locator(".bm-tally-rows textarea")
    box.scroll_into_view_if_needed()
    box.click()
    for row in TYPED:
        page.keyboard.type(row)
        page.keyboard.press("Enter")
    panel = page.locator(".bm-panel", has=box)
    expect(panel.locator(".bm-sentence")).to_have_text(
        "Kept: BN, over 9, light, 2-8 left, made.", timeout=5000
    )
    expect(panel.locator("tbody tr").first).to_contain_text("tugged it", timeout=5000)
    page.wait_for_timeout(500)
    assert panel.locator(".bm-message").count() == 0
    with PracticeLog(lab.folder / FILE_NAME, create=False) as log:
        shots = [kept.entry for kept in log.shots()]
    assert len(shots) == len(TYPED)
    assert [shot.bowler for shot in shots[:4]] == ["AK", "BN", "BN", "BN"]
    (lab.folder / FILE_NAME).unlink()


@pytest.mark.parametrize("paper", PAPERS)
def test_the_sheet_fits_one_page(paper, page):
    page.set_content(tally_html(paper=paper))
    pdf = page.pdf(prefer_css_page_size=True)
    assert pdf.count(b"/Type /Page\n") == 1
