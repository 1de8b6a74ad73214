"""Files that are not what they should be: cut off, of another kind, not to be read, gone. One sentence, nothing lost.

Logs and clips have more such tests of their own (tests/coaching/test_practice_log.py, test_clip_places.py).
"""

import errno
import json
import os
import sqlite3
import time
from contextlib import closing
from pathlib import Path

import pytest
from disk_help import fail, names, one_sentence

from bowlcore import show, work_folder
from bowlcore.coaching import log_files, own_lanes
from bowlcore.coaching.clip_folder import Arrival, clip_names
from bowlcore.coaching.clip_places import Places, keep, kept
from bowlcore.coaching.log_file import LogError
from bowlcore.coaching.log_source import NO_LOG, OWN, entries_of
from bowlcore.coaching.practice_log import FILE_NAME, PracticeLog
from bowlcore.coaching.tally_desk import Desk
from bowlcore.display.log_entry import log_panel
from bowlcore.motion import ball, oil
from bowlcore.rack import carry_table

PIPE = [os.mkfifo] if hasattr(os, "mkfifo") else []  # not on every system
pytestmark = pytest.mark.usefixtures("here")


# -- pipes, folders, files that may not be read, in the place of what is read --


@pytest.mark.parametrize("made", [Path.mkdir, *PIPE, lambda path: path.write_bytes(b"[" * 100_000)])
def test_a_lesson_that_is_no_file_is_left_and_the_new_one_lies_beside(made, here, shipped):
    made(here / "04_lesson.ipynb")
    [line] = work_folder.fill(here)
    assert "stays as it is" in line and (here / "04_lesson (new).ipynb").is_file()
    assert [one["name"] for one in show.lessons(here)] == []


def test_a_lesson_that_may_not_be_read_is_left(here, shipped, monkeypatch):
    work_folder.fill(here)
    (here / "04_lesson.ipynb").write_text("my own")
    real = Path.read_bytes

    def locked(path):
        return fail(errno.EACCES)() if path == here / "04_lesson.ipynb" else real(path)

    monkeypatch.setattr(Path, "read_bytes", locked)
    (shipped / "04_lesson.ipynb").write_text(json.dumps({"cells": [{"cell_type": "raw", "source": "new"}]}))
    assert "stays as it is" in work_folder.fill(here)[0]
    monkeypatch.undo()
    assert (here / "04_lesson.ipynb").read_text() == "my own"


def test_a_record_that_is_deeply_nested(here, shipped):
    (here / ".bowlcore.json").write_bytes(b"[" * 100_000)
    assert work_folder.fill(here) == [] and json.loads((here / ".bowlcore.json").read_text())


@pytest.mark.parametrize("content", [
    b"[" * 4000, b"", b"\xff\xfe\0",
    b'{"version": 1, "shape": "house", "longer_ft": 1%b, "oil": 1, "dry": 1, "scale_um": 1}' % (b"0" * 400),
])  # fmt: skip
def test_a_kept_lane_that_is_damaged(content, here):
    (here / "my_lanes").mkdir()
    (here / "my_lanes" / "odd.json").write_bytes(content)
    assert "it was left as it is" in one_sentence(own_lanes.own_lane, "my lane: odd")
    assert (here / "my_lanes" / "odd.json").read_bytes() == content


def test_names_that_no_page_can_show_are_not_offered(here):
    for folder, end in (("my_lanes", b".json"), ("clips", b".mp4")):
        (here / folder).mkdir()
        for name in (b"bad \xff", b"good"):
            Path(os.fsdecode(os.path.join(os.fsencode(here / folder), name + end))).write_bytes(b"x")
    assert own_lanes.own_names() == ["my lane: good"] and clip_names() == ["good.mp4"]


@pytest.mark.parametrize("read", [
    lambda path: oil.load_pattern(path), lambda path: log_files.read_csv_file(path.name),
    lambda path: own_lanes.own_lane("my lane: odd"),
])  # fmt: skip
def test_a_file_that_may_not_be_read(read, here, monkeypatch):
    """Simulated, because nothing is refused to those who run tests as root."""
    path = here / "odd.csv"
    for file in (path, here / "my_lanes" / "odd.json"):
        file.parent.mkdir(exist_ok=True)
        file.write_text("x")
    monkeypatch.setattr(Path, "open", fail(errno.EACCES))
    assert "Permission denied" in one_sentence(read, path)


def test_a_pattern_name_longer_than_a_disk_allows():
    assert "there is no pattern" in one_sentence(oil.load_pattern, "a" * 400)


def test_a_csv_larger_than_what_is_read_is_refused_unread(here):
    with (here / "big.csv").open("wb") as file:
        file.truncate(3_000_000_000)  # takes no room on most disks
    start = time.process_time()
    assert "at most 20 MB" in one_sentence(log_files.read_csv_file, "big.csv")
    assert time.process_time() - start < 1.0


