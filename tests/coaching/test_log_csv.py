"""A log through CSV and back without loss, also through what spreadsheets do; text never becomes a formula.

What spreadsheets do is common knowledge (from memory): separators and decimal signs follow the language, texts that
begin with = + - @ are taken for formulas, 3-10 for a date. The list of signs is OWASP's on CSV injection (from memory).
"""

import csv
import re
import sys
from io import StringIO
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bowlcore.coaching.log_csv import COLUMNS, guarded, read_csv, to_csv, unguarded
from bowlcore.coaching.log_entries import Session, Shot, Total
from bowlcore.coaching.log_source import DEMO, entries, entries_of
from bowlcore.coaching.practice_log import PracticeLog
from bowlcore.locate import data_folder

HARD = [
    "=1+1", "+49 pins", "-2 boards", "@home", "'tis", "'=x", "a;=1+1", "a, -2", 'say "yes"', "two\nlines", "007", "1.50",
    "3-10", " =1+1", "\t=1+1", "emoji 🎳👍🏽", "=HYPERLINK(\"x\")", "<script>alert(1)</script>", "“curly”", "", "   ", "＝1",
]  # fmt: skip


def hard_log(words=HARD):
    log = PracticeLog(":memory:")
    session = log.add_session(Session("2026-03-05", words[0], 7, 8, words[-1]))
    log.add_session(Session("2026-12-31", "no shots here"))
    log.add_bowler("ZZ", "left")
    for text in words:
        log.add_shot(
            session,
            Shot("AK", (3, 10), 1, "high", "left", 22, 12.5, 13.25, text, text, 2, 17.25, 310, 44.5, 3),
        )
    for standing in (None, (), (7,), (1, 2, 3, 4, 5, 6, 7, 8, 9, 10)):
        log.add_shot(session, Shot("B2", standing))
    log.add_total(session, Total("ZZ", 3, 134))
    return log


def back(data):
    log = PracticeLog(":memory:")
    read_csv(data, log)
    return log


@pytest.mark.parametrize("decimal_comma", [False, True])
@pytest.mark.parametrize("as_bytes", ["utf-8", "utf-8-sig", "utf-16"])
def test_nothing_is_lost(decimal_comma, as_bytes):
    log = hard_log()
    text = to_csv(log, decimal_comma)
    assert entries(back(text.encode(as_bytes))) == entries(log)
    assert to_csv(back(text.encode(as_bytes)), decimal_comma) == text


def spreadsheet(text, separator, quoting, ends, mark="", decimal=None):
    """What a spreadsheet saves after it has opened the text: other separator, quotes, line ends, decimal sign."""
    rows = list(csv.reader(StringIO(text), delimiter=";" if text.startswith('"kind";') else ","))
    out = StringIO()
    writer = csv.writer(out, delimiter=separator, quoting=quoting, lineterminator=ends)
    for row in rows:
        if decimal:
            row = [re.sub(r"^(\d+)\.(\d+)$", rf"\1{decimal}\2", cell) for cell in row]
        writer.writerow(row)
        writer.writerow([""] * len(row))  # and an empty row now and then
    return (mark + out.getvalue()).encode("utf-8")


@pytest.mark.claim(
    "A log that went through a spreadsheet comes back whole",
    against="what spreadsheets do, from memory",
    kind="own",
)
@pytest.mark.parametrize("separator, decimal", [(",", None), (";", ","), ("\t", ","), ("\t", None)])
@pytest.mark.parametrize("quoting", [csv.QUOTE_MINIMAL, csv.QUOTE_ALL])
@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_nothing_is_lost_through_a_spreadsheet(separator, decimal, quoting, ends):
    log = hard_log()
    saved = spreadsheet(to_csv(log, decimal == ","), separator, quoting, ends, mark="\ufeff")
    assert entries(back(saved)) == entries(log)


@given(st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=40))
@settings(deadline=None, max_examples=300)
def test_guarding_is_undone_whatever_the_text(text):
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    assert unguarded(guarded(text)) == text


@given(st.text("=+-@'; ,\t\n\"ab1", max_size=12))
@settings(deadline=None, max_examples=500)
def test_guarding_is_undone_for_nasty_texts(text):
    assert unguarded(guarded(text)) == text


@pytest.mark.claim(
    "Nothing typed into a log can become a formula in a spreadsheet",
    against="OWASP's list of signs on CSV injection, from memory",
    kind="published",
)
@pytest.mark.parametrize("decimal_comma", [False, True])
@pytest.mark.parametrize("opened_with", [",", ";", "\t"])
def test_no_cell_can_become_a_formula_whatever_separator_it_is_opened_with(decimal_comma, opened_with):
    text = to_csv(hard_log(), decimal_comma)
    for row in csv.reader(StringIO(text), delimiter=opened_with):
        for cell in row:
            assert not re.match(r"\s*[=+\-@＝＋－＠\t]", cell), cell


def test_no_cell_can_become_a_formula_at_a_start_of_line_either():
    assert not re.search(r"(?:^|[;,\t|\n])\s*[=+\-@]", guarded("a\n=1;=2,+3|@4\t-5"))


