"""A practice log: one file of sessions, bowlers (initials), shots and totals, each entry kept when it is made.

Two pages may write in one file; a program that is stopped at any moment loses at most the entry being made.
"""

import secrets
from contextlib import contextmanager
from dataclasses import fields
from datetime import date
from typing import NamedTuple

from bowlcore.coaching.log_entries import HANDS, Session, Shot, Total, initials, one_of
from bowlcore.coaching.log_file import LogError, connect, sentences, wipe, writing
from bowlcore.rack.leave import Leave

FILE_NAME = "practice_log.sqlite"
_SHOT = tuple(item.name for item in fields(Shot) if item.name != "bowler")
_SESSION = tuple(item.name for item in fields(Session))


class Kept(NamedTuple):
    """An entry as it lies in the log, with the keys that never change."""

    key: str
    session: str  # key of its session
    day: date
    entry: Shot | Total


class PracticeLog:
    """An open log.

    Parameters
    ----------
    path : str or Path
        The file; ":memory:" for one that is kept nowhere.
    create : bool
        Make the file if it is not there.

    Raises
    ------
    LogError
        One sentence; the file is left as it is.
    """

    def __init__(self, path, create=True):
        self.name = "the log" if path == ":memory:" else str(path).replace("\\", "/").rpartition("/")[2]
        self._connection = connect(path, create)

    def close(self):
        self._connection.close()

    def __enter__(self):
        return self

    def __exit__(self, *error):
        self.close()

    # entries in

    def add_session(self, session: Session, key=None) -> str:
        """Keep a session; its key."""
        key, values = key or new_key("s"), [getattr(session, name) for name in _SESSION]
        values[0] = session.day.isoformat()
        with self.together():
            self._insert("sessions", ("key", *_SESSION), (key, *values))
        return key

    def add_bowler(self, who, hand="right") -> str:
        """Keep a bowler, or change the hand of one who is there; the initials."""
        who = initials(who)
        one_of("hand", hand, HANDS)
        with self.together():
            self._run(
                "INSERT INTO bowlers (initials, hand) VALUES (?, ?) ON CONFLICT (initials) DO UPDATE SET hand = ?",
                (who, hand, hand),
            )
        return who

    def add_shot(self, session: str, shot: Shot, key=None) -> str:
        """Keep a shot of a bowler (who is added if new); its key. On the disk when this returns."""
        values = [getattr(shot, name) for name in _SHOT]
        values[_SHOT.index("standing")] = None if shot.standing is None else Leave.of(*shot.standing).text
        return self._add("shots", "k", session, shot.bowler, _SHOT, values, key)

    def add_total(self, session: str, total: Total, key=None) -> str:
        """Keep a score that was added up by hand; its key."""
        return self._add(
            "totals", "t", session, total.bowler, ("game", "total"), (total.game, total.total), key
        )

    def take_back(self, key: str):
        """Remove one entry by its key, as if it had not been made."""
        with self.together():
            for table in ("shots", "totals"):
                self._run(f"DELETE FROM {table} WHERE key = ?", (key,))

    def delete_bowler(self, who) -> int:
        """Remove a bowler's rows for good, and sessions in which nobody else bowled; how many rows went.

        Nothing of them is left in the file. Files written from the log are not reached.
        """
        who = initials(who)
        with self.together():
            found = self._run("SELECT id FROM bowlers WHERE initials = ?", (who,)).fetchone()
            if not found:
                raise LogError(
                    f"{who} is not in {self.name}; there are {', '.join(self.bowlers()) or 'no bowlers'}."
                )
            theirs = (
                "SELECT session FROM shots WHERE bowler = ? UNION SELECT session FROM totals WHERE bowler = ?"
            )
            sessions = self._run(theirs, found * 2).fetchall()
            count = sum(
                self._run(f"DELETE FROM {table} WHERE bowler = ?", found).rowcount
                for table in ("shots", "totals")
            )
            self._run("DELETE FROM bowlers WHERE id = ?", found)
            for session in sessions:
                self._run(
                    "DELETE FROM sessions WHERE id = ? AND id NOT IN (SELECT session FROM shots) "
                    "AND id NOT IN (SELECT session FROM totals)",
                    session,
                )
        wipe(self._connection, self.name)
        return count

    @contextmanager
    def together(self):
        """A context in which entries are kept as one: all of them or none."""
        with sentences(self.name):
            if self._connection.in_transaction:
                yield  # part of the larger change
            else:
                with writing(self._connection):
                    yield

    # entries out

    def bowlers(self) -> dict[str, str]:
        """Initials and hands, in the order in which they came."""
        found = self._ask("SELECT initials, hand FROM bowlers ORDER BY id")
        with self._readable():
            for who, hand in found:
                if initials(who) != who:
                    raise ValueError(f"initials must be capitals, got {who[:40]!r}")
                one_of("hand", hand, HANDS)
            return dict(found)

    def sessions(self) -> dict[str, Session]:
        """Sessions by key, the earliest day first."""
        rows = self._ask(f"SELECT key, {', '.join(_SESSION)} FROM sessions ORDER BY day, id")
        with self._readable():
            return {key: Session(*values) for key, *values in rows}

    def shots(self) -> list[Kept]:
        """All shots: by day, and as they were made."""
        rows = self._joined("shots", _SHOT)
        with self._readable():
            return [
                Kept(key, session, date.fromisoformat(day), _shot(who, dict(zip(_SHOT, values, strict=True))))
                for key, session, day, who, *values in rows
            ]

    def totals(self) -> list[Kept]:
        """All scores added up by hand."""
        rows = self._joined("totals", ("game", "total"))
        with self._readable():
            return [
                Kept(key, session, date.fromisoformat(day), Total(*rest)) for key, session, day, *rest in rows
            ]

    @contextmanager
    def _readable(self):
        """What no page of this course has written, in one sentence."""
        try:
            yield
        except (ValueError, TypeError, AttributeError, OverflowError) as problem:
            raise LogError(
                f"{self.name} holds an entry that cannot be read ({str(problem)[:120]}); it was left as it is."
            ) from None

    # the file

    def _add(self, table, letter, session, who, names, values, key):
        key = key or new_key(letter)
        with self.together():
            self._run("INSERT OR IGNORE INTO bowlers (initials, hand) VALUES (?, 'right')", (who,))
            row = self._run(
                "SELECT sessions.id, bowlers.id FROM sessions, bowlers WHERE sessions.key = ? AND initials = ?",
                (session, who),
            ).fetchone()
            if not row:
                raise LogError(f"There is no session {session!r} in {self.name}; this entry was not kept.")
            self._insert(table, ("key", "session", "bowler", *names), (key, *row, *values))
        return key

    def _joined(self, table, names):
        columns = ", ".join(f"{table}.{name}" for name in names)
        return self._ask(
            f"SELECT {table}.key, sessions.key, day, initials, {columns} FROM {table} "
            f"JOIN sessions ON sessions.id = {table}.session JOIN bowlers ON bowlers.id = {table}.bowler "
            f"ORDER BY day, sessions.id, {table}.id"
        )

    def _insert(self, table, names, values):
        self._run(
            f"INSERT INTO {table} ({', '.join(names)}) VALUES ({', '.join('?' * len(names))})", tuple(values)
        )

    def _run(self, statement, values=()):
        return self._connection.execute(statement, values)

    def _ask(self, statement):
        with sentences(self.name):
            return self._run(statement).fetchall()


def new_key(letter: str) -> str:
    """A key that no other entry has, of this log or another; a letter first, so that it stays text in a spreadsheet."""
    return letter + secrets.token_hex(6)


def _shot(who, values):
    standing = values["standing"]
    return Shot(who, **values | {"standing": None if standing is None else Leave.from_text(standing).pins})
