"""Reading the project's CSV tables: a comment header that must be complete, then numbers.

The header names title, version, source, licence and frame, and one line for each column:
`# column: name [unit] meaning`.
"""

import csv
import re
from io import StringIO
from pathlib import Path

import numpy as np

MAX_BYTES = 5_000_000
HEADER = ("title", "version", "source", "licence", "frame")
_COLUMN = re.compile(r"^(\w+)\s*\[([^\]]*)\]\s*(.*)$")


def read_table(path, text_columns=()):
    """A data file as (DataFrame, header dict).

    Parameters
    ----------
    path : str or Path
    text_columns : names of columns that hold words; every other one must hold finite numbers.

    Raises
    ------
    ValueError
        One sentence naming the file, the line, the value and what is allowed.
    """
    import pandas as pd

    path = Path(path)
    lines = _lines(path)
    header, columns = {}, {}
    for number, line in enumerate(lines, 1):
        if not line.startswith("#"):
            continue
        key, _, value = line[1:].partition(":")
        key, value = key.strip(), value.strip()
        if key == "column":
            match = _COLUMN.match(value)
            if not match or not match[2].strip():
                raise ValueError(
                    f"{path.name}, line {number}: a column line reads 'name [unit] meaning', got {value[:60]!r}"
                )
            columns[match[1]] = match[2]
        else:
            header[key] = value
    for key in HEADER:
        if not header.get(key):
            raise ValueError(f"{path.name}: the header has no line '# {key}: ...'")
    if not columns:
        raise ValueError(f"{path.name}: the header has no line '# column: name [unit] meaning'")
    body = [(n, line) for n, line in enumerate(lines, 1) if line.strip() and not line.startswith("#")]
    if len(body) < 2:
        raise ValueError(f"{path.name}: there are no rows below the header")
    names = [name.strip() for name in body[0][1].split(",")]
    for name in names:
        if name not in columns:
            raise ValueError(
                f"{path.name}, line {body[0][0]}: column {name[:40]!r} has no unit in the header"
            )
        if names.count(name) > 1:
            raise ValueError(f"{path.name}, line {body[0][0]}: column {name[:40]!r} stands there twice")
    for number, line in body[1:]:
        cells = line.split(",")
        if len(cells) != len(names):
            raise ValueError(f"{path.name}, line {number}: {len(names)} values belong here, got {len(cells)}")
        for name, cell in zip(names, cells, strict=True):
            if name not in text_columns:
                _finite(path.name, number, name, cell)
    table = pd.read_csv(
        StringIO("\n".join(line for _, line in body)), skipinitialspace=True, quoting=csv.QUOTE_NONE
    )
    table.attrs["lines"] = [number for number, _ in body[1:]]
    numeric = [name for name in names if name not in text_columns]
    return table.astype({name: float for name in numeric}), header


def _lines(path):
    try:
        if not path.exists():
            raise ValueError(f"there is no file {path.name!r}")
        if not path.is_file():
            raise ValueError(f"{path.name!r} is a folder, a data file is needed")
        size = path.stat().st_size
        if size > MAX_BYTES:
            raise ValueError(f"{path.name} has {size / 1e6:.1f} MB; at most {MAX_BYTES / 1e6:g} MB are read")
        if size == 0:
            raise ValueError(f"{path.name} is empty")
        return path.read_text(encoding="utf-8-sig").splitlines()
    except UnicodeDecodeError:
        raise ValueError(f"{path.name} is not a text file in UTF-8") from None
    except OSError as problem:
        raise ValueError(f"{path.name[:80]} cannot be read ({problem.strerror})") from None


def _finite(file_name, number, name, cell):
    try:
        value = float(cell)
    except ValueError:
        raise ValueError(
            f"{file_name}, line {number}: {name} must be a number, got {cell.strip()[:40]!r}"
        ) from None
    if not np.isfinite(value):
        raise ValueError(
            f"{file_name}, line {number}: {name} must be a finite number, got {cell.strip()[:40]!r}"
        )
