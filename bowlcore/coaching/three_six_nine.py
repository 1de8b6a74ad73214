"""Spare systems by counting boards: how far each falls short or goes over, and with which walk.

On paper: a straight ball, target 15 ft beyond the foul line, the walk begins 15 ft before it. On the lane:
the same moves thrown with a real hook. Boards from the bowler's own side; the far side is where a hook
goes, the own side where it comes from. Pins are a right-hander's until an answer names them.
"""

from dataclasses import dataclass, replace
from math import atan2, degrees

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import straight_boards
from bowlcore.coaching.spare_windows import board_at, own_pin, pin_window
from bowlcore.coaching.spares import BALLS, STRIKE_BALL, ball_for, lines_to_middle
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.release import FIELD_NAMES
from bowlcore.motion.units import EDGE_HIGH_BOARD, EDGE_LOW_BOARD, TARGET_FT
from bowlcore.rack.leave import Leave
from bowlcore.rack.pins import BOARD_IN, CENTRE_BOARD, pin_board, pin_distance_ft

WALKS = ("2 to 1", "parallel", "at the target")
_WALKING = {"2 to 1": "two to one", "parallel": "parallel", "at the target": "at the target"}
SYSTEMS = ("3-6-9", "2-4-6", "cross-lane")
ON_PAPER = "straight, on paper"
THROWN = (ON_PAPER, *BALLS)
FAR, OWN = (2, 4, 7), (3, 6, 10)
_FEET = {"3-6-9": (3.0, 6.0, 9.0), "2-4-6": (0.0, 0.0, 0.0), "cross-lane": (6.0, 3.0, 0.0)}
_TARGET = {"3-6-9": (0.0, 0.0, 0.0), "2-4-6": (2.0, 4.0, 6.0), "cross-lane": (0.0, 0.0, 0.0)}
CROSS_LANE_BOARD = 30.0  # laydown of the fixed line to the own corner; 10 for the far one


def laydown_move(start_move, target_move, walk):
    """Boards that the laydown moves for a move at the start and one of the target.

    "2 to 1": half the move at the start. "parallel": all of it. "at the target": on the straight line
    from the start to the target, so half of each.
    """
    if walk not in WALKS:
        raise ValueError(f"walk must be one of {', '.join(WALKS)}, got {walk!r}")
    whole = {
        "2 to 1": start_move / 2,
        "parallel": start_move,
        "at the target": (start_move + target_move) / 2,
    }
    return whole[walk]


def pins_move(start_move, target_move, walk, distance_ft):
    """Boards that a straight ball moves at a distance [ft]; positive away from the own gutter."""
    laid = laydown_move(start_move, target_move, walk)
    return straight_boards(laid, target_move, distance_ft)


def cross_lane_deg(laydown_board, pin):
    """Angle across the lane from a laydown to a pin's centre [deg], negative towards the own gutter."""
    sideways_ft = (float(pin_board(pin)) - laydown_board) * BOARD_IN / 12.0
    return degrees(atan2(sideways_ft, float(pin_distance_ft(pin))))


@dataclass(frozen=True)
class Landing:
    """One pin of a system: board at its row, boards short of its centre (negative: over), its window.

    `lost` says why there is no board: "gutter", "off the lane", "no line"; else it is "".
    """

    pin: int
    moved: str
    board: float
    short: float
    low: float
    high: float
    lost: str

    @property
    def touched(self):
        return self.low <= self.board <= self.high


@dataclass(frozen=True)
class SystemAnswer:
    landings: list[Landing]
    sentence: str
    rows: list


def answer(
    bowler, surface, system="3-6-9", walk="2 to 1", thrown=ON_PAPER, start_board=CENTRE_BOARD
) -> SystemAnswer:
    """Six pins by one system.

    Parameters
    ----------
    bowler : Bowler
        Whose strike line the counting starts from, and whose hand decides the pins' names.
    surface : as for `simulate`
    system : "3-6-9", "2-4-6" or "cross-lane"
        Feet 3, 6, 9, target fixed; target 2, 4, 6, start of the feet fixed; or a line across the lane to
        each corner pin, from which the feet go back 3 and 6.
    walk : "2 to 1", "parallel" or "at the target"
    thrown : "straight, on paper", "plain spare ball" or "strike ball"
        Counting starts, on paper, from a straight ball at `start_board`; with the plain ball from its line
        to the head pin over the usual target; with the strike ball from the strike line itself.
    start_board : float
        Only on paper: 20 is the head pin, 17.5 the pocket.

    Raises
    ------
    ValueError
        For an unknown system, walk or ball.
    """
    for name, value, known in (("system", system, SYSTEMS), ("thrown", thrown, THROWN)):
        if value not in known:
            raise ValueError(f"{name} must be one of {', '.join(known)}, got {value!r}")
    moves = _moves(system)
    laid = [laydown_move(start, target, walk) for _, start, target in moves]
    if thrown == ON_PAPER:
        seen = _on_paper(system, moves, laid, start_board)
    else:
        seen = _on_the_lane(bowler, surface, system, thrown, moves, laid)
    back = system == "cross-lane"  # its feet come back from the corner
    landings = [
        _landing(move, *one, back, bowler.release.hand) for move, one in zip(moves, seen, strict=True)
    ]
    return SystemAnswer(landings, _sentence(landings, system, walk, thrown), [_row(one) for one in landings])


