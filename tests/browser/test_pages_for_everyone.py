"""Pages to print and to give away, read by axe as a screen reader would meet them: nothing keeps anybody out."""

import pytest
from lesson_page import serious_for_axe

from bowlcore import bowler_card, load_bowlers
from bowlcore.coaching import own_numbers
from bowlcore.coaching.clinic_people import INVENTED
from bowlcore.coaching.clinic_told import clinic_answer, course_answer
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.sheet import LEVELS
from bowlcore.coaching.sheet_lessons import LESSONS, make_sheets
from bowlcore.display.bowler_card_page import card_page
from bowlcore.display.clinic import PAPERS, document
from bowlcore.display.handouts import before_league_page, own_numbers_page, parents_page
from bowlcore.display.sheet_pages import coachs_page, students_page
from bowlcore.display.tally_sheet import tally_html

pytestmark = pytest.mark.browser


def sheets(make, level):
    return make([sheet for lesson in LESSONS for sheet in make_sheets(lesson, 1, level, 21, "right")])


def bowler():
    return load_bowlers()["low-rev senior"]


def lanes():
    return {"left": lane_of("house"), "right": lane_of("dried_out")}


PAGES = {
    **{f"sheets, {level}": lambda level=level: sheets(students_page, level) for level in LEVELS},
    **{f"coach's copy, {level}": lambda level=level: sheets(coachs_page, level) for level in LEVELS},
    "card": lambda: card_page(bowler_card(bowler(), lanes()), "AK", "on a pair"),
    "card in large print": lambda: card_page(bowler_card(bowler(), lanes()), "AK", large=True),
    "before league": lambda: before_league_page(bowler(), lanes(), "AK"),
    "parents' note": lambda: parents_page("04", 2, ["AK"]),
    "tally sheet": lambda: tally_html("AK"),
    "own numbers": lambda: own_numbers_page(own_numbers.answer(bowler(), lane_of("house")), "AK"),
    "clinic": lambda: document(
        "Clinic", clinic_answer(INVENTED, lanes=2, minutes=90, coaches=3).pages, PAPERS[0]
    ),
    "course": lambda: document(
        "Course", course_answer(8, 0, lanes=2, minutes=90, coaches=3).pages, PAPERS[0]
    ),
}


@pytest.mark.parametrize("name", PAGES)
def test_axe_finds_nothing_serious(page, name):
    page.set_content(PAGES[name]())
    assert serious_for_axe(page) == []
    assert page.title() and page.locator("html").get_attribute("lang") == "en"
    assert page.outside == []
