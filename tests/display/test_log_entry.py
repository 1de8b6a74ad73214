"""The panel that copies a tally in: a line and Enter, nothing lost, nothing typed becomes a page's own text."""

import time

import pytest

from bowlcore.coaching import printed
from bowlcore.coaching.practice_log import FILE_NAME, PracticeLog
from bowlcore.display.log_entry import READY, log_panel
from bowlcore.display.tally_sheet import PAPERS, tally_html, tally_sheet


@pytest.fixture
def panel(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return log_panel()


def enter_key(panel, text):
    """As the page does it: the box with one more row, after every key or after several."""
    for key in f"{text}\n":
        panel.rows.value += key
    return panel.sentence


def button(panel, label):
    def below(widget):
        yield widget
        for child in getattr(widget, "children", ()):
            yield from below(child)

    return next(w for w in below(panel) if getattr(w, "description", None) == label)


def shots():
    with PracticeLog(FILE_NAME, create=False) as log:
        return [kept.entry for kept in log.shots()]


def test_opening_the_panel_makes_no_file(panel, tmp_path):
    assert panel.sentence == READY and list(tmp_path.iterdir()) == []
    assert READY in panel._repr_mimebundle_()["text/html"]


def test_enter_keeps_a_row_and_the_box_is_left_alone(panel):
    assert enter_key(panel, "AK: 12 f 0 /") == "Kept: AK, over 12, flush, 10 left, made."
    assert panel.rows.value == "AK: 12 f 0 /\n" and len(shots()) == 1
    enter_key(panel, "  ")
    assert len(shots()) == 1
    assert "10 left, made" in panel._tables.value
    panel.rows.value += "f 7"  # not ended yet
    assert len(shots()) == 1
    panel.rows.value += " /\n"
    assert len(shots()) == 2


def test_many_rows_that_come_at_once_are_all_kept(panel):
    """A page sends the box's last state while Python is busy: rows pile up in it and none is lost."""
    panel.rows.value = "AK: f x\nf 7 /\nBN: h 4 -\nl 2-8"
    assert [(s.bowler, s.standing) for s in shots()] == [("AK", ()), ("AK", (7,)), ("BN", (4,))]


def test_a_row_that_cannot_be_read_stays_on_the_screen_until_the_box_is_emptied(panel):
    enter_key(panel, "AK: f x")
    enter_key(panel, "hm?")
    assert "Not kept: &#x27;hm?&#x27;. This line cannot be read" in panel._message.value and len(shots()) == 1
    assert panel.sentence == "Type that row again on a new line."
    assert enter_key(panel, "f 7 /").startswith("Kept") and len(shots()) == 2
    assert "Not kept" in panel._message.value, "whoever looks at the paper must still see it later"
    button(panel, "Empty the box").click()
    assert panel._message.value == "" and panel.rows.value == "" and len(shots()) == 2
    assert enter_key(panel, "f 4 -").startswith("Kept") and len(shots()) == 3


def test_rows_that_were_kept_are_not_taken_twice(panel):
    enter_key(panel, "AK: f x")
    panel.rows.value = panel.rows.value.replace("x", "7 /")  # changed above: the log is left alone
    assert [s.standing for s in shots()] == [()]
    panel.rows.value = ""
    enter_key(panel, "f 4 -")
    assert [s.standing for s in shots()] == [(), (4,)]


def test_what_stays_and_what_changes(panel):
    panel._stays["line"].value, panel._stays["game"].value, panel._stays["trying"].value = (
        "22 13,5",
        1,
        "arrow",
    )
    panel._stays["lane"].value = "changes every turn"
    enter_key(panel, "AK: f x")
    enter_key(panel, "BN: f 7 /")
    panel._stays["line"].value = "20"
    enter_key(panel, "f x")
    enter_key(panel, "AK: f x")
    told = [(s.bowler, s.lane, s.slide_board, s.over_board, s.game, s.trying) for s in shots()]
    assert told == [
        ("AK", "left", 22, 13.5, 1, "arrow"),
        ("BN", "left", 22, 13.5, 1, "arrow"),
        ("BN", "right", 20, None, 1, "arrow"),
        ("AK", "right", 22, 13.5, 1, "arrow"),
    ]
    assert panel._stays["line"].value == "22 13.5"
    panel._stays["line"].value = "far left"
    enter_key(panel, "f x")
    assert "two numbers with a space" in panel._message.value and len(shots()) == 4


def test_take_back(panel):
    enter_key(panel, "AK: f x")
    button(panel, "Take back the last row").click()
    assert shots() == [] and panel.sentence == "The last row is taken back."


def test_a_row_of_this_day_can_be_taken_back_when_the_page_was_opened_again(panel):
    enter_key(panel, "AK: f x")
    enter_key(panel, "AK: l 7 /")
    again = log_panel()
    button(again, "Take back the last row").click()
    assert [shot.hit for shot in shots()] == ["flush"]
    button(again, "Take back the last row").click()
    button(again, "Take back the last row").click()
    assert shots() == [] and again.sentence == "Nothing was copied in on this day yet."


def test_the_release_meant_stays_with_its_bowler(panel):
    panel._stays["release"].value = "17 300 45"
    enter_key(panel, "AK: f x")
    enter_key(panel, "BN: f x")
    panel._stays["release"].value = "14,5"
    enter_key(panel, "f x")
    enter_key(panel, "AK: f x")
    told = [(s.bowler, s.speed_mph, s.rev_rate_rpm, s.axis_rotation_deg, s.axis_tilt_deg) for s in shots()]
    assert told[0] == told[3] == ("AK", 17, 300, 45, None) and told[2] == ("BN", 14.5, None, None, None)
    panel._stays["release"].value = "99"
    enter_key(panel, "f x")
    assert "speed_mph must be a number between 3 and 30" in panel._message.value and len(shots()) == 4


def test_a_score_by_hand_and_bad_ones(panel):
    for label, value in (("Initials", "AK"), ("Score", "134")):
        button(panel, label).value = value
    button(panel, "Keep this score").click()
    assert panel.sentence == "Kept: AK, game 1, 134."
    button(panel, "Score").value = "400"
    button(panel, "Keep this score").click()
    assert panel.sentence == "total must be a number between 0 and 300, got 400"


def test_day_place_and_lanes(panel):
    button(panel, "Day").value, button(panel, "Lanes of the pair").value = "2026-03-05", "7 8"
    button(panel, "Take these").click()
    enter_key(panel, "AK: f x")
    with PracticeLog(FILE_NAME) as log:
        (session,) = log.sessions().values()
    assert (f"{session.day}", session.left_lane, session.right_lane) == ("2026-03-05", 7, 8)
    button(panel, "Day").value = "yesterday"
    button(panel, "Take these").click()
    assert panel.sentence.startswith("day must be a date")


def test_csv_out_and_in_and_nothing_is_overwritten(panel, tmp_path):
    button(panel, "Write a CSV file").click()
    assert panel.sentence.startswith("There is no log of your own")
    enter_key(panel, "AK: 12.5 f 0 /, =1+1")
    for name in ("practice_log.csv", "practice_log (2).csv"):
        button(panel, "Write a CSV file").click()
        assert panel.sentence.startswith(name) and (tmp_path / name).exists()
    before = shots()
    (tmp_path / FILE_NAME).unlink()
    button(panel, "File to read").value = "practice_log (2).csv"
    button(panel, "Read this file").click()
    assert "2 new entries" not in panel.sentence and "3 new entries" in panel.sentence and shots() == before
    button(panel, "File to read").value = "../elsewhere.csv"
    button(panel, "Read this file").click()
    assert panel.sentence == "There is no file 'elsewhere.csv' in the folder of your lessons."


def test_a_csv_that_cannot_be_read_makes_no_log(panel, tmp_path):
    (tmp_path / "bad.csv").write_text("a,b\n")
    button(panel, "File to read").value = "bad.csv"
    button(panel, "Read this file").click()
    assert "no line of column names" in panel.sentence and not (tmp_path / FILE_NAME).exists()


def test_deleting_needs_the_initials(panel):
    enter_key(panel, "AK: f x")
    button(panel, "Delete for good").click()
    assert "initials must be" in panel.sentence and len(shots()) == 1
    button(panel, "Initials to delete").value = "ak"
    button(panel, "Delete for good").click()
    assert panel.sentence.startswith("AK is deleted for good, 1 rows") and shots() == []


def test_own_words_are_escaped_in_every_page(panel):
    nasty = '<img src=x onerror="alert(1)">'
    enter_key(panel, f"AK: f x, {nasty}")
    panel._stays["trying"].value = nasty
    enter_key(panel, "f 7 /")
    assert nasty not in panel._tables.value and "&lt;img" in panel._tables.value
    assert nasty not in tally_html(nasty) and nasty not in tally_sheet(nasty)._repr_mimebundle_()["text/html"]
    enter_key(panel, nasty)
    assert nasty not in panel._message.value
    from bowlcore.display.did_it_help import did_it_help_panel

    panel._stays["trying"].value = "as always"
    enter_key(panel, "f 7 /")
    told = did_it_help_panel(log="my own log", bowler="AK")
    assert nasty not in told._repr_mimebundle_()["text/html"] and nasty not in told.picture.value


def test_a_damaged_file_is_a_sentence_and_stays(panel, tmp_path):
    (tmp_path / FILE_NAME).write_bytes(b"my holiday pictures " * 300)
    enter_key(panel, "AK: f x")
    assert "is no practice log; it was left as it is" in panel._message.value
    assert (tmp_path / FILE_NAME).read_bytes().startswith(b"my holiday")


def test_eighty_lines_are_kept_quickly(panel):
    """An hour of a group. The computer's own part of a line: under a tenth of a second, on the disk."""
    start = time.perf_counter()
    for number in range(80):
        enter_key(panel, f"{'AB'[number % 2]}: 12 f 0 /")
    assert (time.perf_counter() - start) / 80 < 0.1
    assert len(shots()) == 80


@pytest.mark.parametrize("paper", PAPERS)
def test_the_sheet_is_made_for_its_paper_and_lies_with_the_other_printed_pages(
    paper, panel, tmp_path, monkeypatch
):
    monkeypatch.setattr(printed, "find_browser", lambda: None)
    assert f"size: {paper} portrait" in tally_html(paper=paper)
    button(panel, "Paper").value = paper
    button(panel, "Write the sheet").click()
    assert panel.sentence.startswith("In the folder printed of your lessons: tally_sheet.html. ")
    page = (tmp_path / "printed" / "tally_sheet.html").read_text(encoding="utf-8")
    assert page == tally_html(paper=paper) and "://" not in page
    assert page.count("<tr>") == 21 and "foul line" in page and "numbness" in page


def test_another_paper_is_refused():
    with pytest.raises(ValueError, match="paper must be one of A4, Letter, got 'A3'"):
        tally_html(paper="A3")
