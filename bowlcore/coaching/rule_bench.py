"""The bench on which sayings are tried: which bowlers, which lanes, the same line and re-aimed.

Trade units; boards from the bowler's own side. Bowlers and lanes are the shipped, invented ones.
"""

from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from bowlcore.coaching.bowler import Bowler, load_bowlers
from bowlcore.coaching.lines import lines_to_pocket
from bowlcore.coaching.odds import RANKING, Odds, bowler_odds, odds_of_entries
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.words import IN_TIME_FT, POCKET_BOARD, POCKET_REACH
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import RANGES, Release

# Adults who can change the hand on demand; sayings about the hand are tried with nobody else.
HANDS = ("league one-hander", "high-rev two-hander", "left-hander", "spinner")
ANYONE = (*HANDS, "low-rev senior")  # sayings about feet and boards ask nothing of a wrist
TIE = 10.0  # points of pocket share: under ten it is a tie
SEEN_DEG = SEEN_BOARD = SEEN_FT = 0.5  # the finest step that a coach can see
LESS_ROTATION, LESS_TILT = (
    -15.0,
    -10.0,
)  # degrees: more than most can do on demand, so a saying gets its chance
MORE_ROTATION, MORE_TILT = 15.0, 10.0
_ALIKE = 0.02  # of lines that bring about as many balls into the pocket, the steepest is taken


class Lane(NamedTuple):
    """A shipped pattern in a house that plays looser (+) or tighter (-), in percent."""

    pattern: str
    percent: int = 0

    @property
    def surface(self):
        return lane_of(self.pattern, float(self.percent))

    @property
    def words(self) -> str:
        """ "house shape, 20 % looser"."""
        title = self.surface.pattern.title.split(":")[0].lower()
        return title + (
            f", {abs(self.percent)} % {'looser' if self.percent > 0 else 'tighter'}" if self.percent else ""
        )


def _in_three_houses(pattern):
    return tuple(Lane(pattern, percent) for percent in (-10, 0, 10))


FRESH = (Lane("house"), Lane("flat"), Lane("long_heavy"))
DRY = (Lane("dried_out"), Lane("dried_out", 10), Lane("house", 20))
SLICK = (Lane("long_heavy"), Lane("carried_down"), Lane("house", -20))
CARRIED, WET_DRY = _in_three_houses("carried_down"), _in_three_houses("wet_dry")
SPARE_LANES = (Lane("house"), Lane("dried_out"), Lane("long_heavy"))
LENGTHS = (Lane("short"), Lane("house"), Lane("flat"), Lane("long_heavy"))


class Aimed(NamedTuple):
    """A hand on its best line into the pocket of one lane.

    odds : of 64 balls on that line; angle_deg : entry angle of the centre ball
    """

    release: Release
    odds: Odds
    angle_deg: float


_bowlers = lru_cache(maxsize=1)(load_bowlers)


def bowler_of(name: str) -> Bowler:
    """A demo bowler by name."""
    return _bowlers()[name]


def turned(release: Release, rotation_deg=0.0, tilt_deg=0.0) -> Release:
    """The release with so many degrees more (less: negative) of rotation and tilt, neither below 0."""
    return replace(
        release,
        axis_rotation_deg=max(release.axis_rotation_deg + rotation_deg, 0.0),
        axis_tilt_deg=max(release.axis_tilt_deg + tilt_deg, 0.0),
    )


def hand(name: str, rotation_deg=0.0, tilt_deg=0.0) -> tuple[float, float]:
    """A bowler's rotation and tilt [deg], moved by so many degrees: what `aimed` takes."""
    moved = turned(bowler_of(name).release, rotation_deg, tilt_deg)
    return moved.axis_rotation_deg, moved.axis_tilt_deg


@lru_cache(maxsize=1024)
def aimed(name: str, lane: Lane, hand: tuple[float, float]) -> Aimed | None:
    """A bowler with this rotation and tilt [deg], re-aimed to the pocket; None where no line leads there.

    Of all lines from board 4 to 32 that do not roll too early (of all, if every one does), the one that
    brings most balls into the pocket; of those within two in a hundred of it, the steepest. Every hand is
    re-aimed by this one rule, as far as the feet must go.
    """
    usual = bowler_of(name)
    release = replace(usual.release, axis_rotation_deg=hand[0], axis_tilt_deg=hand[1])
    lines = lines_to_pocket(release, lane.surface, usual.ball)
    if not len(lines.laydown_board):
        return None
    in_time = lines.roll_start_ft >= IN_TIME_FT
    feet, target, angle = (part[in_time | ~in_time.any()] for part in lines[:3])
    bowler = replace(usual, release=release)
    marks = _thrown_on(bowler, lane, feet, target)
    with np.errstate(invalid="ignore"):
        share = (np.abs(marks["entry_board"] - POCKET_BOARD) <= POCKET_REACH).mean(axis=1)
    best = int(np.where(share >= share.max() - _ALIKE, angle, -np.inf).argmax())
    line = replace(release, laydown_board=float(feet[best]), target_board=float(target[best]))
    odds = odds_of_entries({key: values[best] for key, values in marks.items()}, bowler)
    return Aimed(line, odds, float(angle[best]))


def on_line(name: str, lane: Lane, line: Release) -> Aimed:
    """What 64 balls of this bowler on this line do."""
    bowler = replace(bowler_of(name), release=line)
    return Aimed(line, bowler_odds(bowler, lane.surface, RANKING), thrown(name, lane, line).entry_angle_deg)


def _thrown_on(bowler, lane, feet, target):
    """Landmarks of 64 balls on each of these lines: arrays (line, ball)."""
    columns = {name: np.tile(values, len(feet)) for name, values in bowler.shots(RANKING).items()}
    for name, boards in (("laydown_board", feet), ("target_board", target)):
        low, high, _ = RANGES[name]
        moved = (boards - getattr(bowler.release, name)).repeat(RANKING)
        columns[name] = np.clip(columns[name] + moved, low, high)
    marks, _ = sweep_columns(columns, lane.surface, bowler.ball)
    return {key: values.reshape(len(feet), RANKING) for key, values in marks.items()}


@lru_cache(maxsize=256)
def swung(name: str, lane: Lane) -> Release | None:
    """Feet as on the house shape, the ball sent wider or straighter until it comes into the pocket here.

    Of several such lines the one nearest to the house line; None where there is none.
    """
    home = usual_line(name, Lane("house"))
    lines = lines_to_pocket(home, lane.surface, bowler_of(name).ball)
    off = np.where(lines.laydown_board == home.laydown_board, lines.target_board - home.target_board, np.inf)
    if not np.isfinite(off).any():
        return None
    return replace(home, target_board=float(lines.target_board[np.abs(off).argmin()]))


def usual_line(name: str, lane: Lane) -> Release | None:
    """The line into the pocket of this lane with the bowler's own hand."""
    found = aimed(name, lane, hand(name))
    return found and found.release


def thrown(name: str, lane: Lane, release: Release) -> BallPath:
    """One ball of this bowler on a lane."""
    return simulate(release, lane.surface, bowler_of(name).ball)
