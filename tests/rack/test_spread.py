"""The model spread: other pin decks on the same racks."""

import pytest

from bowlcore.locate import data_folder
from bowlcore.motion.data_file import read_table
from bowlcore.rack import spread
from bowlcore.rack.deck_params import PARAMETER_SETS


@pytest.fixture(scope="module")
def shipped():
    return read_table(data_folder() / "carry_spread.csv", text_columns=("parameter_set",))


def test_every_set_has_the_whole_grid_once(shipped):
    table, header = shipped
    assert set(table["parameter_set"]) == set(PARAMETER_SETS)
    assert not table.duplicated(["parameter_set", "angle_deg", "board"]).any()
    assert len(table) == len(PARAMETER_SETS) * len(spread.cells())
    assert (table["racks"] == spread.RACKS).all()
    assert table["strikes"].between(0, table["racks"]).all()
    assert (table["pinfall"] >= 10 * table["strikes"]).all() and (
        table["pinfall"] <= 10 * table["racks"]
    ).all()
    for name_and_params in PARAMETER_SETS.items():
        assert spread.difference_text(name_and_params) in header["source"]


@pytest.mark.claim(
    "Those other pin models strike about as often on the whole, and differ cell by cell",
    against="the shipped pin model on the same racks; data/carry_spread.csv",
    kind="own",
)
def test_the_sets_differ_but_not_beyond_all_measure(shipped, figure):
    table, _ = shipped
    shares = table.assign(share=table["strikes"] / table["racks"])
    wide = shares.pivot(index=["angle_deg", "board"], columns="parameter_set", values="share")
    away = wide.drop(columns="shipped").sub(wide["shipped"], axis=0)
    assert (away.abs().max() > 0).all()  # no set is a copy of another
    figure("on the whole apart by", 100 * away.mean().abs().max(), "points", asked="10")
    figure("in one cell by", 100 * away.abs().max().max(), "points")
    assert away.mean().abs().max() < 0.10  # on the whole they strike about as often


@pytest.mark.slow
@pytest.mark.usefixtures("mujoco")
@pytest.mark.parametrize("name", sorted(PARAMETER_SETS))
def test_a_few_racks_played_again_agree(shipped, name):
    table, _ = shipped
    where = [cell for cell in spread.cells() if cell.board in (16.5, 18.0) and cell.angle_deg in (2, 6)]
    for cell, strikes, pins in spread.run_set(PARAMETER_SETS[name], where, racks=8):
        here = (
            (table.angle_deg == cell.angle_deg) & (table.board == cell.board) & (table.parameter_set == name)
        )
        [row] = table[here].itertuples()
        share = (row.strikes + 1) / (row.racks + 2)
        error = (share * (1 - share) * (1 / 8 - 1 / row.racks)) ** 0.5  # the 8 are the first of the 24
        assert abs(strikes / 8 - row.strikes / row.racks) < 4 * error
        assert abs(pins / 8 - row.pinfall / row.racks) < 1.5


@pytest.mark.slow
@pytest.mark.usefixtures("mujoco")
def test_the_shipped_set_plays_the_carry_tables_own_racks(tmp_path):
    from bowlcore.rack.build_table import run_job
    from bowlcore.rack.cells import Job

    where = spread.cells(angles=(4,), boards=(17.0, 18.5))
    told = []
    spread.write_spread(
        tmp_path / "s.csv",
        sets={"shipped": PARAMETER_SETS["shipped"]},
        where=where,
        racks=3,
        tell=told.append,
    )
    table, _ = read_table(tmp_path / "s.csv", text_columns=("parameter_set",))
    strikes = [run_job(Job(cell, 0, 3), PARAMETER_SETS["shipped"]).leaves.get(0, 0) for cell in where]
    assert list(table["strikes"]) == strikes and len(told) == 1
