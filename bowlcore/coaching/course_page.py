"""A week of the course as a page: aim, talk, drill, game, sheet, what goes home, rubric, exit question."""

from html import escape

from bowlcore.coaching import clinic_words as words
from bowlcore.coaching.clinic_page import html_table, safety
from bowlcore.coaching.lesson_plans import COURSE
from bowlcore.coaching.lesson_titles import numbered


def week_title(week) -> str:
    return f"Week {week.number} of {len(COURSE)}: {numbered(week.plan.evening.lesson)}"


def week_body(week) -> str:
    """The page of one week; a fragment of HTML."""
    lesson, plan = week.lesson, week.plan
    lifted = ", ".join(f"{ball:g} lb {kg:.0f} kg" for ball, kg in week.lifted.items())
    parts = [
        ("Aim", lesson.aim),
        *words.tasks(plan)[:-1],
        ("Goes home", lesson.home),
        ("Exit question", lesson.exit_question),
        ("Print and bring", "; ".join([words.to_print(plan), *words.bring(plan)]) + "."),
        ("Each child lifts", f"{plan.balls_each} balls in all: with {lifted}."),
    ]
    told = "".join(f"<p><b>{escape(part)}.</b> {escape(text)}</p>" for part, text in parts)
    return (
        f"<p>{escape(words.sentence(plan))}</p>"
        + html_table(words.outline(plan), row_heads=("time",))
        + told
        + safety(plan)
        + _rubric(lesson)
    )


def _rubric(lesson):
    """The four levels of one skill, with room for initials under each."""
    room = {f"{level}: {said}": "" for level, said in enumerate(lesson.rubric)}
    table = html_table([room], f"{lesson.skill}: write each one's initials where they are tonight")
    return table.replace("<table>", '<table class="bm-rubric">')
