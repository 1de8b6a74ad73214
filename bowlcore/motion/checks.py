"""One sentence for a bad number: which field, which value, which range."""

from math import isfinite
from numbers import Real


def number_in(name: str, value, low: float, high: float, unit: str = "") -> float:
    """The value as a float.

    Raises
    ------
    ValueError
        If it is no finite number between low and high, both allowed.
    """
    allowed = f"{name} must be a number between {low:g} and {high:g}{' ' + unit if unit else ''}"
    if isinstance(value, bool) or not isinstance(value, Real):
        raise ValueError(f"{allowed}, got {value!r}")
    if not isfinite(value) or not low <= value <= high:
        shown = f"{value:g}"
        raise ValueError(
            f"{allowed}, got {value!r}" if low <= float(shown) <= high else f"{allowed}, got {shown}"
        )
    return float(value)
