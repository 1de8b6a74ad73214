"""Doubt about the pin model: its size, its bounds, and that it is no sampling error."""

import numpy as np
import pytest

from bowlcore.locate import data_folder
from bowlcore.motion.data_file import read_table
from bowlcore.rack.model_spread import model_spread


def test_in_the_middle_of_a_cell_it_is_half_the_range_of_the_counts():
    """Against the shipped counts themselves; at 0 degrees first touch and 60 ft are the same board."""
    table, _ = read_table(data_folder() / "carry_spread.csv", text_columns=("parameter_set",))
    cell = table[(table["angle_deg"] == 2) & (table["board"] == 17)]
    shares = cell["strikes"] / cell["racks"]
    assert model_spread(17.0, 0.0) == pytest.approx((shares.max() - shares.min()) / 2)


def test_over_a_scatter_it_is_smaller_than_in_the_worst_cell():
    boards = np.linspace(16, 19, 61)
    cells = [model_spread(board, 4.0) for board in boards]
    assert model_spread(boards, np.full(61, 4.0)) < max(cells) <= 0.5


def test_mirror_and_far_from_the_pocket():
    assert model_spread(22.5, -4.0) == model_spread(17.5, 4.0)
    assert model_spread(30.0, 4.0) == 0.0
