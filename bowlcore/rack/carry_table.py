"""The shipped counts of leaves on a full grid of weight, speed, angle and board at first touch.

A node between the cells of a coarse block holds their mean, so every look-up is linear between cells.
"""

from functools import lru_cache

import numpy as np

from bowlcore.locate import data_folder
from bowlcore.motion.data_file import read_table
from bowlcore.rack.leave import Leave
from bowlcore.rack.pins import CENTRE_BOARD

OFFSETS = np.linspace(-6.0, 6.0, 25)  # boards from the head pin at first touch, the fine grid
ANGLES = np.arange(9.0)


def between(grid, value):
    """Cell of a rising grid and the part of it passed; held at the ends."""
    value = np.clip(value, grid[0], grid[-1])
    index = np.clip(np.searchsorted(grid, value, side="right") - 1, 0, len(grid) - 2)
    return index, (value - grid[index]) / (grid[index + 1] - grid[index])


class CarryTable:
    """The counts on a full grid; a node between cells of a coarse block holds their mean."""

    def __init__(self, cells, leaves):
        cells = cells[cells["in_table"] == 1].reset_index(drop=True)
        counts = np.zeros((len(cells), 1024))
        leaves = leaves[leaves["cell"].isin(cells["cell"])]
        at = np.searchsorted(cells["cell"], leaves["cell"]), leaves["mask"].to_numpy().astype(int)
        np.add.at(counts, at, leaves["count"].to_numpy())
        self.cells, self.shares = cells, counts / counts.sum(axis=1, keepdims=True)
        self.racks = counts.sum(axis=1)
        offset = cells["board"].to_numpy() - CENTRE_BOARD
        inside = np.abs(offset) <= OFFSETS[-1]
        self.balls, self.speeds = np.unique(cells["ball_lb"]), np.unique(cells["speed_mph"])
        rows, mixes = [], []
        self.inner = np.empty((len(self.balls), len(self.speeds), len(ANGLES), len(OFFSETS)), dtype=int)
        for i, ball in enumerate(self.balls):
            for j, speed in enumerate(self.speeds):
                block = inside & (cells["ball_lb"] == ball) & (cells["speed_mph"] == speed)
                self.inner[i, j] = self._spread_out(np.flatnonzero(block), offset, rows, mixes)
        self._add_wide(np.flatnonzero(~inside), offset, rows, mixes)
        self.rows, self.mixes = np.array(rows), np.array(mixes)
        by_leave = leave_columns()
        self.columns = {name: self._node_mean(self.shares @ values) for name, values in by_leave.items()}
        self.columns["racks"] = self._node_mean(self.racks)
        over_the_end = (cells["exit_count"] >= 0.5 * cells["racks"]).to_numpy()  # else it left over the side
        self.columns["exit known"] = self._node_mean(over_the_end.astype(float))
        self.columns["exit"] = self._node_mean(np.where(over_the_end, cells["exit_middle"], 0.0))

    def _spread_out(self, block, offset, rows, mixes):
        """Nodes of one block on the fine grid: four cells and their weights each."""
        angle = self.cells["angle_deg"].to_numpy()
        offsets, angles = np.unique(offset[block]), np.unique(angle[block])
        row_at = np.full((len(angles), len(offsets)), -1)
        row_at[np.searchsorted(angles, angle[block]), np.searchsorted(offsets, offset[block])] = block
        if row_at.min() < 0:
            raise ValueError("carry_cells.csv has a hole, so it is damaged: install the workbook again")
        i, p = (each[:, None] for each in between(angles, ANGLES))
        j, q = (each[None, :] for each in between(offsets, OFFSETS))
        nodes = len(rows) + np.arange(len(ANGLES) * len(OFFSETS)).reshape(len(ANGLES), len(OFFSETS))
        corners = [(x, y) for x in (0, 1) for y in (0, 1)]
        of_rows = np.stack([row_at[i + x, j + y] for x, y in corners], axis=-1)
        of_mixes = np.stack([(p if x else 1 - p) * (q if y else 1 - q) for x, y in corners], axis=-1)
        rows.extend(of_rows.reshape(-1, 4))
        mixes.extend(of_mixes.reshape(-1, 4))
        return nodes

    def _add_wide(self, block, offset, rows, mixes):
        """Nodes of balls that pass the head pin."""
        cells = self.cells.iloc[block]
        self.wide_balls, self.wide_angles = np.unique(cells["ball_lb"]), np.unique(cells["angle_deg"])
        self.wide_offsets = np.unique(offset[block])
        shape = len(self.wide_balls), len(self.wide_angles), len(self.wide_offsets)
        self.outer = np.empty(shape, dtype=int)
        place = (
            np.searchsorted(self.wide_balls, cells["ball_lb"]),
            np.searchsorted(self.wide_angles, cells["angle_deg"]),
            np.searchsorted(self.wide_offsets, offset[block]),
        )
        self.outer[place] = len(rows) + np.arange(len(block))
        rows.extend([row] * 4 for row in block)
        mixes.extend([1.0, 0.0, 0.0, 0.0] for _ in block)

    def _node_mean(self, per_cell):
        return (self.mixes * np.asarray(per_cell)[self.rows]).sum(axis=1)


def leave_columns() -> dict[str, np.ndarray]:
    """What is counted of each of the 1,024 leaves: arrays over the mask."""
    every = [Leave(mask) for mask in range(1024)]
    lone = np.array([len(leave.pins) == 1 for leave in every])
    corner = np.array([leave.text in ("7", "10") for leave in every])
    split = np.array([leave.is_split for leave in every])
    several = np.array([len(leave.pins) > 1 for leave in every])
    left = np.array([10.0 - leave.pinfall for leave in every])
    return {
        "strike": np.array([float(leave.is_strike) for leave in every]),
        "pinfall": 10.0 - left,
        "lone": (lone & ~corner).astype(float),
        "corner": corner.astype(float),
        "cluster": (several & ~split).astype(float),
        "split": split.astype(float),
        "left in clusters": left * (several & ~split),
        "left in splits": left * split,
    }


@lru_cache(maxsize=1)
def carry_table() -> CarryTable:
    """The table, read once. Raises ValueError, in one sentence, when a part of it is missing."""
    cells, _ = read_table(data_folder() / "carry_cells.csv")
    leaves, _ = read_table(data_folder() / "carry_leaves.csv")
    counted = leaves.groupby("cell")["count"].sum()
    if len(counted) != len(cells) or any(
        counted.reindex(cells["cell"]).to_numpy() != cells["racks"].to_numpy()
    ):
        raise ValueError(
            "carry_leaves.csv and carry_cells.csv do not hold the same racks, so one of them is damaged: install the "
            "workbook again"
        )
    return CarryTable(cells, leaves)
