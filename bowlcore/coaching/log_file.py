"""Opens the one file of a practice log: SQLite, its version, its guards, and every fault as one sentence.

The writing itself is safe because SQLite makes it so: a write-ahead log, each entry flushed to the disk
before the next is taken, foreign keys on, deleted rows overwritten.
"""

import sqlite3
import time
from contextlib import contextmanager
from os.path import isfile, islink, lexists
from pathlib import Path

APPLICATION_ID = 0x424D4C47  # stands in the file's head, so that another program's file is known as one
_WAIT_S = 10.0  # for another page that is just writing

# One tuple of statements for each version; a file of version n gets what comes after the first n.
STEPS = (
    (
        """CREATE TABLE sessions (id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE, day TEXT NOT NULL,
        place TEXT NOT NULL, left_lane INTEGER, right_lane INTEGER, note TEXT NOT NULL)""",
        "CREATE TABLE bowlers (id INTEGER PRIMARY KEY, initials TEXT NOT NULL UNIQUE, hand TEXT NOT NULL)",
        """CREATE TABLE shots (id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE,
        session INTEGER NOT NULL REFERENCES sessions ON DELETE CASCADE,
        bowler INTEGER NOT NULL REFERENCES bowlers ON DELETE CASCADE,
        game INTEGER, lane TEXT, slide_board REAL, over_board REAL, arrow_board REAL, hit TEXT,
        standing TEXT, second INTEGER, words TEXT NOT NULL)""",
        """CREATE TABLE totals (id INTEGER PRIMARY KEY, key TEXT NOT NULL UNIQUE,
        session INTEGER NOT NULL REFERENCES sessions ON DELETE CASCADE,
        bowler INTEGER NOT NULL REFERENCES bowlers ON DELETE CASCADE,
        game INTEGER NOT NULL, total INTEGER NOT NULL)""",
        "CREATE INDEX shots_by_bowler ON shots (bowler)",
        "CREATE INDEX totals_by_bowler ON totals (bowler)",
    ),
    ("ALTER TABLE shots ADD COLUMN trying TEXT NOT NULL DEFAULT ''",),
    (
        "ALTER TABLE shots ADD COLUMN speed_mph REAL",
        "ALTER TABLE shots ADD COLUMN rev_rate_rpm REAL",
        "ALTER TABLE shots ADD COLUMN axis_rotation_deg REAL",
        "ALTER TABLE shots ADD COLUMN axis_tilt_deg REAL",
    ),
)
VERSION = len(STEPS)


class LogError(ValueError):
    """Something is wrong with the file of a log, in one sentence."""


def connect(path, create=True):
    """An open, up-to-date log file; ":memory:" for one that is kept nowhere.

    Raises
    ------
    LogError
        One sentence: no such file, a link (nothing is written elsewhere), not a log, a newer version, damaged, not
        readable.
    """
    name = Path(path).name
    if path != ":memory:" and lexists(path) and (islink(path) or not isfile(path)):
        raise LogError(f"{name} is a link or a folder, and a log is one plain file; nothing was kept in it.")
    address = (
        path if path == ":memory:" else f"{Path(path).absolute().as_uri()}?mode={'rwc' if create else 'rw'}"
    )
    with sentences(name):
        connection = sqlite3.connect(
            address, uri=path != ":memory:", isolation_level=None, timeout=_WAIT_S, check_same_thread=False
        )
    try:
        with sentences(name):
            _check(connection, name)
            for guard in (
                "foreign_keys = ON",
                "secure_delete = ON",
                "synchronous = FULL",
                "temp_store = MEMORY",
            ):
                connection.execute(f"PRAGMA {guard}")
            if _number(connection, "user_version") < VERSION:
                _write_ahead(connection)
                _bring_up(connection)
    except BaseException:
        connection.close()
        raise
    return connection


def _check(connection, name):
    """Is it ours, and not from the future?"""
    connection.execute("BEGIN")  # one look at the file: another page may be making it just now
    try:
        tables = connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
        version, owner = _number(connection, "user_version"), _number(connection, "application_id")
    finally:
        connection.execute("ROLLBACK")
    if owner != APPLICATION_ID:
        if version or tables:
            raise LogError(f"{name} belongs to another program and is no practice log; it was left as it is.")
    elif version > VERSION:
        raise LogError(
            f"{name} comes from a newer version of this workbook (log version {version}, known here {VERSION}); "
            "it was left as it is."
        )


def _bring_up(connection):
    """All missing steps in one transaction: a file is never half way between two versions."""
    with writing(connection):
        for number in range(_number(connection, "user_version"), VERSION):
            for statement in STEPS[number]:
                connection.execute(statement)
        connection.execute(f"PRAGMA user_version = {VERSION}")
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")


def _write_ahead(connection):
    """Where a disk cannot do it, SQLite stays with its rollback journal, which is as safe."""
    if _pragma(connection, "journal_mode") in ("wal", "memory"):
        return
    end = time.monotonic() + _WAIT_S
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as problem:
            if "locked" not in str(problem) or time.monotonic() > end:
                raise
            time.sleep(0.02)  # another page is making the same file: SQLite does not wait here by itself


@contextmanager
def writing(connection):
    """All of it or nothing; on the disk when it ends."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise


def wipe(connection, name):
    """Leave no trace of deleted rows: rewrite the file and empty its write-ahead log."""
    end = time.monotonic() + _WAIT_S
    with sentences(name):
        connection.execute("VACUUM")
        while connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()[0]:
            if time.monotonic() > end:
                raise LogError(
                    f"The rows are deleted, but traces stay in {name} while another page reads it; close the other "
                    "pages and delete again."
                )
            time.sleep(0.05)


@contextmanager
def sentences(name):
    """SQLite's faults as a LogError that says what has happened to the entries."""
    try:
        yield
    except sqlite3.Error as problem:
        raise LogError(_sentence(name, str(problem))) from None


def _sentence(name, said):
    kept = "this entry was not kept, all earlier ones are"
    if "readonly" in said or "attempt to write" in said:
        return f"{name} may only be read, so {kept}."
    if "full" in said or "disk I/O" in said:
        return f"The disk is full or cannot be written, so {kept} ({name})."
    if "locked" in said or "busy" in said:
        return f"Another page is writing in {name}, so {kept}; try again."
    if "not a database" in said:
        return f"{name} is no practice log; it was left as it is."
    if "malformed" in said:
        return f"{name} is damaged; it was left as it is. Take your last copy of it."
    if "unable to open" in said:
        return f"{name} cannot be opened: there is no such file, or the folder may not be written."
    return f"{name} gave an error ({said}), so {kept}."


def _pragma(connection, name):
    return connection.execute(f"PRAGMA {name}").fetchone()[0]


def _number(connection, name):
    return int(_pragma(connection, name))
