"""Oil on the lane: a thickness for every place, and the three numbers a coach is told about it.

Lane frame: boards from the right edge, distances from the foul line [ft], oil in micrometres.
"""

import os
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import numpy as np

from bowlcore.locate import data_folder
from bowlcore.motion import units
from bowlcore.motion.data_file import read_table

MAX_OIL_UM = 50.0
RATIO_FT = 10.0  # where the side ratio is read


@dataclass(frozen=True, eq=False)
class OilPattern:
    """A map of oil, bilinear between its nodes and held constant beyond them.

    Parameters
    ----------
    distance_ft : array (n), rising, 0 to 60
    lane_board : array (m), rising, 0.5 to 39.5
    thickness_um : array (n, m), 0 to 50
    title, source : str
    """

    distance_ft: np.ndarray
    lane_board: np.ndarray
    thickness_um: np.ndarray
    title: str = ""
    source: str = "invented for teaching"

    def __post_init__(self):
        for name in ("distance_ft", "lane_board", "thickness_um"):
            array = np.array(getattr(self, name), dtype=float)
            array.flags.writeable = False
            object.__setattr__(self, name, array)
        x, b, oil = self.distance_ft, self.lane_board, self.thickness_um
        if oil.shape != (len(x), len(b)):
            raise ValueError(f"thickness_um must have shape {(len(x), len(b))}, got {oil.shape}")
        for name, grid, low, high in (("distance_ft", x, 0, 60), ("lane_board", b, 0.5, 39.5)):
            if len(grid) < 2 or not (np.diff(grid) > 0).all():
                raise ValueError(f"{name} must rise from value to value, with at least two values")
            if grid[0] < low or grid[-1] > high:
                raise ValueError(
                    f"{name} must stay within {low:g} to {high:g}, got {grid[0]:g} to {grid[-1]:g}"
                )
        if not np.isfinite(oil).all() or oil.min() < 0 or oil.max() > MAX_OIL_UM:
            worst = oil.min() if oil.min() < 0 else oil.max()
            raise ValueError(f"thickness_um must be between 0 and {MAX_OIL_UM:g} um, got {worst:g}")

    def oil_um(self, lane_board, distance_ft):
        """Oil thickness [um] at a place (floats or arrays that broadcast)."""
        board, x = np.broadcast_arrays(np.asarray(lane_board, float), np.asarray(distance_ft, float))
        j, fq = _cell(self.lane_board, board)
        i, fp = _cell(self.distance_ft, x)
        oil = self.thickness_um
        near = oil[i, j] + fq * (oil[i, j + 1] - oil[i, j])
        far = oil[i + 1, j] + fq * (oil[i + 1, j + 1] - oil[i + 1, j])
        result = near + fp * (far - near)
        return result if result.ndim else float(result)

    @cached_property
    def volume_ml(self) -> float:
        """Oil on the whole lane, edge to edge [mL]: the exact integral of the bilinear map."""
        boards = np.union1d(self.lane_board, [units.EDGE_LOW_BOARD, units.EDGE_HIGH_BOARD])
        x = np.union1d(self.distance_ft, [0.0, units.LANE_FT])
        oil = self.oil_um(boards[None, :], x[:, None])
        area_um_m2 = np.trapezoid(np.trapezoid(oil, boards * units.BOARD_M, axis=1), x * units.FOOT_M)
        return float(area_um_m2)  # 1 um on 1 m2 is 1 mL

    @cached_property
    def side_ratio(self) -> float:
        """Mean oil of boards 11-29 over mean oil of boards 1-9 and 31-39, at 10 ft; infinite if bare."""
        middle = self.oil_um(np.arange(11, 30), RATIO_FT).mean()
        outside = self.oil_um(np.r_[1:10, 31:40], RATIO_FT).mean()
        if outside == 0:
            return float("inf") if middle > 0 else float("nan")
        return float(middle / outside)

    @cached_property
    def length_ft(self) -> float:
        """Where board 20 last holds a third of its largest oil [ft]; 0 if it holds none."""
        x = np.union1d(self.distance_ft, [0.0, units.LANE_FT])
        oil = self.oil_um(units.MIDDLE_BOARD, x)
        third = oil.max() / 3
        if third == 0:
            return 0.0
        last = int(np.flatnonzero(oil >= third)[-1])
        if last == len(x) - 1:
            return float(x[-1])
        return float(x[last] + (oil[last] - third) / (oil[last] - oil[last + 1]) * (x[last + 1] - x[last]))


