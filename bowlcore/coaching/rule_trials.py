"""Two trials behind most sayings: one hand against another on the same line, and re-aimed.

Degrees, feet and boards; pocket share in points (hundredths).
"""

from math import isfinite, nan
from typing import NamedTuple

import numpy as np

from bowlcore.coaching.rule_bench import (
    SEEN_DEG,
    TIE,
    aimed,
    hand,
    thrown,
    turned,
    usual_line,
)
from bowlcore.coaching.rule_verdict import Case
from bowlcore.motion.units import LANE_FT

_CORNER_FT = 10.0


class Remedy(NamedTuple):
    """A hand against another, both re-aimed: points of pocket share, degrees of entry angle, pins a game."""

    points: float
    degrees: float
    pins: float

    @property
    def better(self) -> bool:
        """Ten points more in the pocket; or a tie there, and half a degree steeper."""
        if abs(self.points) >= TIE:
            return self.points > 0
        return self.degrees >= SEEN_DEG


def remedy(name, lane, old, new) -> Remedy | None:
    """Old and new hand (rotation, tilt) [deg] of a bowler, each re-aimed; None where one finds no line."""
    return compared(aimed(name, lane, old), aimed(name, lane, new))


def compared(before, after) -> Remedy | None:
    """Two `Aimed` of one bowler on one lane; None where one is missing."""
    if before is None or after is None:
        return None
    return Remedy(
        100.0 * (after.odds.pocket - before.odds.pocket),
        after.angle_deg - before.angle_deg,
        after.odds.pins_per_game - before.odds.pins_per_game,
    )


def remedy_case(name, lane, old, new) -> Case:
    """The case "the new hand is better", with boards on the old hand's line and pins a game re-aimed."""
    found = remedy(name, lane, old, new)
    if found is None:
        return Case(name, lane.words)
    line = aimed(name, lane, old).release
    other = turned(line, new[0] - old[0], new[1] - old[1])
    boards = thrown(name, lane, other).entry_board - thrown(name, lane, line).entry_board
    return Case(name, lane.words, found.points, found.better, boards, found.pins, found.degrees)


def same_line_case(name, lane, read, low, rotation_deg=0.0, tilt_deg=0.0, sign=1.0) -> Case:
    """The case "the hand moved by so many degrees raises what `read(path)` gives by at least `low`".

    On the line that brings the usual hand into the pocket there; sign -1: lowers it.
    """
    line = usual_line(name, lane)
    if line is None:
        return Case(name, lane.words)
    old, new = thrown(name, lane, line), thrown(name, lane, turned(line, rotation_deg, tilt_deg))
    number = sign * (read(new) - read(old))
    if not isfinite(number):
        return Case(name, lane.words)
    found = remedy(name, lane, hand(name), hand(name, rotation_deg, tilt_deg))
    pins = found.pins if found else nan
    return Case(name, lane.words, number, number >= low, new.entry_board - old.entry_board, pins)


def rolls_at_ft(path) -> float:
    """Where it rolls [ft]; one that still skids at the pins is carried on as in the last foot. NaN: gutter."""
    if isfinite(path.gutter_ft):
        return nan
    if isfinite(path.roll_start_ft):
        return path.roll_start_ft
    ft, slip = path.distance_ft, path.slip_mps
    lost = float(np.interp(LANE_FT - 1.0, ft, slip)) - float(slip[-1])
    return LANE_FT + float(slip[-1]) / lost if lost > 0 else nan


def corner_deg(path) -> float:
    """The sharpest corner: the most that it turns within ten feet [deg]."""
    if isfinite(path.gutter_ft):
        return nan
    start = np.arange(0.0, LANE_FT - _CORNER_FT + 0.01, 0.25)
    heading = np.interp(np.r_[start, start + _CORNER_FT], path.distance_ft, path.heading_deg)
    return float(np.max(heading[len(start) :] - heading[: len(start)]))


def late_share(end_ft):
    """A reader: points of the whole turn that are made after the oil has ended at `end_ft`."""

    def read(path):
        first, last = path.heading_deg[0], path.heading_deg[-1]
        if isfinite(path.gutter_ft) or last <= first:
            return nan
        return 100.0 * float((last - np.interp(end_ft, path.distance_ft, path.heading_deg)) / (last - first))

    return read
