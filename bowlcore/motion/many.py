"""Many shots at once, as a table."""

from collections.abc import Iterable
from difflib import get_close_matches
from typing import NamedTuple

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import of_kind
from bowlcore.motion.fields import OiledField, compile_surface
from bowlcore.motion.landmarks import landmarks
from bowlcore.motion.path import MIN_FORWARD_MPS, stands_still
from bowlcore.motion.release import FIELD_NAMES, RANGES, Release
from bowlcore.motion.side_by_side import SideBySide
from bowlcore.motion.slide import Motion, hermite, slide
from bowlcore.motion.sweep import start_many, sweep

DEFAULTS = {
    "speed_mph": 17.0,
    "rev_rate_rpm": 300.0,
    "axis_rotation_deg": 45.0,
    "axis_tilt_deg": 13.0,
    "laydown_board": 17.0,
    "target_board": 13.0,
    "loft_ft": 0.0,
    "hand": "right",
}
_FEW = 12  # so few are faster one by one
_BLOCK = 8192  # shots at a time: the working arrays stay in the processor's cache


def simulate_many(releases, surface, ball: Ball | None = None):
    """The scalars of `BallPath`, one row a release.

    Parameters
    ----------
    releases : DataFrame with Release's field names (absent ones take DEFAULTS), or a sequence of Release
    surface, ball : as for `simulate`

    Returns
    -------
    DataFrame
        Columns entry_board ... gutter_ft, with the index of `releases`.

    Raises
    ------
    ValueError
        Naming the row, the field, the value and the range.

    Notes
    -----
    Distance breaks end a step, as in `simulate`. A surface that declares breaks across the boards is
    followed shot by shot (about a millisecond each), since a batch cannot stop at each one's crossing.
    """
    import pandas as pd

    columns, index = _columns(releases)
    marks, _ = sweep_columns(columns, surface, ball, index)
    return pd.DataFrame(marks, index=index)


def sweep_columns(columns, surface, ball=None, index=None, at_ft=None):
    """Landmarks for a dict of equally long checked arrays, and the boards at `at_ft` if asked for."""
    ball = Ball() if ball is None else ball
    lane = compile_surface(surface, ball)
    count = len(columns["speed_mph"])
    parts, places = {}, np.full(count, np.nan)
    for hand in ("right", "left"):
        rows = np.flatnonzero(columns["hand"] == hand)
        for first in range(0, len(rows), _BLOCK):
            block = rows[first : first + _BLOCK]
            marks, board = _one_block(
                {name: columns[name][block] for name in RANGES}, hand, lane, ball, index, block, at_ft
            )
            for name, values in marks.items():
                parts.setdefault(name, np.empty(count))[block] = values
            if at_ft is not None:
                places[block] = board
    if not parts:
        none = np.zeros(0)
        return landmarks(lane.nodes_m[:2], *np.zeros((2, 2, 0)), Motion(*[none] * 6), none), places
    return parts, places


def sweep_together(jobs, ball=None) -> list:
    """Landmarks for several (columns, surface), each as from `sweep_columns`; oiled lanes in one batch.

    `ball`: one for all, or a list with one a job. The same numbers as lane by lane.
    """
    balls = ball if isinstance(ball, list) else [Ball() if ball is None else ball] * len(jobs)
    found, groups = [None] * len(jobs), {}
    lanes = [compile_surface(surface, ball) for (_, surface), ball in zip(jobs, balls, strict=True)]
    for i, (columns, _) in enumerate(jobs):
        alike = isinstance(lanes[i], OiledField) and len(set(columns["hand"])) == 1
        groups.setdefault(f"{lanes[i].table.steps} steps" if alike else i, []).append(i)
    for mine in groups.values():
        for part in _within_a_block(mine, jobs):
            counts = [len(jobs[i][0]["speed_mph"]) for i in part]
            if len(part) == 1 or sum(counts) <= _FEW:
                for i in part:
                    found[i], _ = sweep_columns(*jobs[i], balls[i])
                continue
            read = [(lanes[i].table, jobs[i][0]["hand"][0]) for i in part]  # each only once
            place = {pair: k for k, pair in enumerate(dict.fromkeys(read))}
            lane = SideBySide(*zip(*place, strict=True), np.repeat([place[pair] for pair in read], counts))
            whole = {name: np.concatenate([jobs[i][0][name] for i in part]) for name in RANGES}
            sizes = [(balls[i].radius_m, balls[i].inertia_factor) for i in part]
            marks, _ = _one_block(
                whole,
                None,
                lane,
                _Balls(*np.repeat(sizes, counts, axis=0).T),
                None,
                np.arange(sum(counts)),
                None,
            )
            ends = np.cumsum(counts)[:-1]
            split = {name: np.split(values, ends) for name, values in marks.items()}
            for k, i in enumerate(part):
                found[i] = {name: values[k] for name, values in split.items()}
    return found


def sweep_each(columns, which, lanes) -> dict:
    """Landmarks as from `sweep_columns`, each shot on the lane and with the ball `lanes[i]` = (surface, ball) of its
    own, i from `which`, an array of int; in one batch where the lanes allow it.
    """
    rows = [np.flatnonzero(which == i) for i in range(len(lanes))]
    there = [i for i, mine in enumerate(rows) if len(mine)]
    if len(there) < 2:
        surface, ball = lanes[there[0] if there else 0]
        return sweep_columns(columns, surface, ball)[0]
    jobs = [({name: values[rows[i]] for name, values in columns.items()}, lanes[i][0]) for i in there]
    found = sweep_together(jobs, [lanes[i][1] for i in there])
    marks = {name: np.empty(len(which)) for name in found[0]}
    for i, part in zip(there, found, strict=True):
        for name, values in part.items():
            marks[name][rows[i]] = values
    return marks


