"""Whatever is typed, named or lies in a file stays text on every page, or is refused in one sentence; it is never run.

A page is read as a browser reads it, by the standard library's parser: with a hostile text it has no element and no
attribute that it does not have with a harmless one. The list of texts is our own; the signs that begin a formula are
OWASP's on CSV injection (from memory).
"""

import contextlib
import csv
import re
import time
from collections import Counter
from html.parser import HTMLParser
from io import StringIO
from pathlib import Path

import pytest
from hostile_help import TEXTS, WAYS

from bowlcore.coaching.log_csv import read_csv, to_csv
from bowlcore.coaching.log_entries import Session, Shot
from bowlcore.coaching.practice_log import PracticeLog
from bowlcore.coaching.typed_names import read_names
from bowlcore.display.log_entry import log_panel
from bowlcore.formula_pictures import with_pictures

HARMLESS = ("ZZ", "2", "house", "tape", "17:00", "it stood up", "AK, 9-11")  # whichever the way takes
REFUSAL = ("p", ("class", "role"))  # how a panel says that it does not take something
_PLACES = ("src", "href", "xlink:href", "action")
_LIMIT_S = 1.0  # of this computer's own work, for a megabyte
pytestmark = pytest.mark.usefixtures("here")


class _Reader(HTMLParser):
    def __init__(self):
        super().__init__()
        self.found, self.words = Counter(), []

    def handle_starttag(self, tag, attributes):
        self.found[tag, tuple(sorted(name for name, _ in attributes))] += 1
        assert not any(name.startswith("on") for name, _ in attributes), attributes
        for name, value in attributes:
            assert name not in _PLACES or not re.match(r"\s*(javascript|x$|//)", value or "")

    def handle_data(self, data):
        self.words.append(data)


def parsed(html):
    """How often each element stands in a page, by its name and its attributes' names."""
    html.encode("utf-8")  # no half sign is in it
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.found


def said_or_shown(way, text, folder):
    """The page, or "" when the text is refused in one sentence."""
    try:
        return way(text, folder)
    except (ValueError, OSError) as problem:
        said = str(problem)
        assert not isinstance(problem, UnicodeError) and said and "\n" not in said and len(said) < 500, said
        assert "Errno" not in said, said
        said.encode("utf-8")
        return ""


@pytest.fixture(scope="module")
def harmless(tmp_path_factory):
    """Elements of each way's pages with harmless texts, made once."""
    made = {}

    def of(name):
        if name not in made:
            made[name] = Counter()
            for text in HARMLESS:
                with contextlib.chdir(tmp_path_factory.mktemp("harmless")):
                    made[name] |= parsed(said_or_shown(WAYS[name], text, Path.cwd()))
        return made[name]

    return of


@pytest.mark.slow
@pytest.mark.claim(
    "No text that is typed or stands in a file is run, becomes a formula or a path",
    against="the ways in and the texts of hostile_help.py, our own list",
    kind="own",
)
@pytest.mark.parametrize("name", WAYS)
def test_a_text_stays_text(name, here, harmless, tmp_path, monkeypatch):
    for kind, text in TEXTS.items():
        folder = tmp_path / kind.replace(" ", "_")
        folder.mkdir()
        monkeypatch.chdir(folder)
        start = time.process_time()
        page = said_or_shown(WAYS[name], text, folder)
        took = time.process_time() - start
        found = parsed(page)
        strange = {element for element in found if element not in harmless(name)} - {REFUSAL}
        assert not strange, f"{kind}: {strange}"
        for tag in ("script", "style", "iframe", "object", "img", "link", "form"):
            count = sum(number for (one, _), number in found.items() if one == tag)
            usual = sum(number for (one, _), number in harmless(name).items() if one == tag)
            assert count <= usual, f"{kind}: {count} {tag}"
        assert len(text) < 100_000 or took < _LIMIT_S, f"{kind}: {took:.1f} s"


@pytest.mark.parametrize("key", ["=1+1", "+49", "-2", "@SUM(A1)", '=HYPERLINK("x")', "a,=1", "k1;+2"])
def test_a_key_of_another_program_never_becomes_a_formula_and_comes_back(key):
    log, back = PracticeLog(":memory:"), PracticeLog(":memory:")
    log.add_shot(log.add_session(Session("2026-03-05"), key), Shot("AK"), f"{key} too")
    text = to_csv(log)
    for separator in ",;\t":
        for row in csv.reader(StringIO(text), delimiter=separator):
            assert not any(re.match(r"\s*[=+\-@]", cell) for cell in row)
    read_csv(text, back)
    assert list(back.sessions()) == [key] and back.shots()[0].key == f"{key} too"
    assert read_csv(text, log) == 0, "the same entries came in twice"


def test_names_of_all_alphabets_are_taken_and_none_turns_the_line_round():
    every = ("Zoë", "علی\u200cرضا", "O'Neil", "דנה", "李", "A&B <c>")
    assert read_names(", ".join(every)) == every
    for turned in "\u202a\u202e\u2066\u2069":
        with pytest.raises(ValueError, match="letters that can be printed, got 'A.u20"):
            read_names(f"A{turned}B")


@pytest.mark.parametrize("value", [10**400, -(10**400)])
def test_a_number_that_no_float_holds_is_refused_in_words(value):
    with pytest.raises(
        ValueError, match="game must be a number between 1 and 30, got a number of more than 300 digits"
    ):
        Shot("AK", game=value)


def test_rows_pasted_by_the_thousand_are_refused_and_the_next_row_is_taken(here):
    panel = log_panel()
    panel.rows.value = "AK: f x\n" * 201
    assert "Not kept: 201 rows at once, and at most 200 are taken." in panel._message.value
    assert list(here.iterdir()) == []
    assert panel.enter("AK: f x").startswith("Kept")


def test_dollar_signs_are_no_formula_in_a_picture_nor_in_notes():
    page = WAYS["what was tried"](r"$x^$ or $\frac$", Path.cwd())
    assert r"$x^$ or $\frac$" in re.search(r"<svg.*</svg>", page, re.S)[0]
    assert with_pictures(r"five $\nonsense$ here") == r"five $\nonsense$ here"
    assert "<img" in with_pictures("$x^2$")
