"""One line of the paper tally, typed as it stands there: "12 f 0 /" is over 12, flush, the 10-pin left, made.

Written for speed: a handful of keys a shot, no mouse.
"""

import re
from typing import NamedTuple

HIT_KEYS = {"f": "flush", "l": "light", "h": "high", "n": "nose", "o": "other side", "m": "missed", "?": None}
EXAMPLE = "12 f 0 /"
LONGEST = 600  # letters of a line: own words have at most 500
_LINE = re.compile(
    r"""(?:(?P<who>[^\W\d_][^\W_]{0,2})\s*:\s*)?      # AK:   who bowls from now on
    (?:(?P<lane>[<>])\s*)?                           # <     on the left lane of the pair
    (?:(?P<board>\d+(?:[.,]\d+)?)\s*)?                # 12    crossed the arrows on
    (?P<hit>[flhnom?])\s*                             # f     hit
    (?P<leave>x|g|[\d][\d\s-]*?)?                     # 0     left standing; x none, g all ten
    (?:\s*(?P<second>/)|(?:\s+|(?<=\d))(?P<none>-)|\s*\+\s*(?P<some>\d))?""",
    re.VERBOSE | re.IGNORECASE,
)


class Line(NamedTuple):
    """A line as read: initials or None, and the fields of a Shot that it tells."""

    bowler: str | None
    fields: dict


def read_line(text) -> Line:
    """What a line says.

    Parameters
    ----------
    text : str
        [initials:] [< or >] [board at the arrows] hit [pins left] [second ball] [, own words]. Hit is one letter:
        f flush, l light, h high, n nose, o other side, m missed the head pin, ? not seen. Pins left: x
        none, g all ten, else one digit a pin, 0 for the 10-pin ("47", "360"); 1-10 with a hyphen.
        Second ball: / made, - none of them, +2 took two. Initials alone ("AK:") change the bowler; < is the left
        lane of the pair, > the right one.

    Returns
    -------
    Line

    Raises
    ------
    ValueError
        One sentence that says how a line reads.
    """
    if len(text) > LONGEST:
        raise ValueError(f"a line has at most {LONGEST} letters, got {len(text)}")
    said, _, own = (
        text.partition(",") if not re.match(r"\s*(?:\w+\s*:)?[\s<>]*\d+,\d", text) else _after_decimal(text)
    )
    said = said.strip()
    alone = re.fullmatch(r"([^\W\d_][^\W_]{0,2})\s*:", said)
    if alone:
        return Line(alone[1].upper(), {})
    found = _LINE.fullmatch(said)
    if not found:
        raise ValueError(
            f"This line cannot be read: {said[:40]!r}. A line is: board at the arrows (if seen), hit, pins left, second "
            f'ball, such as "{EXAMPLE}"; hit is one of f l h n o m ?'
        )
    standing = _pins(found["leave"])
    fields = {"hit": HIT_KEYS[found["hit"].lower()], "standing": standing, "words": own.strip()}
    if found["board"]:
        fields["arrow_board"] = float(found["board"].replace(",", "."))
    if found["lane"]:
        fields["lane"] = "left" if found["lane"] == "<" else "right"
    second = _second(found, standing)
    if second is not None:
        fields["second"] = second
    return Line(found["who"].upper() if found["who"] else None, fields)


def line_of(shot) -> str:
    """The shortest line that says what a shot says (without its own words)."""
    keys = {word: key for key, word in HIT_KEYS.items()}
    parts = [] if shot.arrow_board is None else [f"{shot.arrow_board:g}"]
    parts.append(keys[shot.hit])
    if shot.standing is not None:
        parts.append(_leave_keys(shot.standing))
    if shot.second is not None:
        parts.append("/" if shot.made else "-" if shot.second == 0 else f"+{shot.second}")
    return " ".join(parts)


def _after_decimal(text):
    """Own words begin at the second comma where the first one is a decimal comma."""
    head, _, rest = text.partition(",")
    tail, comma, own = rest.partition(",")
    return f"{head}.{tail}", comma, own


def _pins(keys):
    if not keys:
        return None
    keys = keys.strip().lower()
    if keys in ("x", "g"):
        return () if keys == "x" else tuple(range(1, 11))
    if "-" in keys.strip("-"):
        pins = [int(word) for word in re.findall(r"\d+", keys)]
    elif keys == "10":
        pins = [10]  # as everyone writes the corner pin; the head pin with it is 1-10
    else:
        pins = [int(key) or 10 for key in re.findall(r"\d", keys)]
    for pin in pins:
        if not 1 <= pin <= 10 or pins.count(pin) > 1:
            raise ValueError(
                f"pins left are digits, each once, 0 for the 10-pin, such as 47 or 360, got {keys!r}"
            )
    return tuple(sorted(pins))


def _second(found, standing):
    if not (found["second"] or found["none"] or found["some"]):
        return None
    if not standing:
        raise ValueError("a second ball needs pins that stand: name them before it, such as f 0 /")
    return len(standing) if found["second"] else 0 if found["none"] else int(found["some"])


def _leave_keys(standing):
    if not standing:
        return "x"
    if len(standing) == 10:
        return "g"
    if standing == (1, 10):
        return "1-10"
    return "".join(str(pin % 10) for pin in standing)
