"""The log keeps each entry: against kills, a second page, a full disk, a file that may only be read, strange files.

What SQLite promises is taken from its documentation (atomic commit, write-ahead log, secure_delete), from memory;
here it is tried.
"""

import os
import sqlite3
import sys
import threading
from contextlib import closing
from pathlib import Path

import pytest
from log_help import SHOT, TODAY, filled

from bowlcore.coaching import log_file
from bowlcore.coaching.log_entries import Session, Shot, Total
from bowlcore.coaching.log_file import STEPS, VERSION, LogError
from bowlcore.coaching.practice_log import PracticeLog

sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
from log_kills import kills  # noqa: E402


@pytest.fixture
def path(tmp_path):
    return tmp_path / "practice_log.sqlite"


def test_what_goes_in_comes_out(path):
    with PracticeLog(path) as log:
        session = log.add_session(TODAY)
        keys = [log.add_shot(session, shot) for shot in (SHOT, Shot("bn"), Shot("AK", "strike"))]
        log.add_total(session, Total("AK", 1, 134))
        log.add_bowler("CM", "left")
    with PracticeLog(path, create=False) as log:
        assert log.sessions() == {session: TODAY}
        assert [kept.entry for kept in log.shots()] == [SHOT, Shot("BN"), Shot("AK", ())]
        assert [kept.key for kept in log.shots()] == keys
        assert log.totals()[0].entry == Total("AK", 1, 134)
        assert log.bowlers() == {"AK": "right", "BN": "right", "CM": "left"}
        log.take_back(keys[1])
        assert len(log.shots()) == 2


def test_each_entry_is_on_the_disk_when_the_call_returns(path):
    log = PracticeLog(path)
    session = log.add_session(TODAY)
    log.add_shot(session, SHOT)
    with closing(sqlite3.connect(path)) as plain:
        assert plain.execute("SELECT count(*) FROM shots").fetchone() == (1,)
        assert plain.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    log.close()


@pytest.mark.claim(
    "A program killed while it writes the log loses nothing that it said it had kept",
    against="twenty kills; full study of 500: python tests/studies/log_kills.py",
    kind="own",
)
def test_twenty_kills_lose_nothing(tmp_path, figure):
    """Five hundred in tests/studies/log_kills.py."""
    rows = list(kills(tmp_path, 20, seed=1))
    figure("entries lost", sum(row["lost"] for row in rows), asked="0")
    figure("entries written", sum(row["found"] for row in rows), asked="more than 20", least=True)
    assert all(row["sound"] and row["lost"] == 0 and row["found"] - row["said"] in (0, 1) for row in rows)
    assert sum(row["found"] for row in rows) > 20, "the writers were killed before they wrote"


