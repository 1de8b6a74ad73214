"""Answers of the two panels of lesson 11: a clinic and a course, each as a sentence, rows, and pages to print."""

from typing import NamedTuple

from bowlcore.coaching import clinic_words as words
from bowlcore.coaching.clinic import TABLE, plan_clinic
from bowlcore.coaching.clinic_evening import ClinicEvening, read_equipment
from bowlcore.coaching.clinic_page import clinic_body
from bowlcore.coaching.clinic_people import read_people
from bowlcore.coaching.course_page import week_body, week_title
from bowlcore.coaching.course_plan import six_weeks, unnamed
from bowlcore.coaching.lesson_titles import numbered


class Told(NamedTuple):
    """`pages` holds (title, body as HTML), one a sheet."""

    sentence: str
    rows: list
    pages: list


def clinic_answer(people, equipment="", **given) -> Told:
    """A clinic for people typed one a line; `given` are fields of ClinicEvening.

    Raises
    ------
    ValueError
        One sentence: a line that cannot be read, or what does not fit and what would.
    """
    plan = plan_clinic(read_people(people), ClinicEvening(equipment=read_equipment(equipment), **given))
    return Told(words.sentence(plan), everyone(plan), [(words.heading(plan), clinic_body(plan))])


def course_answer(children, adults, equipment="", **given) -> Told:
    """Six weeks for so many children and adults who bowl; `given` are fields of ClinicEvening.

    Raises ValueError, in one sentence, when it does not fit.
    """
    weeks = six_weeks(
        unnamed(int(children), int(adults)), ClinicEvening(equipment=read_equipment(equipment), **given)
    )
    rows = [
        {
            "week": week.number,
            "lesson": numbered(week.plan.evening.lesson),
            "aim": week.lesson.aim,
            "goes home": week.lesson.home,
        }
        for week in weeks
    ]
    sentence = f"Six weeks alike: {words.sentence(weeks[0].plan)}"
    return Told(sentence, rows, [(week_title(week), week_body(week)) for week in weeks])


def everyone(plan) -> list[dict]:
    """A row for each person: group, lane, place in the order, ball and what is lifted."""
    rows = []
    loads = {load.person.initials: load for load in plan.loads}
    for block in [block for block in plan.blocks if block.balls][: plan.counts.groups]:
        for place in block.places:
            for turn, who in enumerate(place.who if place.name != TABLE else (), start=1):
                load = loads[who]
                rows.append(
                    {
                        "who": who,
                        "group": block.group,
                        "where": place.name,
                        "bowls as number": turn,
                        "balls": load.balls,
                        "ball": f"{load.person.ball_lb:g} lb" if load.person.ball_lb else "find one",
                        "lifted in all": words.lifted(load),
                    }
                )
    return rows
