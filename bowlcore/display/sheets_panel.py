"""Worksheets for a group as a panel: the first sheet and its answers on the screen, all of them on paper."""

from functools import lru_cache

from bowlcore.coaching.lesson_titles import numbered
from bowlcore.coaching.sheet import LEVEL_WORDS, LEVELS, MOST_PEOPLE
from bowlcore.coaching.sheet_lessons import LESSONS, make_sheets
from bowlcore.coaching.typed_names import EXAMPLE, read_names
from bowlcore.coaching.words import count
from bowlcore.display.controls import Choice, Number, Words, starting
from bowlcore.display.handouts import parents_page
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.printing import SCREEN, paper_controls, paper_of, paper_words, with_written, write_pages
from bowlcore.display.sheet_pages import CSS, coach, sheets, student

WRITE, PARENTS = "Write the sheets and the coach's copy", "Write the notes for parents"


def sheets_panel(**start):
    """Worksheets of a lesson for a group; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    lessons = [(numbered(lesson), lesson) for lesson in LESSONS]
    levels = [(LEVEL_WORDS[level], level) for level in LEVELS]
    with starting(start) as at:
        main = [
            Choice("lesson", "Lesson", lessons, at("lesson", "05")),
            Choice("level", "Level", levels, at("level", "from 10")),
            Number("people", "People", "sheets", 1, MOST_PEOPLE, 1, at("people", 8)),
            Number("seed", "Seed", "a number", 0, 999, 1, at("seed", 1)),
        ]
        names = Words("names", "Names or initials", read_names, EXAMPLE, at("names", ""), rows=3)
        folds = {"Names and paper": [names, *paper_controls(at)]}
    return Panel("sheets_panel", draw, main, folds, {WRITE: _write, PARENTS: _write_notes})


def draw(metric=False, hand="right", written=None, **values) -> Drawn:
    """The first sheet and its answers, what will be printed, and the numbers of the first sheet."""
    names = read_names(values["names"])
    first = _first(values["lesson"], values["level"], int(values["seed"]), hand)
    sentence = (
        f"{count(_people(values, names), 'sheet')} of {first.title}, {LEVEL_WORDS[first.level]}, on "
        f"{paper_words(values['size'], values['large'])}: each has its own numbers, and the coach's copy has the answers. "
        f"Seed {first.seed} always gives these sheets; here is the first of them, and its answers."
    )
    two = (student(first, names[0] if names else "") + coach(first)).replace('class="sheet ', 'class="')
    rows = [{"on sheet 1": label, "": text} for label, text in first.given]
    shown = f'<style>{CSS}{SCREEN}</style><div class="bm-preview">{two}</div>'
    return Drawn(shown, with_written(sentence, written, values, hand), rows)


@lru_cache(maxsize=64)
def _first(lesson, level, seed, hand):
    return make_sheets(lesson, 1, level, seed, hand)[0]


def _people(values, names):
    """As many sheets as asked for, and one for each name."""
    return max(int(values["people"]), len(names))


def _write(panel):
    def make(values, hand):
        names, paper = read_names(values["names"]), paper_of(values)
        lesson, level, seed = values["lesson"], values["level"], int(values["seed"])
        pages = sheets(lesson, _people(values, names), level, seed, hand=hand, names=names, **paper)
        stem = f"sheets_{lesson}_{level.replace(' ', '_')}_seed_{seed}"
        return dict(zip((stem, f"{stem}_coach"), pages, strict=True))

    write_pages(panel, make)


def _write_notes(panel):
    def make(values, hand):
        names = read_names(values["names"])
        text = parents_page(
            values["lesson"], _people(values, names), names, size=values["size"], large=values["large"]
        )
        return {f"parents_{values['lesson']}": text}

    write_pages(panel, make)
