"""How far pin decks that suit the published totals differ: ``python -m bowlcore.rack.spread`` (extra ``rack``).

The sampling error of the carry table says how well one deck is counted; this says how much the deck itself is
in doubt. Every set of ``deck_params.PARAMETER_SETS`` plays the same racks (the same accidents, the same balls),
so two sets differ by their contact numbers and not by luck. One process; seven minutes on a busy machine.
"""

import argparse
import sys
from dataclasses import asdict
from datetime import date
from pathlib import Path

from bowlcore.locate import data_folder
from bowlcore.rack.build_table import SEED, run_job, settings_text
from bowlcore.rack.cells import Cell, Job
from bowlcore.rack.deck_params import PARAMETER_SETS, DeckParams
from bowlcore.rack.leave import Leave
from bowlcore.rack.table_files import header
from bowlcore.whole_file import write_whole

BALL_LB, SPEED_MPH = 15, 14
ANGLES_DEG = (2, 4, 6)
BOARDS = tuple(15.5 + i / 2 for i in range(9))  # to 19.5, at first touch
RACKS = 24  # in each cell, the first ones of the carry table's cell
_COLUMNS = (
    ("parameter_set", "text", "name of the set in bowlcore.rack.deck_params; shipped is the carry table's"),
    ("angle_deg", "deg", "middle of the cell: entry angle; the cell reaches 0.5 deg to both sides"),
    ("board", "board", "middle of the cell: ball's centre at first touch; reaches 0.25 board to both sides"),
    ("racks", "count", "racks run"),
    ("strikes", "count", "racks that left nothing"),
    ("pinfall", "count", "pins that fell in all these racks together"),
)


def cells(angles=ANGLES_DEG, boards=BOARDS):
    """The coarse grid: boxes of boards and angles as in the carry table."""
    return [Cell(BALL_LB, SPEED_MPH, angle, board) for angle in angles for board in boards]


def run_set(params, where, racks=RACKS, seed=SEED):
    """(cell, strikes, pinfall) of each cell, `racks` racks each, in this process."""
    for cell in where:
        leaves = run_job(Job(cell, 0, racks), params, seed).leaves
        yield cell, leaves.get(0, 0), sum(Leave(mask).pinfall * count for mask, count in leaves.items())


def difference_text(name_and_params):
    """What a set changes in the shipped one: "dull plates: side_plate_restitution=0.4"."""
    name, params = name_and_params
    shipped, numbers = asdict(DeckParams()), asdict(params)
    return f"{name}: " + (" ".join(f"{k}={v:g}" for k, v in numbers.items() if v != shipped[k]) or "as above")


def write_spread(path, *, sets=None, where=None, racks=RACKS, seed=SEED, tell=print):
    """Run every set on the grid and write one file.

    Parameters
    ----------
    path : path
        The file, written in one move at the end.
    sets : dict, optional
        Name to ``DeckParams``; ``PARAMETER_SETS`` if absent.
    where : list of Cell, optional
        The whole grid if absent.
    racks, seed : int
    tell : callable
        Gets one line a set.
    """
    sets = PARAMETER_SETS if sets is None else sets
    where = cells() if where is None else where
    rows = []
    for name, params in sets.items():
        found = list(run_set(params, where, racks, seed))
        strikes, pins = sum(cell[1] for cell in found), sum(cell[2] for cell in found)
        count = racks * len(found)
        tell(f"{name}: {count} racks, {strikes / count:.1%} strikes, {pins / count:.2f} pins a rack")
        rows += [f"{name},{c.angle_deg:g},{c.board:g},{racks},{s},{p}\n" for c, s, p in found]
    title = f"model spread: strikes of {BALL_LB} lb at {SPEED_MPH} mph in pin decks that suit the published totals"
    settings = "; ".join([settings_text(DeckParams(), seed), *map(difference_text, sets.items())])
    head = header(title, "bowlcore.rack.spread", settings, date.today().isoformat(), _COLUMNS)
    write_whole(path, (head + "".join(rows)).encode())


def main(arguments=None):
    """Command line."""
    parser = argparse.ArgumentParser(
        prog="python -m bowlcore.rack.spread", description=__doc__.split("\n")[0]
    )
    parser.add_argument("--out", type=Path, default=data_folder() / "carry_spread.csv")
    given = parser.parse_args(arguments)
    try:
        write_spread(given.out, tell=lambda line: print(line, flush=True))
    except ImportError as error:
        print(f"{error.name} is missing: pip install 'bowlcore[rack]'", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
