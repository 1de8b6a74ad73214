"""bowlcore pages: files where they were asked for, a bowler's own numbers on them, one sentence when something is wrong."""

import pytest

from bowlcore import work_folder
from bowlcore.__main__ import main
from bowlcore.coaching import own_lanes
from bowlcore.display import phone_lessons
from bowlcore.motion.surface import FrictionLaw

FEW = {"speed_mph": (16, 17)}


@pytest.fixture(autouse=True)
def two_small_pages(monkeypatch, tmp_path):
    """Two lessons over few settings, and a work folder of its own."""
    every = phone_lessons.phone_lessons()
    few = {
        "00": every["00"]._replace(controls=FEW),
        "05": every["05"]._replace(controls={"ball_lb": (15, 14)}),
    }
    monkeypatch.setattr(phone_lessons, "phone_lessons", lambda: few)
    monkeypatch.setattr(work_folder, "default_folder", lambda: tmp_path / "lessons")


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_pages_lie_where_they_were_asked_for_and_nothing_is_overwritten(tmp_path, capsys):
    for _ in range(2):
        assert main(["pages", "0", "5", "11", "--into", str(tmp_path / "to give")]) == 0
    assert names(tmp_path / "to give") == [
        "00_start_here (2).html", "00_start_here.html", "05_into_the_pocket (2).html", "05_into_the_pocket.html"
    ]  # fmt: skip
    told = capsys.readouterr().out.splitlines()[:6]
    assert told[0] == "00 Start here …" and told[1].startswith("  00_start_here.html  (0.")
    assert told[4] == phone_lessons.WITHOUT["11"]
    assert told[5].startswith(f"In {tmp_path / 'to give'}. Send it to a phone")
    text = (tmp_path / "to give" / "00_start_here.html").read_text(encoding="utf-8")
    assert "<h1>Start here: can I trust this on Thursday night?</h1>" in text
    assert "<b>Safety.</b> Slow down by a shorter, calmer swing" in text


def test_without_a_name_they_go_beside_the_lessons(tmp_path, capsys):
    assert main(["pages", "00"]) == 0
    assert names(tmp_path / "lessons" / "phone") == ["00_start_here.html"]


def test_a_bowlers_own_numbers_and_lane(tmp_path, monkeypatch, capsys):
    (tmp_path / "lessons").mkdir()
    monkeypatch.chdir(tmp_path / "lessons")
    own_lanes.keep("Thursday left", "house", FrictionLaw(0.04, 0.2, 1.0), 2.0)
    monkeypatch.chdir(tmp_path)
    words = [
        "--speed",
        "15.5",
        "--revs",
        "250",
        "--rotation",
        "60",
        "--tilt",
        "8",
        "--laydown",
        "20",
        "--target",
        "14",
    ]
    assert (
        main(["pages", "00", "5", *words, "--pattern", "Thursday left", "--hand", "left", "--into", "."]) == 0
    )
    text = (tmp_path / "00_start_here.html").read_text(encoding="utf-8")
    assert 'value="0" aria-valuetext="15.5"' in text  # the page begins there, below its own steps
    for told in ("Rev rate, rpm: 250", "Axis rotation, degrees: 60", "Axis tilt, degrees: 8", "Laydown, board: 20",
                 "Target at 15 ft, board: 14", "Oil pattern: my lane: Thursday left"):  # fmt: skip
        assert told in text
    assert "board from the left" in text
    told = capsys.readouterr().out
    none = "speed and no revs and no rotation and no tilt and no laydown and no target and no pattern"
    assert f"It has no {none} to set; there it is as in the lesson." in told and told.count("It has no") == 1


def test_metric(tmp_path, capsys):
    assert main(["pages", "00", "--metric", "--into", str(tmp_path)]) == 0
    text = (tmp_path / "00_start_here.html").read_text(encoding="utf-8")
    assert "Ball speed, km/h" in text and 'aria-valuetext="27.4"' in text


@pytest.mark.parametrize(
    "words, told",
    [
        (["--speed", "99"], "ball speed must be between 8 and 24 mph, got 99"),
        (["--tilt", "nan"], "axis tilt must be between 0 and 60 degrees, got nan"),
        (["--pattern", "ice"], "pattern must be one of carried_down, dried_out"),
        (["--into", "a/b"], "The folder"),
        (["--into", "file"], "file is a file, and a folder is needed"),
    ],
)
def test_what_cannot_be_done_is_one_sentence(words, told, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "file").write_text("mine")
    assert main(["pages", "00", *words]) == 1
    [line] = capsys.readouterr().err.splitlines()
    assert line.startswith("bowlcore: ") and told in line


@pytest.mark.parametrize("words", [["77"], ["x"], ["00", "--speed", "fast"], ["00", "--hand", "both"]])
def test_what_is_typed_wrongly_is_one_sentence_and_exit_code_2(words, capsys):
    with pytest.raises(SystemExit) as stop:
        main(["pages", *words])
    assert stop.value.code == 2
    [line] = capsys.readouterr().err.splitlines()
    assert words[-1] in line