@pytest.mark.parametrize(
    "name, cut", [("carry_leaves.csv", 500), ("carry_cells.csv", 40), ("balls.csv", 0), ("balls.csv", 300)]
)
def test_shipped_tables_that_are_cut_off_are_known_as_damaged(name, cut, here, monkeypatch):
    """At the end of a row, where every number that is left is sound."""
    for other in ("carry_cells.csv", "carry_leaves.csv", "balls.csv"):
        text = (oil.data_folder() / other).read_text(encoding="utf-8")
        if other == name:
            text = "".join(text.splitlines(keepends=True)[:-cut]) if name != "balls.csv" else text[:cut]
        (here / other).write_text(text, encoding="utf-8")
    monkeypatch.setattr(carry_table, "data_folder", lambda: here)
    monkeypatch.setattr(ball, "data_folder", lambda: here)
    read = ball._shipped.__wrapped__ if name == "balls.csv" else carry_table.carry_table.__wrapped__
    assert name in one_sentence(read)


# -- a clip that comes in --


def test_a_clip_whose_part_was_swept_out_is_given_up(here):
    """As when the clock jumps a day while another page clears the folder up."""
    coming = Arrival("a.mp4", 4)
    coming.add(b"ab")
    for part in (here / "clips").iterdir():
        os.utime(part, (0, 0))
    Arrival("b.mp4", 1).give_up()
    assert "could not be copied in" in one_sentence(coming.add, b"cd")
    assert clip_names() == [] and names(here / "clips") == []


def test_a_clip_for_which_the_disk_has_no_room_leaves_nothing(here, monkeypatch):
    coming = Arrival("a.mp4", 4)
    monkeypatch.setattr(Path, "open", fail(errno.ENOSPC))
    assert "No space left on device" in one_sentence(coming.add, b"ab")
    assert names(here / "clips") == []


def test_clicks_that_cannot_be_put_aside(here, monkeypatch):
    (here / "clips").mkdir()
    (here / "clips" / "a.mp4").write_bytes(b"x")
    bad = here / "clips" / "a.mp4.clicks.json"
    bad.write_bytes(b"{")
    monkeypatch.setattr(Path, "rename", fail(errno.EROFS))
    said = one_sentence(kept, "a.mp4", Places(120.0), 60)
    assert "it is no JSON" in said and "cannot be put aside" in said and bad.read_bytes() == b"{"
    assert "changed on another page" in one_sentence(keep, "a.mp4", Places(120.0), Places(120.0))


# -- a log --


@pytest.mark.parametrize(
    "lies_there", ["a link", "a link to nothing", "a folder", *(["a pipe"] if PIPE else [])]
)
def test_a_log_is_one_plain_file(lies_there, here):
    """A link may lead to another person's log, and a pipe never ends."""
    place = here / FILE_NAME
    if lies_there == "a folder":
        place.mkdir()
    elif lies_there == "a pipe":
        os.mkfifo(place)
    else:
        away = here.parent / "elsewhere.sqlite"
        place.symlink_to(away)
        if lies_there == "a link":
            PracticeLog(away).close()
            before = away.read_bytes()
    assert "is a link or a folder" in one_sentence(Desk().enter, "AK: f x")
    assert (
        entries_of(OWN) is None
        if lies_there == "a link to nothing"
        else "link" in one_sentence(entries_of, OWN)
    )
    if lies_there == "a link":
        assert away.read_bytes() == before
    assert names(here) == [FILE_NAME] and not (here.parent / "elsewhere.sqlite-wal").exists()
    assert "is a link or a folder" in one_sentence(PracticeLog, place)
    panel = log_panel()
    panel.enter("AK: f x")
    assert "is a link or a folder" in panel._message.value


def test_a_log_that_disappears_while_its_page_is_open(here):
    desk = Desk()
    desk.enter("AK: f x")
    for path in here.iterdir():
        path.unlink()
    assert desk.rows() == [] and entries_of(OWN) is None
    assert one_sentence(log_files.write_csv) == NO_LOG
    assert "cannot be opened" in one_sentence(desk.take_back)
    desk.enter("f 7 /")
    assert len(desk.rows()) == 1


def test_an_entry_that_another_program_wrote_is_one_sentence_and_stays(log):
    for statement in (
        "UPDATE sessions SET day = 5",
        "UPDATE shots SET standing = X'00'",
        "UPDATE bowlers SET hand = '=1'",
    ):
        with closing(sqlite3.connect(log)) as other:
            before = list(other.iterdump())
            other.execute(statement)
            other.commit()
        with pytest.raises(LogError, match="holds an entry that cannot be read .* it was left as it is"):
            entries_of(OWN)
        with closing(sqlite3.connect(log)) as other:
            other.executescript(
                "DROP TABLE shots; DROP TABLE totals; DROP TABLE sessions; DROP TABLE bowlers;"
            )
            other.executescript("\n".join(before))
    assert len(entries_of(OWN).shots) == 1
