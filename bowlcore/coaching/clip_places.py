"""What was clicked on a clip, click by click: places on the ball's rim and on the tape, and the file beside the clip.

Three places or more on the rim make the ball's outline. Pixels as in `clip_marks`.
"""

import json
from dataclasses import asdict, dataclass, replace
from functools import cached_property
from math import hypot
from pathlib import Path

import numpy as np

from bowlcore.coaching.clip_folder import clicks_path, clip_path
from bowlcore.coaching.clip_marks import RIM_REACH, Click, ClickedClip
from bowlcore.motion.checks import number_in
from bowlcore.whole_file import free_name, write_whole

RIM, TAPE = "rim", "tape"
RIM_CLICKS = 3  # the fewest that fix a circle
VERSION = 1
_MOST_PLACES, _MOST_BYTES = 2000, 1_000_000
_LEVERAGE = 2.5  # three rim clicks within a third of the round reach this
_OFF_CIRCLE = 0.15  # radii


@dataclass(frozen=True)
class Place:
    """One click.

    frame : int ; what : "rim" or "tape" ; x_px, y_px : where
    """

    frame: int
    what: str
    x_px: float
    y_px: float

    def __post_init__(self):
        number_in("frame", self.frame, 0, 1_000_000)
        if self.frame != int(self.frame):
            raise ValueError(f"frame must be a whole number, got {self.frame:g}")
        object.__setattr__(self, "frame", int(self.frame))
        if self.what not in (RIM, TAPE):
            raise ValueError(f'what must be "{RIM}" or "{TAPE}", got {str(self.what)[:20]!r}')
        for name in ("x_px", "y_px"):
            number_in(name, getattr(self, name), -10_000, 20_000, "pixels")


@dataclass(frozen=True)
class Places:
    """All clicks on a clip in the order in which they were made, and how it was filmed.

    frames_per_s, camera, hand : as in `ClickedClip`
    places : Place

    Raises ValueError, in one sentence, for clicks that make no outline, or a tape outside it.
    """

    frames_per_s: float
    camera: str = "behind"
    hand: str = "right"
    places: tuple[Place, ...] = ()

    def __post_init__(self):
        if len(self.places) > _MOST_PLACES:
            raise ValueError(f"{len(self.places)} clicks are too many; at most {_MOST_PLACES} can be kept.")
        object.__setattr__(self, "places", tuple(self.places))
        ClickedClip((), self.frames_per_s, self.camera, self.hand)
        for frame in self.frames:
            self._check(frame)

    def with_place(self, place: Place) -> "Places":
        """These and one more. Raises ValueError when the new one makes no sense with those of its frame."""
        return replace(self, places=(*self.places, place))

    def without_last(self) -> "Places":
        """These without the last one."""
        return replace(self, places=self.places[:-1])

    @cached_property
    def _in_frame(self):
        found = {}
        for place in self.places:
            found.setdefault(place.frame, {RIM: [], TAPE: []})[place.what].append((place.x_px, place.y_px))
        return found

    @property
    def frames(self) -> list[int]:
        """Frames with a click in them, in order."""
        return sorted(self._in_frame)

    def rim(self, frame) -> list[tuple[float, float]]:
        """Where the rim was clicked in a frame."""
        return self._in_frame.get(frame, {RIM: []})[RIM]

    def tape(self, frame):
        """Where the tape was clicked in a frame, the last time it was; None if it was not."""
        return (self._in_frame.get(frame, {TAPE: []})[TAPE] or [None])[-1]

    def outline(self, frame):
        """Centre (x, y) and radius of the ball in a frame; None before three rim clicks."""
        rim = self.rim(frame)
        return circle(rim) if len(rim) >= RIM_CLICKS else None

    def missing(self, frame):
        """What to click next in a frame: "rim", "tape", or None when both are there."""
        if self.outline(frame) is None:
            return RIM
        return TAPE if self.tape(frame) is None else None

    @property
    def clicked(self) -> ClickedClip:
        """The frames in which both are there, for the fit."""
        done = [frame for frame in self.frames if self.missing(frame) is None]
        clicks = tuple(Click(frame, *self.outline(frame), self.tape(frame)) for frame in done)
        return ClickedClip(clicks, self.frames_per_s, self.camera, self.hand)

    def _check(self, frame):
        try:
            found = self.outline(frame)
        except ValueError as problem:
            raise ValueError(f"Frame {frame}: {problem}.") from None
        if found and self.tape(frame):
            (x, y), radius = found
            away = hypot(self.tape(frame)[0] - x, self.tape(frame)[1] - y)
            if away > RIM_REACH * radius:
                raise ValueError(
                    f"Frame {frame}: the tape lies {away:.0f} pixels from the ball's middle, outside its outline of "
                    f"{radius:.0f}."
                )


