"""Pages to print: nothing is fetched, names are escaped and kept nowhere, cards say what the engine says."""

import re
from dataclasses import replace

import pytest

from bowlcore import bowler_card, bowler_odds, load_bowlers, simulate
from bowlcore.coaching import own_numbers, print_pdf, printed
from bowlcore.coaching.before_league import warm_up
from bowlcore.coaching.feet import line_words
from bowlcore.coaching.paper import page
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spares import PLAIN_BALL, ball_for, spare_chance
from bowlcore.coaching.typed_names import read_names
from bowlcore.display import sheets_panel as sheets_panel_file
from bowlcore.display.bowler_card_page import card_page
from bowlcore.display.handouts import before_league_page, own_numbers_page, parents_page
from bowlcore.display.own_numbers import WRITE, own_numbers_panel
from bowlcore.display.sheet_pages import sheets
from bowlcore.display.sheets_panel import sheets_panel
from bowlcore.display.tally_sheet import tally_html

NASTY = '</style><script>alert(1)</script>"><img src=x onerror=y>'


@pytest.fixture(scope="module")
def bowler():
    return load_bowlers()["low-rev senior"]


@pytest.fixture(scope="module")
def card(bowler):
    """A card of one lane, made once."""
    return bowler_card(bowler, lane_of("house"), games=2)


@pytest.fixture
def no_browser(monkeypatch):
    monkeypatch.setattr(printed, "find_browser", lambda: None)


def every_page(card, bowler, name, **paper):
    yield from sheets("05", 1, "8-9", 3, names=[name], **paper)
    yield from sheets("01", 1, "from 14", 3, names=[name], **paper)
    yield card_page(card, name, name, **paper)
    yield before_league_page(bowler, {"": lane_of("house")}, name, **paper)
    yield own_numbers_page(own_numbers.answer(bowler, lane_of("house")), name, **paper)
    yield parents_page("05", 2, [name], **paper)
    yield tally_html(name, paper["size"], paper["large"])
    yield page(name, "<p>x</p>", **paper)


@pytest.mark.claim(
    "Printed pages fetch nothing, and what people type stays text",
    against="the text of every kind of page",
    kind="own",
)
@pytest.mark.parametrize("size, large", [("A4", False), ("Letter", True)])
def test_pages_fetch_nothing_and_names_stay_text(card, bowler, size, large):
    for text in every_page(card, bowler, NASTY, size=size, large=large):
        assert "default-src 'none'" in text and 'lang="en"' in text
        assert not re.search(
            r"<(script|img|link|iframe|object)|<[a-z][^>]*\s(src|href|on\w+)=|url\(|@import", text, re.I
        )
        outside = re.findall(r"[a-z]+://[^\"'\s>]+", text)
        assert set(outside) <= {"http://www.w3.org/2000/svg"}  # the name of a format, no address
        assert f"size: {size} portrait" in text and f"font: {16 if large else 12}pt" in text
        assert text.count("</style>") == text.count("<style>")


@pytest.mark.claim(
    "Each line of a bowler's card is what the advice says for that lane",
    against="the advice asked again",
    kind="own",
)
def test_each_line_of_a_card_is_what_the_engine_says(card, bowler):
    [column] = card.columns
    assert column.start.bowler == column.bowler and column.start.kind in ("stay", "line")
    assert column.pocket == bowler_odds(column.bowler, lane_of("house")).pocket
    kinds = [line.seen.split(" by ")[0] for line in column.lines]
    assert kinds.count("high") == 2 and kinds.count("light") == 2
    for line in column.lines:
        change = line.change
        assert change.after == bowler_odds(change.bowler, change.surface)
        assert change.after.pocket > change.before.pocket - 0.10  # never worse by more than a tie
        if not line.weak_hand:  # the ball really does on that lane what the card says
            board = simulate(column.bowler.release, change.surface, column.bowler.ball).entry_board
            by = float(re.search(r"by ([\d.]+)", line.seen)[1])
            assert abs(board - 17.5) == pytest.approx(by, abs=0.26)
            assert (board > 17.5) == line.seen.startswith("high")
    assert [later.games for later in column.later] == [1, 2]


def test_the_corner_pin_of_a_card_is_the_best_that_was_tried(card, bowler):
    corner, ball = card.columns[0].corner, ball_for(bowler, PLAIN_BALL)
    here = spare_chance(replace(bowler, release=corner.line), lane_of("house"), corner.pin, ball, 128)
    assert corner.pin == 10 and here.front == corner.chance > 0.5


