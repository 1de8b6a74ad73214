"""`bowlcore show` as it is typed: what is missing or wrong is one sentence. Voila itself is not needed here."""

import importlib.metadata
import json
import sys
import tomllib
from pathlib import Path

import pytest

from bowlcore import doctor, serve, show
from bowlcore.__main__ import main

ROOT = Path(__file__).parents[1]


@pytest.fixture
def lessons(tmp_path):
    folder = tmp_path / "my lessons"
    folder.mkdir()
    for name, about in {
        "04_shape_the_path": {"bowlcore": {"run_on_open": True}, "title": "Shape the path"},
        "04_shape_the_path (new)": {"bowlcore": {"run_on_open": True}, "title": "Shape the path"},
        "00_start_here": {"bowlcore": {"run_on_open": True}},
        "my own notes": {},
        "another course": {"bowlcore": "yes"},
    }.items():
        (folder / f"{name}.ipynb").write_text(json.dumps({"cells": [], "metadata": about}))
    (folder / "05_half_written.ipynb").write_text('{"cells": [')
    return folder


@pytest.fixture
def with_voila(monkeypatch):
    """As if the extra were installed; nothing is copied and nothing started."""
    started = []
    monkeypatch.setattr(show, "find_spec", lambda _: True)
    monkeypatch.setattr(serve.work_folder, "fill", lambda _: [])
    monkeypatch.setattr(serve, "until_ctrl_c", lambda *how: started.append(how) or 0)
    return started


def sentence(capsys):
    """The one line that was said as an error."""
    said = capsys.readouterr()
    assert said.out == ""
    [line] = said.err.splitlines()
    return line


def test_without_voila_it_says_what_to_type(lessons, capsys, monkeypatch):
    monkeypatch.setattr(show, "find_spec", lambda _: None)
    before = sorted(lessons.iterdir())
    assert main(["show", str(lessons)]) == 1
    assert sentence(capsys) == (
        "bowlcore: One part is missing for showing; "
        f'type: "{sys.executable}" -m pip install "voila>=0.5.13,<0.6"'
    )
    assert sorted(lessons.iterdir()) == before


def test_what_to_type_is_what_the_extra_holds():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    assert project["optional-dependencies"]["show"] == [show.NEEDS]


def test_the_doctor_is_well_with_and_without_it(monkeypatch):
    monkeypatch.setattr(doctor, "find_spec", lambda _: None)
    assert show.NEEDS in doctor.showing()
    monkeypatch.setattr(doctor, "find_spec", lambda _: True)
    monkeypatch.setattr(importlib.metadata, "version", lambda _: "0.5.13")
    assert doctor.showing().startswith("voila 0.5.13")


def test_a_folder_that_is_a_file(tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(show, "find_spec", lambda _: True)
    taken = tmp_path / "taken"
    taken.write_text("mine")
    assert main(["show", str(taken)]) == 1
    assert sentence(capsys) == f"bowlcore: {taken} is a file, and a folder is needed"
    assert taken.read_text() == "mine"


def test_a_lesson_that_is_not_there(lessons, with_voila, capsys):
    assert main(["show", str(lessons), "--lesson", "44"]) == 1
    assert "No lesson begins with 44" in sentence(capsys)
    assert with_voila == []


def test_an_option_that_is_not_there(capsys):
    with pytest.raises(SystemExit) as stop:
        main(["show", "--large"])
    assert stop.value.code == 2
    assert "--large" in sentence(capsys)


@pytest.mark.parametrize(
    "words, page", [([], "/"), (["--lesson", "04"], "/voila/render/04_shape_the_path.ipynb")]
)
def test_it_begins_at_the_contents_or_at_a_lesson(words, page, lessons, with_voila):
    assert main(["show", str(lessons), "--no-browser", *words]) == 0
    [(_, _, opened, folder, browser)] = with_voila
    assert (opened, folder, browser) == (page, lessons, False)


def test_only_lessons_are_shown_and_in_the_order_of_the_course(lessons):
    assert [lesson["name"] for lesson in show.lessons(lessons)] == [
        "00_start_here.ipynb",
        "04_shape_the_path.ipynb",
        "04_shape_the_path (new).ipynb",
    ]
    assert [lesson["title"] for lesson in show.lessons(lessons)[:2]] == ["00_start_here", "Shape the path"]


@pytest.mark.claim(
    "bowlcore show serves the lessons to this computer only, behind a token",
    against="the settings as they are written",
    kind="own",
)
def test_it_is_for_this_computer_only_and_pages_stay_as_they_are(lessons, tmp_path):
    command = show.server_command(lessons, tmp_path)
    settings = json.loads((tmp_path / "voila.json").read_text())
    assert command[-2:] == [f"--Voila.config_file_paths={tmp_path}", str(lessons)]
    assert settings["Voila"]["ip"] == "127.0.0.1"
    assert settings["Voila"]["auto_token"] is True
    assert settings["VoilaConfiguration"]["allow_template_override"] == "NO"
    assert settings["MappingKernelManager"]["cull_idle_timeout"] > 0


def test_no_file_of_the_pages_names_another_computer():
    files = [path for path in (ROOT / "bowlcore" / "lab" / "share" / "voila").rglob("*") if path.is_file()]
    assert {path.name for path in files} >= {
        "index.html.j2",
        "page.html",
        "tree-lab.html",
        "show.css",
        "show.js",
    }
    assert [path.name for path in files if "//" in path.read_text().replace("// ", "")] == []


def test_the_port_is_read_from_what_the_server_says(tmp_path):
    log = tmp_path / "server.log"
    log.write_text("[Voila] The port 8866 is already in use, trying another port.\n")
    assert show._port(tmp_path) is None
    log.write_text("[Voila] Voilà is running at:\nhttp://127.0.0.1:8867/?token=...\n", encoding="utf-8")
    assert show._port(tmp_path) == 8867
