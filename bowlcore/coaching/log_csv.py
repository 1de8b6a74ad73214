"""A practice log as a CSV text and back, without loss, also through a spreadsheet.

Dates are three whole numbers and pins are parted by spaces, because a spreadsheet makes dates of 3-10. Text
that it could take for a formula, a number or a date begins with an apostrophe in the file; reading removes it.
"""

import csv
import re
from io import StringIO
from math import isfinite

from bowlcore.coaching.log_entries import RELEASE_MEANT, Session, Shot, Total
from bowlcore.coaching.practice_log import PracticeLog

COLUMNS = {
    "kind": "[text] session, bowler, shot or total",
    "key": "[text] never changes; a row whose key is there already is left out when read",
    "session": "[text] key of the session of a shot or total",
    "bowler": "[text] initials",
    "hand": "[text] right or left",
    "year": "[date] of a session", "month": "[date] of a session", "day": "[date] of a session",
    "place": "[text] own words",
    "left_lane": "[number] of the pair", "right_lane": "[number] of the pair",
    "note": "[text] own words",
    "game": "[count] 1, 2, 3; empty for practice",
    "lane": "[text] left or right",
    "slide_board": "[board] slide foot, as meant", "over_board": "[board] at the arrows, as meant",
    "arrow_board": "[board] where it crossed the arrows",
    "hit": "[text] light, flush (the pocket), high, nose, other side or missed",
    "standing": "[pins] left by the first ball, parted by spaces; strike for none; empty if not seen",
    "second": "[pins] that the second ball took",
    "speed_mph": "[mph] as meant", "rev_rate_rpm": "[rpm] as meant",
    "axis_rotation_deg": "[deg] as meant", "axis_tilt_deg": "[deg] as meant",
    "trying": "[text] what was tried", "words": "[text] own words",
    "total": "[pins] score added up by hand",
}  # fmt: skip
MOST_BYTES = 20_000_000
_WHOLE = ("year", "month", "day", "left_lane", "right_lane", "game", "second", "total")
_NUMBERS = ("slide_board", "over_board", "arrow_board", *RELEASE_MEANT)
_NEWER = RELEASE_MEANT  # columns that files of earlier versions do not have
_WORDS = ("place", "note", "trying", "words")
_KEYS = ("key", "session")  # ours begin with a letter, another program's may be anything
_HEAD = re.compile(r'^"?kind"?([,;\t|])', re.MULTILINE)
# where a cell begins, for any separator that a spreadsheet may use, and what it must not begin with
_CELL = r"(^|[,;|\t\n])('*)"
_GUARDED = re.compile(_CELL + r"(?=[^\S\n\t]*[=+\-@＝＋－＠])")
_UNGUARDED = re.compile(_CELL + r"'(?=[^\S\n\t]*[=+\-@＝＋－＠])")


def to_csv(log: PracticeLog, decimal_comma=False, header="") -> str:
    """The whole log as text; with `decimal_comma` as a spreadsheet with decimal commas wants it.

    Parameters
    ----------
    log : PracticeLog
    decimal_comma : bool
        17,5 and semicolons instead of 17.5 and commas.
    header : str
        Comment lines to stand above.
    """
    text = StringIO()
    separator = ";" if decimal_comma else ","
    out = csv.DictWriter(
        text, COLUMNS, restval="", delimiter=separator, lineterminator="\n", quoting=csv.QUOTE_ALL
    )
    out.writeheader()
    for row in _rows(log):
        keys = {name: guarded(row[name]) for name in _KEYS if name in row}
        out.writerow({name: _cell(value, decimal_comma) for name, value in (row | keys).items()})
    return header + text.getvalue()


def read_csv(data, log: PracticeLog) -> int:
    """Add what a CSV file holds to a log, all of it or nothing; how many entries were new.

    Parameters
    ----------
    data : bytes or str
    log : PracticeLog

    Raises
    ------
    ValueError
        One sentence naming line, column, value and what is allowed.
    """
    new, there = 0, _keys(log)
    rows = list(_read(_text_of(data)))
    with log.together():
        for kind in ("session", "bowler", "shot", "total"):
            for line, row in rows:
                if row["kind"] == kind and row["key"] not in there:
                    try:
                        new += _ADD[kind](log, row)
                    except ValueError as problem:
                        raise ValueError(f"line {line}: {problem}") from None
                    if row["key"]:
                        there.add(row["key"])
    return new


def guarded(text: str) -> str:
    """Text that no spreadsheet takes for a formula, a number or a date; `unguarded` gives it back."""
    text = _GUARDED.sub(r"\1\2'", text)
    return f"'{text}" if text[:1] and not text[0].isalpha() else text


def unguarded(text: str) -> str:
    """What was guarded; text that a person typed into a file may do without."""
    if text[:1] == "'":
        text = text[1:]
    return _UNGUARDED.sub(r"\1\2", text)


