"""Writes the two files of the carry table from finished jobs: counts, from which all else follows."""

from collections import Counter
from pathlib import Path

import numpy as np

from bowlcore.whole_file import write_whole

_CELL_COLUMNS = (
    ("cell", "-", "number of the cell, the key of the file of leaves"),
    ("ball_lb", "lb", "ball weight"),
    ("speed_mph", "mph", "speed at the pins"),
    ("angle_deg", "deg", "middle of the cell: entry angle; the cell reaches 0.5 deg to both sides"),
    ("board", "board", "middle of the cell: ball's centre at first touch; reaches 0.25 board to both sides"),
    ("in_table", "-", "1 for a cell of the table; 0 for a check cell that a look-up must not use"),
    ("racks", "-", "racks run"),
    ("exit_count", "-", "balls that left over the end of the deck (others left over the side or stopped)"),
    ("exit_low", "board", "lower quartile of the board where the ball left the deck; 0 if exit_count is 0"),
    ("exit_middle", "board", "its median"),
    ("exit_high", "board", "its upper quartile"),
    (
        "heading_deg",
        "deg",
        "median heading of the ball 12 ms after it touched the head pin; 0 if it never did",
    ),
)
_LEAVE_COLUMNS = (
    ("cell", "-", "number of the cell in the file of cells"),
    ("mask", "-", "pins left standing: bit 0 is the head pin, bit 9 the 10-pin; 0 is a strike"),
    ("count", "-", "racks that left exactly these"),
)


def header(title, program, settings, made, columns):
    """The comment header that ``motion.data_file.read_table`` insists on, and the line of column names."""
    lines = [
        f"title:   {title}",
        "version: 1",
        f"source:  computed by {program}, {settings}; made {made}",
        "caution: a rigid-body pin model, restitution and friction fitted to published totals; not measured",
        "licence: CC0-1.0",
        "frame:   boards from the right edge, ball's centre at first touch of the head pin, not at 60 ft "
        "(bowlcore.rack.pins.board_at_touch converts); angles towards rising boards; a left-hander by mirror",
    ]
    lines += [f"column:  {name} [{unit}] {meaning}" for name, unit, meaning in columns]
    return "".join(f"# {line}\n" for line in lines) + ",".join(name for name, _, _ in columns) + "\n"


def write_table(folder, cells, results, settings, made):
    """Write ``carry_cells.csv`` and ``carry_leaves.csv`` into a folder, each in one move.

    Parameters
    ----------
    cells : sequence of Cell
        In the plan's order; the order gives the cell numbers.
    results : iterable of JobResult
    settings, made : str
        Parameters, seed and versions; the date.

    Returns
    -------
    int
        Racks in the table.
    """
    by_cell = {}
    for result in results:
        by_cell.setdefault(result.cell, []).append(result)
    cell_rows, leave_rows, racks = [], [], 0
    for number, cell in enumerate(cells):
        done = by_cell.get(cell.name)
        if not done:
            continue
        leaves = Counter()
        for result in done:
            leaves.update(result.leaves)
        count = sum(leaves.values())
        racks += count
        boards = [board for result in done for board in result.exit_boards]
        headings = [heading for result in done for heading in result.headings]
        quartiles = ["0"] * 3
        if boards:
            quartiles = [f"{value:.1f}" for value in np.percentile(boards, (25, 50, 75))]
        heading = f"{np.median(headings):.1f}" if headings else "0"
        front = f"{number},{cell.ball_lb:g},{cell.speed_mph:g},{cell.angle_deg:g},{cell.board:g}"
        cell_rows.append(
            f"{front},{int(cell.in_table)},{count},{len(boards)},{','.join(quartiles)},{heading}\n"
        )
        leave_rows += [f"{number},{mask},{n}\n" for mask, n in sorted(leaves.items())]
    folder = Path(folder)
    title = "what a ball leaves in the pin model"
    program = "bowlcore.rack.build_table"
    head = header(f"{title}: the cells", program, settings, made, _CELL_COLUMNS)
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(folder / "carry_cells.csv", (head + "".join(cell_rows)).encode())
    head = header(f"{title}: counts of leaves", program, settings, made, _LEAVE_COLUMNS)
    write_whole(folder / "carry_leaves.csv", (head + "".join(leave_rows)).encode())
    return racks
