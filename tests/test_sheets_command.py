"""bowlcore sheets: files where they were asked for, one sentence when something is wrong."""

import pytest

from bowlcore import sheets_command, work_folder
from bowlcore.__main__ import main
from bowlcore.coaching import printed


@pytest.fixture(autouse=True)
def no_browser(monkeypatch):
    monkeypatch.setattr(printed, "find_browser", lambda: None)


def test_the_lessons_that_can_be_typed_are_those_with_sheets():
    from bowlcore.coaching.sheet import LEVELS
    from bowlcore.coaching.sheet_lessons import LESSONS

    assert tuple(LESSONS) == sheets_command.LESSONS
    assert set(sheets_command.LEVELS.values()) == set(LEVELS)


def test_sheets_and_the_coachs_copy_are_written_and_the_same_seed_gives_the_same(tmp_path, capsys):
    for name in ("a", "b"):
        words = [
            "sheets",
            "5",
            "--people",
            "3",
            "--level",
            "8-9",
            "--seed",
            "9",
            "--size",
            "Letter",
            "--out",
            str(tmp_path / f"{name}.html"),
        ]
        assert main(words) == 0
    assert capsys.readouterr().out.startswith("a.html and a_coach.html. Open it")
    for part in ("", "_coach"):
        assert (tmp_path / f"a{part}.html").read_bytes() == (tmp_path / f"b{part}.html").read_bytes()
    assert (tmp_path / "a.html").read_text(encoding="utf-8").count("<section") == 3


def test_one_sheet_for_each_name(tmp_path, capsys):
    assert main(["sheets", "00", "--names", "AK, <b>", "--large", "--out", str(tmp_path / "a.html")]) == 0
    text = (tmp_path / "a.html").read_text(encoding="utf-8")
    assert text.count("<section") == 2 and "Name AK" in text and "&lt;b&gt;" in text and "16pt" in text


def test_without_a_name_they_go_to_the_work_folder(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(work_folder, "default_folder", lambda: tmp_path / "lessons")
    assert main(["sheets", "tally"]) == 0
    assert main(["sheets", "parents", "--lesson", "05", "--people", "2"]) == 0
    assert sorted(path.name for path in (tmp_path / "lessons" / "printed").iterdir()) == [
        "parents.html",
        "tally.html",
    ]
    assert str(tmp_path / "lessons" / "printed") in capsys.readouterr().out


def test_a_card_for_a_bowler(tmp_path, capsys):
    words = ["--bowler", "ramp bowler", "--lane", "house", "--names", "AK"]
    assert main(["sheets", "card", *words, "--out", str(tmp_path / "card.html")]) == 0
    assert main(["sheets", "before", *words, "--out", str(tmp_path / "before.html")]) == 0
    assert "slide on 13, over 14" in (tmp_path / "card.html").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "words, told",
    [
        (["00", "--people", "61"], "people must be a number between 1 and 60, got 61"),
        (
            ["00", "--people", "1", "--names", "A, B"],
            "people must be at least as many as the names, 2, got 1",
        ),
        (["00", "--seed", "-4"], "seed must be a number between 0 and 999999, got -4"),
        (["00", "--names", "x" * 31], "a name is at most 30 letters long"),
        (["card", "--bowler", "Bob"], "bowler must be one of child of eight"),
        (["before", "--lane", "ice"], "lane must be one of"),
        (["tally", "--out", "x.doc"], "a file to print ends in .html or .pdf, got 'x.doc'"),
    ],
)
def test_what_cannot_be_done_is_one_sentence(words, told, capsys):
    assert main(["sheets", *words]) == 1
    [line] = capsys.readouterr().err.splitlines()
    assert line.startswith(f"bowlcore: {told}")


@pytest.mark.parametrize(
    "words", [["77"], ["00", "--level", "3"], ["00", "--people", "two"], ["00", "--size", "A3"], []]
)
def test_what_is_typed_wrongly_is_one_sentence_and_exit_code_2(words, capsys):
    with pytest.raises(SystemExit) as stop:
        main(["sheets", *words])
    assert stop.value.code == 2
    [_] = capsys.readouterr().err.splitlines()
