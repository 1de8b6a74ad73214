"""Sentences that can be read aloud in one breath, and pages as easy as a children's book.

A sentence ends at a full stop, a question mark or an exclamation mark with a blank and no small letter after it (a quote or
a bracket may come between), and at the end of a paragraph or of a point of a list. A colon or a semicolon ends none, nor
does the stop after an initial ("P. Ridenour"). Words are what stands between blanks.

LIX, the readability index of C.-H. Björnsson (1968; formula and scale from memory):

    LIX = words / sentences + 100 x words of more than six letters / words

Below 30 is a children's book, 30 to 40 easy fiction. The bounds below are our own choice.
"""

import re

import pytest
from lesson_text import BOOKS, cells, passages
from sheet_text import told

from bowlcore.coaching.sheet import LEVELS
from bowlcore.coaching.sheet_lessons import LESSONS, make_sheets

YOUTH = {"00", "01", "05", "04", "08"}
YOUTH_BOUNDS, BOUNDS = (30, 25.0), (40, 30.0)  # words of the longest sentence, LIX


def sentences(text: str) -> list[str]:
    return [part for part in re.split(r"(?<=[.!?])(?<!\b[A-Z]\.)[\"”'’)\]]*\s+(?![a-z])", text) if part]


def lix(found: list[str]) -> float:
    letters = [sum(map(str.isalpha, word)) for sentence in found for word in sentence.split()]
    return len(letters) / len(found) + 100 * sum(count > 6 for count in letters) / len(letters)


def assert_easy(found, bounds, where):
    longest = max(found, key=lambda sentence: len(sentence.split()))
    assert len(longest.split()) <= bounds[0], f"{where}: {len(longest.split())} words: {longest}"
    assert lix(found) <= bounds[1], f"{where}: LIX {lix(found):.1f}"


def test_sentences_and_lix_of_a_text_counted_by_hand():
    found = sentences('One says: "Read this." P. Ridenour reads everything (why not?) aloud.')
    assert [len(sentence.split()) for sentence in found] == [4, 7]
    assert lix(found) == pytest.approx(11 / 2 + 100 * 2 / 11)  # Ridenour, everything


@pytest.mark.claim(
    "Every lesson can be read aloud: no long sentence, an easy text",
    against="LIX of C.-H. Björnsson (1968), formula from memory; the bounds are our own",
    kind="own",
)
@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_a_lesson_is_easy_to_read(book):
    found = []
    for cell in cells(book, "markdown"):
        if cell.source.startswith("## Sources"):
            break
        found += [sentence for passage in passages(cell.source) for sentence in sentences(passage)]
    assert_easy(found, YOUTH_BOUNDS if book.stem[:2] in YOUTH else BOUNDS, book.stem)


@pytest.mark.parametrize("lesson", LESSONS)
@pytest.mark.parametrize("level", LEVELS[:2])
def test_a_childs_sheet_is_easy_to_read(lesson, level):
    for sheet in make_sheets(lesson, 2, level):
        found = [sentence for text in told(sheet) for sentence in sentences(text)]
        assert_easy(found, YOUTH_BOUNDS, f"sheet {lesson}, {level}")
