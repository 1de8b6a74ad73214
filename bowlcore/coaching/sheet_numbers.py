"""The numbers of a worksheet, drawn from the ranges allowed for an age; the same seed draws the same numbers.

Whatever is printed is exactly what is computed with: every range runs in steps that a page can show.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from math import isfinite
from random import Random
from typing import NamedTuple

from bowlcore.coaching import words
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.coaching.spare_windows import board_at, pin_window
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

_TRIES = 4000


class Steps(NamedTuple):
    """From `low` to `high` by `step`."""

    low: float
    high: float
    step: float

    def draw(self, rng) -> float:
        return self.low + self.step * rng.randint(0, round((self.high - self.low) / self.step))


class Ranges(NamedTuple):
    """What a level draws from; `opening` is target minus laydown, negative: sent out."""

    speed_mph: Steps
    rev_rate_rpm: Steps
    axis_rotation_deg: Steps
    axis_tilt_deg: Steps
    laydown_board: Steps
    opening: Steps
    ball: str


# Chosen so that nearly every draw is a ball one might see. The youngest get two boards to read; the ball on their
# sheet is thrown by a grown-up, always alike.
RANGES = {
    "8-9": Ranges(
        Steps(17, 17, 1), Steps(300, 300, 1), Steps(45, 45, 1), Steps(13, 13, 1), Steps(11, 25, 1), Steps(-8, -1, 0.5),
        "benchmark",
    ),
    "from 10": Ranges(
        Steps(14, 17, 0.5), Steps(180, 280, 10), Steps(30, 50, 5), Steps(5, 15, 5), Steps(11, 20, 1), Steps(-6, -1, 0.5),
        "benchmark",
    ),
    "from 14": Ranges(
        Steps(15, 19, 0.5), Steps(220, 400, 10), Steps(30, 70, 5), Steps(2, 20, 1), Steps(12, 25, 1), Steps(-8, -1, 0.5),
        "benchmark",
    ),
}  # fmt: skip


@dataclass(frozen=True)
class Shot:
    """A release, the oil it is thrown on, and the name of the ball."""

    release: Release
    pattern: str
    ball_name: str

    @property
    def ball(self):
        return ball_of(self.ball_name)

    @cached_property
    def path(self) -> BallPath:
        return simulate(self.release, lane_of(self.pattern), self.ball)

    def on(self, pattern):
        """The same on other oil."""
        return replace(self, pattern=pattern)

    def but(self, **changes):
        """The same with something else about the release."""
        return replace(self, release=replace(self.release, **changes))


def draw_release(rng, level, hand) -> Release:
    """A release from the ranges of a level."""
    ranges = RANGES[level]
    laydown = ranges.laydown_board.draw(rng)
    return Release(
        ranges.speed_mph.draw(rng),
        ranges.rev_rate_rpm.draw(rng),
        ranges.axis_rotation_deg.draw(rng),
        ranges.axis_tilt_deg.draw(rng),
        laydown,
        laydown + ranges.opening.draw(rng),
        hand=hand,
    )


def draw_shot(rng, level, hand, pattern="house", good=lambda shot: True) -> Shot:
    """A shot that stays on the lane, meets the head pin's neighbourhood, and that `good` takes."""
    for _ in range(_TRIES):
        release = draw_release(rng, level, hand)
        if not 2 <= release.target_board <= 30:
            continue
        shot = Shot(release, pattern, RANGES[level].ball)
        if clear(shot.path, 13.0, 22.5) and good(shot):
            return shot
    raise ValueError("no shot of this level fits this sheet; try another seed")


def random_of(*what) -> Random:
    """Random numbers that depend on these words alone."""
    return Random("/".join(map(str, what)))


def clear(path, low=1.0, high=39.0) -> bool:
    """True where the ball stays on the lane, comes in between two boards, and not on the edge of two answers."""
    if not isfinite(path.entry_board) or not low <= path.entry_board <= high:
        return False
    edges = (words.POCKET_BOARD - words.POCKET_REACH - 0.25, words.POCKET_BOARD + words.POCKET_REACH + 0.25)
    return all(abs(path.entry_board - edge) > 0.15 for edge in edges)


def hit_word(entry_board) -> str:
    """ "light", "pocket", "high" by the half board that is printed."""
    off = words.to_half(entry_board) - words.POCKET_BOARD
    return "pocket" if abs(off) <= words.POCKET_REACH else "high" if off > 0 else "light"


def pocket_told() -> str:
    """ "The pocket is board 16 to 19; less is light, more is high.": what `hit_word` goes by."""
    low, high = (words.halves(words.POCKET_BOARD + side * words.POCKET_REACH) for side in (-1, 1))
    return f"The pocket is board {low} to {high}; less is light, more is high."


def first_pin(entry_board, entry_angle_deg, hand) -> int:
    """The pin that an undisturbed ball touches first; 0 if none."""
    for row in ((1,), (2, 3), (4, 5, 6), (7, 8, 9, 10)):
        for pin in row:
            window = pin_window(pin, entry_angle_deg, hand)
            if window.low <= board_at(entry_board, entry_angle_deg, window.row_ft) <= window.high:
                return pin
    return 0


def plain_first_pin(path, hand) -> bool:
    """True where the first pin is the same a board further out and a board further in: no grazing hit."""
    pins = {first_pin(path.entry_board + off, path.entry_angle_deg, hand) for off in (-1.0, 0.0, 1.0)}
    return len(pins) == 1


def speed(mph) -> str:
    """ "15.5 mph (25 km/h)"."""
    return f"{words.halves(mph)} mph ({mph * KMH_PER_MPH:.0f} km/h)"


def feet(value) -> str:
    """Whole feet, or "not before the pins"."""
    return f"{value:.0f} ft" if isfinite(value) else "not before the pins"


def line_of(shot) -> tuple:
    """Start and target, as a student reads them."""
    return (
        ("ball laid down on board", words.halves(shot.release.laydown_board)),
        ("rolled over board (at 15 ft)", words.halves(shot.release.target_board)),
    )


def hand_of(shot) -> tuple:
    """The four numbers of the hand."""
    release = shot.release
    return (
        ("ball speed", speed(release.speed_mph)),
        ("rev rate", words.revs(release.rev_rate_rpm)),
        ("axis rotation", words.degrees(release.axis_rotation_deg)),
        ("axis tilt", words.degrees(release.axis_tilt_deg)),
    )


def given_of(shot, level) -> tuple:
    """The numbers printed for a level: two boards for the youngest, all of them later."""
    return line_of(shot) if level == "8-9" else (*hand_of(shot), *line_of(shot))


def computed_with(shot) -> str:
    """Everything the answers were computed with."""
    told = [f"{label} {text}" for label, text in (*hand_of(shot), *line_of(shot))]
    return f"{'; '.join(told)}; ball: {shot.ball_name}; {shot.release.hand}-hander; oil: {shot.pattern}."
