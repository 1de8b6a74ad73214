"""One sentence for a bad number: which field, which value, which range."""

from math import isfinite
from numbers import Real

_LONGEST_WHOLE = 10**300  # what a float can hold


def number_in(name: str, value, low: float, high: float, unit: str = "") -> float:
    """The value as a float.

    Raises
    ------
    ValueError
        If it is no finite number between low and high, both allowed.
    """
    allowed = f"{name} must be a number between {low:g} and {high:g}{' ' + unit if unit else ''}"
    if isinstance(value, bool) or not isinstance(value, Real):
        raise ValueError(f"{allowed}, got {value!r:.60}")
    if isinstance(value, int) and abs(value) > _LONGEST_WHOLE:
        raise ValueError(f"{allowed}, got a number of more than 300 digits")
    if not isfinite(value) or not low <= value <= high:
        shown = f"{value:g}"
        raise ValueError(
            f"{allowed}, got {value!r}" if low <= float(shown) <= high else f"{allowed}, got {shown}"
        )
    return float(value)


def of_kind(name: str, value, kind: type, how: str):
    """The value, if it is of the kind wanted; `how` says where such a thing comes from.

    Raises
    ------
    ValueError
        If it is something else.
    """
    if not isinstance(value, kind):
        raise ValueError(f"{name} must be {how}, got {value!r:.60}")
    return value
