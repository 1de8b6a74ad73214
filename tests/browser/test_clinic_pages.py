"""The clinic is one sheet of paper, the course six, on both papers; counted in what the browser would print."""

import re

import pytest
from browser_page import new_page

from bowlcore.coaching.clinic_people import INVENTED
from bowlcore.coaching.clinic_told import clinic_answer, course_answer
from bowlcore.coaching.lesson_plans import LESSONS
from bowlcore.display.clinic import PAPERS, document

pytestmark = pytest.mark.browser
GROUPS = {8: (2, 3), 16: (3, 5), 24: (4, 8)}  # children: lanes, coaches


def sheets(chromium, pages, paper):
    """How many sheets a document would fill."""
    with new_page(chromium) as page:
        page.set_content(document("a title", pages, paper))
        printed = page.pdf(prefer_css_page_size=True)
    return len(re.findall(rb"/Type\s*/Page\b", printed))


@pytest.mark.parametrize("paper", PAPERS)
def test_a_clinic_is_one_page(chromium, paper):
    for number in LESSONS:
        told = clinic_answer(INVENTED, lesson=number, lanes=2, minutes=90, coaches=3)
        assert sheets(chromium, told.pages, paper) == 1, number


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("children", GROUPS)
def test_a_course_is_a_page_a_week(chromium, paper, children):
    lanes, coaches = GROUPS[children]
    told = course_answer(children, 0, lanes=lanes, minutes=90, coaches=coaches, balls_each=6)
    assert sheets(chromium, told.pages, paper) == 6