def circle(points):
    """Centre (x, y) and radius of the circle nearest to three or more points (linear least squares).

    Raises ValueError, without a full stop, when they are not spread round one circle.
    """
    points = np.array(points, float)
    middle = points.mean(axis=0)
    apart = points - middle
    rows = np.column_stack([2.0 * apart, np.ones(len(apart))])
    a, b, c = np.linalg.lstsq(rows, (apart**2).sum(axis=1), rcond=None)[0]
    radius = float(np.sqrt(max(c + a * a + b * b, 1e-12)))
    out = (apart - (a, b)) / radius
    off = np.abs(np.hypot(*out.T) - 1.0).max()
    if off > _OFF_CIRCLE or _leverage(np.arctan2(out[:, 1], out[:, 0])) > _LEVERAGE:
        raise ValueError("the rim clicks do not lie round one circle; spread them all round the ball's edge")
    number_in("the ball's radius", radius, 5, 5000, "pixels")
    return (float(middle[0] + a), float(middle[1] + b)), radius


def _leverage(around):
    """How far the middle of a circle through places at these angles may be off when each is off by one."""
    slope = np.column_stack([np.cos(around), np.sin(around), np.ones(len(around))])
    return float(np.sqrt(np.diag(np.linalg.pinv(slope.T @ slope + 1e-9 * np.eye(3)))[:2].max()))


def keep(name, places: Places, before: Places):
    """Write the clicks beside the clip of this name, at once and in one move.

    before : what is believed to lie there

    Raises
    ------
    ValueError, OSError
        In one sentence: the clip is gone, or the clicks were changed on another page; nothing is overwritten.
    """
    clip_path(name)
    path = clicks_path(name)
    try:
        same = not path.exists() or _read(path) == before
    except (ValueError, OSError):
        same = False
    if not same:
        raise ValueError("The clicks on this clip were changed on another page: choose the clip once more.")
    write_whole(path, json.dumps({"version": VERSION, **asdict(places)}, indent=1).encode())


def kept(name, fresh: Places, frames):
    """The clicks beside the clip of this name, or `fresh` when there are none.

    Parameters
    ----------
    name : str
    fresh : Places
        To begin with.
    frames : int
        Frames of the clip; clicks on later ones belong to another clip.

    Returns
    -------
    Places, str
        And a sentence when what lay there cannot be used: it is kept under another name, nothing is lost.

    Raises
    ------
    OSError
        In one sentence, when it cannot even be put under another name.
    """
    path = clicks_path(name)
    if not path.is_symlink() and not path.exists():
        return fresh, ""
    try:
        places = _read(path)
        if places.frames and places.frames[-1] >= frames:
            raise ValueError(f"frame {places.frames[-1]} is clicked, and the clip has only {frames} frames")
        return places, ""
    except (
        ValueError,
        TypeError,
        KeyError,
        AttributeError,
        OverflowError,
        RecursionError,
        OSError,
    ) as problem:
        wrong = f"The clicks beside this clip cannot be used ({str(problem)[:160].rstrip('.')})"
        aside = free_name(path.parent, f"{name}.clicks kept.json")
        try:
            path.rename(path.with_name(aside))
        except OSError as why:
            raise OSError(f"{wrong}, and they cannot be put aside ({why.strerror}).") from None
        return fresh, f"{wrong}; they are kept as {aside}, and you begin anew."


def _read(path: Path) -> Places:
    """The clicks in a file; ValueError, in one sentence, for anything else."""
    if path.is_symlink() or not path.is_file():
        raise ValueError("it is no plain file")
    if path.stat().st_size > _MOST_BYTES:
        raise ValueError(f"the file has more than {_MOST_BYTES / 1e6:g} MB")
    try:
        found = json.loads(path.read_bytes())
        version, places = found.pop("version"), found.pop("places")
        if version == VERSION:
            return Places(places=[Place(**one) for one in places], **found)
    except (json.JSONDecodeError, UnicodeDecodeError, RecursionError):
        raise ValueError("it is no JSON") from None
    except (TypeError, KeyError, AttributeError, OverflowError):
        raise ValueError("it does not hold the clicks of a clip") from None
    raise ValueError(f"they were kept by version {version!r:.20} of this file, not {VERSION}")