def _rows(log):
    for key, session in log.sessions().items():
        when = {"year": session.day.year, "month": session.day.month, "day": session.day.day}
        rest = {name: getattr(session, name) for name in ("left_lane", "right_lane")}
        yield {"kind": "session", "key": key, **when, **rest, **_guarded_words(session)}
    for who, hand in log.bowlers().items():
        yield {"kind": "bowler", "bowler": who, "hand": hand}
    for kept in log.shots():
        shot = kept.entry
        plain = ("bowler", "game", "lane", "hit", "second", *_NUMBERS)
        row = {"kind": "shot", "key": kept.key, "session": kept.session, **_guarded_words(shot)}
        row |= {name: getattr(shot, name) for name in plain}
        yield row | {
            "standing": None if shot.standing is None else " ".join(map(str, shot.standing)) or "strike"
        }
    for kept in log.totals():
        entry = kept.entry
        row = {"kind": "total", "key": kept.key, "session": kept.session, "bowler": entry.bowler}
        yield row | {"game": entry.game, "total": entry.total}


def _guarded_words(entry):
    return {name: guarded(getattr(entry, name)) for name in _WORDS if hasattr(entry, name)}


def _cell(value, decimal_comma):
    if value is None:
        return ""
    if isinstance(value, float):
        text = repr(value).removesuffix(".0")
        return text.replace(".", ",") if decimal_comma else text
    return str(value)


def _text_of(data):
    if isinstance(data, str):
        return data.removeprefix("\ufeff")
    if len(data) > MOST_BYTES:
        raise ValueError(f"the file is too large; at most {MOST_BYTES / 1e6:.0f} MB are read")
    try:
        return data.decode("utf-16" if data[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8-sig")
    except UnicodeDecodeError:
        raise ValueError("the file is not in UTF-8; save it from the spreadsheet as 'CSV UTF-8'") from None


def _read(text):
    """(line number, row) of each row, words as they were, numbers as numbers."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    head = _HEAD.search(text)
    if not head:
        raise ValueError("the file has no line of column names that begins with 'kind'")
    reader = csv.reader(StringIO(text[head.start() :]), delimiter=head[1])
    before = text[: head.start()].count("\n")
    try:
        names = next(reader)
        missing = [name for name in COLUMNS if name not in (*names, *_NEWER)]
        if missing:
            raise ValueError(f"line {before + 1}: the column {missing[0]!r} is missing")
        for cells in reader:
            if any(cell.strip() for cell in cells):
                row = dict(zip(names, cells, strict=False))
                yield before + reader.line_num, _values(row, before + reader.line_num)
    except csv.Error as problem:
        raise ValueError(f"line {before + reader.line_num}: this is no CSV ({problem})") from None


def _values(row, line):
    row = {name: row.get(name, "") for name in COLUMNS}
    values = {name: unguarded(row[name]) if name in _WORDS else row[name].strip() or None for name in COLUMNS}
    values |= {name: unguarded(values[name]) for name in _KEYS if values[name]}
    values["kind"] = (values["kind"] or "").lower()
    if values["kind"] not in _ADD:
        raise ValueError(
            f"line {line}: kind must be session, bowler, shot or total, got {row['kind'][:40]!r}"
        )
    for name in (*_WHOLE, *_NUMBERS):
        if values[name] is not None:
            values[name] = _number(line, name, values[name])
    if values["standing"] is not None:
        values["standing"] = _pins(line, values["standing"])
    return values


def _number(line, name, text):
    try:
        value = float(text.replace(",", ".").removeprefix("'"))
    except ValueError:
        value = float("nan")
    if not isfinite(value) or name in _WHOLE and value != int(value):
        kind = "whole number" if name in _WHOLE else "number"
        raise ValueError(f"line {line}: {name} must be a {kind}, got {text[:40]!r}")
    return int(value) if name in _WHOLE else value


def _pins(line, text):
    """Pins from "4 7", "4-7", "7,0" (a seven that a spreadsheet dressed up) or "strike"."""
    if text.lower() in ("strike", "x"):
        return ()
    pins = re.fullmatch(r"(\d+)[.,]0+", text)
    words = [pins[1]] if pins else re.split(r"[\s-]+", text.removeprefix("'"))
    if not all(word.isdecimal() and len(word) < 4 for word in words):
        raise ValueError(
            f"line {line}: standing must be pins parted by spaces, such as 4 7, or strike, got {text[:40]!r}"
        )
    return tuple(map(int, words))


def _add_session(log, row):
    day = "-".join(f"{row[name] or 0:0{4 if name == 'year' else 2}d}" for name in ("year", "month", "day"))
    session = Session(day, row["place"], row["left_lane"], row["right_lane"], row["note"])
    return bool(log.add_session(session, row["key"]))


def _add_bowler(log, row):
    new = row["bowler"] not in log.bowlers()
    log.add_bowler(row["bowler"], row["hand"] or "right")
    return new


def _add_shot(log, row):
    fields = ("game", "lane", "hit", "standing", "second", "trying", "words", *_NUMBERS)
    return bool(
        log.add_shot(row["session"], Shot(row["bowler"], **{name: row[name] for name in fields}), row["key"])
    )


def _add_total(log, row):
    return bool(log.add_total(row["session"], Total(row["bowler"], row["game"], row["total"]), row["key"]))


_ADD = {"session": _add_session, "bowler": _add_bowler, "shot": _add_shot, "total": _add_total}


def _keys(log):
    return {*log.sessions(), *(kept.key for kept in [*log.shots(), *log.totals()])}
