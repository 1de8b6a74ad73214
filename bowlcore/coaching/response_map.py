"""Entry board and entry angle over axis rotation and tilt: on the same line, and re-aimed to the pocket.

Two questions, two pictures: the same line keeps feet and target; re-aimed takes the steepest line within five
boards of both that does not roll too early, as the path lab does.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Spread
from bowlcore.coaching.lines import REACH, lines_of_each
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.coaching.words import IN_TIME_FT
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.release import FIELD_NAMES, Release

ROTATIONS, TILTS = np.linspace(0.0, 90.0, 41), np.linspace(0.0, 45.0, 41)
# re-aiming tries some three hundred lines a hand, so fewer hands
FEW_ROTATIONS, FEW_TILTS = np.linspace(0.0, 90.0, 13), np.linspace(0.0, 45.0, 7)
SCATTER = Spread()  # an ordinary bowler's, invented
_MOVE = {"axis_rotation_deg": 10.0, "axis_tilt_deg": 10.0}
_EVERY = 2  # of the fewer hands go into the table


@dataclass(frozen=True)
class ResponseMap:
    """board, angle_deg (tilt, rotation): same line, NaN in the gutter; re_aimed_deg (fewer): NaN without a line.

    here : entry board, entry angle, re-aimed angle of the bowler's own hand
    """

    board: np.ndarray
    angle_deg: np.ndarray
    re_aimed_deg: np.ndarray
    here: tuple
    sentence: str
    rows: list


def answer(release: Release, pattern="house", ball="benchmark") -> ResponseMap:
    """The three maps about a release; only its rotation and tilt are varied.

    Raises ValueError from the motion, in words.
    """
    around = family_of(release)
    board, angle = same_line(around, pattern, ball)
    aimed = re_aimed(around, pattern, ball)
    hands = [release] + [
        replace(release, **{name: getattr(release, name) + more}) for name, more in _MOVE.items()
    ]
    found = _same(hands, pattern, ball)
    steep = _steepest(hands, pattern, ball)
    here = float(found["entry_board"][0]), float(found["entry_angle_deg"][0]), float(steep[0])
    return ResponseMap(
        board, angle, aimed, here, _sentence(release, found, steep), _rows(around, pattern, ball)
    )


def family_of(release: Release) -> Release:
    """What all hands of the maps share: the release without its rotation and tilt."""
    return replace(release, axis_rotation_deg=0.0, axis_tilt_deg=0.0)


@lru_cache(maxsize=16)
def same_line(around: Release, pattern, ball):
    """Entry board and entry angle [deg] over TILTS and ROTATIONS, in one sweep of 41 x 41 balls."""
    hands = _grid(TILTS, ROTATIONS)
    marks = _swept(around, hands, pattern, ball)
    return tuple(
        marks[name].reshape(len(TILTS), len(ROTATIONS)) for name in ("entry_board", "entry_angle_deg")
    )


@lru_cache(maxsize=16)
def re_aimed(around: Release, pattern, ball):
    """Entry angle [deg] of the steepest line in reach that does not roll too early, over the fewer hands."""
    return _steepest(_hands(around, _grid(FEW_TILTS, FEW_ROTATIONS)), pattern, ball).reshape(
        len(FEW_TILTS), len(FEW_ROTATIONS)
    )


def _grid(tilts, rotations):
    tilt, rotation = np.meshgrid(tilts, rotations, indexing="ij")
    return tilt.ravel(), rotation.ravel()


def _hands(around, grid):
    return [
        replace(around, axis_tilt_deg=float(tilt), axis_rotation_deg=float(rotation))
        for tilt, rotation in zip(*grid, strict=True)
    ]


def _swept(around, grid, pattern, ball):
    tilt, rotation = grid
    shots = {name: np.repeat([getattr(around, name)], len(tilt)) for name in FIELD_NAMES}
    shots["axis_tilt_deg"], shots["axis_rotation_deg"] = tilt, rotation
    return sweep_columns(shots, lane_of(pattern), ball_of(ball))[0]


def _same(hands, pattern, ball):
    grid = np.array([(hand.axis_tilt_deg, hand.axis_rotation_deg) for hand in hands]).T
    return _swept(hands[0], grid, pattern, ball)


def _steepest(hands, pattern, ball):
    which, lines = lines_of_each(hands, lane_of(pattern), ball_of(ball), reach=REACH)
    angles = np.full(len(hands), -np.inf)
    good = lines.roll_start_ft >= IN_TIME_FT
    np.maximum.at(angles, which[good], lines.entry_angle_deg[good])
    return np.where(np.isfinite(angles), angles, np.nan)


def _sentence(release, found, steep):
    angle = found["entry_angle_deg"]
    own = f"rotation {words.degrees(release.axis_rotation_deg)}, tilt {words.degrees(release.axis_tilt_deg)}"
    hits = [_hit(*one) for one in zip(_boards(found), angle, strict=True)]
    parts = [f"Your hand ({own}): on the same line {hits[0]}; re-aimed {_steep(steep[0])}."]
    for i, what in enumerate(("rotation", "tilt"), start=1):
        parts.append(f"Ten degrees more {what}: on the same line {hits[i]}; re-aimed {_steep(steep[i])}.")
    return " ".join(parts)


def _boards(marks):
    """Entry boards in words, or which gutter: a ball lost on its own side was never further out than there."""
    return [
        words.board(board) if board == board else "the gutter" if outermost < 1.0 else "the far gutter"
        for board, outermost in zip(marks["entry_board"], marks["breakpoint_board"], strict=True)
    ]


def _hit(board, angle):
    if angle != angle:
        return board
    return f"{board} at {words.degrees(abs(angle))}{'' if angle >= -0.25 else ', moving out'}"


def _steep(angle):
    return words.degrees(angle) if angle == angle else "no line in reach"


def _rows(around, pattern, ball):
    grid = _grid(FEW_TILTS[::_EVERY], FEW_ROTATIONS[::_EVERY])
    marks, steep = (
        _swept(around, grid, pattern, ball),
        re_aimed(around, pattern, ball)[::_EVERY, ::_EVERY].ravel(),
    )
    return [
        {
            "tilt (degrees)": f"{tilt:g}",
            "rotation (degrees)": f"{rotation:g}",
            "same line: comes in on": board,
            "same line: angle (degrees)": words.halves(angle) if angle == angle else "",
            "re-aimed: angle (degrees)": words.halves(aimed) if aimed == aimed else "no line in reach",
        }
        for tilt, rotation, board, angle, aimed in zip(
            *grid, _boards(marks), marks["entry_angle_deg"], steep, strict=True
        )
    ]
