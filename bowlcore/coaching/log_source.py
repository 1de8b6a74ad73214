"""Which log: the invented demo log, or the person's own in the folder of the lessons; read afresh each time."""

from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from bowlcore.coaching.log_csv import read_csv
from bowlcore.coaching.practice_log import FILE_NAME, PracticeLog
from bowlcore.locate import data_folder

DEMO, OWN = "demo log (invented)", "my own log"
LOGS = (DEMO, OWN)
EVERYBODY = "everybody"
NO_LOG = "There is no log of your own in this folder yet: copy in a tally first."


class Entries(NamedTuple):
    """What a log holds, for those who only read it."""

    bowlers: dict  # initials -> hand
    sessions: dict  # key -> Session
    shots: list  # of Kept
    totals: list


def own_file() -> Path:
    """Where the person's own log lies: in the folder the lesson runs in, which `bowlcore open` makes the work folder."""
    return Path.cwd() / FILE_NAME


def entries_of(which) -> Entries | None:
    """Entries of the demo log or of one's own; None while there is none.

    Raises
    ------
    ValueError
        One sentence when the file is no log, or cannot be read.
    """
    if which == DEMO:
        return _demo()
    if not own_file().exists():
        return None
    with PracticeLog(own_file(), create=False) as log:
        return entries(log)


def entries(log) -> Entries:
    """All entries of an open log."""
    return Entries(log.bowlers(), log.sessions(), log.shots(), log.totals())


def people() -> list[str]:
    """Everybody, and the initials in both logs, for a list to pick from."""
    found = {}
    for which in LOGS:
        try:
            found |= getattr(entries_of(which), "bowlers", {})
        except ValueError:
            pass  # said by the panel, when that log is picked
    return [EVERYBODY, *sorted(found)]


def shots_of(which, bowler) -> list | str:
    """Kept shots of one bowler or everybody; or a sentence when there are none."""
    found = entries_of(which)
    if found is None:
        return NO_LOG
    if bowler != EVERYBODY and bowler not in found.bowlers:
        return f"{bowler} is not in this log; there are {', '.join(found.bowlers) or 'no bowlers yet'}."
    shots = [kept for kept in found.shots if bowler in (EVERYBODY, kept.entry.bowler)]
    return shots or "There are no such balls in this log yet."


@lru_cache(maxsize=1)
def _demo():
    with PracticeLog(":memory:") as log:
        read_csv((data_folder() / "demo_log.csv").read_bytes(), log)
        return entries(log)