class _Balls(NamedTuple):
    """What the motion asks of a ball, one entry a shot."""

    radius_m: np.ndarray
    inertia_factor: np.ndarray


def _within_a_block(mine, jobs):
    """Jobs in parts of no more shots than a block."""
    part, shots = [], 0
    for i in mine:
        count = len(jobs[i][0]["speed_mph"])
        if part and shots + count > _BLOCK:
            yield part
            part, shots = [], 0
        part, shots = [*part, i], shots + count
    if part:
        yield part


def _one_block(c, hand, lane, ball, index, rows, at_ft):
    speed, spin = c["speed_mph"] * units.MPH_MPS, c["rev_rate_rpm"] * units.RPM_RADS
    heading = np.arctan2(
        (c["target_board"] - c["laydown_board"]) * units.BOARD_M, units.TARGET_FT * units.FOOT_M
    )
    along = heading + np.radians(c["axis_rotation_deg"])
    roll = ball.radius_m * spin * np.cos(np.radians(c["axis_tilt_deg"]))
    motion = start_many(
        speed * np.cos(heading),
        speed * np.sin(heading),
        roll * np.cos(along),
        roll * np.sin(along),
        ball.inertia_factor,
    )
    slow = np.flatnonzero(motion.roll_x < MIN_FORWARD_MPS)
    if len(slow):
        i = slow[0]
        name = rows[i] if index is None else index[rows[i]]
        raise ValueError(
            f"row {name}: " + stands_still(c["speed_mph"][i], c["rev_rate_rpm"][i], c["axis_rotation_deg"][i])
        )
    y0, loft = (c["laydown_board"] - units.MIDDLE_BOARD) * units.BOARD_M, c["loft_ft"] * units.FOOT_M
    if lane.has_board_breaks or len(y0) <= _FEW:
        mu, walls = lane.mu(hand), lane.y_breaks(hand)
        tracks = [
            slide(
                mu,
                Motion(*(float(p[i]) if np.ndim(p) else p for p in motion)),
                lane.nodes_m,
                y0[i],
                units.G_MPS2,
                loft[i],
                walls,
            )
            for i in range(len(y0))
        ]
        y, slip = np.array([t.y for t in tracks]).T, np.array([t.slip for t in tracks]).T
        roll_x = np.array([t.roll_x for t in tracks])
    else:
        y, slip, roll_x = sweep(lane.field(hand), motion, lane.nodes_m, y0, units.G_MPS2, loft)
    board = None
    if at_ft is not None:
        k = min(max(int(np.searchsorted(lane.nodes_ft, at_ft)) - 1, 0), len(lane.nodes_ft) - 2)
        h = lane.nodes_m[k + 1] - lane.nodes_m[k]
        part = (at_ft - lane.nodes_ft[k]) * units.FOOT_M / h
        board = hermite(part, y[k], y[k + 1], motion.slope(slip[k]) * h, motion.slope(slip[k + 1]) * h)
        board = board / units.BOARD_M + units.MIDDLE_BOARD
    return landmarks(lane.nodes_m, y, slip, motion, roll_x), board


def _columns(releases):
    """Checked arrays for every field, and the index."""
    import pandas as pd

    if not isinstance(releases, pd.DataFrame):
        of_kind("releases", releases, Iterable, "a DataFrame or a sequence of Release")
        releases = list(releases)
        for item in releases:
            if not isinstance(item, Release):
                raise ValueError(
                    f"releases must be a DataFrame or a sequence of Release, got {type(item).__name__}"
                )
        releases = pd.DataFrame({name: [getattr(r, name) for r in releases] for name in FIELD_NAMES})
    for column in releases.columns:
        meant = get_close_matches(
            str(column), [name for name in FIELD_NAMES if name not in releases], cutoff=0.8
        )
        if column not in FIELD_NAMES and meant:
            raise ValueError(f"releases has a column {str(column)!r:.40}; a release has {meant[0]!r}")
    count, columns = len(releases), {}
    for name in FIELD_NAMES:
        if name not in releases.columns:
            columns[name] = np.full(count, DEFAULTS[name])
        elif name == "hand":
            columns[name] = releases[name].to_numpy(dtype=object)
        else:
            columns[name] = _numbers(releases[name], name)
    for name, (low, high, unit) in RANGES.items():
        values = columns[name]
        bad = np.flatnonzero(~((values >= low) & (values <= high)))
        if len(bad):
            raise ValueError(
                f"row {releases.index[bad[0]]}: {name} must be a number between {low:g} and {high:g} {unit}, "
                f"got {values[bad[0]]:g}"
            )
    bad = np.flatnonzero(~np.isin(columns["hand"].astype(str), ("right", "left")))
    if len(bad):
        raise ValueError(
            f'row {releases.index[bad[0]]}: hand must be "right" or "left", got {columns["hand"][bad[0]]!r}'
        )
    return columns, releases.index


def _numbers(series, name):
    try:
        return series.to_numpy(dtype=float)
    except (TypeError, ValueError):
        pass
    for row, value in series.items():
        try:
            float(value)
        except (TypeError, ValueError):
            raise ValueError(f"row {row}: {name} must be a number, got {str(value)[:40]!r}") from None
    raise ValueError(f"column {name} must hold numbers")
