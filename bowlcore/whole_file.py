"""Writing a file in one move: whoever reads sees the old one or the new one, never half of it."""

import os
from pathlib import Path


def write_whole(target: Path, content: bytes) -> None:
    """Write all of a file or nothing of it; the folder must be there. Raises OSError."""
    part = target.with_name(f".{target.name}.part")
    try:
        part.write_bytes(content)
        os.replace(part, target)
    finally:
        part.unlink(missing_ok=True)


def free_name(folder: Path, name: str) -> str:
    """The name, or the same with a number behind it, so that nothing in the folder is overwritten."""
    stem, end = Path(name).stem, Path(name).suffix
    number, found = 1, name
    while os.path.lexists(folder / found):
        number += 1
        found = f"{stem} ({number}){end}"
    return found
