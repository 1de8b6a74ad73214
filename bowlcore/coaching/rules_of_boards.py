"""Sayings that count boards (15 to 18): the exit of the oil, and systems of moves.

Boards from the bowler's own side, distances from the foul line [ft]. Straight lines are our own geometry:
arrows at 15 ft, the start of the approach 15 ft before the foul line.
"""

from dataclasses import replace
from math import nan

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import straight_boards
from bowlcore.coaching.rule_bench import (
    ANYONE,
    DRY,
    FRESH,
    LENGTHS,
    SEEN_BOARD,
    SPARE_LANES,
    Lane,
    bowler_of,
    thrown,
    usual_line,
)
from bowlcore.coaching.rule_verdict import Case
from bowlcore.coaching.rules_of_hand import on_all
from bowlcore.coaching.rules_of_lanes import OFF_BOARDS
from bowlcore.coaching.words import POCKET_BOARD
from bowlcore.motion.units import BOARD_M, EDGE_HIGH_BOARD, FOOT_M, LANE_FT, TARGET_FT
from bowlcore.rack.pins import BOARD_IN, CENTRE_BOARD, TOUCH_DISTANCE_IN, pin_board, pin_distance_ft

RULE_OF_31, EXIT_BOARDS = 31.0, 2.0  # the exit is told right within two boards
THIN_TOUCH = 1.0  # board off a window: a thin touch may leave the pin (common practice)
COUNTS = {2: 3.0, 4: 6.0, 7: 9.0}  # boards at the start for each pin of the far side: 3-6-9
WALKS = {"2 to 1": 0.5, "parallel": 1.0}  # boards of the slide for one at the start
_REACH = TOUCH_DISTANCE_IN / BOARD_IN


def opened_deg(laydown_move, target_move):
    """Degrees by which a move opens the line: positive sends the ball further out."""
    return float(np.degrees(np.arctan((laydown_move - target_move) * BOARD_M / (TARGET_FT * FOOT_M))))


def board_at_pin(entry_board, entry_angle_deg, pin):
    """Board of the ball, straight on from 60 ft, at the row of a pin."""
    beyond_m = (pin_distance_ft(pin) - LANE_FT) * FOOT_M
    return entry_board + np.tan(np.radians(entry_angle_deg)) * beyond_m / BOARD_M


# --- 15: the rule of 31 --------------------------------------------------------------------------------
def exit_by_31(length_ft):
    """The exit board that the rule gives."""
    return length_ft - RULE_OF_31


def exit_of(path, length_ft):
    """Board on which a path leaves oil of this length; NaN in the gutter."""
    return float(np.interp(length_ft, path.distance_ft, path.board))


def _end(lane):
    return lane.surface.pattern.length_ft


def exit_of_the_oil():
    """Boards by which the best line leaves the oil further in (+) or out (-) than the rule says."""

    def case(name, lane):
        line, end = usual_line(name, lane), _end(lane)
        if line is None:
            return Case(name, lane.words)
        path = thrown(name, lane, line)
        number = exit_of(path, end) - exit_by_31(end)
        return Case(name, lane.words, number, abs(number) <= EXIT_BOARDS)

    return on_all(case, LENGTHS, ANYONE)


def exit_moves():
    """Boards by which the exit moves in from the shortest to the longest oil: by the rule, and of the best lines."""
    short, long = LENGTHS[0], LENGTHS[-1]
    by_rule = exit_by_31(_end(long)) - exit_by_31(_end(short))
    off = [
        np.median([case.number for case in exit_of_the_oil() if case.where == lane.words])
        for lane in (short, long)
    ]
    return by_rule, float(by_rule + off[1] - off[0])


def exit_note() -> str:
    """What moves the exit, where the rule says the length does."""
    by_rule, really = exit_moves()
    return (
        f"From the shortest to the longest oil tried the rule moves the exit by {words.count(by_rule, 'board')} in; the best "
        f"lines move theirs by {words.count(abs(really), 'board')} {'in' if really > 0 else 'out'}. On a house shape the dry "
        "edge decides more than the length. The exit is not the breakpoint, which comes later and further out."
    )


# --- 16: 3-6-9 -----------------------------------------------------------------------------------------
def paper_move(pin, walk):
    """Boards that a straight ball moves at the row of a pin by 3-6-9, the target kept."""
    return float(straight_boards(-WALKS[walk] * COUNTS[pin], 0.0, pin_distance_ft(pin)))


def paper_short(pin, walk):
    """Boards by which that falls short of the way from the head pin (negative: goes too far)."""
    return float(pin_board(pin)) - CENTRE_BOARD - paper_move(pin, walk)


