"""Oil patterns from what a centre tells a coach: length, volume, side ratio, taper. All invented.

A shape is (across the boards) x (down the lane) x (the end). Length, ratio and volume are then
solved for, so that the pattern returned has them to the letter.
"""

from math import exp, inf, isinf

import numpy as np

from bowlcore.motion.checks import number_in
from bowlcore.motion.oil import MAX_OIL_UM, OilPattern

BOARDS = np.arange(1.0, 40.0)
DISTANCES = np.arange(0.0, 61.0)
_EDGE_BOARD = 11.25  # middle of the side slope
_GENTLE = 1.6  # its width on an ordinary house shape [boards]


def across(width_boards=_GENTLE, floor=0.0, edge_board=_EDGE_BOARD):
    """Share of the middle's oil on each board, same on both sides: a slope from `floor` to 1."""
    m = np.minimum(BOARDS, 40.0 - BOARDS)
    if width_boards <= 0:
        slope = np.clip(m - (edge_board - 0.5), 0.0, 1.0)  # a hard edge is a ramp of one board
    else:
        slope = 1.0 / (1.0 + np.exp(-(m - edge_board) / width_boards))
    return floor + (1.0 - floor) * slope


def down(end_ft, front_ft=22.0, taper=0.66, fall_ft=40.0, end_ramp_ft=17.0):
    """Share of the front's oil at each distance: full, falling to `taper`, then a ramp to nothing."""
    body = np.interp(DISTANCES, [front_ft, max(fall_ft, front_ft + 1)], [1.0, taper])
    return body * np.clip((end_ft - DISTANCES) / max(end_ramp_ft, 1.0), 0.0, 1.0)


def make_pattern(
    length_ft=40.0, volume_ml=24.0, side_ratio=16.0, taper=0.66, end_ramp_ft=17.0, title=""
) -> OilPattern:
    """A pattern with exactly this length, volume and side ratio, as `OilPattern` measures them.

    Parameters
    ----------
    length_ft : float
        Where board 20 last holds a third of its largest oil, 25 to 55.
    volume_ml : float
        Oil on the whole lane, 3 to 60 mL.
    side_ratio : float
        Middle boards over outside boards at 10 ft, 1 (flat) and more; infinite: bare outside.
    taper : float
        Share of the front's oil that is left where the end ramp begins to bite, 0.35 to 1.
    end_ramp_ft : float
        Length over which the oil runs out, 1 to 30 ft.

    Raises
    ------
    ValueError
        Naming the value and the range, or saying why such a lane cannot be.
    """
    number_in("length_ft", length_ft, 25, 55, "ft")
    number_in("volume_ml", volume_ml, 3, 60, "mL")
    number_in("taper", taper, 0.35, 1)
    number_in("end_ramp_ft", end_ramp_ft, 1, 30, "ft")
    if isinstance(side_ratio, bool) or not isinstance(side_ratio, int | float) or not side_ratio >= 1:
        raise ValueError(f"side_ratio must be a number from 1 (flat) upwards, got {side_ratio!r}")
    side = across(*_side_for(float(side_ratio)))
    front_ft = 0.55 * length_ft

    def lengthwise(end_ft):
        return down(end_ft, front_ft, taper, length_ft, end_ramp_ft)

    def length_of(end_ft):
        return OilPattern(DISTANCES, BOARDS, np.outer(lengthwise(end_ft), side)).length_ft

    low, high = length_ft - 1.0, 60.0
    if length_of(high) < length_ft:
        raise ValueError(
            f"a ramp of {end_ramp_ft:g} ft with taper {taper:g} would end beyond the pins at length_ft {length_ft:g}; "
            "take a shorter ramp or a shorter pattern"
        )
    end_ft = _solve(length_of, length_ft, low, high)
    oil = np.outer(lengthwise(end_ft), side)
    oil *= volume_ml / OilPattern(DISTANCES, BOARDS, oil).volume_ml
    if oil.max() > MAX_OIL_UM:
        raise ValueError(
            f"{volume_ml:g} mL on {length_ft:g} ft would be {oil.max():.0f} um thick; {MAX_OIL_UM:g} at most"
        )
    return OilPattern(
        DISTANCES, BOARDS, oil, title or f"{length_ft:g} ft, {volume_ml:g} mL, {side_ratio:g} to 1"
    )


def _side_for(ratio):
    """Slope width and floor that give a side ratio; between whole boards the ratio is continuous."""

    def ratio_of(width, floor):
        side = across(width, floor)
        outside = side[:9].mean()
        return side[10:29].mean() / outside if outside > 0 else inf

    if isinf(ratio):
        return 0.0, 0.0
    if ratio <= ratio_of(_GENTLE, 0.0):
        return _GENTLE, _solve(lambda floor: ratio_of(_GENTLE, floor), ratio, 1.0, 0.0)
    steepest = 0.1
    if ratio > ratio_of(steepest, 0.0):
        raise ValueError(
            f"side_ratio above {ratio_of(steepest, 0.0):.3g} is as good as bare: ask for infinite, got {ratio:g}"
        )
    return exp(_solve(lambda w: ratio_of(exp(w), 0.0), ratio, np.log(_GENTLE), np.log(steepest))), 0.0


def _solve(function, wanted, low, high):
    """The argument that gives `wanted`, by halving; function(low) <= wanted <= function(high)."""
    for _ in range(80):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if function(middle) < wanted else (low, middle)
    return 0.5 * (low + high)
