"""One place for the words and formulas, made from one place, and every lesson leads there at a first use."""

import re
import sys
from pathlib import Path

import nbformat
import pytest
from lesson_text import BOOKS, cells, first_use, links_to

from bowlcore.coaching.glossary import GLOSSARY, PAGE
from bowlcore.locate import workbooks_folder

sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
from formulas_of_lessons import OF_LESSONS
from make_words_page import formulas, page

KEPT = (workbooks_folder() / PAGE).read_text(encoding="utf-8")


def test_the_page_is_the_one_that_is_made():
    assert KEPT == page(workbooks_folder()) + "\n"


def test_words_are_told_once_and_in_plain_sentences():
    names = [form.lower() for word in GLOSSARY for form in (word.name, *word.forms)]
    assert len(set(names)) == len(names)
    for word in GLOSSARY:
        assert word.meaning.endswith(".") and len(word.meaning) < 170, word.name


@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_every_displayed_formula_has_its_meaning(book):
    in_words_only = [formula for formula in OF_LESSONS[book.stem[:2]] if formula.tex]
    assert len(formulas(nbformat.read(book, 4))) + len(in_words_only) == len(OF_LESSONS[book.stem[:2]])


@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_a_word_is_linked_where_it_is_first_used(book):
    for word in GLOSSARY:
        if word.everyday:
            continue
        for cell in cells(book, "markdown"):
            if cell.source.startswith("## Sources"):
                break
            plain, links = first_use(word, cell.source), links_to(word, cell.source)
            if plain or links:
                assert links, f"{word.name}: link it in: {cell.source[:60]}"
                assert plain is None or links[0].start() < plain.start(), word.name
                break


@pytest.mark.parametrize("book", BOOKS, ids=lambda path: path.stem)
def test_links_to_words_arrive(book):
    anchors = {word.anchor for word in GLOSSARY} | {"Words"}
    for cell in cells(book, "markdown"):
        for anchor in re.findall(rf"\]\({re.escape(PAGE)}#([^)]+)\)", cell.source):
            assert anchor in anchors
