"""Files beside one's own log: CSV out and in. What is there is never overwritten by a CSV."""

from pathlib import Path

from bowlcore.coaching.log_csv import MOST_BYTES, read_csv, to_csv
from bowlcore.coaching.log_source import NO_LOG, own_file
from bowlcore.coaching.practice_log import PracticeLog
from bowlcore.whole_file import free_name, too_long, write_whole


def write_csv(decimal_comma=False) -> str:
    """Write one's own log as a CSV file with a name that is free; the sentence that says which.

    Raises
    ------
    ValueError, OSError
        In one sentence: no log yet, or the folder cannot be written.
    """
    if not own_file().exists():
        raise ValueError(NO_LOG)
    with PracticeLog(own_file(), create=False) as log:
        text = to_csv(log, decimal_comma)
    name = free_name(own_file().parent, "practice_log.csv")
    write_whole(own_file().parent / name, text.encode("utf-8-sig"))  # the mark helps spreadsheets
    return f"{name} is in the folder of your lessons. It holds initials and words of people: delete it when it is used."


def read_csv_file(name) -> str:
    """Add a CSV file of the folder to one's own log; the sentence that says how many entries were new.

    Raises
    ------
    ValueError
        One sentence; nothing was added.
    """
    path = own_file().parent / Path(name.strip() or "practice_log.csv").name
    if too_long(path.name) or not path.is_file():
        raise ValueError(f"There is no file {path.name[:80]!r} in the folder of your lessons.")
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)  # one more, so that a larger file is refused
    except OSError as problem:
        raise ValueError(f"{path.name} cannot be read ({problem.strerror}).") from None
    with PracticeLog(":memory:") as trial:
        read_csv(data, trial)  # a file that cannot be read must not leave an empty log behind
    with PracticeLog(own_file()) as log:
        new = read_csv(data, log)
    return f"{path.name}: {new} new {'entry' if new == 1 else 'entries'}; what was there already is left as it was."
