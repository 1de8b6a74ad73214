"""Study: is anything lost when a program that writes the log is killed?  python tests/studies/log_kills.py [times] [seed]

A child process writes shots and says the number of each one after it was kept. It is killed by SIGKILL at a
random moment, again and again on the same file. Afterwards: every shot that was said is there and whole, at most
the one being made besides, and the file is sound. Writes a CSV with seed and machine.
"""

import csv
import platform
import random
import sqlite3
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from pathlib import Path

from bowlcore.coaching.log_entries import Session
from bowlcore.coaching.practice_log import PracticeLog

WORDS = "own words of some length, so that a shot is not small: " + "ä☂" * 100
CHILD = """
import sys
from bowlcore.coaching.log_entries import Shot
from bowlcore.coaching.practice_log import PracticeLog
path, session, number, words = sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4]
print("ready", flush=True)
while True:
    with PracticeLog(path) as log:
        for _ in range(20):
            log.add_shot(session, Shot("AK", (4, 7), 1, "high", "left", 22, 13, 12.5, f"{number}", words, 1))
            print(number, flush=True)
            number += 1
"""


def one_kill(path, session, first, rng):
    """Start a writer at number `first`, kill it, and return the last number it said was kept."""
    command = [sys.executable, "-c", CHILD, str(path), session, str(first), WORDS]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as child:
        child.stdout.readline()  # it is ready; before that there is nothing to lose
        time.sleep(rng.uniform(0.0, 0.15))
        child.kill()
        said = [line for line in child.stdout.read().split("\n")[:-1] if line]
    return int(said[-1]) if said else first - 1


def state(path, first):
    """How many shots lie in the log, and whether all is as it must be: numbers without a gap, words whole, file sound."""
    with PracticeLog(path, create=False) as log:
        shots = [kept.entry for kept in log.shots()]
    in_order = [int(shot.trying) for shot in shots] == list(range(1, len(shots) + 1))
    whole = all(
        shot.words == WORDS and shot.standing == (4, 7) and shot.second == 1 for shot in shots[first - 1 :]
    )
    with closing(sqlite3.connect(path)) as plain:
        sound = plain.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    return len(shots), in_order and whole and sound


def kills(folder, times, seed):
    """Kill `times` writers on one file; a row for each."""
    rng, path, there = random.Random(seed), Path(folder) / "practice_log.sqlite", 0
    with PracticeLog(path) as log:
        session = log.add_session(Session("2026-03-05"))
    for number in range(1, times + 1):
        first = there + 1
        last = one_kill(path, session, first, rng)
        now, sound = state(path, first)
        lost = max(last - now, 0)
        yield {"kill": number, "said": last - there, "found": now - there, "lost": lost, "sound": sound}
        there = now


def main(times=500, seed=6):
    start = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        rows = list(kills(folder, times, seed))
    said, found, lost, sound = (sum(row[name] for row in rows) for name in ("said", "found", "lost", "sound"))
    summary = {
        "kills": times, "seed": seed, "shots said to be kept": said, "shots found": found,
        "kills before the first shot": sum(row["found"] == 0 for row in rows),
        "shots lost": lost, "files sound afterwards": sound,
        "minutes": round((time.monotonic() - start) / 60, 1),
        "machine": platform.processor() or platform.machine(), "python": platform.python_version(),
        "sqlite": sqlite3.sqlite_version,
    }  # fmt: skip
    with Path(__file__).with_suffix(".csv").open("w", newline="", encoding="utf-8") as file:
        out = csv.DictWriter(file, summary)
        out.writeheader()
        out.writerow(summary)
    for name, value in summary.items():
        print(f"{name}: {value}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
