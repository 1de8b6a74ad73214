"""A clinic on one page: who comes, what there is, and the page that follows from it."""

from html import escape

from bowlcore.coaching.clinic_evening import EQUIPMENT, RANGES, ClinicEvening, read_equipment, start_minute
from bowlcore.coaching.clinic_page import CSS
from bowlcore.coaching.clinic_people import EXAMPLE, INVENTED, read_people
from bowlcore.coaching.clinic_told import clinic_answer
from bowlcore.coaching.lesson_plans import LESSONS
from bowlcore.coaching.lesson_titles import numbered
from bowlcore.coaching.paper import SIZES, page
from bowlcore.coaching.printed import put
from bowlcore.display.controls import Choice, Number, Words, starting
from bowlcore.display.panel import Drawn, Panel

PAPERS = tuple(SIZES)
WRITE = "Write the page to print"
_SHEET = (
    ".bm-picture .bm-plan { border: 1px solid #767676; padding: 4mm 6mm; }"  # looks like a sheet of paper
)
_STEPS = {"minutes": 5, "seconds_a_ball": 5}


def clinic_panel(**start):
    """Plan a clinic; keyword arguments are starting values. The group at the start is invented.

    Raises ValueError when a name or a value does not belong to a control.
    """
    lessons = [(numbered(lesson), lesson) for lesson in LESSONS]
    with starting(start) as at:
        main = [
            Choice("lesson", "Lesson", lessons, at("lesson", "05")),
            number("minutes", "Evening", "minutes", at("minutes", 90)),
            number("lanes", "Centre", "lanes", at("lanes", 2)),
            number("coaches", "Coaches", "adults", at("coaches", 3)),
            Words("people", "Who bowls", read_people, EXAMPLE, at("people", INVENTED), rows=12),
        ]
        folds = {"Place, time and paper": place_and_time(at), "What is kept to": kept_to(at)}
    main[-1].widget.layout.width = "min(100%, 640px)"
    return Panel("clinic_panel", draw, main, folds, {WRITE: _write})


def draw(metric=False, hand="right", written=None, paper="A4", **values) -> Drawn:
    """The page as it will be printed, the sentence, and a row for each person."""
    told = clinic_answer(**values)
    return Drawn(on_screen(told.pages), with_written(told.sentence, written, values), told.rows)


def number(name, label, unit, start):
    """A slider for a field of ClinicEvening, over its allowed range."""
    low, high = RANGES[name]
    return Number(name, label, unit, low, high, _STEPS.get(name, 1), start)


def place_and_time(at):
    """Controls for the place; read what the centre has from words with commas."""
    example = ", ".join(list(EQUIPMENT)[:3])
    return [
        Words("equipment", "The centre has", read_equipment, example, at("equipment", "")),
        Words("start", "Begins at", start_minute, "18:30", at("start", "17:00")),
        number("first_lane", "First lane", "its number", at("first_lane", 1)),
        Choice("paper", "Paper", PAPERS, at("paper", PAPERS[0]), buttons=True),
    ]


def kept_to(at):
    """Controls for what a coach may tighten or loosen."""
    labels = {
        "balls_each": ("Each throws, at least", "balls"),
        "set_balls": ("In a row, at most", "balls"),
        "longest_wait_min": ("Wait at the lane, at most", "minutes"),
        "table_min": ("At the table in one go, at most", "minutes"),
        "children_per_coach": ("Each coach minds, at most", "children"),
        "seconds_a_ball": ("From ball to ball on a lane", "seconds"),
        "talk_min": ("Talk and guess", "minutes"),
    }
    return [
        number(name, label, unit, at(name, getattr(ClinicEvening, name)))
        for name, (label, unit) in labels.items()
    ]


def on_screen(pages) -> str:
    """Pages as they will be printed, one below the other."""
    shown = "".join(
        f'<div class="bm-plan"><p><b>{escape(title)}</b></p>{body}</div>' for title, body in pages
    )
    return f"<style>{CSS}{_SHEET}</style>{shown}"


def document(title, pages, paper) -> str:
    """Pages as a file to print."""
    sheets = "".join(
        f'<section class="sheet bm-plan"><h1>{escape(head)}</h1>{body}</section>' for head, body in pages
    )
    return page(title, f"<style>{CSS}</style>{sheets}", size=paper)


def write(panel, name, title, answer):
    """Write the pages of a panel as it stands; what was written is said as long as nothing is moved."""
    values = dict(panel.values)
    paper = values.pop("paper")
    try:
        said = put({name: document(title, answer(**values).pages, paper)})
    except ValueError:
        return  # the panel says already what does not fit
    except OSError as problem:
        said = f"The page could not be written: {problem.strerror or problem}."
    panel.memory["written"] = (said, values)


def with_written(sentence, written, values) -> str:
    """The sentence, and what was written if that was this very page."""
    return f"{sentence} {written[0]}" if written and written[1] == values else sentence


def _write(panel):
    lesson = panel.values["lesson"]
    write(panel, f"clinic_{lesson}", f"Clinic {lesson}", clinic_answer)
