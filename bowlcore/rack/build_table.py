"""Builds the carry table: ``python -m bowlcore.rack.build_table`` (optional extra ``rack``).

Jobs run in worker processes on this machine, or on a cluster through ``dask.distributed`` with
``--scheduler ADDRESS`` ("local" starts a small cluster here). Every finished job is appended to a record at
once; start the same command again to take a build up where it stopped. A worker that dies loses the job it
was doing, which is run again. Cost grows with the racks only: ten times the racks cost ten times as much.
"""

import argparse
import signal
import sys
import time
from collections import Counter, deque
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from dataclasses import asdict
from datetime import date
from itertools import islice
from math import isfinite
from multiprocessing import get_context
from pathlib import Path

from bowlcore.locate import data_folder
from bowlcore.rack.cells import plan
from bowlcore.rack.deck_params import PARAMETER_SETS, DeckParams
from bowlcore.rack.job_log import JobLog, JobResult
from bowlcore.rack.table_files import write_table

SEED = 2026
REFRESH_S = 60.0  # how often the two files are written anew
MOST_TRIES = 3  # a job that kills its worker this often is given up


def run_job(job, params, seed=SEED):
    """Run the racks of one job and count what they leave; the same result in any process."""
    from bowlcore.rack.deck_model import simulate_rack
    from bowlcore.rack.scatter import scatter

    cell, leaves, boards, headings = job.cell, Counter(), [], []
    for rack in range(job.first, job.first + job.count):
        board, angle = cell.shot(rack)
        result = simulate_rack(board, angle, cell.speed_mph, cell.ball_lb, scatter(rack, seed), params)
        leaves[result.leave.mask] += 1
        boards += [result.exit_board] if isfinite(result.exit_board) else []
        headings += [result.heading_after_head_pin_deg] if isfinite(result.heading_after_head_pin_deg) else []
    return JobResult(cell.name, job.first, job.count, dict(leaves), tuple(boards), tuple(headings))


def settings_text(params, seed):
    """Everything a rack depends on, on one line: parameters, seed, versions."""
    import mujoco
    import numpy

    numbers = " ".join(f"{name}={value:g}" for name, value in asdict(params).items())
    return f"seed={seed} mujoco={mujoco.__version__} numpy={numpy.__version__} {numbers}"


def run_here(jobs, params, seed, workers):
    """Yield finished jobs from worker processes; a worker that dies loses its own job, which is run again.

    Each worker is a pool of one, because a pool of several throws away every job in hand when one of them dies.
    """
    waiting, tries, ready, in_hand = deque(jobs), Counter(), [], {}
    free = [_worker() for _ in range(min(workers, len(waiting)))]
    try:
        while waiting or in_hand or ready:
            while waiting and free:
                pool, job = free.pop(), waiting.popleft()
                in_hand[pool.submit(run_job, job, params, seed)] = pool, job
            yield from ready
            ready = []
            for future in wait(in_hand, return_when=FIRST_COMPLETED).done if in_hand else ():
                pool, job = in_hand.pop(future)
                try:
                    ready.append(future.result())
                    free.append(pool)
                except BrokenProcessPool:
                    pool.shutdown()
                    tries[job] += 1
                    if tries[job] == MOST_TRIES:
                        raise RuntimeError(f"{job.cell.name} ended its worker {MOST_TRIES} times") from None
                    waiting.appendleft(job)
                    free.append(_worker())
    finally:
        for pool in [*free, *(pool for pool, _ in in_hand.values())]:
            pool.shutdown()


def _worker():
    return ProcessPoolExecutor(1, mp_context=get_context("spawn"))


def run_on_cluster(jobs, params, seed, address):
    """Yield finished jobs from a dask cluster; its scheduler runs the job of a lost worker again."""
    from dask.distributed import Client, as_completed

    with Client() if address == "local" else Client(address) as client:
        waiting = iter(jobs)
        width = 4 * max(sum(client.nthreads().values()), 1)
        first = [client.submit(run_job, job, params, seed, pure=False) for job in islice(waiting, width)]
        running = as_completed(first)
        for future in running:
            yield future.result()
            future.release()
            job = next(waiting, None)
            if job is not None:
                running.add(client.submit(run_job, job, params, seed, pure=False))


