"""A line through a given place: feet and target together, two equations for two unknowns."""

from dataclasses import replace

import numpy as np

from bowlcore.motion.aiming import HIGH, LOW
from bowlcore.motion.checks import number_in
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.release import FIELD_NAMES


def aim_through(release, surface, ball, entry_board, through):
    """The line over `through` = (board, distance_ft) that enters at `entry_board`; see `aim`."""
    try:
        board, distance_ft = through
    except (TypeError, ValueError):
        raise ValueError(f"through must be (board, distance_ft), got {through!r}") from None
    number_in("through board", board, 0.5, 39.5)
    number_in("through distance_ft", distance_ft, 1, 59, "ft")

    def misses(laydown, target):
        shots = {name: np.repeat(np.array([getattr(release, name)]), len(laydown)) for name in FIELD_NAMES}
        shots["laydown_board"], shots["target_board"] = laydown, target
        marks, there = sweep_columns(shots, surface, ball, at_ft=distance_ft)
        return there - board, marks["entry_board"] - entry_board

    starts = _starts(misses)
    lines = [line for line in (_newton(misses, *start) for start in starts) if line is not None]
    if not lines:
        raise ValueError(
            f"no line over board {board:g} at {distance_ft:g} ft reaches board {entry_board:g} with this release"
        )
    here = np.array([release.laydown_board, release.target_board])
    laydown, target = min(lines, key=lambda line: np.abs(np.array(line) - here).sum())
    return replace(release, laydown_board=float(laydown), target_board=float(target))


def _starts(misses):
    """Rough lines: for every launch direction the feet that pass the place, then where the entry fits."""
    opening = np.arange(-20.0, 12.1, 1.0)  # target minus laydown
    feet = np.arange(LOW, HIGH + 0.1, 1.5)
    a, b = np.meshgrid(opening, feet, indexing="ij")
    inside = (a + b >= LOW) & (a + b <= HIGH)
    off, entry = np.full(a.shape, np.nan), np.full(a.shape, np.nan)
    off[inside], entry[inside] = misses(b[inside], (a + b)[inside])
    found = []
    for i, angle in enumerate(opening):
        for j in np.flatnonzero(off[i, :-1] * off[i, 1:] <= 0):
            part = off[i, j] / (off[i, j] - off[i, j + 1]) if off[i, j] != off[i, j + 1] else 0.0
            at_entry = entry[i, j] + part * (entry[i, j + 1] - entry[i, j])
            found.append((angle, feet[j] + part * (feet[j + 1] - feet[j]), at_entry))
    found = [row for row in found if np.isfinite(row[2])]
    starts = []
    for before, after in zip(found, found[1:], strict=False):
        if after[0] - before[0] <= 1.0 and before[2] * after[2] <= 0:
            p = before[2] / (before[2] - after[2]) if before[2] != after[2] else 0.0
            angle, stand = (before[k] + p * (after[k] - before[k]) for k in (0, 1))
            starts.append((stand, stand + angle))
    return starts or [
        (stand, stand + angle) for angle, stand, miss in sorted(found, key=lambda r: abs(r[2]))[:2]
    ]


def _newton(misses, laydown, target):
    """Damped Newton with differences; None unless both equations hold to 1e-6 board."""
    delta = 1e-4
    for _ in range(25):
        if not (LOW <= laydown <= HIGH and LOW <= target <= HIGH):
            return None
        off, entry = misses(
            np.array([laydown, laydown + delta, laydown]), np.array([target, target, target + delta])
        )
        if not (np.isfinite(off).all() and np.isfinite(entry).all()):
            return None
        if abs(off[0]) < 1e-6 and abs(entry[0]) < 1e-6:
            return laydown, target
        slopes = (
            np.array([[off[1] - off[0], off[2] - off[0]], [entry[1] - entry[0], entry[2] - entry[0]]]) / delta
        )
        if abs(np.linalg.det(slopes)) < 1e-9:
            return None
        step = np.clip(np.linalg.solve(slopes, -np.array([off[0], entry[0]])), -1.5, 1.5)
        laydown, target = laydown + step[0], target + step[1]
    return None
