"""The folder for phone clips beside the lessons: what lies there, how a clip comes in, and how it goes for good.

A clip is known by its file name alone. Nothing outside the folder is ever opened, changed or deleted.
"""

import os
import re
from pathlib import Path

from bowlcore.whole_file import free_name, make_folder, sweep, too_long

FOLDER = "clips"
ENDINGS = (
    ".mp4",
    ".mov",
    ".m4v",
)  # what phones write: one family of files, ISO 14496-12 and its older brother
LARGEST_BYTES = 1_000_000_000
_LONGEST_NAME = 80
_BROKEN = re.compile("[\ud800-\udfff]")  # bytes that are no letters, which no page can show
_NOT_IN_A_NAME = re.compile(r"[^\w .()-]")


def folder() -> Path:
    """Where clips lie: in the folder that the lesson runs in."""
    return Path.cwd() / FOLDER


def clip_names() -> list[str]:
    """File names of the clips, in order; empty while there is no folder."""
    if not folder().is_dir():
        return []
    names = (path.name for path in folder().iterdir())
    return sorted(
        name for name in names if is_clip_name(name) and name[0] != "." and not _BROKEN.search(name)
    )


def is_clip_name(name) -> bool:
    """Whether a file's name ends as a phone's clip does."""
    return name.lower().endswith(ENDINGS)


def clip_path(name) -> Path:
    """The file of a clip.

    Raises
    ------
    ValueError
        One sentence: no such file, a folder, a link that leads out, another kind of file, empty, too large.
    """
    path = _inside(name)
    if not path.exists():
        raise ValueError(f"There is no clip {name!r} in the folder {FOLDER} of your lessons.")
    if path.resolve().parent != folder().resolve():
        raise ValueError(
            f"{name} is a link that leads out of the folder {FOLDER}; copy the clip itself there."
        )
    if not path.is_file():
        raise ValueError(f"{name} is a folder, and a clip is one file.")
    _check(name, path.stat().st_size)
    return path


def clicks_path(name) -> Path:
    """Where the clicks on a clip are kept: beside it."""
    return _inside(f"{name}.clicks.json")


def remove(name) -> str:
    """Delete the clip and all clicks on it from the folder; the sentence that says so.

    Raises ValueError, in one sentence, when there is no such clip or it is a folder.
    """
    path = _inside(name)
    if path.is_dir() and not path.is_symlink():
        raise ValueError(f"{name} is a folder; nothing was deleted.")
    if not path.is_symlink() and not path.exists():
        raise ValueError(f"There is no clip {name!r} in the folder {FOLDER} of your lessons.")
    for beside in [*folder().iterdir()]:
        if beside.name.startswith(f"{name}.clicks") and beside.suffix == ".json":
            beside.unlink()
    path.unlink()
    return (
        f"{name} and the clicks on it are deleted for good. The clip on the phone and copies elsewhere are not "
        "reached: delete these yourself."
    )


class Arrival:
    """A clip that is copied into the folder piece by piece; it gets its name when it is whole.

    Parameters
    ----------
    name : str
        As the person's file is called; what a file name should not hold is replaced.
    size : int
        Bytes that will come.

    Raises
    ------
    ValueError
        One sentence: not the name of a clip, empty, too large. Nothing is written then.
    """

    def __init__(self, name, size):
        name = str(name).replace("\\", "/").rpartition("/")[2]
        name = _NOT_IN_A_NAME.sub("_", name)[-_LONGEST_NAME:].lstrip(". ")
        _check(name, size)
        make_folder(folder())
        sweep(folder(), ".*.part")  # of a page that was closed half-way
        self.size, self.name, self.here = size, name, 0
        self._part = folder() / free_name(folder(), f".{name}.part")
        self._part.write_bytes(b"")

    def add(self, piece) -> bool:
        """Write the next bytes; True once all have come.

        Raises, and gives the clip up: ValueError when more bytes come than were announced, OSError when they cannot be
        written.
        """
        self.here += len(piece)
        if self.here > self.size:
            self.give_up()
            raise ValueError(f"{self.name} is larger than it said and was not kept.")
        try:
            with self._part.open("r+b") as file:  # not "ab", which would begin anew a part that was swept out
                file.seek(0, os.SEEK_END)
                file.write(piece)
            if self.here == self.size:
                self.name = free_name(folder(), self.name)
                self._part.rename(folder() / self.name)
        except OSError as problem:
            self.give_up()
            raise OSError(
                f"{self.name} could not be copied in ({problem.strerror}); nothing of it was kept"
            ) from None
        return self.here == self.size

    def give_up(self):
        """Leave nothing of it behind."""
        self._part.unlink(missing_ok=True)


def _inside(name):
    if (
        not isinstance(name, str)
        or Path(name).name != name
        or name[:1] in ("", ".")
        or {"\\", "\0"} & set(name)
        or too_long(name)
    ):
        raise ValueError(f"A clip is named by its file name alone, got {str(name)[:60]!r}.")
    return folder() / name


def _check(name, size):
    if not is_clip_name(name):
        raise ValueError(f"A clip's name must end in {', '.join(ENDINGS)}, got {name[:60]!r}.")
    if isinstance(size, bool) or not isinstance(size, int) or size <= 0:
        raise ValueError(f"{name} is empty.")
    if size > LARGEST_BYTES:
        raise ValueError(
            f"{name} has {size / 1e9:.1f} GB, and at most {LARGEST_BYTES / 1e9:g} GB can be opened: cut it on the phone "
            "to the seconds round the release."
        )