def _moves(system):
    """(pin, boards at the start, boards of the target), positive in."""
    moves = []
    for pins, sign in ((FAR, 1.0), (OWN, -1.0)):
        back = -1.0 if system == "cross-lane" else 1.0
        for pin, feet, target in zip(pins, _FEET[system], _TARGET[system], strict=True):
            moves.append((pin, -sign * back * feet + 0.0, sign * target + 0.0))
    return moves


def _on_paper(system, moves, laid, start_board):
    """(board at the pin's row, heading, why lost) of each straight ball."""
    seen = []
    for (pin, _, target_move), move in zip(moves, laid, strict=True):
        laydown, target = start_board, start_board
        if system == "cross-lane":
            corner = 7 if pin in FAR else 10
            laydown = 2 * CENTRE_BOARD - CROSS_LANE_BOARD if pin in FAR else CROSS_LANE_BOARD
            share = TARGET_FT / float(pin_distance_ft(corner))
            target = laydown + (float(pin_board(corner)) - laydown) * share
        laydown, target = laydown + move, target + target_move
        row_ft = float(pin_distance_ft(pin))
        board = laydown + (target - laydown) * row_ft / TARGET_FT
        heading = degrees(atan2((target - laydown) * BOARD_IN / 12.0, TARGET_FT))
        seen.append((board, heading, ""))
    return seen


def _on_the_lane(bowler, surface, system, thrown, moves, laid):
    """The same for a real ball from a real line."""
    ball = ball_for(bowler, thrown)
    bases = _base_lines(bowler.release, surface, ball, system, thrown)
    lines, lost = [], []
    for (pin, _, target_move), move in zip(moves, laid, strict=True):
        base, why = bases[pin in FAR], ""
        if base is None:
            why = "no line"
        elif not (1 <= base.laydown_board + move <= 39 and 1 <= base.target_board + target_move <= 39):
            why = "off the lane"
        line = bowler.release
        if not why:
            line = replace(
                base, laydown_board=base.laydown_board + move, target_board=base.target_board + target_move
            )
        lines.append(line)
        lost.append(why)
    columns = {name: np.array([getattr(one, name) for one in lines]) for name in FIELD_NAMES}
    marks, _ = sweep_columns(columns, surface, ball)
    seen = []
    for (pin, _, _), entry, angle, why in zip(
        moves, marks["entry_board"], marks["entry_angle_deg"], lost, strict=True
    ):
        board = float(board_at(entry, angle, float(pin_distance_ft(pin))))
        inside = EDGE_LOW_BOARD <= board <= EDGE_HIGH_BOARD
        seen.append((board, float(angle), why) if inside and not why else (np.nan, 0.0, why or "gutter"))
    return seen


def _base_lines(release, surface, ball, system, thrown):
    """The lines that counting starts from: {far side or not: Release or None}."""
    if system == "cross-lane":
        stands = [
            replace(release, laydown_board=board) for board in (40.0 - CROSS_LANE_BOARD, CROSS_LANE_BOARD)
        ]
        corners = [Leave.of(own_pin(pin, release.hand)) for pin in (7, 10)]
        far, own = lines_to_middle(stands, corners, surface, ball, keep="feet")
        return {True: far, False: own}
    if thrown == STRIKE_BALL:
        return dict.fromkeys((True, False), release)
    return dict.fromkeys((True, False), lines_to_middle([release], [Leave.of(1)], surface, ball)[0])


def _landing(move, board, heading, lost, back, hand):
    pin, start_move, target_move = move
    window = pin_window(pin, heading)
    short = (float(pin_board(pin)) - board) * (1.0 if (pin in FAR) != back else -1.0)
    moved = "the line itself"
    if not (start_move or target_move):  # aimed, not counted
        short = 0.0
    for name, boards in (("feet", start_move), ("target", target_move)):
        if boards:
            moved = f"{name} {words.count(abs(boards), 'board')} {'out' if boards < 0 else 'in'}"
    return Landing(own_pin(pin, hand), moved, board, short, float(window.low), float(window.high), lost)


def short_words(landing) -> str:
    """ "2 boards short", "1.5 boards over", "right on it", "gutter"."""
    if landing.lost:
        return landing.lost
    size = words.to_half(landing.short)
    if size == 0:
        return "right on it"
    return f"{words.count(abs(size), 'board')} {'short' if size > 0 else 'over'}"


def _sentence(landings, system, walk, thrown):
    far, own = (
        ", ".join(f"{one.pin}-pin {short_words(one)}" for one in part)
        for part in (landings[:3], landings[3:])
    )
    missed = [str(one.pin) for one in landings if not one.touched]
    how = "a straight ball on paper" if thrown == ON_PAPER else f"the {thrown}"
    name = "A line across the lane to each corner" if system == "cross-lane" else system
    end = f"Missed: {', '.join(missed)}." if missed else "Each pin is still touched."
    return f"{name} with {how}, walking {_WALKING[walk]}: {far}; on the own side {own}. {end}"


def _row(one):
    low, high = max(one.low, EDGE_LOW_BOARD), min(one.high, EDGE_HIGH_BOARD)
    there = words.halves(one.board) if EDGE_LOW_BOARD <= one.board <= EDGE_HIGH_BOARD else "off the lane"
    return {
        "pin": str(one.pin),
        "move": one.moved,
        "comes to its row on board": one.lost or there,
        "against the pin's centre": short_words(one),
        "boards that touch it": f"{words.halves(low)} to {words.halves(high)}",
        "touched": "yes" if one.touched else "no",
    }
