"""Six weeks for a youth group: a page a week, made for its size."""

from bowlcore.coaching.clinic_told import course_answer
from bowlcore.coaching.course_plan import COURSE
from bowlcore.display.clinic import kept_to, number, on_screen, place_and_time, with_written, write
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel

WRITE = "Write the six pages to print"


def course_panel(**start):
    """Plan six weeks; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            number("minutes", "Evening", "minutes", at("minutes", 90)),
            Number("children", "Group", "children", 1, 40, 1, at("children", 8)),
            number("lanes", "Centre", "lanes", at("lanes", 2)),
            number("coaches", "Coaches", "adults", at("coaches", 3)),
            Choice("week", "Week", [*range(1, len(COURSE) + 1)], at("week", 1)),
        ]
        folds = {
            "Adults, place, time and paper": [
                Number("adults", "And with them", "adults", 0, 8, 1, at("adults", 0)),
                *place_and_time(at),
            ],
            "What is kept to": kept_to(at),
        }
    return Panel("course_panel", draw, main, folds, {WRITE: _write})


def draw(metric=False, hand="right", written=None, paper="A4", week=1, **values) -> Drawn:
    """The page of one week, the sentence, and the six weeks as rows."""
    told = course_answer(**values)
    sentence = with_written(told.sentence, written, {**values, "week": week})
    return Drawn(on_screen([told.pages[week - 1]]), sentence, told.rows)


def _write(panel):
    write(panel, "six_weeks", "Six weeks", lambda week, **values: course_answer(**values))
