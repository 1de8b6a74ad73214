"""Sayings about what to do with the hand when the lane changes (6 to 8, 10 to 14)."""

from math import isfinite

from bowlcore.coaching.customary_hand import CUSTOMS
from bowlcore.coaching.rule_bench import (
    CARRIED,
    DRY,
    FRESH,
    LESS_ROTATION,
    LESS_TILT,
    MORE_ROTATION,
    MORE_TILT,
    SEEN_BOARD,
    SEEN_FT,
    SLICK,
    WET_DRY,
    Lane,
    aimed,
    hand,
    on_line,
    swung,
    thrown,
    turned,
    usual_line,
)
from bowlcore.coaching.rule_trials import compared, remedy_case, rolls_at_ft
from bowlcore.coaching.rule_verdict import Case
from bowlcore.coaching.rules_of_hand import on_all
from bowlcore.coaching.words import IN_TIME_FT, POCKET_BOARD

OFF_BOARDS = 1.0  # a ball so far from 17.5 is called high or light
LATE_FT = 55.0  # rolls later than this, or not before the pins: it skids too far


def _house_ball(name, lane, rotation=0.0, tilt=0.0):
    """The line that brings the usual hand into the pocket on the house shape, thrown on another lane."""
    line = usual_line(name, Lane("house"))
    return thrown(name, lane, turned(line, rotation, tilt))


def _high(path):
    return path.entry_board >= POCKET_BOARD + OFF_BOARDS


def _late(path):
    return path.entry_board <= POCKET_BOARD - OFF_BOARDS and rolls_at_ft(path) > LATE_FT


def _rolled_early(name, lane):
    """True where the bowler keeps the feet, swings the ball wider to the pocket, and it rolls too early."""
    line = swung(name, lane)
    return line is not None and thrown(name, lane, line).roll_start_ft < IN_TIME_FT


def _nearer(seen, lanes, before, after):
    """Boards by which the ball comes in nearer to 17.5, the house line kept, where `seen` is seen."""

    def case(name, lane):
        old, new = _house_ball(name, lane, *before), _house_ball(name, lane, *after)
        number = abs(old.entry_board - POCKET_BOARD) - abs(new.entry_board - POCKET_BOARD)
        if not isfinite(number) or not seen(_house_ball(name, lane)):
            return Case(name, lane.words)
        return Case(name, lane.words, number, number >= SEEN_BOARD, new.entry_board - old.entry_board)

    return on_all(case, lanes)


_LESS, _BOTH_LESS = (LESS_ROTATION, 0.0), (LESS_ROTATION, LESS_TILT)
_MORE, _BOTH_MORE = (MORE_ROTATION, 0.0), (MORE_ROTATION, MORE_TILT)
_USUAL = (0.0, 0.0)


def _better(seen, lanes, before, after):
    """The hand moved by `after` against moved by `before`, both re-aimed, where `seen` is seen."""

    def case(name, lane):
        if not seen(_house_ball(name, lane)):
            return Case(name, lane.words)
        return remedy_case(name, lane, hand(name, *before), hand(name, *after))

    return on_all(case, lanes)


def high_less_rotation():
    """It comes in high: fifteen degrees less rotation, boards nearer."""
    return _nearer(_high, DRY, _USUAL, _LESS)


def high_then_less_tilt():
    """Then ten degrees less tilt, boards nearer again."""
    return _nearer(_high, DRY, _LESS, _BOTH_LESS)


def high_re_aimed():
    """Both less, against the old hand, re-aimed."""
    return _better(_high, DRY, _USUAL, _BOTH_LESS)


def late_rolls_sooner():
    """It skids too far: fifteen degrees less rotation, feet by which it rolls sooner."""

    def case(name, lane):
        old, new = _house_ball(name, lane), _house_ball(name, lane, *_LESS)
        number = rolls_at_ft(old) - rolls_at_ft(new)
        if not isfinite(number) or not _late(old):
            return Case(name, lane.words)
        return Case(name, lane.words, number, number >= SEEN_FT, new.entry_board - old.entry_board)

    return on_all(case, SLICK)


def late_less_rotation():
    """The same, boards nearer to the pocket."""
    return _nearer(_late, SLICK, _USUAL, _LESS)


def late_then_less_tilt():
    """Then ten degrees less tilt, boards nearer again."""
    return _nearer(_late, SLICK, _LESS, _BOTH_LESS)


def late_re_aimed():
    """Both less, against the old hand, re-aimed."""
    return _better(_late, SLICK, _USUAL, _BOTH_LESS)


def early_move_in():
    """It rolled too early: the same hand moved in, against the line swung wide."""

    def case(name, lane):
        if not _rolled_early(name, lane):
            return Case(name, lane.words)
        found = compared(on_line(name, lane, swung(name, lane)), aimed(name, lane, hand(name)))
        return Case(name, lane.words, found.points, found.better, pins=found.pins, degrees=found.degrees)

    return on_all(case, DRY)


def _early(before, after):
    def case(name, lane):
        if not _rolled_early(name, lane):
            return Case(name, lane.words)
        return remedy_case(name, lane, hand(name, *before), hand(name, *after))

    return on_all(case, DRY)


def early_more_rotation():
    """Fifteen degrees more rotation as well, against moving in alone."""
    return _early(_USUAL, _MORE)


def early_then_more_tilt():
    """Ten degrees more tilt as well, against more rotation alone."""
    return _early(_MORE, _BOTH_MORE)


def _customary(state, lanes):
    """The customary hand for a state of the lane against the usual one, both re-aimed."""
    custom = CUSTOMS[state][1:]
    return on_all(lambda name, lane: remedy_case(name, lane, hand(name), custom), lanes)


def fresh():
    """20 degrees of tilt with 45 of rotation."""
    return _customary("fresh", FRESH)


def carrydown():
    """Less tilt, 45 of rotation."""
    return _customary("carrydown", CARRIED)


def drying():
    """Less of both."""
    return _customary("drying", DRY)


def still_ten_pins():
    """After less of both: in again with the fresh setting."""
    after, start = CUSTOMS["drying"][1:], CUSTOMS["fresh"][1:]
    return on_all(lambda name, lane: remedy_case(name, lane, after, start), DRY)


def wet_dry():
    """No tilt, 45 of rotation."""
    return _customary("wet-dry", WET_DRY)