def _cell(grid, value):
    """Index of the cell that holds each value, and the part of it passed (0 to 1)."""
    value = np.clip(value, grid[0], grid[-1])
    index = np.clip(np.searchsorted(grid, value, side="right") - 1, 0, len(grid) - 2)
    return index, (value - grid[index]) / (grid[index + 1] - grid[index])


def pattern_names() -> list[str]:
    """Names of the shipped, invented shapes."""
    return sorted(path.stem for path in (data_folder() / "patterns").glob("*.csv"))


def load_pattern(name_or_path) -> OilPattern:
    """A shipped pattern by name, or one from a CSV file.

    The file has one row for each distance and columns distance_ft, b01 ... b39 [um]; any of the boards
    may be left out as long as two remain.

    Raises
    ------
    ValueError
        One sentence naming the file, the line, the value and the allowed range.
    """
    if not isinstance(name_or_path, str | Path) or len(str(name_or_path)) > 1000:
        raise ValueError(f"a pattern is a name or the path of a file, got {str(name_or_path)[:60]!r}")
    given = Path(name_or_path)
    shipped = data_folder() / "patterns" / f"{name_or_path}.csv"
    if given.suffix == "" and not os.path.exists(given):
        if str(name_or_path) not in pattern_names():
            raise ValueError(
                f"there is no pattern {str(name_or_path)[:60]!r}; there are: {', '.join(pattern_names())}"
            )
        given = shipped
    table, header = read_table(given)
    columns = [name for name in table.columns if name != "distance_ft"]
    if "distance_ft" not in table.columns or len(columns) < 2:
        raise ValueError(f"{given.name}: columns distance_ft and at least two boards b01 ... b39 are needed")
    if len(table) < 2:
        raise ValueError(
            f"{given.name}: rows for at least two distances (distance_ft) are needed, got {len(table)}"
        )
    boards = [_board(given.name, name) for name in columns]
    lines = table.attrs["lines"]
    x = table["distance_ft"].to_numpy()
    for i, value in enumerate(x):
        where = f"{given.name}, line {lines[i]}: distance_ft"
        if not 0 <= value <= units.LANE_FT:
            raise ValueError(f"{where} must be between 0 and 60 ft, got {value:g}")
        if i and value <= x[i - 1]:
            raise ValueError(f"{where} must be larger than the row before ({x[i - 1]:g} ft), got {value:g}")
    if any(b <= a for a, b in zip(boards, boards[1:], strict=False)):
        raise ValueError(
            f"{given.name}: the board columns must rise from b01 to b39, each once, got {', '.join(columns)}"
        )
    oil = table[columns].to_numpy()
    bad = np.argwhere((oil < 0) | (oil > MAX_OIL_UM))
    if len(bad):
        i, j = bad[0]
        raise ValueError(
            f"{given.name}, line {lines[i]}: {columns[j]} must be between 0 and {MAX_OIL_UM:g} um, got {oil[i, j]:g}"
        )
    return OilPattern(x, boards, oil, header["title"], header["source"])


def _board(file_name, column):
    number = column[1:]
    if column[:1] != "b" or not number.isdigit() or not 1 <= int(number) <= units.BOARDS:
        raise ValueError(f"{file_name}: a board column is named b01 to b39, got {column[:40]!r}")
    return float(int(number))
