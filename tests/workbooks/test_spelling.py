"""Every word of the lessons, of printed worksheets and of the questions is an English word or a word of the trade.

English is the word list of the package pyspellchecker; what it lacks (units, words of bowling, British spellings) stands in
`tests/data/words_of_the_trade.txt`. Words in capitals are initials or abbreviations, and in Sources a word with a capital is
a name: those are not looked up. Nor are code, formulas and addresses.
"""

import re
from functools import cache
from pathlib import Path

import pytest
from lesson_text import BOOKS, cells, without_markup
from sheet_text import everything
from spellchecker import SpellChecker

from bowlcore.coaching.questions import QUESTIONS
from bowlcore.coaching.sheet import LEVELS
from bowlcore.coaching.sheet_lessons import LESSONS, make_sheets

TRADE = (Path(__file__).parents[1] / "data" / "words_of_the_trade.txt").read_text(encoding="utf-8").split()
ENGLISH = SpellChecker(language="en")


def words(text: str, names=False) -> set[str]:
    """The words of a text in small letters, without a possessive s; with `names` those with a capital are left out."""
    found = re.findall(r"(?<!\w)[^\W\d_]{2,}(?:['’](?!s\b)[^\W\d_]+)?(?!\w)", text)
    return {word.lower() for word in found if not word.isupper() and not (names and word[0].isupper())}


def of_lesson(book) -> set[str]:
    found = set()
    for cell in cells(book, "markdown"):
        plain = re.sub(r"[*_|#]+", " ", without_markup(cell.source))
        found |= words(plain, names=cell.source.startswith("## Sources"))
    return found


@cache
def of_sheets(lesson) -> set[str]:
    made = [sheet for level in LEVELS for sheet in make_sheets(lesson, 1, level)]
    return {word for sheet in made for text in everything(sheet) for word in words(text)}


def of_question(name) -> set[str]:
    asked = QUESTIONS[name]
    return words(" ".join((asked.text, *asked.choices, asked.hint, asked.why)))


def unknown(found) -> list[str]:
    return sorted(ENGLISH.unknown(found) - set(TRADE))


def test_a_slip_of_the_pen_is_found():
    assert unknown(words("The centre's ball hoooks at 40 ft, AK's too: don't.")) == ["hoooks"]
    assert words("R. Razman, in his *papers*", names=True) == {"in", "his", "papers"}


@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_words_of_a_lesson(book):
    assert unknown(of_lesson(book)) == []


@pytest.mark.parametrize("lesson", LESSONS)
def test_words_of_the_sheets(lesson):
    assert unknown(of_sheets(lesson)) == []


def test_words_of_the_questions():
    assert {name: wrong for name in QUESTIONS if (wrong := unknown(of_question(name)))} == {}


def test_the_list_is_in_order_and_every_word_of_it_is_needed():
    assert TRADE == sorted(set(TRADE))
    used = set().union(*map(of_lesson, BOOKS), *map(of_sheets, LESSONS), *map(of_question, QUESTIONS))
    assert sorted(set(TRADE) - used) == []
    assert sorted(set(TRADE) - ENGLISH.unknown(TRADE)) == []
