"""The table's two files are data files of the project, whatever the balls did."""

from bowlcore.motion.data_file import read_table
from bowlcore.rack.cells import Cell
from bowlcore.rack.job_log import JobResult
from bowlcore.rack.table_files import write_table


def test_a_tiny_table_is_read_back(tmp_path):
    cells = [Cell(15, 14, 5, 17.0), Cell(6, 5, 0, 26.0), Cell(8, 8, 1, 18.0)]  # the last one is not done yet
    results = [
        JobResult("15lb-14mph-5deg-17", 0, 3, {0: 2, 512: 1}, (19.0, 19.4, 18.0), (-1.0, -2.0, -1.5)),
        JobResult("15lb-14mph-5deg-17", 3, 1, {512: 1}, (18.2,), (-1.1,)),
        JobResult("6lb-5mph-0deg-26", 0, 2, {1023: 2}, (), ()),  # nothing hit, nothing out at the end
    ]
    assert write_table(tmp_path, cells, results, "seed=1", "2026-01-01") == 6
    table, header = read_table(tmp_path / "carry_cells.csv")
    assert header["version"] == "1" and "seed=1; made 2026-01-01" in header["source"]
    table = table.set_index("cell")
    assert list(table.index) == [0, 1] and list(table["racks"]) == [4, 2]
    assert list(table.loc[0, ["exit_count", "exit_low", "exit_middle", "exit_high"]]) == [4, 18.1, 18.6, 19.1]
    assert table.loc[0, "heading_deg"] == -1.3
    assert not table.loc[1, ["exit_count", "exit_low", "exit_middle", "exit_high", "heading_deg"]].any()
    leaves, _ = read_table(tmp_path / "carry_leaves.csv")
    assert leaves.to_numpy().tolist() == [[0, 0, 2], [0, 512, 2], [1, 1023, 2]]
