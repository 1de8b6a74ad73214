"""A pattern built from what a centre tells a coach, the numbers it really has, and how a release plays it."""

from dataclasses import dataclass
from functools import lru_cache
from math import isfinite

import numpy as np

from bowlcore.coaching import telling, words
from bowlcore.coaching.lines import line_within_reach, lines_to_pocket
from bowlcore.coaching.rules_of_boards import exit_by_31, exit_of
from bowlcore.motion.ball import Ball
from bowlcore.motion.oil import RATIO_FT, OilPattern
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import Release
from bowlcore.motion.shapes import make_pattern
from bowlcore.motion.surface import OiledLane
from bowlcore.motion.units import FOOT_M, INCH_M, LANE_WIDTH_IN, MIDDLE_BOARD, OIL_UNIT_UM

SAME, RE_AIMED = LINES = ("same line", "re-aimed")
OUTSIDE_BOARD, TRACK_BOARD = 5.0, 10.0  # boards whose oil is drawn beside the middle's


@dataclass(frozen=True)
class Built:
    """The pattern, the release as thrown (re-aimed if asked for), its path, where it leaves the oil.

    exit_board, rule_board : boards at the pattern's length, of this ball and by the rule of 31
    """

    pattern: OilPattern
    release: Release
    path: BallPath
    exit_board: float
    rule_board: float
    sentence: str
    rows: list


@lru_cache(maxsize=64)
def lane_built(length_ft, volume_ml, side_ratio, taper, end_ramp_ft) -> OiledLane:
    """The lane of a built pattern; the same numbers give the same lane. Raises ValueError as `make_pattern`."""
    return OiledLane(make_pattern(length_ft, volume_ml, side_ratio, taper, end_ramp_ft))


def answer(
    release, length_ft=40.0, volume_ml=24.0, side_ratio=16.0, taper_percent=66.0, end_ramp_ft=17.0, *,
    line=SAME, ball=None, metric=False,
) -> Built:  # fmt: skip
    """Build a pattern and throw a release on it.

    Parameters
    ----------
    release : Release
    length_ft, volume_ml, side_ratio, end_ramp_ft : as for `make_pattern`
    taper_percent : how much of the front's oil is left where the end begins, 35 to 100
    line : one of LINES
    ball : Ball
    metric : bool

    Raises
    ------
    ValueError
        From `make_pattern`, saying why there is no such lane, or for an unknown line.
    """
    if line not in LINES:
        raise ValueError(f"line must be one of {', '.join(LINES)}, got {line!r}")
    ball = Ball() if ball is None else ball
    lane = lane_built(length_ft, volume_ml, side_ratio, taper_percent / 100.0, end_ramp_ft)
    thrown = release
    if line == RE_AIMED:
        found = line_within_reach(release, lines_to_pocket(release, lane, ball), lane, ball)
        if found is None:
            raise ValueError(
                "on this pattern none of the lines tried, from board 4 to 32, brings this release to the pocket; take the same "
                "line"
            )
        thrown = found
    path, pattern = simulate(thrown, lane, ball), lane.pattern
    leaves, rule = exit_of(path, pattern.length_ft), exit_by_31(pattern.length_ft)
    parts = [
        _built_words(pattern, metric),
        _thrown_words(line, thrown, path, metric),
        _exit_words(leaves, rule, pattern, metric),
    ]
    return Built(pattern, thrown, path, leaves, rule, " ".join(parts), numbers_of(pattern, leaves, metric))


def units_of_oil(pattern, board, distance_ft):
    """Oil in units (1 unit is 0.0167 mL on a square foot, from memory) on a board of either side."""
    return pattern.oil_um(board, distance_ft) / OIL_UNIT_UM


def mean_film_units(pattern) -> float:
    """The volume spread evenly over the pattern's length and the lane's width [units]."""
    area_m2 = pattern.length_ft * FOOT_M * LANE_WIDTH_IN * INCH_M
    return pattern.volume_ml / area_m2 / OIL_UNIT_UM  # 1 mL on 1 m2 is 1 um


def _built_words(pattern, metric):
    most = units_of_oil(pattern, MIDDLE_BOARD, pattern.distance_ft).max()
    out = units_of_oil(pattern, OUTSIDE_BOARD, RATIO_FT)
    return (
        f"Built: {words.distance(pattern.length_ft, metric)}, {pattern.volume_ml:.0f} mL, {ratio_words(pattern.side_ratio)}. "
        f"The middle holds up to {most:.0f} units, board {OUTSIDE_BOARD:.0f} holds {_units(out)}."
    )


def ratio_words(ratio) -> str:
    """ "16 to 1"; "bare outside"."""
    return f"{words.halves(ratio)} to 1" if isfinite(ratio) else "bare outside"


def _units(value):
    return f"{value:.0f} units" if value >= 0.95 else f"{value:.1f} units"


def _thrown_words(line, release, path, metric):
    where = (
        "On the same line"
        if line == SAME
        else f"Re-aimed (laid down on {words.board(release.laydown_board)}, over {words.board(release.target_board)})"
    )
    lost = isfinite(path.gutter_ft)
    hit = "" if lost else f": {words.hit(path.entry_board)}"
    return f"{where} the ball {telling.tell(path, metric)}{hit}."


def _exit_words(leaves, rule, pattern, metric):
    end = words.distance(pattern.length_ft, metric)
    if not isfinite(leaves):
        return f"It never comes to the end of the oil, {end}."
    told = f"It passes the end of the oil, {end}, on {words.board(leaves)}."
    if rule < 0.5:
        return f"{told} The rule of 31 has no board for so short an oil."
    off = words.to_half(leaves) - words.to_half(rule)
    if not off:
        return f"{told} The rule of 31 says the same board."
    way = f"{words.count(abs(off), 'board')} further {'in' if off > 0 else 'out'}"
    return f"{told} The rule of 31 says {words.board(rule)}: this ball passes {way}."


def numbers_of(pattern, leaves=np.nan, metric=False) -> list[dict]:
    """What the built pattern measures, one row a number."""
    far = "m" if metric else "ft"
    at = words.distance(RATIO_FT, metric)
    rule = exit_by_31(pattern.length_ft)
    places = ((MIDDLE_BOARD, "middle"), (TRACK_BOARD, "track"), (OUTSIDE_BOARD, "outside"))
    rows = [
        (
            f"length ({far})",
            words.distance(pattern.length_ft, metric).split(" ")[0],
            "where board 20 last holds a third of the most it has",
        ),
        ("volume (mL)", f"{pattern.volume_ml:.1f}", "all the oil on the lane"),
        (
            "side ratio",
            ratio_words(pattern.side_ratio),
            f"boards 11 to 29 over the outer nine of both sides, at {at}",
        ),
        ("mean film (units)", f"{mean_film_units(pattern):.0f}", "volume over length and width of the lane"),
        *(
            (
                f"board {board:.0f} ({name}) at {at} (units)",
                f"{units_of_oil(pattern, board, RATIO_FT):.1f}",
                "a unit is 0.18 thousandths of a millimetre",
            )
            for board, name in places
        ),
        (
            "exit by the rule of 31 (board)",
            words.halves(rule) if rule >= 0.5 else "none",
            "length in feet less 31",
        ),
        (
            "exit of this ball (board)",
            words.halves(leaves) if isfinite(leaves) else "in the gutter",
            "where it passes that length",
        ),
    ]
    return [{"number": name, "of this pattern": value, "what it is": what} for name, value, what in rows]