def test_a_number_below_zero_is_a_number_and_nothing_else():
    log = PracticeLog(":memory:")
    log.add_shot(log.add_session(Session("2026-03-05")), Shot("AK", axis_tilt_deg=-3.5))
    for comma, text in ((False, "-3.5"), (True, "-3,5")):
        told = to_csv(log, comma)
        assert f'"{text}"' in told and back(told).shots()[0].entry.axis_tilt_deg == -3.5


def test_no_pins_and_no_day_can_become_a_date():
    for row in csv.DictReader(StringIO(to_csv(hard_log()))):
        assert not any(
            re.search(r"\d[-/.]\d", row[name]) for name in ("standing", "year", "month", "day", "key")
        )


def test_a_file_may_be_read_twice_and_into_another_log():
    log = hard_log()
    text, before = to_csv(log), entries(log)
    assert read_csv(text, log) == 0 and entries(log) == before
    other = PracticeLog(":memory:")
    other.add_shot(other.add_session(Session("2026-01-01")), Shot("EL"))
    assert read_csv(text, other) == len(HARD) + 4 + 1 + 2 + 3
    assert len(other.shots()) == len(HARD) + 5


HEAD = ",".join(COLUMNS) + "\n"


def one(**cells):
    row = dict.fromkeys(COLUMNS, "") | {"kind": "shot", "session": "s1", "bowler": "AK"} | cells
    session = dict.fromkeys(COLUMNS, "") | {
        "kind": "session",
        "key": "s1",
        "year": "2026",
        "month": "3",
        "day": "5",
    }
    return HEAD + ",".join(session.values()) + "\n" + ",".join(f'"{cell}"' for cell in row.values()) + "\n"


@pytest.mark.parametrize(
    "text, said",
    [
        ("a,b\n1,2\n", "no line of column names that begins with 'kind'"),
        ("kind,key\nshot,1\n", "line 1: the column 'session' is missing"),
        (one(kind="throw"), "line 3: kind must be session, bowler, shot or total, got 'throw'"),
        (one(game="one"), "line 3: game must be a whole number, got 'one'"),
        (one(game="1.5"), "line 3: game must be a whole number, got '1.5'"),
        (one(over_board="1e999"), "line 3: over_board must be a number, got '1e999'"),
        (one(over_board="45"), "line 3: over_board must be a number between 1 and 39 boards, got 45"),
        (one(standing="3. Oct"), "line 3: standing must be pins parted by spaces"),
        (one(standing="11"), "line 3: leave: a pin must be a whole number between 1 and 10"),
        (one(bowler="Anna K"), "line 3: initials must be"),
        (one(session="s2"), "line 3: There is no session 's2'"),
        (one(hit="good"), "line 3: hit must be one of"),
        (b"kind,\xff\xfe\xe4", "not in UTF-8; save it"),
    ],
)
def test_a_bad_file_gets_one_sentence_and_adds_nothing(text, said):
    log = hard_log()
    before = entries(log)
    with pytest.raises(ValueError, match=said):
        read_csv(text, log)
    assert entries(log) == before


@pytest.mark.parametrize(
    "cells, shot",
    [
        ({"standing": "4-7", "arrow_board": "12,5"}, Shot("AK", (4, 7), arrow_board=12.5)),
        ({"standing": "7,0", "game": "2.0"}, Shot("AK", (7,), game=2)),
        ({"standing": "X", "kind": "Shot"}, Shot("AK", ())),
        ({"bowler": "a.k."}, Shot("AK")),
        ({"words": "=SUM(A1)"}, Shot("AK", words="=SUM(A1)")),
    ],
)
def test_what_people_type_in_a_spreadsheet_is_understood(cells, shot):
    assert back(one(**cells)).shots()[0].entry == shot


def test_the_demo_log_is_what_its_script_writes():
    sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
    from make_demo_log import text

    assert (data_folder() / "demo_log.csv").read_text(encoding="utf-8") == text()


def test_the_demo_log_has_the_projects_header():
    lines = (data_folder() / "demo_log.csv").read_text(encoding="utf-8").splitlines()
    head = [line for line in lines if line.startswith("#")]
    for name in ("title", "version", "source", "licence", "frame"):
        assert any(line.startswith(f"# {name}: ") and line.split(": ")[1].strip() for line in head)
    assert "invented" in "".join(head)
    assert [line.split()[2] for line in head if line.startswith("# column:")] == list(COLUMNS)
    assert len({kept.day for kept in entries_of(DEMO).shots}) == 6  # six weeks


def test_a_file_of_an_earlier_version_without_the_newer_columns_is_read():
    rows = list(csv.reader(StringIO(to_csv(hard_log(["plain"])))))
    newer = [i for i, name in enumerate(rows[0]) if name.endswith(("_mph", "_rpm", "_deg"))]
    text = StringIO()
    csv.writer(text).writerows([cell for i, cell in enumerate(row) if i not in newer] for row in rows)
    shot = back(text.getvalue()).shots()[0].entry
    assert shot.hit == "high" and shot.speed_mph is None and len(newer) == 4
