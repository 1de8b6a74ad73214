"""Find your own numbers: where the feet go for each pin, target fixed, for a bowler on a lane."""

from dataclasses import dataclass, replace

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import mark_board
from bowlcore.coaching.spare_windows import own_pin
from bowlcore.coaching.spares import BALLS, STRIKE_BALL, ball_for, chances_of, lines_to_middle, move_words
from bowlcore.motion.checks import number_in
from bowlcore.motion.release import Release
from bowlcore.rack.leave import Leave

ORDER = (10, 6, 3, 9, 1, 5, 2, 8, 4, 7)  # a right-hander's pins from the own gutter to the far one
_SHOTS = 128


@dataclass(frozen=True)
class Numbers:
    """One ball's numbers, pins as in `pins`: a place for the feet, or None; NaN where there is none.

    chance : share of this bowler's balls that hit the pin well from there
    """

    lines: list[Release | None]
    slide_board: np.ndarray
    chance: np.ndarray


@dataclass(frozen=True)
class OwnNumbers:
    pins: tuple
    numbers: dict  # ball -> Numbers
    sentence: str
    rows: list


def answer(bowler, surface, target_board=None, kind="plain spare ball") -> OwnNumbers:
    """Feet for the middle of each pin's window.

    Parameters
    ----------
    bowler : Bowler
        Moves are counted from the feet of `bowler.release`.
    surface : as for `simulate`
    target_board : float
        The fixed target, 15 ft from the foul line; the usual one if left out.
    kind : "plain spare ball" or "strike ball"
        The one that the sentence and the rows are about.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """
    target = bowler.release.target_board if target_board is None else target_board
    number_in("target_board", target, 1, 39, "boards")
    pins = tuple(own_pin(pin, bowler.release.hand) for pin in ORDER)
    numbers = _numbers(bowler, surface, target, pins)
    mine = numbers[kind] if kind in numbers else ball_for(bowler, kind)
    rows = [
        {
            "pin": str(pin),
            "slide on": "no place" if line is None else words.halves(mine.slide_board[i]),
            "feet, from the strike line": "" if line is None else move_words(bowler, line),
            "over, at the arrows": "" if line is None else words.halves(mark_board(line)),
            "hits it well": "" if line is None else words.percent(mine.chance[i]),
        }
        for i, (pin, line) in enumerate(zip(pins, mine.lines, strict=True))
    ]
    return OwnNumbers(pins, numbers, _sentence(bowler, pins, mine, kind, target), rows)


def _numbers(bowler, surface, target, pins):
    """Of each ball; all are followed together."""
    leaves = [Leave.of(pin) for pin in pins] * len(BALLS)
    balls = [ball for ball in (ball_for(bowler, name) for name in BALLS) for _ in pins]
    usual = replace(bowler.release, target_board=float(target))
    lines = lines_to_middle([usual] * len(leaves), leaves, surface, balls)
    there = [i for i, line in enumerate(lines) if line is not None]
    slide, chance = np.full(len(lines), np.nan), np.full(len(lines), np.nan)
    slide[there] = [bowler.feet.slide_board(lines[i]) for i in there]
    if there:
        bowlers = [replace(bowler, release=lines[i]) for i in there]
        found = chances_of(bowlers, surface, [leaves[i] for i in there], [balls[i] for i in there], _SHOTS)
        chance[there] = [one.front for one in found]
    parts = [slice(i * len(pins), (i + 1) * len(pins)) for i in range(len(BALLS))]
    return {
        name: Numbers(lines[part], slide[part], chance[part]) for name, part in zip(BALLS, parts, strict=True)
    }


def _sentence(bowler, pins, mine, kind, target):
    """The own corner, then the three pins of the far side as the customary system counts them."""
    corner, *far = (own_pin(pin, bowler.release.hand) for pin in (10, 2, 4, 7))

    def slide(pin):
        return mine.slide_board[pins.index(pin)]

    told = f"With the {kind} and this target you slide on "
    named = [
        f"{words.halves(slide(pin))} for the {pin}" for pin in (corner, *far) if slide(pin) == slide(pin)
    ]
    told += f"{', '.join(named)}." if named else "no board: nothing is reached."
    missing = [f"the {pin}" for pin in (corner, *far) if slide(pin) != slide(pin)]
    if missing:
        told += f" For {' and '.join(missing)} there is no place to stand with this target."
    if kind == STRIKE_BALL and target == bowler.release.target_board:
        start, name = bowler.feet.slide_board(bowler.release), "your strike line"
    else:
        start, name = slide(1), "your line to the head pin"
    moves = [bowler.feet.start_move(start - slide(pin)) for pin in far]
    if all(move == move for move in moves):
        told += (
            f" Counted from {name} the start moves {_outs(moves)} for the {far[0]}, {far[1]} and {far[2]}, "
            f"with a walk that is {bowler.feet.drift}: your own numbers. The custom says 3, 6 and 9 out."
        )
    return told


def _outs(moves):
    """ "1.5, 3.5 and 4.5 boards out", each with its own side where they differ."""
    sizes = [words.halves(abs(move)) for move in moves]
    if all(words.to_half(move) >= 0 for move in moves):
        return f"{sizes[0]}, {sizes[1]} and {sizes[2]} boards out"
    sides = ["out" if move > 0 else "in" for move in moves]
    return ", ".join(f"{size} {side}" for size, side in zip(sizes, sides, strict=True))
