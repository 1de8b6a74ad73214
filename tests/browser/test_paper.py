"""Pages as a real browser prints them: as many as there should be, nothing wider than the paper, nothing cut or split."""

import re
import time

import pytest

from bowlcore import bowler_card, load_bowlers
from bowlcore.coaching import own_numbers
from bowlcore.coaching.paper import MARGIN_MM, SIZES
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.print_pdf import find_browser, print_pdf
from bowlcore.coaching.printed import put
from bowlcore.coaching.sheet import LEVELS
from bowlcore.coaching.sheet_lessons import LESSONS, make_sheets
from bowlcore.display.bowler_card_page import card_page
from bowlcore.display.handouts import before_league_page, own_numbers_page, parents_page
from bowlcore.display.sheet_pages import coachs_page, sheets, students_page
from bowlcore.display.tally_sheet import tally_html

pytestmark = pytest.mark.browser
PX_MM = 96 / 25.4
# what lies outside the paper's width, is cut by its own box, or is kept together and taller than a page
FAULTS = """([wide, high]) => [...document.querySelectorAll('body *')].filter(e => {
  const box = e.getBoundingClientRect(), style = getComputedStyle(e);
  const outside = box.right > wide + 1 || box.left < -1;
  const cut = style.overflow === 'hidden' && !(e instanceof SVGElement) && e.scrollHeight > e.clientHeight + 1;
  const tall = style.breakInside === 'avoid' && box.height > high;
  const svg = e.closest('svg'), frame = svg && svg.getBoundingClientRect();
  const clipped = svg && e.tagName === 'text' && (box.right > frame.right + 1 || box.left < frame.left - 1
    || box.bottom > frame.bottom + 2 || box.top < frame.top - 2);
  return outside || cut || tall || clipped;
}).map(e => e.tagName + ': ' + (e.textContent || '').slice(0, 40))"""


def every_sheet(hand):
    return [
        sheet for lesson in LESSONS for level in LEVELS for sheet in make_sheets(lesson, 2, level, 21, hand)
    ]


def printed(page, text, size):
    """The PDF's number of pages and height of a page in it [mm]; nothing lies outside."""
    width, height = (mm - 2 * MARGIN_MM for mm in SIZES[size])
    page.set_viewport_size({"width": int(width * PX_MM), "height": int(height * PX_MM)})
    page.emulate_media(media="print")
    page.set_content(text)
    assert page.evaluate(FAULTS, [width * PX_MM, height * PX_MM]) == []
    assert page.outside == []
    pdf = page.pdf(prefer_css_page_size=True)
    tall = {round(float(found)) for found in re.findall(rb"/MediaBox \[0 0 [\d.]+ ([\d.]+)\]", pdf)}
    assert tall == {round(SIZES[size][1] * 72 / 25.4)}
    return pages_of(pdf)


def pages_of(pdf):
    return pdf.count(b"/Type /Page\n")


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("make", [students_page, coachs_page])
def test_each_sheet_is_one_page(page, make, size, hand):
    made = every_sheet(hand)
    assert printed(page, make(made, ["W" * 30] * len(made), size=size), size) == len(made)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("make", [students_page, coachs_page])
def test_in_large_print_a_sheet_takes_two_pages_at_most(page, make, size):
    made = every_sheet("right")[::2]
    assert len(made) <= printed(page, make(made, size=size, large=True), size) <= 2 * len(made)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["high-rev two-hander", "child of eight", "left-hander"])
def test_a_card_is_one_page_that_folds_in_the_middle(page, size, name):
    every = load_bowlers()
    pair = {"left": lane_of("house"), "right": lane_of("dried_out", 10)}
    card = bowler_card(every[name], pair, company=[every["spinner"]])
    text = card_page(card, "W" * 30, "left: house shape; right: dried out", size=size)
    assert printed(page, text, size) == 1
    corners = page.evaluate(
        "[...document.querySelectorAll('.quarter')].map(e => e.getBoundingClientRect().toJSON())"
    )
    width, height = ((mm - 2 * MARGIN_MM) * PX_MM for mm in SIZES[size])
    for box in corners:  # all four meet in the middle of the paper
        assert min(abs(box["left"] - width / 2), abs(box["right"] - width / 2)) < 3
        assert min(abs(box["top"] - height / 2), abs(box["bottom"] - height / 2)) < 6
    assert printed(page, card_page(card, size=size, large=True), size) <= 3


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("large", [False, True])
def test_handouts_fit(page, size, large):
    bowler = load_bowlers()["high-rev two-hander"]
    lanes = {"left": lane_of("house"), "right": lane_of("dried_out")}
    assert printed(page, before_league_page(bowler, lanes, "AK", size=size, large=large), size) <= 1 + large
    assert printed(page, parents_page("04", 4, ["AK"], size=size, large=large), size) <= (4 if large else 2)
    assert printed(page, tally_html("AK", size, large), size) == 1
    numbers = own_numbers.answer(bowler, lanes["left"])
    assert printed(page, own_numbers_page(numbers, "W" * 60, size=size, large=large), size) == 1


def test_twenty_four_sheets_with_their_answers_in_under_20_seconds(tmp_path, chromium):
    assert find_browser()
    start = time.perf_counter()
    pages = dict(zip(("a", "a_coach"), sheets("04", 24, "from 14", 5), strict=True))
    said = put(pages, tmp_path)
    assert time.perf_counter() - start < 20
    assert said == "In the folder printed of your lessons: a.pdf and a_coach.pdf. Print at 100 %."
    for name in pages:
        assert pages_of((tmp_path / "printed" / f"{name}.pdf").read_bytes()) == 24


def test_a_page_that_is_printed_asks_for_nothing(tmp_path, chromium):
    page = tmp_path / "a.html"
    page.write_text(sheets("00", 1, "8-9")[0], encoding="utf-8")
    print_pdf(page, tmp_path / "a.pdf", find_browser())
    assert pages_of((tmp_path / "a.pdf").read_bytes()) == 1