def test_a_card_prints_its_lines(card):
    text = card_page(card, "AK")
    for line in card.columns[0].lines:
        assert f"If {line.seen}:" in text
        assert line.change.words.rstrip(".").rpartition(": ")[2] in text
    assert "numbness" in text and "MY OWN NOTES" in text


@pytest.mark.parametrize(
    "wrong", [{"left": lane_of("house")}, {"left": lane_of("house"), "centre": lane_of("house")}]
)
def test_a_pair_has_a_left_and_a_right_lane(wrong, bowler):
    with pytest.raises(ValueError, match='surface must be a lane, or name two, {"left": ..., "right": ...}'):
        bowler_card(bowler, wrong)


def test_before_league_has_eight_balls_a_lane_and_its_safety(bowler):
    text = before_league_page(bowler, {"left": lane_of("house"), "right": lane_of("dried_out")})
    assert text.count("<tbody>") == 2 and text.count("<tr>") == 2 * (8 + 1)
    assert "numbness" in text and "10-pin" in text


def test_own_numbers_are_written_as_the_panel_has_them(tmp_path, monkeypatch, no_browser):
    monkeypatch.chdir(tmp_path)
    panel = own_numbers_panel(size="Letter")
    next(b for b in panel.widget.children[4].children if b.description == WRITE).click()
    assert "In the folder printed of your lessons: own_numbers.html." in panel.sentence
    text = (tmp_path / "printed" / "own_numbers.html").read_text(encoding="utf-8")
    assert "size: Letter portrait" in text and "numbness" in text and "found on the lane" in text
    for row in panel._drawn.rows:
        assert "".join(f"<td>{cell}</td>" for cell in row.values()) in text


@pytest.mark.parametrize("lesson", [f"{number:02d}" for number in range(11)])
def test_a_note_for_parents_says_what_was_done_what_to_practise_and_safety(lesson):
    text = parents_page(lesson)
    for part in ("What was done.", "To practise at home.", "Safety.", "consent"):
        assert part in text


def test_another_lesson_has_no_note():
    with pytest.raises(ValueError, match="lesson must be one of 00, .* got '77'"):
        parents_page("77")


def test_names_are_read_with_commas_or_lines():
    assert read_names("AK, BL\nCM;") == ("AK", "BL", "CM")
    with pytest.raises(ValueError, match="a name is at most 30 letters long"):
        read_names("x" * 31)
    with pytest.raises(ValueError, match="names must be at most 60, got 61"):
        read_names(",".join(["x"] * 61))


def test_without_a_browser_it_is_said_how_to_print(tmp_path, monkeypatch, no_browser):
    monkeypatch.chdir(tmp_path)
    said = printed.put({"a": page("A", "")})
    assert said.startswith("In the folder printed of your lessons: a.html. Open it") and "Print" in said
    assert printed.put({"a": page("A", "")}).startswith("In the folder printed of your lessons: a (2).html.")
    assert sorted(path.name for path in (tmp_path / "printed").iterdir()) == ["a (2).html", "a.html"]
    with pytest.raises(OSError, match="no browser that makes a PDF was found, so this was written: b.html"):
        printed.put_as({tmp_path / "b.pdf": page("B", "")})
    assert (tmp_path / "b.html").exists()


def test_a_persons_file_is_never_overwritten(tmp_path, no_browser):
    mine = tmp_path / "mine.html"
    mine.write_text("mine")
    with pytest.raises(OSError, match="mine.html is there already and was not made by this program"):
        printed.put_as({mine: page("A", "")})
    assert mine.read_text() == "mine"
    (tmp_path / "mine.pdf").write_text("mine")
    mine.unlink()
    with pytest.raises(OSError, match="mine.pdf is there already"):
        printed.put_as({tmp_path / "mine.pdf": page("A", "")})
    for text in ("one", "two"):  # a page of ours may be written again
        printed.put_as({tmp_path / "ours.html": page(text, "")})
    assert "<title>two" in (tmp_path / "ours.html").read_text()


def test_other_endings_and_absent_folders_are_refused(tmp_path, no_browser):
    with pytest.raises(ValueError, match="a file to print ends in .html or .pdf, got 'a.doc'"):
        printed.put_as({tmp_path / "a.doc": ""})
    with pytest.raises(OSError, match="there is no folder"):
        printed.put_as({tmp_path / "none" / "a.html": ""})
    (tmp_path / "printed").write_text("a file")
    with pytest.raises(OSError, match="the folder printed cannot be made"):
        printed.put({"a": ""}, tmp_path)


