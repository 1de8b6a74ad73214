"""The table builder: can be killed at any moment, and counts add up. Extra tier."""

import os
import signal
import subprocess
import sys
import time
from collections import Counter

import pytest

from bowlcore.motion.data_file import read_table
from bowlcore.rack import build_table
from bowlcore.rack.cells import Cell, Job
from bowlcore.rack.deck_params import DeckParams
from bowlcore.rack.job_log import JobResult

pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("mujoco")]

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


def test_the_files_are_data_files_and_say_how_they_were_made(tmp_path, mujoco):
    _build(tmp_path, workers=1)
    for name in ("carry_cells.csv", "carry_leaves.csv"):
        table, header = read_table(tmp_path / name)
        assert len(table) and header["licence"] == "CC0-1.0"
        for words in (
            "seed=2026",
            f"mujoco={mujoco.__version__}",
            "pin_pin_restitution=0.4 ",
            "step_ms=0.05 ",
        ):
            assert words in header["source"]


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


def test_a_worker_that_dies_loses_only_the_job_in_its_hand(tmp_path, monkeypatch):
    monkeypatch.setattr(build_table, "run_job", _DyingJob(str(tmp_path / "runs"), deaths=1))
    assert _build(tmp_path, workers=2) == 24
    assert len(_finished(tmp_path)) == len(set(_finished(tmp_path))) == 12
    started = Counter((tmp_path / "runs").read_text().split())
    assert started.pop("15lb-14mph-5deg-17/0") == 2  # lost with its worker, and run again
    assert set(started.values()) == {1} and len(started) == 11


def test_a_job_that_always_kills_its_worker_ends_the_build(tmp_path, monkeypatch):
    monkeypatch.setattr(build_table, "run_job", _DyingJob(str(tmp_path / "runs"), deaths=99))
    with pytest.raises(RuntimeError, match="15lb-14mph-5deg-17 ended its worker 3 times"):
        _build(tmp_path, workers=2)
    assert 0 < len(_finished(tmp_path)) < 12


def _finished(folder):
    return (folder / "jobs.csv").read_text().splitlines()[2:]


class _DyingJob:
    """Counts every start; kills its own process the first times it meets the third cell."""

    def __init__(self, runs, deaths):
        self.runs, self.deaths = runs, deaths

    def __call__(self, job, params, seed):
        with open(self.runs, "a+") as file:
            name = f"{job.cell.name}/{job.first}"
            file.write(f"{name}\n")
            file.flush()
            file.seek(0)
            starts = file.read().split().count(name)
        if name == "15lb-14mph-5deg-17/0" and starts <= self.deaths:
            os.kill(os.getpid(), signal.SIGKILL)
        time.sleep(0.02)
        return JobResult(job.cell.name, job.first, job.count, {0: job.count}, (19.0,) * job.count, ())


def test_dask_gives_the_same_counts(tmp_path, distributed):
    jobs = PASSES[0][1][:3]
    with distributed.LocalCluster(n_workers=1, threads_per_worker=1, dashboard_address=None) as cluster:
        there = list(build_table.run_on_cluster(jobs, PARAMS, 2026, cluster.scheduler_address))
    here = [build_table.run_job(job, PARAMS) for job in jobs]
    assert sorted(there, key=lambda r: r.cell) == sorted(here, key=lambda r: r.cell)
