"""Scores by the rules of play: ten frames, strike = 10 and the next two balls, spare = 10 and the next one.

IBF playing rules, chapter 1.1 (known second-hand). Balls are counts of pins; texts are read as people write
them: X for a strike, / for a spare, - for none.
"""

from typing import NamedTuple

FRAMES, PINS = 10, 10


class Frame(NamedTuple):
    """One frame: its balls, and the score so far; None while balls that count for it are still to come."""

    number: int
    balls: tuple
    so_far: int | None


def frames_of(balls) -> list[Frame]:
    """Frames of one game, as far as it has gone.

    Parameters
    ----------
    balls : sequence of int
        Pins of each ball, in order.

    Raises
    ------
    ValueError
        For a ball that cannot be, naming the frame, and for balls after the end of the game.
    """
    frames, place, score, known = [], 0, 0, True
    for number in range(1, FRAMES + 1):
        taken = _balls_of_frame(balls, place, number)
        if not taken:
            break
        worth = _worth(balls, place, taken)
        known = known and worth is not None
        score += worth or 0
        frames.append(Frame(number, taken, score if known else None))
        place += len(taken)
    if place < len(balls):
        raise ValueError(f"the game ends after {place} balls, got {len(balls)}")
    return frames


def score_of(balls) -> int | None:
    """The score of a finished game; None while it goes on."""
    frames = frames_of(balls)
    return frames[-1].so_far if len(frames) == FRAMES else None


def balls_of_text(text) -> list[int]:
    """Pins of each ball from "X 7/ 9- X -8 8/ -6 X X X 8 1".

    Raises
    ------
    ValueError
        Naming the sign that cannot be read.
    """
    balls, start = [], 0  # `start`: where the frame began that a "/" completes
    for sign in "".join(text.split()).upper():
        if sign == "X":
            balls.append(PINS)
            start = len(balls)
            continue
        if sign == "/":
            if len(balls) != start + 1:
                raise ValueError("/ completes a frame after one ball that was no strike")
            balls.append(PINS - balls[-1])
        elif sign == "-" or sign in "0123456789":
            balls.append(0 if sign == "-" else int(sign))
        else:
            raise ValueError(f"a score is written with X, /, - and digits, got {sign!r}")
        if len(balls) == start + 2:
            start = len(balls)
    return balls


def rows_of(balls) -> list[dict]:
    """A plain table of the game."""
    return [
        {
            "frame": frame.number,
            "balls": _said(frame),
            "score so far": "" if frame.so_far is None else frame.so_far,
        }
        for frame in frames_of(balls)
    ]


def _balls_of_frame(balls, place, number):
    """The balls that belong to a frame, as many as are there, each checked."""
    taken = []
    for ball in balls[place : place + (3 if number == FRAMES else 2)]:
        standing = PINS - sum(taken) % PINS if _rack_goes_on(taken) else PINS
        if isinstance(ball, bool) or int(ball) != ball or not 0 <= ball <= standing:
            raise ValueError(f"frame {number}: a ball takes 0 to {standing} pins here, got {ball!r}")
        taken.append(int(ball))
        strike_or_spare = taken[0] == PINS or sum(taken[:2]) == PINS
        if (
            number < FRAMES
            and taken[0] == PINS
            or number == FRAMES
            and len(taken) == 2
            and not strike_or_spare
        ):
            break
    return tuple(taken)


def _rack_goes_on(taken):
    """Does the next ball of a frame meet what the last one left?"""
    if not taken or taken[-1] == PINS:
        return False
    return not (len(taken) == 2 and (sum(taken) == PINS))


def _worth(balls, place, taken):
    """Pins of a frame with what counts from later balls; None while these are to come."""
    if taken[0] == PINS or sum(taken[:2]) == PINS:
        counted = balls[place : place + 3]
        return sum(counted) if len(counted) == 3 else None
    return sum(taken) if len(taken) >= 2 else None


def _said(frame):
    """Balls of a frame in words."""
    words, left = [], PINS
    for ball in frame.balls:
        if ball == left:
            words.append("strike" if left == PINS else "spare")
            left = PINS
        else:
            words.append(str(ball))
            left = left - ball if left == PINS else PINS
    return ", ".join(words)
