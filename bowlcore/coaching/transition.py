"""A lane that changes: every ball takes up oil along its track and lays a little down where it leaves the oil.

Lane frame: boards from the right edge, distances from the foul line [ft], oil in um, volumes in mL.
Both shares are invented: no measured rate of either could be read.
"""

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import number_in
from bowlcore.motion.friction_table import FrictionTable
from bowlcore.motion.many import DEFAULTS
from bowlcore.motion.oil import MAX_OIL_UM, OilPattern
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import FIELD_NAMES, Release
from bowlcore.motion.surface import OiledLane

TAKEN_UP, CARRIED = 0.08, 0.03  # invented; see the docstring of play_shots
_REACH_BOARDS = 1.0  # the band is a triangle of this half width: as much oil as on one board
_THIRD = 1.0 / 3.0  # the oil ends where it holds a third of its most, as in OilPattern.length_ft
_SMEAR_FT = 12.0  # carried oil thins out evenly to nothing over this distance: chosen
_SCALARS = ("entry_board", "entry_angle_deg", "entry_speed_mph", "breakpoint_board", "breakpoint_ft",
            "hook_start_ft", "roll_start_ft", "gutter_ft")  # fmt: skip


class Played(NamedTuple):
    """One ball: the lane after it, its path on the lane before it, and the oil it moved [mL]."""

    surface: OiledLane
    path: BallPath
    taken_ml: float
    laid_down_ml: float


def play_shots(surface, releases, ball=Ball(), *, taken_up=TAKEN_UP, carried=CARRIED):  # noqa: B008
    """Bowl these deliveries one after the other; each meets the lane as the one before left it.

    Parameters
    ----------
    surface : OiledLane
        It is left untouched.
    releases : DataFrame with Release's field names, or a sequence of Release
        As for `simulate_many`, in the order bowled; at least one. Left-handers run on the mirrored boards.
    ball : Ball
        Every ball takes the same share, whatever its cover.
    taken_up : float
        Share of the oil under the ball that one pass takes up, 0 to 1, over a band about one board wide
        with soft edges. It is taken all along the track, from where the ball touches down, skidding or
        rolling: modern covers bring a fresh surface to the lane at each turn, so that the wear runs over
        the whole path (a lane-care maker's article, known second-hand).
    carried : float
        Share of what was taken up that is laid down again past the end of the oil on that track, 0 to 1,
        thinning out over 12 ft. The rest stays on the ball and is wiped off.

    Returns
    -------
    (OiledLane, DataFrame)
        The lane afterwards, and one row a delivery with the columns of `simulate_many`, taken_ml and
        laid_down_ml, with the index of `releases`. Oil is conserved: volume before = volume after +
        the sum of taken_ml - laid_down_ml.

    Raises
    ------
    ValueError
        In one sentence: a lane without a map of oil, a share outside 0 to 1, no deliveries, a bad field.
    """
    import pandas as pd

    check_lane(surface)
    number_in("taken_up", taken_up, 0, 1)
    number_in("carried", carried, 0, 1)
    shots, index = _in_order(releases)
    rows = []
    for release in shots:
        surface, path, taken_ml, laid_down_ml = play_one(surface, release, ball, taken_up, carried)
        seen = {name: getattr(path, name) for name in _SCALARS}
        rows.append({**seen, "taken_ml": taken_ml, "laid_down_ml": laid_down_ml})
    return surface, pd.DataFrame(rows, index=index)


def check_lane(surface):
    """Raises ValueError when the surface is no lane with a map of oil."""
    if not isinstance(surface, OiledLane):
        raise ValueError(
            f"only a lane with a map of oil can change: surface must be an OiledLane, got {type(surface).__name__}"
        )


def play_one(surface, release, ball, taken_up, carried) -> Played:
    """One ball on a checked lane; see `play_shots`."""
    path = simulate(release, surface, ball)
    x, boards, oil = _on_fine_grid(surface.pattern)
    volumes = _node_volumes(x, boards)
    band = _band(path, release, x, boards)
    taken = taken_up * band * oil
    taken_ml = float((taken * volumes).sum())
    oil = oil - taken
    smear = _past_the_end(x, band, oil + taken)
    room = float((smear * volumes).sum())
    laid_down_ml = 0.0
    if room > 0 and carried * taken_ml > 0:
        after = np.minimum(
            oil + carried * taken_ml / room * smear, MAX_OIL_UM
        )  # what is too thick stays on it
        laid_down_ml = float(((after - oil) * volumes).sum())
        oil = after
    pattern = replace(surface.pattern, distance_ft=x, lane_board=boards, thickness_um=oil)
    return Played(OiledLane(pattern, surface.law), path, taken_ml, laid_down_ml)


def _on_fine_grid(pattern: OilPattern):
    """The same bilinear map on nodes that hold the pattern's own and the friction table's, edge to edge."""
    boards, x = FrictionTable.nodes()
    x, boards = np.union1d(pattern.distance_ft, x), np.union1d(pattern.lane_board, boards)
    if len(x) == len(pattern.distance_ft) and len(boards) == len(pattern.lane_board):
        return x, boards, pattern.thickness_um
    return x, boards, pattern.oil_um(boards[None, :], x[:, None])


def _node_volumes(x_ft, boards):
    """mL on the lane for 1 um at each node: exact for the bilinear map, as OilPattern.volume_ml sums it."""
    along, across = (_weights(x_ft * units.FOOT_M), _weights(boards * units.BOARD_M))
    return np.outer(along, across)


def _weights(grid):
    half = np.diff(grid) / 2.0
    return np.r_[half, 0.0] + np.r_[0.0, half]


def _band(path, release, x_ft, boards):
    """How fully the ball touches each node, 0 to 1; nothing while it flies or once it is in the gutter."""
    own = np.interp(x_ft, path.distance_ft, path.board)
    track = own if release.hand == "right" else 40.0 - own
    touching = np.isfinite(track) & (x_ft >= release.loft_ft)
    away = np.abs(boards[None, :] - np.where(touching, track, 0.0)[:, None])
    return np.where(touching[:, None], np.clip(1.0 - away / _REACH_BOARDS, 0.0, None), 0.0)


def _past_the_end(x_ft, band, oil):
    """Where the carried oil goes, as a share of its thickest: the band past the end of its oil."""
    under = (band * oil).sum(axis=1) / np.maximum(band.sum(axis=1), 1e-12)
    end_ft = x_ft[np.flatnonzero(under >= _THIRD * under.max())[-1]]
    return band * ((x_ft > end_ft) * np.clip(1.0 - (x_ft - end_ft) / _SMEAR_FT, 0.0, None))[:, None]


def _in_order(releases):
    """The deliveries as checked Releases, and their index."""
    import pandas as pd

    if isinstance(releases, pd.DataFrame):
        given = [name for name in FIELD_NAMES if name in releases.columns]
        rows = releases[given].to_dict("records")
        shots, index = [], releases.index
        for name, row in zip(index, rows, strict=True):
            try:
                shots.append(Release(**{**DEFAULTS, **row}))
            except ValueError as problem:
                raise ValueError(f"row {name}: {problem}") from None
    else:
        shots = [releases] if isinstance(releases, Release) else list(releases)
        index = pd.RangeIndex(len(shots))
        for item in shots:
            if not isinstance(item, Release):
                raise ValueError(
                    f"releases must be a DataFrame or a sequence of Release, got {type(item).__name__}"
                )
    if not shots:
        raise ValueError("releases must hold at least one delivery, got none")
    return shots, index