def build(folder, record, params, *, passes=None, seed=SEED, workers=2, scheduler=None, tell=print):
    """Build, or take up, the table.

    Parameters
    ----------
    folder, record : path
        Where the two files go, and where the running record lies.
    params : DeckParams
    passes : list of (text, jobs), optional
        ``cells.plan()`` if absent.
    workers : int
        Processes on this machine.
    scheduler : str, optional
        Address of a dask scheduler, or "local".
    tell : callable
        Gets one line of progress now and then.

    Returns
    -------
    int
        Racks in the table.
    """
    passes = plan() if passes is None else passes
    settings = settings_text(params, seed)
    log = JobLog(record, settings)
    done = log.read()
    every = [job for _, jobs in passes for job in jobs]
    cells = list(dict.fromkeys(job.cell for job in every))
    left = [job for job in every if (job.cell.name, job.first) not in done]
    all_racks, left_racks = sum(job.count for job in every), sum(job.count for job in left)
    tell(f"{all_racks - left_racks} of {all_racks} racks are there; {len(left)} jobs to do")
    start = refreshed = time.monotonic()
    new_racks = 0
    if scheduler:
        runner = run_on_cluster(left, params, seed, scheduler)
    else:
        runner = run_here(left, params, seed, workers)
    try:
        for result in runner:
            log.add(result)
            done[result.cell, result.first] = result
            new_racks += result.count
            if time.monotonic() - refreshed > REFRESH_S:
                refreshed = time.monotonic()
                write_table(folder, cells, done.values(), settings, date.today().isoformat())
                tell(_progress(passes, done, new_racks, left_racks, refreshed - start))
    finally:
        racks = write_table(folder, cells, done.values(), settings, date.today().isoformat())
    tell(f"{racks} racks in the table")
    return racks


def _progress(passes, done, new_racks, left_racks, passed_s):
    per_rack = passed_s / max(new_racks, 1)
    minutes = per_rack * (left_racks - new_racks) / 60
    open_passes = (text for text, jobs in passes if any((j.cell.name, j.first) not in done for j in jobs))
    now = next(open_passes, "done")
    return (
        f"{new_racks} of {left_racks} racks, {per_rack:.3f} s a rack, "
        f"about {int(minutes // 60)} h {int(minutes % 60):02d} min left ({now})"
    )


def main(arguments=None):
    """Command line."""
    about = __doc__.split("\n")[0]
    parser = argparse.ArgumentParser(prog="python -m bowlcore.rack.build_table", description=about)
    parser.add_argument("--out", type=Path, default=data_folder(), help="folder of the two files")
    parser.add_argument("--work", type=Path, default=Path("carry_build/jobs.csv"), help="the running record")
    parser.add_argument("--workers", type=int, default=2, help="processes on this machine (default 2)")
    parser.add_argument("--scheduler", help='address of a dask scheduler, or "local"')
    parser.add_argument("--passes", type=int, help="only the first so many passes of the plan")
    parser.add_argument("--seed", type=int, default=SEED)
    parser.add_argument("--params", choices=sorted(PARAMETER_SETS), default="shipped")
    given = parser.parse_args(arguments)
    params: DeckParams = PARAMETER_SETS[given.params]
    for stop in (signal.SIGINT, signal.SIGTERM):  # also in the background, where Ctrl-C is switched off
        signal.signal(stop, signal.default_int_handler)
    try:
        build(
            given.out,
            given.work,
            params,
            passes=plan()[: given.passes],
            seed=given.seed,
            workers=given.workers,
            scheduler=given.scheduler,
            tell=lambda line: print(line, flush=True),
        )
    except ImportError as error:
        print(f"{error.name} is missing: pip install 'bowlcore[rack]'", file=sys.stderr)
        return 1
    except ValueError as error:
        print(error, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("stopped; the same command takes it up again", file=sys.stderr)
        return 130
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
