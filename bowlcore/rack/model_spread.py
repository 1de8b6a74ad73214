"""How much strike odds depend on the pin model itself: other contact numbers that suit the published totals.

A figure apart from the sampling error, which only says how well one pin deck was counted. Known for 15 lb
at 14 mph, on a coarse grid with few racks a cell, so it is good to some points itself.
"""

from functools import lru_cache

import numpy as np

from bowlcore.locate import data_folder
from bowlcore.motion.data_file import read_table
from bowlcore.rack.carry_table import between
from bowlcore.rack.pins import board_at_touch


@lru_cache(maxsize=1)
def _shares():
    """Angles, boards and strike shares (set, angle, board)."""
    table, _ = read_table(data_folder() / "carry_spread.csv", text_columns=("parameter_set",))
    shares = table.assign(share=table["strikes"] / table["racks"]).pivot_table(
        "share", index=["parameter_set", "angle_deg"], columns="board"
    )
    angles, boards = np.unique(table["angle_deg"]), np.unique(table["board"])
    return angles, boards, shares.to_numpy().reshape(-1, len(angles), len(boards))


def model_spread(entry_board, entry_angle_deg) -> float:
    """Half the range of the strike share of these balls over the pin models [share, 0 to 0.5].

    Parameters
    ----------
    entry_board, entry_angle_deg : float or arrays
        At 60 ft, from the own side; one ball or many, whose mean is meant. Angles below 2 and above 6
        count as 2 and 6; balls outside boards 15.25 to 19.75 at first touch count as equal in all models.
    """
    angles, boards, shares = _shares()
    board, angle = np.broadcast_arrays(np.atleast_1d(entry_board), np.atleast_1d(entry_angle_deg))
    own = np.where(angle < 0, 40.0 - board, board)
    touch = board_at_touch(own, np.abs(angle))
    near = np.abs(touch - boards.mean()) <= boards.mean() - boards[0] + 0.25
    if not near.any():
        return 0.0
    (a, p), (b, q) = between(angles, np.abs(angle)[near]), between(boards, touch[near])
    low = shares[:, a, b] + q * (shares[:, a, b + 1] - shares[:, a, b])
    high = shares[:, a + 1, b] + q * (shares[:, a + 1, b + 1] - shares[:, a + 1, b])
    means = (low + p * (high - low)).sum(axis=1) / board.size
    return float(np.ptp(means) / 2)
