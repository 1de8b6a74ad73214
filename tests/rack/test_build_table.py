"""The table builder: can be killed at any moment, and counts add up. Needs the extra ``rack``."""

import os
import signal
import subprocess
import sys
import time

import pytest

mujoco = pytest.importorskip("mujoco")

from bowlcore.rack import build_table  # noqa: E402
from bowlcore.rack.cells import Cell, Job, plan  # noqa: E402
from bowlcore.rack.deck_params import DeckParams  # noqa: E402
from bowlcore.rack.job_log import JobLog, JobResult, to_line  # noqa: E402

PARAMS = DeckParams()
CELLS = [Cell(15, 14, 5, 16.0 + 0.5 * k) for k in range(6)]
PASSES = [("first", [Job(cell, 0, 2) for cell in CELLS]), ("second", [Job(cell, 2, 2) for cell in CELLS])]


def _rows(path):
    return [line for line in path.read_text().splitlines() if not line.startswith("#")][1:]


def _build(folder, **options):
    return build_table.build(
        folder, folder / "jobs.csv", PARAMS, passes=PASSES, tell=lambda line: None, **options
    )


def test_counts_add_up_and_the_same_build_gives_the_same_files(tmp_path):
    one, two = tmp_path / "one", tmp_path / "two"
    assert _build(one, workers=2) == 24
    assert _build(two, workers=1) == 24
    for name in ("carry_cells.csv", "carry_leaves.csv"):
        assert _rows(one / name) == _rows(two / name)
    racks = {row.split(",")[0]: int(row.split(",")[6]) for row in _rows(one / "carry_cells.csv")}
    counted = dict.fromkeys(racks, 0)
    for row in _rows(one / "carry_leaves.csv"):
        cell, mask, count = map(int, row.split(","))
        assert 0 <= mask < 1024 and count > 0
        counted[str(cell)] += count
    assert counted == racks and set(racks.values()) == {4}


def test_every_column_has_its_header_line(tmp_path):
    _build(tmp_path, workers=1)
    for name in ("carry_cells.csv", "carry_leaves.csv"):
        lines = (tmp_path / name).read_text().splitlines()
        head = [line for line in lines if line.startswith("#")]
        columns = [line.split()[2] for line in head if line.startswith("# column:")]
        assert columns == lines[len(head)].split(",")
        for word in ("# title:", "# version:", "# source:", "# licence: CC0-1.0", "# frame:"):
            assert any(line.startswith(word) for line in head)
        assert any("seed=2026" in line and f"mujoco={mujoco.__version__}" in line for line in head)


def test_a_killed_build_is_taken_up_again_without_doing_work_twice(tmp_path):
    script = (
        "from test_build_table import _build; from pathlib import Path; import sys\n"
        "if __name__ == '__main__': _build(Path(sys.argv[1]), workers=1)\n"
    )
    (tmp_path / "run.py").write_text(script)
    record = tmp_path / "jobs.csv"
    paths = os.pathsep.join([os.path.dirname(__file__), os.getcwd()])
    child = subprocess.Popen(
        [sys.executable, str(tmp_path / "run.py"), str(tmp_path)],
        env=os.environ | {"PYTHONPATH": paths},
        start_new_session=True,
    )
    deadline = time.monotonic() + 60
    while time.monotonic() < deadline and not (record.exists() and record.read_text().count("done") >= 3):
        time.sleep(0.02)
    os.killpg(child.pid, signal.SIGKILL)
    child.wait()
    kept = record.read_text()
    assert 3 <= kept.count(",done") < 12
    record.write_text(kept + "15lb-14mph-5deg-17,2,2,0:")  # a torn line
    assert _build(tmp_path, workers=1) == 24
    assert record.read_text().startswith(kept)
    assert record.read_text().count(",done") == 12
    whole = tmp_path / "whole"
    _build(whole, workers=1)
    assert _rows(whole / "carry_leaves.csv") == _rows(tmp_path / "carry_leaves.csv")


def test_a_worker_that_dies_loses_only_the_job_in_hand(tmp_path, monkeypatch):
    flag = tmp_path / "died"
    monkeypatch.setattr(build_table, "run_job", _DyingJob(str(flag)))
    assert _build(tmp_path, workers=1) == 24
    assert flag.exists()
    lines = (tmp_path / "jobs.csv").read_text().splitlines()[2:]
    assert len(lines) == len(set(lines)) == 12


class _DyingJob:
    """Kills its own process the first time it meets the third cell."""

    def __init__(self, flag):
        self.flag = flag

    def __call__(self, job, params, seed):
        if job.cell.board == 17.0 and not os.path.exists(self.flag):
            open(self.flag, "w").close()
            os.kill(os.getpid(), signal.SIGKILL)
        return JobResult(job.cell.name, job.first, job.count, {0: job.count}, (19.0,) * job.count, ())


def test_a_record_of_other_settings_is_refused(tmp_path):
    JobLog(tmp_path / "jobs.csv", "seed=1")
    with pytest.raises(ValueError, match="other settings"):
        JobLog(tmp_path / "jobs.csv", "seed=2")


def test_a_line_that_does_not_add_up_is_refused(tmp_path):
    log = JobLog(tmp_path / "jobs.csv", "seed=1")
    log.path.write_text(log.path.read_text() + to_line(JobResult("a", 0, 3, {0: 2}, (), ())))
    with pytest.raises(ValueError, match="add up"):
        log.read()


def test_dask_gives_the_same_counts(tmp_path):
    pytest.importorskip("dask.distributed")
    distributed = pytest.importorskip("distributed")
    jobs = PASSES[0][1][:3]
    with distributed.LocalCluster(n_workers=1, threads_per_worker=1, dashboard_address=None) as cluster:
        there = list(build_table.run_on_cluster(jobs, PARAMS, 2026, cluster.scheduler_address))
    here = [build_table.run_job(job, PARAMS) for job in jobs]
    assert sorted(there, key=lambda r: r.cell) == sorted(here, key=lambda r: r.cell)


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
