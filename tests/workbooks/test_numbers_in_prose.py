"""Every number in a lesson's prose is computed, sourced, or invented for teaching, and marked so.

The marks lie in the metadata of the cell, where a reader is not troubled by them:
`"bowlcore": {"numbers": {"40.91": "computed", "0.04": "sourced: Frohlich", "17": "invented"}}`.
"""

import html
import re

import pytest
from lesson_text import BOOKS, cells, numbers

pytestmark = pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)


def marks(cell) -> dict[str, str]:
    return cell.metadata.get("bowlcore", {}).get("numbers", {})


def sources(book) -> str:
    text = "\n".join(cell.source for cell in cells(book, "markdown"))
    return text[text.index("## Sources") :]


def computed_numbers(book) -> set[str]:
    """All numbers in the outputs of the checked cells, which the notebook's own test runs and compares."""
    said = [
        re.sub(r"<[^>]+>", " ", html.unescape("".join(text)))
        for cell in cells(book, "code")
        for output in cell.outputs
        for text in [output.get("text", "")]
        + [t for kind, t in output.get("data", {}).items() if "html" in kind]
    ]
    return set(re.findall(r"\d+(?:\.\d+)?", " ".join(said)))


@pytest.mark.claim(
    "Every number in a lesson's text is marked as computed, sourced or invented",
    against="the text of each lesson",
    kind="own",
)
def test_none_is_unmarked_and_no_mark_is_left_over(book):
    for cell in cells(book, "markdown"):
        if cell.source.startswith("## Sources"):
            continue
        assert set(numbers(cell.source)) == set(marks(cell)), cell.source[:60]


def test_marks_are_of_three_kinds(book):
    for cell in cells(book, "markdown"):
        for number, mark in marks(cell).items():
            assert mark in ("computed", "invented") or re.match(r"sourced: \S.{5,}", mark), (number, mark)


@pytest.mark.claim(
    "Every number marked as computed stands in what that lesson computes",
    against="outputs that are run and compared by README's command",
    kind="own",
)
def test_a_computed_number_stands_in_the_executed_notebook(book):
    there = computed_numbers(book)
    for cell in cells(book, "markdown"):
        for number, mark in marks(cell).items():
            assert mark != "computed" or number.lstrip("-−") in there, (number, cell.source[:60])


@pytest.mark.claim(
    "Every number marked as sourced has its source at the end of the lesson",
    against="the Sources of each lesson",
    kind="own",
)
def test_a_source_exists(book):
    for cell in cells(book, "markdown"):
        for number, mark in marks(cell).items():
            kind, _, source = mark.partition(": ")
            assert kind != "sourced" or source in sources(book), (number, source)
