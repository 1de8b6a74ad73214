"""The shipped counts: whole, in bounds, and what the deck still gives."""

import numpy as np
import pandas as pd
import pytest

from bowlcore.locate import data_folder
from bowlcore.rack.cells import Cell
from bowlcore.rack.leave import Leave

CELLS, LEAVES = (data_folder() / name for name in ("carry_cells.csv", "carry_leaves.csv"))


@pytest.fixture(scope="module")
def table():
    cells = pd.read_csv(CELLS, comment="#").set_index("cell")
    leaves = pd.read_csv(LEAVES, comment="#")
    return cells, leaves


def test_every_cell_counts_up_to_its_racks(table):
    cells, leaves = table
    assert cells.index.is_unique and len(cells) >= 450
    assert leaves.groupby("cell")["count"].sum().reindex(cells.index).equals(cells["racks"].rename("count"))
    assert set(leaves["cell"]) == set(cells.index)
    assert not leaves.duplicated(["cell", "mask"]).any()
    assert leaves["mask"].between(0, 1023).all() and (leaves["count"] > 0).all()


def test_both_full_blocks_are_whole(table):
    cells, _ = table
    for lb, mph in ((15, 14), (8, 8)):
        block = cells[(cells.ball_lb == lb) & (cells.speed_mph == mph)]
        block = block[(block.board - 20).abs() <= 6.25]  # without those that pass the head pin
        assert len(block) == 225
        assert block.angle_deg.nunique() == 9 and block.board.min() == 14 and block.board.max() == 26


def test_the_head_pin_stands_only_where_it_is_hardly_clipped(table):
    cells, leaves = table
    full = leaves.join(cells[["board", "in_table"]], on="cell")
    full = full[(full.board - 20).abs() <= 5]
    standing = full.loc[full["mask"] % 2 == 1, "count"].sum() / full["count"].sum()
    assert standing < 0.02


def test_files_are_small():
    assert CELLS.stat().st_size + LEAVES.stat().st_size < 1_000_000


def test_straight_balls_have_a_mirror_image(table):
    # At 0 deg the two sides of the head pin are mirror images up to sampling.
    cells, leaves = table
    block = cells[(cells.ball_lb == 15) & (cells.speed_mph == 14) & (cells.angle_deg == 0)]
    falls = leaves.assign(fall=[Leave(mask).pinfall for mask in leaves["mask"]])
    mean = falls.groupby("cell").apply(
        lambda g: np.average(g["fall"], weights=g["count"]), include_groups=False
    )
    by_board = pd.Series(mean.reindex(block.index).to_numpy(), index=block["board"])
    apart = by_board.to_numpy() - by_board.reindex(40 - by_board.index).to_numpy()
    assert np.abs(apart).mean() < 0.6


@pytest.mark.claim(
    "The pin deck still gives the counts of the shipped table",
    against="sixteen fresh racks with other accidents in each of four cells",
    kind="own",
)
@pytest.mark.slow
@pytest.mark.usefixtures("mujoco")
@pytest.mark.parametrize(
    "lb, mph, angle, board", [(15, 14, 5, 17.0), (15, 14, 2, 16.5), (8, 8, 1, 17.5), (15, 14, 4, 19.0)]
)
def test_the_deck_still_gives_the_shipped_shares(table, lb, mph, angle, board, figure):
    from bowlcore.rack.build_table import run_job
    from bowlcore.rack.cells import Job
    from bowlcore.rack.deck_params import DeckParams

    cells, leaves = table
    where = (
        (cells.ball_lb == lb) & (cells.speed_mph == mph) & (cells.angle_deg == angle) & (cells.board == board)
    )
    number = cells.index[where][0]
    then = leaves[leaves.cell == number]
    fresh = run_job(Job(Cell(lb, mph, angle, board), 0, 16), DeckParams(), seed=77).leaves  # other accidents
    for of in (_strike, _pinfall):
        m1, v1, n1 = _mean(dict(zip(then["mask"], then["count"], strict=True)), of)
        m2, v2, n2 = _mean(fresh, of)
        figure(
            "apart",
            abs(m1 - m2) / (4 * (v1 / n1 + v2 / n2) ** 0.5 + 2 / n2),
            "of what luck may do",
            asked="1",
        )
        # four standard errors, and the least that one odd rack would move
        assert abs(m1 - m2) < 4 * (v1 / n1 + v2 / n2) ** 0.5 + 2 / n2


def _strike(mask):
    return float(mask == 0)


def _pinfall(mask):
    return float(Leave(int(mask)).pinfall)


def _mean(counts, of):
    values = np.array([of(mask) for mask in counts])
    weights = np.array(list(counts.values()))
    mean = np.average(values, weights=weights)
    return mean, np.average((values - mean) ** 2, weights=weights), weights.sum()