@pytest.mark.claim(
    "Pages that write into one log at the same time lose nothing",
    against="75 entries of three pages counted again",
    kind="own",
)
def test_two_pages_on_one_file_lose_nothing(path):
    session, faults = filled(path, 0), []

    def write(who):
        try:
            for number in range(25):
                with PracticeLog(path) as log:
                    log.add_shot(session, Shot(who, words=str(number)))
        except BaseException as problem:
            faults.append(problem)

    threads = [threading.Thread(target=write, args=(who,)) for who in ("A", "B", "C")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not faults
    with PracticeLog(path) as log:
        told = [(kept.entry.bowler, int(kept.entry.words)) for kept in log.shots()]
    assert sorted(told) == [(who, number) for who in "ABC" for number in range(25)]
    for who in "ABC":  # each page's own entries stay in order
        assert [number for name, number in told if name == who] == list(range(25))


def test_two_pages_may_make_the_same_file_at_once(path):
    faults = []

    def make():
        try:
            PracticeLog(path).close()
        except BaseException as problem:
            faults.append(problem)

    threads = [threading.Thread(target=make) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not faults
    filled(path)


def test_a_page_that_waits_too_long_says_so(path, monkeypatch):
    session = filled(path)
    monkeypatch.setattr(log_file, "_WAIT_S", 0.05)
    with closing(sqlite3.connect(path, isolation_level=None)) as other, PracticeLog(path) as log:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(
            LogError, match="Another page is writing in practice_log.sqlite, so this entry was not kept"
        ):
            log.add_shot(session, SHOT)
        other.execute("ROLLBACK")
        log.add_shot(session, SHOT)
        assert len(log.shots()) == 4


def test_all_of_a_larger_change_or_nothing(path):
    session = filled(path)
    with PracticeLog(path) as log:
        with pytest.raises(LogError, match="There is no session 's-none'"), log.together():
            log.add_shot(session, SHOT)
            log.add_shot("s-none", SHOT)
        assert len(log.shots()) == 3


@pytest.mark.parametrize("version", range(1, VERSION))
def test_an_older_log_is_brought_up_and_loses_nothing(path, version):
    with closing(sqlite3.connect(path)) as old:
        for step in STEPS[:version]:
            for statement in step:
                old.execute(statement)
        old.execute("INSERT INTO sessions VALUES (1, 's1', '2026-03-05', 'here', 7, 8, '')")
        old.execute("INSERT INTO bowlers VALUES (1, 'AK', 'left')")
        old.execute(
            "INSERT INTO shots (id, key, session, bowler, game, lane, slide_board, over_board, hit, standing, second, words) "
            "VALUES (1, 'k1', 1, 1, 2, 'left', 22, 13, 'flush', '10', 1, 'tugged')"
        )
        old.execute(f"PRAGMA application_id = {log_file.APPLICATION_ID}")
        old.execute(f"PRAGMA user_version = {version}")
        old.commit()
    with PracticeLog(path) as log:
        (kept,) = log.shots()
        assert kept.entry == Shot("AK", (10,), 1, "flush", "left", 22, 13, words="tugged", game=2)
        log.add_shot("s1", SHOT)
        assert log.shots()[1].entry == SHOT
    with closing(sqlite3.connect(path)) as plain:
        assert plain.execute("PRAGMA user_version").fetchone() == (VERSION,)


def test_a_step_that_fails_leaves_the_older_log(path, monkeypatch):
    filled(path)
    monkeypatch.setattr(
        log_file, "STEPS", (*STEPS, ("ALTER TABLE shots ADD COLUMN more TEXT", "NO SUCH THING"))
    )
    monkeypatch.setattr(log_file, "VERSION", VERSION + 1)
    with pytest.raises(LogError):
        PracticeLog(path)
    monkeypatch.undo()
    with PracticeLog(path) as log:
        assert len(log.shots()) == 3


def test_a_log_from_a_newer_version_is_left_alone(path):
    filled(path)
    with closing(sqlite3.connect(path)) as plain:
        plain.execute(f"PRAGMA user_version = {VERSION + 1}")
    before = path.read_bytes()
    with pytest.raises(
        LogError, match=f"newer version of this workbook .log version {VERSION + 1}.*left as it is"
    ):
        PracticeLog(path)
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    "content", [b"not a database at all, only some text\n" * 50, os.urandom(5000), b"\0" * 200]
)
def test_a_file_that_is_no_log_is_left_alone(path, content):
    path.write_bytes(content)
    with pytest.raises(LogError, match="practice_log.sqlite is no practice log; it was left as it is."):
        PracticeLog(path)
    assert path.read_bytes() == content


def test_another_programs_database_is_left_alone(path):
    with closing(sqlite3.connect(path)) as other:
        other.execute("CREATE TABLE recipes (name TEXT)")
    before = path.read_bytes()
    with pytest.raises(LogError, match="belongs to another program"):
        PracticeLog(path)
    assert path.read_bytes() == before


def test_a_log_with_a_torn_page_gives_a_sentence(path):
    filled(path, 400)
    content = bytearray(path.read_bytes())
    content[8192:] = b"\xff" * (len(content) - 8192)
    path.write_bytes(content)
    with pytest.raises(LogError, match="is damaged|gave an error"), PracticeLog(path) as log:
        log.shots()


def test_a_missing_file_and_folder(path, tmp_path):
    with pytest.raises(LogError, match="cannot be opened"):
        PracticeLog(path, create=False)
    assert not path.exists()
    with pytest.raises(LogError, match="cannot be opened"):
        PracticeLog(tmp_path / "nowhere" / "log.sqlite")
    with pytest.raises(LogError, match="is a link or a folder, and a log is one plain file"):
        PracticeLog(tmp_path)


@pytest.mark.claim(
    "A bowler who is deleted leaves no trace in the log's file",
    against="the bytes of the file searched",
    kind="own",
)
def test_a_deleted_bowler_leaves_no_trace_in_the_file(path):
    secret = "a very private remark of the coach"
    with PracticeLog(path) as log:
        shared, alone = log.add_session(TODAY), log.add_session(Session("2026-03-06", note=secret))
        for _ in range(30):
            log.add_shot(shared, Shot("ZQ", words=secret, trying=secret))
            log.add_shot(shared, SHOT)
        log.add_shot(alone, Shot("ZQ", words=secret))
        log.add_total(alone, Total("ZQ", 1, 99))
        assert log.delete_bowler("z.q.") == 32
        assert log.bowlers() == {"AK": "right"} and len(log.shots()) == 30
        assert list(log.sessions()) == [shared], "a session of nobody else stays"
        for file in path.parent.iterdir():  # the log still open
            assert secret.encode() not in file.read_bytes() and b"ZQ" not in file.read_bytes(), file.name
    with (
        PracticeLog(path) as log,
        pytest.raises(LogError, match="ZQ is not in practice_log.sqlite; there are AK"),
    ):
        log.delete_bowler("ZQ")


def test_rows_go_with_their_bowler_because_of_the_foreign_key(path):
    filled(path)
    with PracticeLog(path) as log:
        with log.together():
            log._run("DELETE FROM bowlers")
        assert log.shots() == []


@pytest.mark.parametrize(
    "make, said",
    [
        (lambda: Shot("Anna"), "initials must be one to three letters or digits"),
        (lambda: Shot("1A"), "initials must be"),
        (lambda: Shot("<b>"), "initials must be"),
        (lambda: Shot("AK", (11,)), "a pin must be a whole number between 1 and 10"),
        (lambda: Shot("AK", (4,), 2), "second must be the pins that the second ball took, got 2, and 1 stood"),
        (lambda: Shot("AK", None, 1), "got 1, and it is not known what stood"),
        (lambda: Shot("AK", hit="pocket"), "hit must be one of light, flush, high, nose, other side, missed, got 'pocket'"),
        (lambda: Shot("AK", (), hit="missed"), "missed the head pin, yet no pin stands"),
        (lambda: Shot("AK", (1, 2), hit="light"), "head pin stands, yet the hit"),
        (lambda: Shot("AK", lane="middle"), "lane must be one of left, right"),
        (lambda: Shot("AK", over_board=0), "over_board must be a number between 1 and 39 boards, got 0"),
        (lambda: Shot("AK", arrow_board=float("nan")), "arrow_board must be a number between 0 and 40"),
        (lambda: Shot("AK", game=1.5), "game must be a whole number between 1 and 30, got 1.5"),
        (lambda: Shot("AK", words="x" * 501), "words must have at most 500 letters, got 501"),
        (lambda: Shot("AK", words="a\0b"), "words holds a sign that cannot be kept"),
        (lambda: Session("05.03.2026"), "day must be a date such as 2026-03-05, got '05.03.2026'"),
        (lambda: Session("2026-03-05", left_lane=0), "left_lane must be a number between 1 and 200"),
        (lambda: Total("AK", 1, 301), "total must be a number between 0 and 300, got 301"),
        (lambda: Total("AK", None, 100), "game must be a whole number between 1 and 30, got nothing"),
    ],
)  # fmt: skip
def test_bad_entries_get_one_sentence(make, said):
    with pytest.raises(ValueError, match=said.replace("(", r"\(")):
        make()
