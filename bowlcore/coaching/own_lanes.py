"""Fitted lanes that a person keeps by name, in the folder of the lessons; every panel offers them beside the shapes.

A file holds the shape's name and four numbers. It is read and written as JSON; nothing in it is run.
"""

import json
import re
from dataclasses import replace
from functools import lru_cache
from os.path import lexists
from pathlib import Path

import numpy as np

from bowlcore.motion.checks import number_in
from bowlcore.motion.oil import load_pattern, pattern_names
from bowlcore.motion.surface import FrictionLaw, OiledLane
from bowlcore.whole_file import make_folder, write_whole

FOLDER, VERSION = "my_lanes", 1
MARK = "my lane: "  # before the name of such a lane, so that it is never taken for a shape
_NAME = re.compile(r"[\w][\w .\-]{0,29}")
_MOST_BYTES = 5000
_used = set()  # pictures remember a lane by its name: while a page runs a name stands for one lane only


def folder() -> Path:
    """Where own lanes lie: in the folder that the lesson runs in."""
    return Path.cwd() / FOLDER


def own_names() -> list[str]:
    """Names of the kept lanes, marked as own ones."""
    names = sorted(path.stem for path in folder().glob("*.json"))
    return [MARK + name for name in names if _NAME.fullmatch(name)]


def shift_oil(pattern, longer_ft):
    """The same oil, all of it further down the lane by so many feet."""
    feet = np.linspace(0.0, 60.0, 61)
    moved = pattern.oil_um(pattern.lane_board[None, :], feet[:, None] - longer_ft)
    return replace(pattern, distance_ft=feet, thickness_um=moved)


def checked_name(name) -> str:
    """The name without spaces around it; ValueError, in words, when it cannot be one."""
    name = name.strip()
    if not _NAME.fullmatch(name):
        raise ValueError(
            f"a lane's name is 1 to 30 letters, digits, spaces, points or dashes, got {name[:40]!r}"
        )
    return name


def keep(name, shape, law, longer_ft) -> str:
    """Write a lane down; returns the name under which every list has it.

    Parameters
    ----------
    name : str
        1 to 30 letters, digits, spaces, points or dashes. If it is taken, a number is put behind it.
    shape : str
        A shipped shape; law : FrictionLaw; longer_ft : float, -12 to 12

    Raises
    ------
    ValueError, OSError
        In one sentence.
    """
    name = checked_name(name)
    number_in("longer_ft", longer_ft, -12, 12, "ft")
    told = {"version": VERSION, "shape": shape, "longer_ft": round(float(longer_ft), 2)}
    told |= {part: round(getattr(law, part), 5) for part in ("oil", "dry", "scale_um")}
    _lane(
        **{key: value for key, value in told.items() if key != "version"}
    )  # refuses what could not be read again
    make_folder(folder())
    free, number = name, 1
    while lexists(folder() / f"{free}.json") or free in _used:
        number += 1
        free = f"{name} {number}"
    path = folder() / f"{free}.json"
    write_whole(path, json.dumps(told, indent=1).encode())
    _used.add(free)
    return MARK + free


def remove(marked):
    """Delete a kept lane. Raises ValueError when there is none of that name."""
    _path(marked).unlink()


def own_lane(marked) -> OiledLane:
    """A kept lane by its marked name.

    Raises
    ------
    ValueError
        One sentence: no such lane, or a file that is none.
    """
    path = _path(marked)
    wrong = f"{FOLDER}/{path.name} does not hold a lane that this version can read"
    try:
        if path.stat().st_size > _MOST_BYTES:
            raise ValueError("too large")
        told = json.loads(path.read_text(encoding="utf-8"))
        if told.pop("version") != VERSION:
            raise ValueError("another version")
        return _lane(**told)
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError, OSError) as problem:
        said = getattr(problem, "strerror", None) or str(problem)
        raise ValueError(f"{wrong} ({said[:80]}); it was left as it is") from None


def _path(marked):
    name = str(marked).removeprefix(MARK)
    path = folder() / f"{name}.json"
    if not _NAME.fullmatch(name) or not path.is_file():
        raise ValueError(f"there is no lane of your own called {name[:40]!r}")
    return path


@lru_cache(maxsize=32)
def _lane(shape, longer_ft, oil, dry, scale_um):
    if shape not in pattern_names():
        raise ValueError(f"no shape {str(shape)[:40]!r}")
    number_in("longer_ft", longer_ft, -12, 12, "ft")
    return OiledLane(shift_oil(load_pattern(shape), longer_ft), FrictionLaw(oil, dry, scale_um))
