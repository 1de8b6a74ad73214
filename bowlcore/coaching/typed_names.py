"""Names as they are typed for paper: with commas or a line each; used for the page and kept nowhere."""

import re
import unicodedata

MOST, LONGEST = 60, 30
_TURNS = (
    "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"  # would turn round what is printed beside it
)
EXAMPLE = "AK, BL, CM"


def read_names(text) -> tuple[str, ...]:
    """The names of a text.

    Raises
    ------
    ValueError
        In one sentence: too many, one that is too long for a sheet, or one with a sign that no paper can show.
    """
    names = tuple(name.strip() for name in re.split(r"[,;\n]", text) if name.strip())
    if len(names) > MOST:
        raise ValueError(f"names must be at most {MOST}, got {len(names)}")
    for name in names:
        if len(name) > LONGEST:
            raise ValueError(f"a name is at most {LONGEST} letters long, got {name[:40]!r}")
        if any(unicodedata.category(sign) in ("Cc", "Cs") or sign in _TURNS for sign in name):
            raise ValueError(f"a name is made of letters that can be printed, got {ascii(name[:40])}")
    return names
