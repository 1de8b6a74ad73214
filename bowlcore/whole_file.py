"""Writing a file in one move: whoever reads sees the old one or the new one, never half of it.

A link that lies in the file's place is replaced and never followed. A killed program leaves at most a hidden part.
"""

import os
import secrets
from contextlib import contextmanager
from pathlib import Path
from time import time

_GIVEN_UP_S = 3600.0
_PARTS = ".bowlcore-*.part"


def write_whole(target: Path, content: bytes) -> None:
    """Write all of a file or nothing of it; the folder must be there. On the disk when this returns.

    Raises
    ------
    OSError
        In one sentence; what was there stays as it was.
    """
    try:
        with whole(target) as part, part.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    except OSError as problem:
        raise OSError(
            f"{target.name[:80]} cannot be written ({problem.strerror}); what was there stays as it was"
        ) from problem


@contextmanager
def whole(target: Path):
    """A new place to write to, which becomes `target` once all is written; if that fails, nothing is left of it."""
    sweep(target.parent, _PARTS)
    part = target.with_name(_PARTS.replace("*", secrets.token_hex(6)))  # two programs may write the same file
    try:
        yield part
        os.replace(part, target)
    finally:
        part.unlink(missing_ok=True)


def make_folder(folder: Path) -> None:
    """Make a folder if it is not there; one that is a link stays one. Raises OSError, in one sentence."""
    try:
        folder.mkdir(exist_ok=True)
    except OSError as problem:
        raise OSError(f"the folder {folder.name[:80]} cannot be made ({problem.strerror})") from problem


def sweep(folder: Path, names: str) -> None:
    """Delete parts of files that somebody gave up over an hour ago, as a killed program does."""
    for left in folder.glob(names):
        try:
            if time() - left.lstat().st_mtime > _GIVEN_UP_S:
                left.unlink()
        except OSError:
            pass  # another program was faster, or it is not ours


def too_long(name: str) -> bool:
    """Whether a file of this name may have no place on a disk: most take 255 bytes, and a file beside it has a longer name."""
    return len(name.encode("utf-8", "surrogatepass")) > 240


def free_name(folder: Path, name: str) -> str:
    """The name, or the same with a number behind it, so that nothing in the folder is overwritten."""
    stem, end = Path(name).stem, Path(name).suffix
    number, found = 1, name
    while os.path.lexists(folder / found):
        number += 1
        found = f"{stem} ({number}){end}"
    return found
