"""A person's own copies: filled, kept up to date, and never overwritten once changed."""

import json

import pytest

from bowlcore import work_folder
from bowlcore.coaching.glossary import PAGE

LESSON = "04_shape_the_path.ipynb"


def notebook(*sources, outputs=(), **metadata):
    cells = [
        {"cell_type": "code", "source": source, "outputs": list(outputs), "metadata": {}}
        for source in sources
    ]
    return json.dumps({"cells": cells, "metadata": metadata, "nbformat": 4, "nbformat_minor": 5})


@pytest.fixture
def shipped(tmp_path, monkeypatch):
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / LESSON).write_text(notebook("version 1"))
    monkeypatch.setattr(work_folder, "workbooks_folder", lambda: folder)
    return folder


@pytest.fixture
def own(tmp_path, shipped):
    folder = tmp_path / "own"
    assert work_folder.fill(folder) == []
    return folder


def names(folder):
    return sorted(found.name for found in folder.iterdir())


def test_only_the_lessons_and_the_record_are_made(own):
    assert names(own) == [".bowlcore.json", LESSON]


def test_an_unchanged_copy_follows_the_newer_lesson(own, shipped):
    (shipped / LESSON).write_text(notebook("version 2"))
    assert work_folder.fill(own) == []
    assert (own / LESSON).read_text() == notebook("version 2")
    assert names(own) == [".bowlcore.json", LESSON]


def test_what_jupyter_writes_is_not_a_change(own, shipped):
    (own / LESSON).write_text(
        notebook(["ver", "sion 1"], "", outputs=[{"text": "17"}], kernelspec={"name": "x"})
    )
    (shipped / LESSON).write_text(notebook("version 2"))
    assert work_folder.fill(own) == []
    assert (own / LESSON).read_text() == notebook("version 2")


@pytest.mark.claim(
    "A lesson that you changed is never overwritten by a newer one",
    against="the bytes of the file",
    kind="own",
)
def test_a_changed_copy_is_never_overwritten(own, shipped):
    mine = notebook("version 1, and my own notes")
    (own / LESSON).write_text(mine)
    assert work_folder.fill(own) == []  # no newer lesson, so nothing to say
    (shipped / LESSON).write_text(notebook("version 2"))
    [line] = work_folder.fill(own)
    assert line == (
        f"You changed {LESSON}, so it stays as it is; the newer lesson is beside it as 04_shape_the_path (new).ipynb"
    )
    assert (own / LESSON).read_text() == mine
    assert (own / "04_shape_the_path (new).ipynb").read_text() == notebook("version 2")
    assert work_folder.fill(own) == []  # said once


def test_a_changed_newer_copy_is_not_overwritten_either(own, shipped):
    for version in 2, 3:
        for copy in own.glob("*.ipynb"):
            copy.write_text(notebook(f"mine before {version}: {copy.name}"))
        before = {copy: copy.read_text() for copy in own.glob("*.ipynb")}
        (shipped / LESSON).write_text(notebook(f"version {version}"))
        assert len(work_folder.fill(own)) == 1
        assert {copy: copy.read_text() for copy in before} == before
    assert (own / "04_shape_the_path (new) (new).ipynb").read_text() == notebook("version 3")


def test_a_changed_copy_survives_a_lost_record(own, shipped):
    for record in "", "not json", "[]":
        (own / LESSON).write_text(notebook("mine"))
        (own / ".bowlcore.json").write_text(record)
        work_folder.fill(own)
        assert (own / LESSON).read_text() == notebook("mine")


def test_a_copy_that_is_no_longer_a_notebook_is_kept(own, shipped):
    (own / LESSON).write_text("half a file")
    (shipped / LESSON).write_text(notebook("version 2"))
    assert len(work_folder.fill(own)) == 1
    assert (own / LESSON).read_text() == "half a file"


def test_a_deleted_copy_comes_back_fresh(own):
    (own / LESSON).unlink()
    work_folder.fill(own)
    assert (own / LESSON).read_text() == notebook("version 1")


def test_a_folder_of_the_first_release_keeps_all_that_is_in_it(own, shipped):
    """A log, a clip with its clicks, printed pages, a notebook of one's own; the record knows no page of words."""
    others = [
        "mine.ipynb",
        "practice_log.sqlite",
        "clips/a.mp4",
        "clips/a.mp4.json",
        "printed/05 sheets.html",
    ]
    for name in others:
        (own / name).parent.mkdir(exist_ok=True)
        (own / name).write_bytes(f"{name} as it was".encode())
    (shipped / LESSON).write_text(notebook("version 2"))
    (shipped / "05_another.ipynb").write_text(notebook("new in this version"))
    (shipped / PAGE).write_text("# Words")
    assert work_folder.fill(own) == []
    assert all((own / name).read_bytes() == f"{name} as it was".encode() for name in others)
    assert (own / LESSON).read_text() == notebook("version 2")
    assert (own / "05_another.ipynb").is_file() and (own / PAGE).read_text() == "# Words"


def test_the_lessons_themselves_are_left_alone(shipped):
    assert work_folder.fill(shipped) == []
    assert names(shipped) == [LESSON]


def test_a_failed_write_leaves_the_old_file_whole(own, shipped, monkeypatch):
    def disk_full(*_):
        raise OSError(28, "No space left on device")

    (shipped / LESSON).write_text(notebook("version 2"))
    monkeypatch.setattr("os.replace", disk_full)
    with pytest.raises(OSError, match="No space left on device"):
        work_folder.fill(own)
    assert (own / LESSON).read_text() == notebook("version 1")
    assert names(own) == [".bowlcore.json", LESSON]


def test_the_default_folder_is_in_the_documents_if_there_are_any(tmp_path, monkeypatch):
    monkeypatch.setattr("pathlib.Path.home", lambda: tmp_path)
    assert work_folder.default_folder() == tmp_path / "Ball Motion Workbook"
    (tmp_path / "Documents").mkdir()
    assert work_folder.default_folder() == tmp_path / "Documents" / "Ball Motion Workbook"
