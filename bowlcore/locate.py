"""Where the project's data and workbooks lie, installed or in a checkout."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _folder(name: str) -> Path:
    packaged = _PACKAGE / f"_{name}"
    return packaged if packaged.is_dir() else _PACKAGE.parent / name


def data_folder() -> Path:
    """Folder of the shipped data: the packaged copy if there is one, else the checkout's."""
    return _folder("data")


def workbooks_folder() -> Path:
    """Folder of the lessons: the packaged copy if there is one, else the checkout's."""
    return _folder("workbooks")
