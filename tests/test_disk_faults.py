"""What disks, other programs and other people do when the course writes a file: nothing is lost, each fault is one sentence.

The log has tests of its own (tests/coaching/test_practice_log.py, test_log_disk.py), and reading is in
test_strange_files.py. What a link is: the folder of a person may be one (lessons on another disk); a file is never written
through one.
"""

import ast
import errno
import os
import re
import signal
import subprocess
import sys
import threading
from datetime import date
from pathlib import Path

import pytest
from disk_help import fail, names, one_sentence

import bowlcore
from bowlcore import pages_command, sheets_command, whole_file, work_folder
from bowlcore.__main__ import main
from bowlcore.coaching import clip_write, log_files, own_lanes, print_pdf, printed, tally_desk
from bowlcore.coaching.clip_folder import Arrival
from bowlcore.coaching.clip_places import Places, keep
from bowlcore.coaching.log_source import OWN, entries_of
from bowlcore.coaching.tally_desk import Desk
from bowlcore.display.phone_page import put_phone_page
from bowlcore.motion.surface import FrictionLaw
from bowlcore.whole_file import write_whole

LAW = FrictionLaw(0.011, 0.2)
PACKAGE = Path(bowlcore.__file__).parent


@pytest.fixture(autouse=True)
def here(here, monkeypatch):
    monkeypatch.setattr(printed, "find_browser", lambda: None)
    return here


# -- every way of writing a file, beside the log's own --


def _clip(work):
    (work / "clips").mkdir(exist_ok=True)
    (work / "clips" / "a.mp4").write_bytes(b"x")


def write_clicks(work):
    _clip(work)
    keep("a.mp4", Places(120.0), Places(120.0))


def write_lane(work):
    own_lanes.keep("league", "house", LAW, 0)


def write_page(work):
    printed.put({"sheet": "<p>a sheet</p>"}, work)


def write_phone_page(work):
    put_phone_page("lab", "<p>a page</p>")


def write_named_page(work):
    printed.put_as({work / "card.html": "<p>a card</p>"})


def write_csv(work):
    log_files.write_csv()


def write_lessons(work):
    work_folder.fill(work)


WRITERS = [write_clicks, write_lane, write_page, write_phone_page, write_named_page, write_csv, write_lessons]


@pytest.mark.claim(
    "A disk that is full, locked or read-only costs one sentence and leaves no half file",
    against="errors of the system, simulated",
    kind="own",
)
@pytest.mark.parametrize("write", WRITERS)
@pytest.mark.parametrize("step", ["fsync", "replace"])
@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EROFS, errno.EACCES])
def test_a_disk_that_refuses_is_one_sentence_and_leaves_no_half_file(
    write, step, number, here, shipped, log, monkeypatch
):
    _clip(here)
    before = {path: path.read_bytes() for path in here.rglob("*") if path.is_file() and path != log}
    with monkeypatch.context() as patch:
        patch.setattr(f"os.{step}", fail(number))
        assert os.strerror(number) in one_sentence(write, here)
    after = {path: path.read_bytes() for path in here.rglob("*") if path.is_file() and path != log}
    assert after == before
    write(here)  # and then it works
    assert len([path for path in here.rglob("*") if path.is_file() and path != log]) > len(before)


@pytest.mark.parametrize("write, folder", [
    (write_lane, "my_lanes"), (write_page, "printed"), (write_phone_page, "phone"),
    (lambda work: Arrival("a.mp4", 1), "clips"), (lambda work: clip_write.write_demo_clip(), "clips"),
])  # fmt: skip
@pytest.mark.parametrize("made", [Path.touch, lambda path: path.symlink_to("nowhere")])
def test_a_file_in_the_place_of_a_folder(write, folder, made, here, monkeypatch):
    monkeypatch.setattr(clip_write, "demo_scene", lambda shutter: (None, None))
    monkeypatch.setattr(clip_write, "decoder", lambda: None)
    made(here / folder)
    assert f"the folder {folder} cannot be made" in one_sentence(write, here)
    assert names(here) == [folder] and not (here / folder).is_dir()


@pytest.mark.parametrize("command", [["sheets", "tally"], ["pages", "00"], ["open"]])
def test_a_command_whose_folder_cannot_be_made(command, here, capsys, monkeypatch):
    monkeypatch.setattr(work_folder, "default_folder", lambda: here / "lessons")
    monkeypatch.setattr(Path, "mkdir", fail(errno.EROFS))
    assert main(command) == 1
    [said] = capsys.readouterr().err.splitlines()
    assert "Read-only file system" in said and "lessons" in said and "Errno" not in said
    assert sheets_command.work_folder is pages_command.work_folder is work_folder


# -- links --


def linked(here, place):
    """A link at a place of the work folder to somebody's file outside it."""
    away = here.parent / "somebody's"
    away.write_bytes(b"somebody's own")
    (here / place).parent.mkdir(exist_ok=True)
    (here / place).symlink_to(away)
    return away


@pytest.mark.parametrize("write, place", [
    (write_lane, "my_lanes/league.json"), (write_page, "printed/sheet.html"), (write_phone_page, "phone/lab.html"),
    (write_csv, "practice_log.csv"), (write_lessons, "04_lesson.ipynb"), (write_lessons, ".bowlcore.json"),
])  # fmt: skip
def test_nothing_is_written_through_a_link(write, place, here, shipped, log):
    away = linked(here, place)
    write(here)
    assert away.read_bytes() == b"somebody's own" and names(here.parent) == ["shipped", "somebody's", "work"]


