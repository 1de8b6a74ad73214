"""Six weeks for a youth group: a lesson a week, each as an evening made for the group's size.

Weekly order: pins and pictures early. The evenings are alike, so that children know what comes next; only the lesson changes.
"""

from dataclasses import replace
from typing import NamedTuple

from bowlcore.coaching.clinic import Plan, lifted_kg, plan_clinic
from bowlcore.coaching.clinic_people import Person
from bowlcore.coaching.lesson_plans import COURSE, LESSONS, LessonPlan

BALLS_LB = (6, 8, 10, 12)  # for which a week says what its balls weigh together


class Week(NamedTuple):
    """One evening of the course."""

    number: int  # from 1
    lesson: LessonPlan
    plan: Plan

    @property
    def lifted(self) -> dict:
        """Ball [lb] to the weight of all deliveries of one child [kg]."""
        return {ball: lifted_kg(self.plan.balls_each, ball) for ball in BALLS_LB}


def six_weeks(people, evening) -> tuple[Week, ...]:
    """The weeks of the course.

    Parameters
    ----------
    people : sequence of Person
        See `unnamed` for a group of which only the size is known.
    evening : ClinicEvening
        Of each week; its lesson is replaced.

    Raises
    ------
    DoesNotFit
        A ValueError that says what would fit.
    ValueError
        Nobody, too many, or the same initials twice.
    """
    return tuple(
        Week(number, LESSONS[lesson], plan_clinic(people, replace(evening, lesson=lesson)))
        for number, lesson in enumerate(COURSE, start=1)
    )


def unnamed(children, adults=0) -> tuple[Person, ...]:
    """A group before anybody has put their name down: C1, C2 ... are children, A1, A2 ... adults."""
    return (
        *(Person(f"C{k}", "9-11") for k in range(1, children + 1)),
        *(Person(f"A{k}", "adult") for k in range(1, adults + 1)),
    )
