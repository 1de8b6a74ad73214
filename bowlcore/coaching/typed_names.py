"""Names as they are typed for paper: with commas or a line each; used for the page and kept nowhere."""

import re

MOST, LONGEST = 60, 30
EXAMPLE = "AK, BL, CM"


def read_names(text) -> tuple[str, ...]:
    """The names of a text.

    Raises
    ------
    ValueError
        In one sentence: too many, or one that is too long for a sheet.
    """
    names = tuple(name.strip() for name in re.split(r"[,;\n]", text) if name.strip())
    if len(names) > MOST:
        raise ValueError(f"names must be at most {MOST}, got {len(names)}")
    for name in names:
        if len(name) > LONGEST:
            raise ValueError(f"a name is at most {LONGEST} letters long, got {name[:40]!r}")
    return names