def _room(board, pin):
    """Boards that a ball on this board has to spare inside the window of a far-side pin."""
    middle = float(pin_board(pin))
    outer = min(middle + _REACH - THIN_TOUCH, EDGE_HIGH_BOARD)
    return min(board - (middle - _REACH + THIN_TOUCH), outer - board)


def three_six_nine_on_paper():
    """A straight ball counted from board 17.5: boards to spare inside each pin's window."""
    found = []
    for walk in WALKS:
        for pin in COUNTS:
            room = _room(POCKET_BOARD + paper_move(pin, walk), pin)
            found.append(Case(f"{walk} walk", f"{pin}-pin", room, room >= 0.0))
    return found


def three_six_nine_thrown():
    """The strike ball from the strike line with each bowler's own walk: boards to spare at the worst pin."""

    def case(name, lane):
        line, share = usual_line(name, lane), WALKS[bowler_of(name).feet.drift]
        if line is None or line.laydown_board - share * max(COUNTS.values()) < 1:
            return Case(name, lane.words)  # no boards left to move out on
        room = []
        for pin, count in COUNTS.items():
            path = thrown(name, lane, replace(line, laydown_board=line.laydown_board - share * count))
            room.append(_room(board_at_pin(path.entry_board, path.entry_angle_deg, pin), pin))
        worst = nan if np.isnan(room).any() else min(room)  # one of them in the gutter
        return Case(name, lane.words, worst, bool(worst >= 0.0))

    return on_all(case, SPARE_LANES, ANYONE)


def three_six_nine_note() -> str:
    """How far it falls short of the pins' own spacing."""
    short = [words.halves(paper_short(pin, "2 to 1")) for pin in COUNTS]
    far = [words.halves(paper_move(pin, "parallel")) for pin in COUNTS]
    return (
        "On paper, with a straight ball and a walk that drifts two to one, it falls short of the way from the head pin by "
        f"{short[0]}, {short[1]} and {short[2]} boards for the 2-, 4- and 7-pin. With a parallel walk the ball moves by "
        f"{far[0]}, {far[1]} and {far[2]} boards, far too much. So the system has a walk in it. Find your own three numbers."
    )


# --- 17, 18: 3:1:2, 2-and-1 ----------------------------------------------------------------------------
def three_one_two():
    """One board out at the foul line, target kept: boards by which the ball comes in further in."""

    def case(name, lane):
        line = usual_line(name, lane)
        if line is None:
            return Case(name, lane.words)
        moved = replace(line, laydown_board=line.laydown_board - 1.0)
        number = thrown(name, lane, moved).entry_board - thrown(name, lane, line).entry_board
        return Case(name, lane.words, number, 2.5 <= number <= 3.5, number)

    return on_all(case, FRESH, ANYONE)


def three_one_two_note() -> str:
    """The straight line behind it."""
    at_pins = words.halves(straight_boards(-1.0, 0.0, LANE_FT))
    return (
        f"For a straight ball it is plain geometry: one board at the foul line is {at_pins} boards at the pins, the other way, "
        "because the arrows lie a quarter of the way. On an oiled lane the oil joins in."
    )


def two_and_one(walk):
    """It comes in high on the house line: feet two in, target one in; boards lower."""

    def case(name, lane):
        line = usual_line(name, Lane("house"))
        old = thrown(name, lane, line)
        if not old.entry_board >= POCKET_BOARD + OFF_BOARDS:
            return Case(name, lane.words)
        laid = line.laydown_board + 2.0 * WALKS[walk]
        moved = replace(line, laydown_board=laid, target_board=line.target_board + 1.0)
        number = old.entry_board - thrown(name, lane, moved).entry_board
        return Case(name, lane.words, number, number >= SEEN_BOARD, -number)

    return on_all(case, DRY, ANYONE)


def two_and_one_parallel():
    """With a walk that ends as far over as it began."""
    return two_and_one("parallel")


def two_and_one_drifting():
    """With a walk that drifts back two to one."""
    return two_and_one("2 to 1")


def two_and_one_note() -> str:
    """The two moves that go by one name, on paper."""
    return (
        f"It is two different moves. Walking parallel it opens the line by {opened_deg(2.0, 1.0):.1f} degrees, and a straight "
        f"ball is {abs(straight_boards(2.0, 1.0, 42.0)):.1f} board further out at 42 ft (12.8 m). With a walk that drifts two "
        f"to one it is a parallel shift by {straight_boards(1.0, 1.0, 42.0):.0f} board. Ask which one is meant."
    )
