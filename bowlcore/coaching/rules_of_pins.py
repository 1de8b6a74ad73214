"""Sayings about the pins (9, 19): the corner pin by release, and the published box of board and angle."""

from dataclasses import replace
from functools import lru_cache
from itertools import product

import numpy as np

from bowlcore.coaching.bowler_told import PUBLISHED_BOX
from bowlcore.coaching.odds import SHOWN, entries_of, odds_of_entries
from bowlcore.coaching.rule_bench import FRESH, HANDS, SPARE_LANES, TIE, aimed, bowler_of, hand
from bowlcore.coaching.rule_verdict import Case
from bowlcore.coaching.rules_of_boards import THIN_TOUCH, board_at_pin
from bowlcore.coaching.rules_of_hand import on_all
from bowlcore.coaching.words import POCKET_BOARD, POCKET_REACH
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.release import RANGES
from bowlcore.motion.units import EDGE_LOW_BOARD
from bowlcore.rack.carry import leaves_of_many
from bowlcore.rack.leave import Leave
from bowlcore.rack.pins import window_boards

CORNER_PIN = 10  # the corner on the own side: a left-hander's 7
LOW_ROTATION_DEG, LOW_TILT_DEG = 10.0, 5.0
_LAYDOWNS, _TARGETS = np.arange(16.0, 36.1, 4.0), np.arange(6.0, 28.1, 1.0)
_CHOOSING, _SPARE_SHOTS, _FEWEST = 32, 64, 10  # balls; fewer than ten say nothing
_FRAMES = 10


@lru_cache(maxsize=64)
def _corner(name, rotation_deg, tilt_deg):
    """Shares of corner pins made on SPARE_LANES, on the line that makes most on the first of them."""
    usual = bowler_of(name)
    turned = replace(usual.release, axis_rotation_deg=rotation_deg, axis_tilt_deg=tilt_deg)
    bowler = replace(usual, release=turned)
    lines = list(product(_LAYDOWNS, _TARGETS))
    best = lines[int(_corner_shares(bowler, SPARE_LANES[0], lines, _CHOOSING).argmax())]
    return {lane: float(_corner_shares(bowler, lane, [best], _SPARE_SHOTS)[0]) for lane in SPARE_LANES}


def _corner_shares(bowler, lane, lines, count):
    """Share of a bowler's balls that take the corner pin, for each (laydown, target)."""
    columns = {name: np.tile(values, len(lines)) for name, values in bowler.shots(count).items()}
    for name, boards in zip(("laydown_board", "target_board"), np.array(lines).T, strict=True):
        moved = (boards - getattr(bowler.release, name)).repeat(count)
        columns[name] = np.clip(columns[name] + moved, *RANGES[name][:2])
    marks, _ = sweep_columns(columns, lane.surface, bowler.ball)
    board = board_at_pin(marks["entry_board"], marks["entry_angle_deg"], CORNER_PIN)
    inner_edge = EDGE_LOW_BOARD + window_boards(CORNER_PIN) - THIN_TOUCH
    with np.errstate(invalid="ignore"):
        hit = (board >= EDGE_LOW_BOARD) & (board <= inner_edge)
    return hit.reshape(len(lines), count).mean(axis=1)


@lru_cache(maxsize=64)
def _pins_a_point(name, lane):
    """Pins a game that one point more of corner pins is worth: the pin, and the next ball counted twice."""
    found = aimed(name, lane, hand(name))
    if found is None:
        return float("nan")
    bowler = replace(bowler_of(name), release=found.release)
    marks, _ = sweep_columns(bowler.shots(_SPARE_SHOTS), lane.surface, bowler.ball)
    there, entries = entries_of(marks, bowler.ball)
    share = dict(leaves_of_many(*entries)).get(Leave.of(CORNER_PIN), 0.0) * there.mean()
    return _FRAMES * share * (1.0 + found.odds.mean_pinfall) / 100.0


def _corner_cases(before, after):
    """The hand `after` against the hand `before`, both functions of the usual (rotation, tilt)."""

    def case(name, lane):
        old, new = (_corner(name, *way(*hand(name)))[lane] for way in (before, after))
        points = 100.0 * (new - old)
        return Case(name, lane.words, points, points >= TIE, pins=points * _pins_a_point(name, lane))

    return on_all(case, SPARE_LANES)


def corner_low_rotation():
    """Ten degrees of rotation, tilt kept, against the usual hand: points more of corner pins made."""
    return _corner_cases(
        lambda rotation, tilt: (rotation, tilt), lambda rotation, tilt: (LOW_ROTATION_DEG, tilt)
    )


def corner_low_tilt():
    """Five degrees of tilt as well, against low rotation alone."""
    return _corner_cases(
        lambda rotation, tilt: (LOW_ROTATION_DEG, tilt),
        lambda rotation, tilt: (LOW_ROTATION_DEG, LOW_TILT_DEG),
    )


def published_box():
    """Points by which balls in the box strike more often than the other balls in the pocket."""

    def case(name, lane):
        found = aimed(name, lane, hand(name))
        if found is None:
            return Case(name, lane.words)
        inside, outside = box_odds(name, lane, found.release)
        if inside is None or outside is None:
            return Case(name, lane.words)
        points = 100.0 * (inside.strike - outside.strike)
        apart = inside.interval[0] > outside.interval[1]
        pins = inside.pins_per_game - outside.pins_per_game
        return Case(name, lane.words, points, bool(points >= TIE and apart), pins=pins)

    return on_all(case, FRESH, HANDS)


def box_odds(name, lane, line):
    """Odds of a bowler's balls inside the published box and of the others in the pocket; None: too few."""
    bowler = replace(bowler_of(name), release=line)
    marks, _ = sweep_columns(bowler.shots(SHOWN), lane.surface, bowler.ball)
    board, angle = marks["entry_board"], marks["entry_angle_deg"]
    low, high, flat, steep = PUBLISHED_BOX
    with np.errstate(invalid="ignore"):
        pocket = np.abs(board - POCKET_BOARD) <= POCKET_REACH
        box = (board >= low) & (board <= high) & (angle >= flat) & (angle <= steep)
    parts = (box, pocket & ~box)
    return tuple(
        odds_of_entries({key: values[part] for key, values in marks.items()}, bowler)
        if part.sum() >= _FEWEST
        else None
        for part in parts
    )


def box_note() -> str:
    """Who gets there, and what else was found."""
    there = {case.bowler for case in published_box() if case.true}
    never = [name for name in HANDS if name not in there]
    told = f" The {' and the '.join(never)} hardly ever gets into the box." if never else ""
    return (
        "The published finding is second-hand, and a later paper, on a professional event of 2017, finds that the angle matters "
        f"less. This pin model was fitted to published totals, not to that box.{told}"
    )
