"""The running record of a table build: one line a finished job, only ever appended.

A line is complete when it ends in the word "done" and a newline; a torn last line is ignored, so a build that
was killed at any moment can be taken up again.
"""

import csv
import os
from dataclasses import dataclass
from pathlib import Path

FIELDS = ("cell", "first", "count", "leaves", "exit_boards", "headings", "end")


@dataclass(frozen=True)
class JobResult:
    """Counts of leaves (mask to count), exit boards and headings [deg] of one job, NaN left out."""

    cell: str
    first: int
    count: int
    leaves: dict
    exit_boards: tuple
    headings: tuple


def to_line(result):
    """One CSV line for a finished job."""
    leaves = " ".join(f"{mask}:{count}" for mask, count in sorted(result.leaves.items()))
    boards = " ".join(f"{value:.1f}" for value in result.exit_boards)
    headings = " ".join(f"{value:.1f}" for value in result.headings)
    return f"{result.cell},{result.first},{result.count},{leaves},{boards},{headings},done\n"


def _from_row(row):
    leaves = dict(tuple(map(int, pair.split(":"))) for pair in row["leaves"].split())
    result = JobResult(
        row["cell"],
        int(row["first"]),
        int(row["count"]),
        leaves,
        tuple(map(float, row["exit_boards"].split())),
        tuple(map(float, row["headings"].split())),
    )
    if sum(leaves.values()) != result.count:
        raise ValueError(f"{result.cell}: counts add up to {sum(leaves.values())}, not {result.count}")
    return result


class JobLog:
    """The record file; ``settings`` is text that must be the same when a build is taken up again."""

    def __init__(self, path, settings):
        self.path = Path(path)
        self.settings = settings
        self.path.parent.mkdir(parents=True, exist_ok=True)
        if not self.path.exists():
            self._append(f"# {settings}\n{','.join(FIELDS)}\n")
        else:
            self._check_settings()
            self._mend()

    def _check_settings(self):
        with self.path.open(encoding="utf-8") as file:
            first = file.readline().rstrip("\n")
        if first != f"# {self.settings}":
            raise ValueError(
                f"{self.path} belongs to a build with other settings ({first[2:]}); "
                "give another file with --work"
            )

    def _mend(self):
        """Cut a torn last line off, so that the next line starts on its own."""
        text = self.path.read_bytes()
        if text and not text.endswith(b"\n"):
            with self.path.open("r+b") as file:
                file.truncate(text.rfind(b"\n") + 1)

    def _append(self, text):
        with self.path.open("a", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())

    def add(self, result):
        """Append one finished job; on disk when this returns."""
        self._append(to_line(result))

    def read(self):
        """All finished jobs, as a dict from (cell, first) to :class:`JobResult`."""
        results = {}
        with self.path.open(encoding="utf-8", newline="") as file:
            file.readline()
            for row in csv.DictReader(file):
                if row.get("end") == "done":
                    result = _from_row(row)
                    results[result.cell, result.first] = result
        return results
