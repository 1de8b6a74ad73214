"""Everything a bowler could change, within what can be changed on demand.

A candidate is a release and a ball with the names of what was moved; nothing is judged here. Moves of feet
and target are boards of laydown and of the target at 15 ft, positive inwards.
"""

from dataclasses import dataclass, replace
from itertools import product

import numpy as np

from bowlcore.motion.ball import Ball
from bowlcore.motion.release import RANGES, Release

HAND = ("axis_rotation_deg", "axis_tilt_deg", "rev_rate_rpm")
# Coming round the ball by one step, as in the path lab: invented, nothing was measured
HAND_STEP = {"axis_rotation_deg": 10.0, "axis_tilt_deg": 3.0, "rev_rate_rpm": -20.0}
_ALONE = {"axis_rotation_deg": 10.0, "axis_tilt_deg": 5.0, "rev_rate_rpm": 20.0}
_SPEED_STEP, _LOFT_STEP = 0.5, 2.0
_SIZE_A_BOARD = 0.5  # effort of a move by one board
# target boards for each board of the feet that bowlers have a name for (common practice)
_NAMED = {(2, 1), (3, 1), (3, 2), (5, 2), (4, 2)}


@dataclass(frozen=True)
class Candidate:
    """One way to bowl the next ball.

    kind : "stay", "line", "speed", "loft", "ball" or "hand"
    feet, target : boards moved
    things : how many things a bowler must think of
    size : how far, in rough steps of effort
    """

    kind: str
    release: Release
    ball: Ball
    feet: float = 0.0
    target: float = 0.0
    things: int = 0
    size: float = 0.0
    told: str = ""  # what changes besides the line, in words without a number

    @property
    def family(self):
        """Candidates of one family are the same advice in other sizes."""
        if self.kind != "line":
            return (self.kind, self.told.split(",")[0] if self.kind in ("ball", "hand") else "")
        if self.feet == self.target:
            return ("line", "parallel")
        if self.feet and self.target:
            return ("line", "opening")
        return ("line", "feet" if self.feet else "target")


def variants(bowler) -> list[Candidate]:
    """The bowler as now, then each single change of speed, loft, ball and hand, on the present line."""
    release, ball, allowed = bowler.release, bowler.ball, bowler.can_change
    found = [Candidate("stay", release, ball)]

    def add(kind, moved, things, size, told, other=ball):
        if _inside(moved, release):
            found.append(Candidate(kind, replace(release, **moved), other, 0, 0, things, size, told))

    for by in _steps(allowed.get("speed_mph", 0), _SPEED_STEP):
        word = "faster" if by > 0 else "slower"
        add("speed", {"speed_mph": release.speed_mph + by}, 1, 2 * abs(by), word)
    for by in _steps(allowed.get("loft_ft", 0), _LOFT_STEP):
        if release.loft_ft + by >= 0:
            word = "more loft" if by > 0 else "less loft"
            add("loft", {"loft_ft": release.loft_ft + by}, 1, 2, word)
    for other in allowed.get("ball", []):
        if other != ball:
            add("ball", {}, 1, 1.5, f"the {other.name or 'other'} ball", other)
    if not bowler.young_or_sore:
        for moved, things, told in _hands(release, allowed):
            add("hand", moved, things, 4.0 * things, told)
    return found


def _hands(release, allowed):
    """The hand's numbers together, as a hand moves them, and each alone."""
    together = [name for name in HAND if allowed.get(name, 0) > 0]
    if len(together) > 1:
        most = min(allowed[name] / abs(HAND_STEP[name]) for name in together)
        for steps in {min(1.0, most), most} | {-min(1.0, most), -most}:
            moved = {name: getattr(release, name) + steps * HAND_STEP[name] for name in together}
            yield moved, 2, "come round the ball" if steps > 0 else "stay behind the ball"
    for name in together:
        for by in _steps(allowed[name], _ALONE[name]):
            yield {name: getattr(release, name) + by}, 1, _HAND_WORDS[name][by > 0]


_HAND_WORDS = {
    "axis_rotation_deg": ("less rotation", "more rotation"),
    "axis_tilt_deg": ("less tilt", "more tilt"),
    "rev_rate_rpm": ("fewer revs", "more revs"),
}


def _steps(most, step):
    """Moves down and up in steps, as far as allowed."""
    if most <= 0:
        return []
    step = min(step, most)
    count = int(np.floor(most / step + 1e-9))
    return [sign * step * i for i in range(1, count + 1) for sign in (-1, 1)]


def _inside(moved, release):
    return all(RANGES[name][0] <= value <= RANGES[name][1] for name, value in moved.items())


def line_moves(bowler, coarse=False) -> np.ndarray:
    """Moves of feet and target within reach and on the lane: array (n, 2), no move first.

    `coarse` gives fewer, for use together with another change.
    """
    feet_most, target_most = (float(bowler.can_change.get(name, 0)) for name in ("feet", "target"))
    if coarse:
        feet_most, target_most = min(feet_most, 6.0), min(target_most, 4.0)
    feet = _grid(feet_most, 2.0 if coarse else 1.0)
    target = _grid(target_most, 0.5)
    moves = np.array(sorted(product(feet, target), key=lambda move: abs(move[0]) + abs(move[1])))
    at = moves + [bowler.release.laydown_board, bowler.release.target_board]
    return moves[((at >= 1) & (at <= 39)).all(axis=1)]


def _grid(most, step):
    count = int(np.floor(most / step + 1e-9))
    return np.arange(-count, count + 1) * step


def move_things(feet, target) -> int:
    """How many things a move of the line is: one if bowlers have a name for it."""
    if feet == 0 and target == 0:
        return 0
    named = (abs(feet), abs(target)) in _NAMED and feet * target > 0
    return 1 if feet == target or not feet or not target or named else 2


def move_effort(feet, target) -> float:
    """Things to think of and how far to go, in rough steps of effort."""
    return move_things(feet, target) + _SIZE_A_BOARD * max(abs(feet), abs(target))


def moved_line(candidate, feet, target) -> Candidate:
    """The same candidate on another line."""
    release = replace(
        candidate.release,
        laydown_board=candidate.release.laydown_board + float(feet),
        target_board=candidate.release.target_board + float(target),
    )
    things = candidate.things + move_things(feet, target)
    size = candidate.size + _SIZE_A_BOARD * max(abs(feet), abs(target))
    kind = "line" if candidate.kind == "stay" and things else candidate.kind
    return replace(
        candidate,
        kind=kind,
        release=release,
        feet=float(feet),
        target=float(target),
        things=things,
        size=size,
    )
