"""Full disks and files that may only be read: one sentence, and what is kept stays kept."""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest
from log_help import SHOT, filled

from bowlcore.coaching.log_entries import Shot
from bowlcore.coaching.log_file import LogError
from bowlcore.coaching.practice_log import PracticeLog

READ_ONLY = """
import os, sys
from bowlcore.coaching.log_entries import Shot
from bowlcore.coaching.practice_log import PracticeLog
if len(sys.argv) > 3: os.setuid(65534)
with PracticeLog(sys.argv[1]) as log:
    print(len(log.shots()))
    try:
        log.add_shot(sys.argv[2], Shot("AK"))
    except ValueError as problem:
        print(problem)
    print(len(log.shots()))
"""


def test_a_file_that_may_only_be_read():
    """As another user when the tests run as root, whom no file refuses."""
    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "practice_log.sqlite"
        session = filled(path)
        path.chmod(0o444)
        Path(folder).chmod(0o777)
        command = [sys.executable, "-c", READ_ONLY, str(path), session, *(["drop"] if as_root else [])]
        done = subprocess.run(command, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    first, said, last = done.stdout.splitlines()
    assert first == last == "3"
    assert said == "practice_log.sqlite may only be read, so this entry was not kept, all earlier ones are."


def fill_up(log, session):
    """Add shots until the disk is full; how many were kept."""
    kept = 0
    with pytest.raises(LogError, match="The disk is full or cannot be written, so this entry was not kept"):
        for _ in range(5000):
            log.add_shot(session, Shot("AK", words="x" * 500))
            kept += 1
    return kept


def test_a_log_that_cannot_grow_keeps_what_it_has(tmp_path):
    """SQLite's own limit on pages stands for a full disk where no small disk can be made."""
    path = tmp_path / "practice_log.sqlite"
    session = filled(path)
    with PracticeLog(path) as log:
        log._connection.execute("PRAGMA max_page_count = 60")
        kept = fill_up(log, session)
        assert len(log.shots()) == kept + 3 and kept > 5
    with PracticeLog(path) as log:
        log.add_shot(session, SHOT)
        assert len(log.shots()) == kept + 4


def test_a_full_disk_loses_nothing(tmp_path):
    """On a disk of 400 kB, where this computer lets one be made."""
    disk = tmp_path / "disk"
    disk.mkdir()
    made = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=400k", "none", str(disk)], capture_output=True)
    if made.returncode:
        pytest.skip("this computer does not let a small disk be made")
    try:
        session = filled(disk / "log.sqlite")
        with PracticeLog(disk / "log.sqlite") as log:
            kept = fill_up(log, session)
            assert len(log.shots()) == kept + 3 and kept > 5
        with PracticeLog(disk / "log.sqlite") as log:
            assert len(log.shots()) == kept + 3
    finally:
        subprocess.run(["umount", str(disk)], check=True)
