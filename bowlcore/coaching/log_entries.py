"""What a practice log holds: sessions, shots and totals, each checked once.

Boards from the bowler's own side. A shot is one turn: the first ball, the pins it left, and how many of
these the second ball took. Bowlers are initials; there is no field for a name.
"""

import re
from dataclasses import dataclass
from datetime import date

from bowlcore.coaching.seen import HITS, LANES, Seen, contradictions
from bowlcore.motion.checks import number_in
from bowlcore.motion.release import RANGES

HANDS = ("right", "left")
RELEASE_MEANT = ("speed_mph", "rev_rate_rpm", "axis_rotation_deg", "axis_tilt_deg")
_INITIALS = re.compile(r"[^\W\d_][^\W_]{0,2}")
_MOST_LETTERS = 500


def initials(text) -> str:
    """Up to three letters or digits in capitals, a letter first; ValueError, in words, for anything longer."""
    said = text.replace(".", "").strip().upper() if isinstance(text, str) else ""
    if not _INITIALS.fullmatch(said):
        raise ValueError(
            f"initials must be one to three letters or digits, a letter first, such as AK or AK2, got {_short(text)}; "
            "the log keeps no names"
        )
    return said


@dataclass(frozen=True)
class Session:
    """One evening on one pair.

    Parameters
    ----------
    day : date, or text such as "2026-03-05"
    place : str
        In your words; may be empty.
    left_lane, right_lane : int, optional
        Numbers of the two lanes of the pair, 1 to 200.
    note : str

    Raises
    ------
    ValueError
        Naming the field, the value and what is allowed.
    """

    day: date
    place: str = ""
    left_lane: int | None = None
    right_lane: int | None = None
    note: str = ""

    def __post_init__(self):
        _set(self, "day", _day(self.day))
        for name in ("place", "note"):
            _set(self, name, _words(name, getattr(self, name)))
        for name in ("left_lane", "right_lane"):
            _set(self, name, _whole(name, getattr(self, name), 1, 200))


@dataclass(frozen=True)
class Shot:
    """One turn of one bowler. None: not seen, or not noted.

    Parameters
    ----------
    bowler : str
        Initials.
    standing : pins left by the first ball
        (4, 7) or "4-7"; () or "strike" for a strike.
    second : int, optional
        How many of these the second ball took; None if there was none.
    hit : "light", "flush", "high", "nose", "other side" or "missed", optional
        "flush" is the pocket.
    lane : "left" or "right", optional
    slide_board, over_board : float, optional
        The line meant: slide foot and board at the arrows, 1 to 39 (the slide foot to 50).
    arrow_board : float, optional
        Where it crossed the arrows, 0 (gutter) to 40.
    trying : str
        The release meant, or what was tried, in a few words; shots are compared by it.
    words : str
        Own words.
    game : int, optional
        1, 2, 3 ...; None for practice without a score.
    speed_mph, rev_rate_rpm, axis_rotation_deg, axis_tilt_deg : float, optional
        The release meant, in the ranges of `Release`.

    Raises
    ------
    ValueError
        Naming the field, the value and what is allowed.
    """

    bowler: str
    standing: tuple | None = None
    second: int | None = None
    hit: str | None = None
    lane: str | None = None
    slide_board: float | None = None
    over_board: float | None = None
    arrow_board: float | None = None
    trying: str = ""
    words: str = ""
    game: int | None = None
    speed_mph: float | None = None
    rev_rate_rpm: float | None = None
    axis_rotation_deg: float | None = None
    axis_tilt_deg: float | None = None

    def __post_init__(self):
        _set(self, "bowler", initials(self.bowler))
        _set(self, "standing", Seen(leave=self.standing).leave)
        for name, allowed in (("hit", HITS), ("lane", LANES)):
            one_of(name, getattr(self, name), (None, *allowed))
        for name, low, high in (("slide_board", 1, 50), ("over_board", 1, 39), ("arrow_board", 0, 40)):
            if getattr(self, name) is not None:
                _set(self, name, number_in(name, getattr(self, name), low, high, "boards"))
        for name in RELEASE_MEANT:
            if getattr(self, name) is not None:
                _set(self, name, number_in(name, getattr(self, name), *RANGES[name]))
        for name in ("trying", "words"):
            _set(self, name, _words(name, getattr(self, name)))
        _set(self, "game", _whole("game", self.game, 1, 30))
        _set(self, "second", _whole("second", self.second, 0, 10))
        if self.second is not None and self.second > len(self.standing or ()):
            stood = "it is not known what stood" if self.standing is None else f"{len(self.standing)} stood"
            raise ValueError(
                f"second must be the pins that the second ball took, got {self.second}, and {stood}"
            )
        for sentence in contradictions(Seen(hit=self.hit, leave=self.standing)):
            raise ValueError(sentence)

    @property
    def first(self) -> int | None:
        """Pins of the first ball."""
        return None if self.standing is None else 10 - len(self.standing)

    @property
    def made(self) -> bool | None:
        """Did the second ball take all that stood? None for a strike, or when there was no second ball."""
        if not self.standing or self.second is None:
            return None
        return self.second == len(self.standing)


@dataclass(frozen=True)
class Total:
    """A score written down by hand, 0 to 300."""

    bowler: str
    game: int
    total: int

    def __post_init__(self):
        _set(self, "bowler", initials(self.bowler))
        for name, low, high in (("game", 1, 30), ("total", 0, 300)):
            value = _whole(name, getattr(self, name), low, high)
            if value is None:
                raise ValueError(f"{name} must be a whole number between {low} and {high}, got nothing")
            _set(self, name, value)


def one_of(name, value, allowed):
    """Raise ValueError unless `value` is one of `allowed` (None there: may be left out)."""
    if value not in allowed:
        said = ", ".join(word for word in allowed if word is not None)
        raise ValueError(f"{name} must be one of {said}, got {_short(value)}")


def _whole(name, value, low, high):
    if value is None:
        return None
    if number_in(name, value, low, high) != int(value):
        raise ValueError(f"{name} must be a whole number between {low} and {high}, got {value:g}")
    return int(value)


def _day(value):
    if isinstance(value, date):
        return value
    try:
        return date.fromisoformat(value)
    except (TypeError, ValueError):
        raise ValueError(f"day must be a date such as 2026-03-05, got {_short(value)}") from None


def _words(name, value):
    if not isinstance(value, str):
        raise ValueError(f"{name} must be text, got {_short(value)}")
    value = value.replace("\r\n", "\n").replace("\r", "\n")
    if len(value) > _MOST_LETTERS:
        raise ValueError(f"{name} must have at most {_MOST_LETTERS} letters, got {len(value)}")
    if "\0" in value or any("\ud800" <= letter <= "\udfff" for letter in value):
        raise ValueError(f"{name} holds a sign that cannot be kept, got {_short(value)}")
    return value


def _short(value):
    text = repr(value)
    return text if len(text) <= 40 else text[:37] + "..."


def _set(entry, name, value):
    object.__setattr__(entry, name, value)
