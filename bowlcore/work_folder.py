"""The person's own copies of the lessons: put there once, kept up to date, never overwritten once changed.

A copy counts as changed when what its cells say differs from what was copied. Results, cell numbers and
page settings do not count: Jupyter writes those by itself.
"""

import hashlib
import json
from pathlib import Path

from bowlcore.called import called
from bowlcore.coaching.glossary import PAGE
from bowlcore.locate import workbooks_folder
from bowlcore.whole_file import make_folder, write_whole

NAME = "Ball Motion Workbook"
_RECORD = ".bowlcore.json"  # file name of each copy: fingerprint of the lesson it was copied from


def default_folder() -> Path:
    """The work folder when none is named: in the person's documents if there are any, else at home."""
    documents = Path.home() / "Documents"
    return (documents if documents.is_dir() else Path.home()) / NAME


def fill(folder: Path) -> list[str]:
    """Bring the lessons in `folder` up to date; returns one line for each thing a person should know."""
    check(folder)
    shipped = [path for kind in ("*.ipynb", PAGE) for path in sorted(workbooks_folder().glob(kind))]
    if folder.resolve() == workbooks_folder().resolve():
        return []  # an author at work on the lessons themselves
    try:
        make(folder)
        record = _read_record(folder)
        lines = [line for lesson in shipped if (line := _place(lesson, folder, lesson.name, record))]
        write_whole(folder / _RECORD, json.dumps(record, indent=1).encode())
    except OSError as problem:
        why = (problem.__cause__ or problem).strerror
        raise OSError(
            f"Cannot write in the folder {folder} ({why}); name another one: {called()} open FOLDER"
        ) from None
    return lines


def make(folder: Path) -> None:
    """Make a folder if it is not there. Raises OSError, in one sentence."""
    check(folder)
    make_folder(folder)


def check(folder: Path) -> None:
    """Raise OSError, in one sentence, if `folder` is not a folder and cannot become one."""
    if folder.exists() and not folder.is_dir():
        raise OSError(f"{folder} is a file, and a folder is needed")
    if not folder.parent.is_dir():
        raise OSError(f"The folder {folder} cannot be made, because there is no folder {folder.parent}")


def fingerprint(notebook: bytes) -> str:
    """Hash of what the cells of a notebook say; of the whole file if it is not a notebook.

    Empty cells are left out, since Jupyter adds one when the last cell is run by hand.
    """
    try:
        cells = [(cell["cell_type"], "".join(cell["source"])) for cell in json.loads(notebook)["cells"]]
        said = json.dumps([cell for cell in cells if cell[1].strip()]).encode()
    except (ValueError, KeyError, TypeError, RecursionError):
        said = notebook
    return hashlib.sha256(said).hexdigest()


def _place(lesson: Path, folder: Path, name: str, record: dict) -> str | None:
    """Copy one lesson to `folder / name`, or beside it if the person changed what is there."""
    target = folder / name
    new = fingerprint(lesson.read_bytes())
    copied = record.get(name)
    record[name] = new
    if not target.exists() or _there(target) in (copied, new):
        write_whole(target, lesson.read_bytes())
        return None
    if copied == new:
        return None  # changed by the person, and the lesson is still the one it was copied from
    beside = f"{target.stem} (new){target.suffix}"
    return _place(lesson, folder, beside, record) or (
        f"You changed {name}, so it stays as it is; the newer lesson is beside it as {beside}"
    )


def _there(target: Path) -> str:
    """Fingerprint of what lies there; "", as for something changed, for a folder or a file that may not be read."""
    try:
        return fingerprint(target.read_bytes()) if target.is_file() else ""
    except PermissionError:
        return ""


def _read_record(folder: Path) -> dict:
    try:
        record = json.loads((folder / _RECORD).read_bytes())
    except (FileNotFoundError, ValueError, RecursionError):
        return {}
    return record if isinstance(record, dict) else {}