def test_a_browser_that_fails_leaves_the_page_and_says_how_to_print(tmp_path, monkeypatch):
    monkeypatch.setattr(printed, "find_browser", lambda: str(tmp_path / "no such browser"))
    assert "a.html. Open it" in printed.put({"a": page("A", "")}, tmp_path)
    with pytest.raises(OSError, match="did not make a PDF of b.html"):
        printed.put_as({tmp_path / "b.pdf": page("B", "")})


def test_browsers_are_looked_for_on_the_path_and_in_usual_places(tmp_path, monkeypatch):
    monkeypatch.setattr(print_pdf.shutil, "which", lambda name: None)
    monkeypatch.setattr(print_pdf.sys, "platform", "win32")
    monkeypatch.setenv("PROGRAMFILES", str(tmp_path))
    for name in ("PROGRAMFILES(X86)", "LOCALAPPDATA"):
        monkeypatch.delenv(name, raising=False)
    assert print_pdf.find_browser() is None
    place = tmp_path / "Microsoft" / "Edge" / "Application"
    place.mkdir(parents=True)
    (place / "msedge.exe").write_text("")
    assert print_pdf.find_browser() == str(place / "msedge.exe")


def test_the_panel_writes_sheets_and_keeps_names_nowhere_else(tmp_path, monkeypatch, no_browser):
    monkeypatch.chdir(tmp_path)
    panel = sheets_panel(people=1, seed=4)
    panel.set(names="Zz, <b>")
    assert "Zz" in panel.picture.value and "Name <b>" not in panel.picture.value
    assert panel.sentence.startswith("2 sheets of 05 Into the pocket, from 10 years, on A4, 12 point")
    sheets_panel_file._write(panel)
    panel.redraw()
    assert "In the folder printed of your lessons: sheets_05_from_10_seed_4.html and " in panel.sentence
    written = sorted(path for path in tmp_path.rglob("*") if path.is_file())
    assert [path.name for path in written] == [
        "sheets_05_from_10_seed_4.html",
        "sheets_05_from_10_seed_4_coach.html",
    ]
    assert written[0].read_text(encoding="utf-8").count("<section") == 2
    panel.set(seed=5)
    assert "printed" not in panel.sentence


@pytest.mark.parametrize("name", ["lesson", "level", "people", "seed", "names", "size", "large"])
def test_every_control_of_the_sheets_changes_the_page(name):
    panel = sheets_panel()
    control, seen = panel.controls[name], set()
    for end in (control.ends[0], control.ends[-1]):
        panel.set(**{name: end})
        seen.add(panel.sentence + panel.picture.value)
    assert len(seen) == 2


def test_unknown_starting_values_of_the_sheets_are_refused():
    with pytest.raises(ValueError, match="no control 'pupils'"):
        sheets_panel(pupils=3)
    with pytest.raises(ValueError, match="people must be between 1 and 60"):
        sheets_panel(people=100)


@pytest.mark.slow
def test_the_card_panel_follows_its_controls(tmp_path, monkeypatch, no_browser):
    from bowlcore.display import bowler_card_panel

    monkeypatch.chdir(tmp_path)
    panel = bowler_card_panel.card_panel(bowler="ramp bowler", right="", bowlers=1)
    first = panel.sentence
    assert first.startswith("This lane: slide on 13, over 14")
    panel.set(
        own=True,
        slide_board=15,
        over_board=15,
        speed_mph=8,
        rev_rate_rpm=0,
        axis_rotation_deg=0,
        axis_tilt_deg=0,
    )
    assert panel.sentence != first
    panel.set(name="Zz")
    assert "Zz" in panel.picture.value
    bowler_card_panel._write(panel)
    bowler_card_panel._write_before(panel)
    panel.redraw()
    assert "before_league.html" in panel.sentence
    assert sorted(path.name for path in (tmp_path / "printed").iterdir()) == [
        "before_league.html",
        "card.html",
    ]


def test_warm_up_and_card_name_the_same_line():
    bowler, lane = load_bowlers()["league one-hander"], lane_of("dried_out")
    (column,) = bowler_card(bowler, lane).columns
    assert warm_up(bowler, lane)[1].line == line_words(column.bowler.release, bowler.feet)