def test_a_page_of_ours_behind_a_link_stays_as_it_is(here):
    away = linked(here, "card.html")
    assert "was not made by this program" in one_sentence(write_named_page, here)
    away.write_text(printed.MADE_HERE)
    write_named_page(here)  # in place of the link
    assert away.read_text() == printed.MADE_HERE and not (here / "card.html").is_symlink()


def test_a_link_in_the_place_of_a_pdf_is_not_followed(here, monkeypatch):
    away = linked(here, "card.pdf")
    monkeypatch.setattr(
        subprocess, "run", lambda command, **_: Path(command[-2].partition("=")[2]).write_bytes(b"%PDF")
    )
    monkeypatch.setattr(print_pdf, "_QUIET", ())
    monkeypatch.setattr(os, "geteuid", lambda: 1000, raising=False)
    (here / "card.html").write_text("x")
    print_pdf.print_pdf(here / "card.html", here / "card.pdf", "a browser")
    assert (here / "card.pdf").read_bytes() == b"%PDF" and away.read_bytes() == b"somebody's own"


# -- whole_file: killed, two at once, the clock --

WRITER = """
import os, signal, sys
from pathlib import Path
from bowlcore.whole_file import write_whole
step, target = sys.argv[1], Path(sys.argv[2])
def die(*_, **__):
    os.kill(os.getpid(), signal.SIGKILL)
if step == "open":
    Path.open = die
elif step == "after":
    real = os.replace
    os.replace = lambda *where: (real(*where), die())
else:
    setattr(os, step, die)
write_whole(target, b"the new one" * 1000)
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system has no such signal")
@pytest.mark.claim(
    "A program that is killed while it writes leaves the old file or the new one, whole",
    against="processes that are really killed",
    kind="own",
)
@pytest.mark.parametrize("step", ["open", "fsync", "replace", "after"])
def test_a_kill_at_any_step_leaves_the_old_file_or_the_new_one(step, here):
    target = here / "a.json"
    target.write_bytes(b"the old one")
    done = subprocess.run([sys.executable, "-c", WRITER, step, str(target)], capture_output=True)
    assert done.returncode == -signal.SIGKILL, done.stderr
    assert target.read_bytes() == (b"the new one" * 1000 if step == "after" else b"the old one")
    left = [name for name in names(here) if name != "a.json"]
    assert len(left) == (step in ("fsync", "replace")) and all(name.startswith(".bowlcore-") for name in left)
    write_whole(target, b"the next one")
    assert names(here) == sorted([*left, "a.json"])  # it might still be another program's
    for name in left:
        os.utime(here / name, (0, 0))
    write_whole(target, b"the next one")
    assert names(here) == ["a.json"]


def test_two_that_write_one_file_at_once_leave_one_of_them_whole(here):
    contents = [bytes([65 + number]) * 300_000 for number in range(4)]
    faults = []

    def write(content):
        try:
            for _ in range(10):
                write_whole(here / "a.json", content)
                assert (here / "a.json").read_bytes() in contents
        except BaseException as problem:
            faults.append(problem)

    threads = [threading.Thread(target=write, args=(content,)) for content in contents]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not faults and names(here) == ["a.json"]


def test_a_clock_that_is_set_back_sweeps_nothing_away(here, monkeypatch):
    (here / ".bowlcore-abc.part").write_bytes(b"being written")
    monkeypatch.setattr(whole_file, "time", lambda: 0.0)
    write_whole(here / "a.json", b"x")
    assert names(here) == [".bowlcore-abc.part", "a.json"]


def test_a_log_whose_clock_is_set_back_loses_nothing(here, monkeypatch):
    """Days only sort the sessions; no key and no file name is made of the time."""

    class Clock(date):
        today_is = (2026, 11, 28)

        @classmethod
        def today(cls):
            return date(*cls.today_is)

    monkeypatch.setattr(tally_desk, "date", Clock)
    for day in ((2026, 11, 28), (1970, 1, 1), (2026, 11, 28)):
        Clock.today_is = day
        desk = Desk()
        desk.enter("AK: f x")
        log_files.write_csv()
    found = entries_of(OWN)
    assert [kept.day.year for kept in found.shots] == [1970, 2026, 2026] and len(found.sessions) == 2
    assert len(desk.rows()) == 2 and len(list(here.glob("*.csv"))) == 3
    desk.take_back()
    assert [kept.day.year for kept in entries_of(OWN).shots] == [1970, 2026]


# -- nothing else writes --

ALLOWED = {  # file: what in it writes otherwise, and why it may
    "whole_file.py": "it is the one place",
    "coaching/clip_folder.py": "a clip comes in pieces, under a hidden name until it is whole",
    "rack/job_log.py": "a record that is only ever appended",
    "serve.py": "what the server says, in a temporary folder",
    "show.py": "settings of the server, in a temporary folder",
}

_WRITE = ("write_text", "write_bytes", "to_csv", "to_json", "copy2", "copyfile", "copytree", "move")


def test_nothing_else_in_the_package_writes_a_file():
    """Read from the source: open for writing, and the methods of paths and tables that write."""
    found = set()
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = getattr(node.func, "attr", getattr(node.func, "id", ""))
            given = [*node.args, *(word.value for word in node.keywords)]
            modes = [str(one.value) for one in given if isinstance(one, ast.Constant)]
            opens = name == "open" and any(re.fullmatch(r"[wxa]b?\+?|rb?\+b?", mode) for mode in modes)
            method = isinstance(node.func, ast.Attribute) and name in _WRITE
            if opens or method:
                found.add(path.relative_to(PACKAGE).as_posix())
    found.discard("coaching/clip_write.py")  # writes into the place that whole_file gives it
    assert found == set(ALLOWED)
    assert "with whole(path) as part" in (PACKAGE / "coaching" / "clip_write.py").read_text(encoding="utf-8")
