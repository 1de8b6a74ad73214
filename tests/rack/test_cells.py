"""The plan of the carry table: whole cells, racks spread inside them."""

from bowlcore.rack.cells import Cell, plan


def test_the_plan_fills_each_cell_from_rack_to_rack():
    next_rack = {}
    for _, jobs in plan():
        for job in jobs:
            assert job.first == next_rack.get(job.cell, 0)
            next_rack[job.cell] = job.first + job.count
    assert 55_000 < sum(next_rack.values()) < 65_000
    assert len({cell.name for cell in next_rack}) == len(next_rack)


def test_racks_are_spread_over_their_cell():
    cell = Cell(15, 14, 5, 17.5)
    shots = [cell.shot(rack) for rack in range(64)]
    assert all(17.25 <= board <= 17.75 and 4.5 <= angle <= 5.5 for board, angle in shots)
    for quarter in range(4):
        low = 17.25 + quarter / 8
        assert 14 <= sum(low <= board < low + 1 / 8 for board, _ in shots) <= 18
        assert 14 <= sum(4.5 + quarter / 4 <= angle < 4.75 + quarter / 4 for _, angle in shots) <= 18
