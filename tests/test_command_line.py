"""The command line: quick to start, on this computer only, and one sentence when something is wrong."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from bowlcore import called, doctor, open_lab, serve
from bowlcore.__main__ import main

HEAVY = {"numpy", "pandas", "matplotlib", "scipy", "ipywidgets", "jupyterlab"}


def run(*words, **more):
    return subprocess.run([sys.executable, "-m", "bowlcore", *words], capture_output=True, text=True, **more)


def sentence(capsys):
    """The one line that was said as an error."""
    said = capsys.readouterr()
    assert said.out == ""
    [line] = said.err.splitlines()
    return line


@pytest.fixture
def lessons(tmp_path):
    folder = tmp_path / "my lessons"
    folder.mkdir()
    for name in "00_start_here", "04_shape_the_path (new)", "04_shape_the_path":
        (folder / f"{name}.ipynb").write_text('{"cells": []}')
    return folder


@pytest.mark.parametrize("name", ["bowlcore", "bowlcore.__main__"])
def test_import_loads_nothing_heavy(name):
    code = f"import sys, {name}; print(sorted({HEAVY!r} & set(sys.modules)))"
    assert subprocess.check_output([sys.executable, "-c", code], text=True) == "[]\n"


def test_no_command_says_what_to_type(capsys):
    assert main([]) == 0
    assert "bowlcore open" in capsys.readouterr().out


def test_it_runs_as_a_module_from_another_folder(tmp_path):
    assert "bowlcore doctor" in run(cwd=tmp_path).stdout


def test_a_wrong_command_is_one_sentence(capsys):
    with pytest.raises(SystemExit) as stop:
        main(["opne"])
    assert stop.value.code == 2
    assert "'opne'" in sentence(capsys)


def test_a_folder_that_is_a_file(tmp_path, capsys):
    taken = tmp_path / "taken"
    taken.write_text("mine")
    assert main(["open", str(taken)]) == 1
    assert sentence(capsys) == f"bowlcore: {taken} is a file, and a folder is needed"
    assert taken.read_text() == "mine"


@pytest.mark.parametrize("parent", ["absent", "file"])
def test_a_folder_whose_parent_is_missing(parent, tmp_path, capsys):
    (tmp_path / "file").write_text("")
    assert main(["open", str(tmp_path / parent / "lessons")]) == 1
    assert f"there is no folder {tmp_path / parent}" in sentence(capsys)
    assert not (tmp_path / "absent").exists()


def test_a_folder_that_cannot_be_written(tmp_path, capsys, monkeypatch):
    def refuse(*_, **__):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("os.fsync", refuse)
    assert main(["open", str(tmp_path)]) == 1
    assert sentence(capsys) == (
        f"bowlcore: Cannot write in the folder {tmp_path} (Permission denied); name another one: bowlcore open FOLDER"
    )
    assert list(tmp_path.iterdir()) == []


def test_a_page_that_is_not_there(lessons):
    with pytest.raises(ValueError, match="No lesson begins with 44; they go from 00 to 04"):
        open_lab.find_lesson(lessons, "44")


def test_a_page_is_found_by_its_number(lessons):
    assert open_lab.find_lesson(lessons) == "00_start_here.ipynb"
    assert (
        open_lab.find_lesson(lessons, "04") == open_lab.find_lesson(lessons, "4") == "04_shape_the_path.ipynb"
    )


@pytest.mark.parametrize(
    ("typed", "folder", "lesson"),
    [
        (["open", "04"], None, "04"),
        (["open", "4"], None, "4"),
        (["open", "--lesson", "04"], None, "04"),
        (["open", "--page", "04"], None, "04"),
        (["open", "./2026", "--lesson", "04"], Path("2026"), "04"),
        (["open", "there"], Path("there"), ""),
    ],
)
def test_a_number_alone_is_a_lesson_and_makes_no_folder(typed, folder, lesson, monkeypatch, tmp_path):
    monkeypatch.chdir(tmp_path)
    Path("there").mkdir()
    asked = []
    monkeypatch.setattr(open_lab, "open_lab", lambda place, **how: asked.append((place, how["lesson"])) or 0)
    assert main(typed) == 0 and asked == [(folder, lesson)]


@pytest.mark.parametrize("typed", ["spares", "My Lessons"])
def test_a_slip_of_the_keys_makes_no_folder(typed, monkeypatch, tmp_path, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["open", typed]) == 1 and list(tmp_path.iterdir()) == []
    said = capsys.readouterr().err
    assert f"There is no folder '{typed}' here; a lesson is a number from 00 to 12" in said
    assert f'open "./{typed}"' in said.replace("\\", "/") and said.count("\n") == 1


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (["opne"], "there is no command 'opne', did you mean open?; type bowlcore --help"),
        (["xyz"], "there is no command 'xyz'; type bowlcore --help"),
        (["sheets", "five"], "what to print is 00 to 10, card, before, tally or parents, got 'five'"),
        (["sheets"], "say what to print: 00 to 10, card, before, tally or parents"),
        (
            ["sheets", "05", "--people", "four"],
            "people must be a whole number, got 'four'; type bowlcore sheets --help",
        ),
        (["pages", "04", "--speed", "fast"], "speed must be a number, got 'fast'"),
        (
            ["open", "My", "Lessons"],
            "there is no place for Lessons here (a name with a blank goes in quotation marks)",
        ),
    ],
)
def test_what_is_typed_wrongly_is_told_in_plain_words(typed, told, capsys):
    with pytest.raises(SystemExit) as ended:
        main(typed)
    said = capsys.readouterr().err
    assert ended.value.code == 2 and told in said and said.count("\n") == 1


@pytest.mark.claim(
    "bowlcore open serves the lessons to this computer only",
    against="the command as it is started: the loopback address",
    kind="own",
)
def test_the_server_is_for_this_computer_only(lessons, tmp_path):
    command = open_lab.server_command(lessons, "a b.ipynb", tmp_path)
    assert "--ip=127.0.0.1" in command
    assert f"--ServerApp.root_dir={lessons}" in command
    assert "--LabApp.default_url=/doc/tree/a%20b.ipynb" in command


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="only where there is a root user")
@pytest.mark.parametrize("user", [0, 1000])
def test_only_root_needs_leave_to_be_root(user, tmp_path, monkeypatch):
    monkeypatch.setattr(os, "geteuid", lambda: user)
    assert ("--allow-root" in open_lab.server_command(tmp_path, "a.ipynb", tmp_path)) == (user == 0)


def test_the_token_is_where_other_people_cannot_read_it(tmp_path):
    assert serve.environment("secret", tmp_path)["JUPYTER_TOKEN"] == "secret"
    assert not any("secret" in word for word in open_lab.server_command(tmp_path, "a.ipynb", tmp_path))


def test_the_persons_own_jupyter_settings_are_kept(tmp_path, monkeypatch):
    monkeypatch.setenv("JUPYTER_PATH", "theirs")
    monkeypatch.delenv("JUPYTER_CONFIG_PATH", raising=False)
    environment = serve.environment("secret", tmp_path)
    ours, theirs = environment["JUPYTER_PATH"].split(os.pathsep)
    assert theirs == "theirs"
    assert (Path(ours) / "labextensions" / "ball-motion-page" / "package.json").is_file()
    assert (Path(environment["JUPYTER_CONFIG_PATH"]) / "labconfig" / "page_config.json").is_file()
    assert os.environ["JUPYTER_PATH"] == "theirs"


def test_a_server_that_does_not_start_is_one_sentence(lessons, capsys, monkeypatch):
    broken = [sys.executable, "-c", "print('noise'); print('the reason'); raise SystemExit(3)"]
    monkeypatch.setattr(open_lab, "server_command", lambda *_: broken)
    monkeypatch.setattr(serve.signal, "signal", lambda *_: None)
    monkeypatch.setattr(serve.work_folder, "fill", lambda _: [])
    assert main(["open", str(lessons)]) == 1
    said = capsys.readouterr()
    assert said.out == "Starting: up to half a minute …\n"
    assert said.err == "bowlcore: The lessons could not be started (the reason); type: bowlcore doctor\n"


def test_the_doctor_checks_every_dependency():
    project = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text())["project"]
    assert [wanted.partition(">")[0] for wanted in project["dependencies"]] == list(doctor.PACKAGES)


def test_the_doctor_is_well_with_and_without_the_parts_for_clips(monkeypatch):
    project = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text())["project"]
    assert project["optional-dependencies"]["clip"] == list(doctor.CLIP.values())
    monkeypatch.setattr(doctor, "find_spec", lambda name: None if name == "PIL" else True)
    assert all(f'"{wanted}"' in doctor.clips() for wanted in doctor.CLIP.values())
    monkeypatch.setattr(doctor, "find_spec", lambda _: True)
    monkeypatch.setattr(doctor.metadata, "version", lambda _: "16.0")
    assert doctor.clips() == "av 16.0: releases can be measured on a clip"


def test_the_doctor_says_what_is_well_and_what_is_not(capsys, monkeypatch):
    def broken():
        raise RuntimeError("no lesson was found")

    monkeypatch.setattr(doctor, "CHECKS", [(doctor.python_version, ""), (broken, "Type: this")])
    assert main(["doctor"]) == 1
    good, bad, remedy, end = capsys.readouterr().out.splitlines()
    assert good.startswith("ok      Python 3.")
    assert bad == "not ok  no lesson was found"
    assert remedy.strip() == "Type: this"

    monkeypatch.setattr(doctor, "CHECKS", [(doctor.python_version, "")])
    assert main(["doctor"]) == 0


def test_a_computer_whose_browser_does_not_open_by_itself_is_well(monkeypatch):
    def none():
        raise doctor.webbrowser.Error

    monkeypatch.setattr(doctor.webbrowser, "get", none)
    assert doctor.browser() == "no browser opens by itself here: copy the address that is printed into one"


@pytest.mark.parametrize(
    "typed, found, told",
    [
        ("bowlcore", "/usr/bin/bowlcore", "bowlcore"),
        (".venv/bin/bowlcore", None, ".venv/bin/bowlcore"),
        ("my course/.venv/bin/bowlcore", None, '"my course/.venv/bin/bowlcore"'),
        ("lib/bowlcore/__main__.py", None, f'"{sys.executable}" -m bowlcore'),
        ("pytest", None, "bowlcore"),
    ],
)
def test_what_is_to_be_typed_is_what_was_typed(typed, found, told, monkeypatch):
    monkeypatch.setattr(sys, "argv", [typed])
    monkeypatch.setattr(called.shutil, "which", lambda name: found)
    assert called.called() == told


@pytest.mark.parametrize("check", [check for check, _ in doctor.CHECKS])
def test_the_doctor_finds_this_installation_well(check):
    assert check()
