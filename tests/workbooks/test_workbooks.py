"""Each workbook keeps the order, the manners and the small size of a lesson."""

import ast
import re

import nbformat
import pytest
from lesson_text import BOOKS, cells

from bowlcore.coaching.lesson_titles import TITLES

ORDER = ["Run me first", "A question from the lanes", "Predict", "Observe", "Explain", "Where this model is wrong",
         "Check yourself", "Take it to the lanes", "Sources"]  # fmt: skip
pytestmark = pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)


def headings(book):
    text = "\n".join(cell.source for cell in cells(book, "markdown"))
    return [(len(m[1]), m[2]) for m in re.finditer(r"^(#+) (.+)$", text, flags=re.M)]


def test_one_title_and_no_jump_in_headings(book):
    levels = [level for level, _ in headings(book)]
    assert levels.count(1) == 1 and levels[0] == 1
    assert all(b <= a + 1 for a, b in zip(levels, levels[1:], strict=False))


def test_parts_in_order(book):
    titles = [title for _, title in headings(book)]
    places = [next(i for i, title in enumerate(titles) if title.startswith(part)) for part in ORDER]
    assert places == sorted(places)


def test_opens_with_a_promise_and_a_time(book):
    opening = cells(book, "markdown")[0].source
    assert "**" in opening and re.search(r"hour|minutes", opening)


def test_links_resolve(book):
    for cell in cells(book, "markdown"):
        for target in re.findall(r"\]\(([^)]+)\)", cell.source):
            assert (book.parent / target.partition("#")[0]).is_file(), target


def test_no_outputs_but_checked_ones_and_no_widget_state(book):
    notebook = nbformat.read(book, 4)
    assert "widgets" not in notebook.metadata
    for cell in cells(book, "code"):
        checked = "nbval-check-output" in cell.metadata.get("tags", [])
        assert bool(cell.outputs) == checked and cell.execution_count == (1 if checked else None)
        for output in cell.outputs:
            assert not any("widget" in kind or kind.startswith("image/") for kind in output.get("data", {}))


def test_something_is_compared(book):
    assert any(cell.outputs for cell in cells(book, "code"))


def test_runs_when_opened_and_code_is_folded(book):
    assert nbformat.read(book, 4).metadata["bowlcore"]["run_on_open"]
    assert all(cell.metadata["jupyter"]["source_hidden"] for cell in cells(book, "code"))


def test_a_notebook_defines_nothing(book):
    for cell in cells(book, "code"):
        assert len(cell.source.splitlines()) <= 12
        kinds = (ast.FunctionDef, ast.ClassDef, ast.Lambda)
        assert not any(isinstance(node, kinds) for node in ast.walk(ast.parse(cell.source)))


def test_no_address_and_no_shell(book):
    for cell in cells(book, "code"):
        assert not re.search(r"https?://|^[!%]", cell.source, flags=re.M)


def test_drill_has_its_safety_line(book):
    text = "\n".join(cell.source for cell in cells(book, "markdown"))
    drill = text[text.index("Take it to the lanes") :]
    assert "**Safety.**" in drill and "pain, numbness or tingling" in drill


def test_its_title_is_the_same_everywhere(book):
    title = TITLES[book.stem[:2]]
    assert headings(book)[0][1].startswith(f"{title}: ") and nbformat.read(book, 4).metadata["title"] == title
