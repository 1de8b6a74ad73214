"""One clip on the desk: its frames, the clicks on it, each kept on the disk as it is made, and what they say.

The desk holds the state behind the panel; it shows nothing.
"""

from dataclasses import replace
from functools import lru_cache

from bowlcore.coaching import clip_folder, clip_places, clip_write
from bowlcore.coaching.clip_file import ClipFile
from bowlcore.coaching.clip_fit import FEWEST, CannotTell, Fitted, fit_clip
from bowlcore.coaching.clip_places import RIM, RIM_CLICKS, TAPE, Place, Places
from bowlcore.coaching.demo_clip import beside_truth, cannot_tell

_NEXT = {RIM: "click the edge of the ball", TAPE: "click the middle of the tape"}


def clip_choices() -> list[str]:
    """Names to choose from: the demo clip first, drawn when it is first opened, then what lies in the folder."""
    own = [name for name in clip_folder.clip_names() if name != clip_write.DEMO_NAME]
    return [clip_write.DEMO_NAME, *own]


class ClipDesk:
    """An open clip with its clicks.

    Parameters
    ----------
    name : str
        One of `clip_choices`.
    hand : "right" or "left"
        Of the bowler, for a clip without clicks.

    Attributes
    ----------
    clip : ClipFile
    places : Places
    opened : str
        The sentence to say first.

    Raises
    ------
    ValueError, OSError
        In one sentence, when the clip cannot be opened.
    """

    def __init__(self, name, hand="right"):
        if name == clip_write.DEMO_NAME and name not in clip_folder.clip_names():
            clip_write.write_demo_clip()
        self.name, self.clip = name, ClipFile(name)
        fresh = Places(self.clip.frames_per_s, hand=hand)
        self.places, note = clip_places.kept(name, fresh, self.clip.count)
        self.opened = " ".join(filter(None, [note, self._described()]))

    @property
    def is_demo(self) -> bool:
        """Whether this is the clip that the course has drawn."""
        return self.name == clip_write.DEMO_NAME

    @property
    def last_frame(self) -> int:
        """Number of the last frame; the first is 0."""
        return self.clip.count - 1

    def click(self, frame, what, x_px, y_px) -> str:
        """Take one click and keep it; the sentence that says what comes next.

        what : "rim" or "tape"

        Raises
        ------
        ValueError, OSError
            In one sentence: a place that is not in the picture or makes no sense. What was there stays.
        """
        high, wide = self.clip.size_px
        if not (0 <= frame <= self.last_frame and -0.5 <= x_px <= wide - 0.5 and -0.5 <= y_px <= high - 0.5):
            raise ValueError("That place is not in the picture; nothing was taken.")
        try:
            changed = self.places.with_place(Place(frame, what, round(x_px, 2), round(y_px, 2)))
        except ValueError as problem:
            raise ValueError(
                f"{problem} This click was not taken; “Undo” takes back the one before."
            ) from None
        self._keep(changed)
        return self.to_do(frame)

    def undo(self):
        """Take back the last click; the frame it was in, and a sentence.

        Raises ValueError when there is none.
        """
        if not self.places.places:
            raise ValueError("There is no click to take back.")
        last = self.places.places[-1]
        self._keep(self.places.without_last())
        return last.frame, f"The last click is taken back. {self.to_do(last.frame)}"

    def filmed(self, **how):
        """Change `frames_per_s`, `camera` or `hand`; ValueError, in one sentence, for what cannot be."""
        self._keep(replace(self.places, **how))

    def close(self):
        """Let go of the file."""
        self.clip.close()

    def to_do(self, frame) -> str:
        """What is there in a frame, and what to click next."""
        done = len(self.places.clicked.clicks)
        left = f" {done} {'frame' if done == 1 else 'frames'} done" + (
            f", {FEWEST} is the least." if done < FEWEST else "."
        )
        what = self.places.missing(frame)
        if what is None:
            return f"Frame {frame} is done: step to another one that shows the tape.{left}"
        count = f", place {len(self.places.rim(frame)) + 1} of {RIM_CLICKS}" if what == RIM else ""
        return f"Frame {frame}: {_NEXT[what]}{count}.{left}"

    def answer(self) -> str:
        """The spin in one sentence, or why the clicks cannot tell; "" while too few frames are done."""
        if len(self.places.clicked.clicks) < FEWEST:
            return ""
        found = _fitted(self.places.clicked)
        return found.sentence if isinstance(found, Fitted) else found

    def rows(self) -> list[dict]:
        """The frames that were clicked, as a table."""
        return [self._row(frame) for frame in self.places.frames]

    def truth_rows(self) -> list[dict]:
        """For the demo clip: what is true beside what the clicks say; empty otherwise, and before an answer."""
        found = _fitted(self.places.clicked) if self.is_demo and self.answer() else None
        if found is None:
            return []
        fitted = found if isinstance(found, Fitted) else None
        middle = fitted.middle_frame if fitted else self.last_frame / 2.0
        return beside_truth(clip_write.demo_scene().truth(middle), fitted)

    def _row(self, frame):
        outline, tape = self.places.outline(frame), self.places.tape(frame)
        return {
            "frame": frame,
            "clicks on the edge": len(self.places.rim(frame)),
            "ball's middle (pixels across, down)": _place(outline[0]) if outline else "not yet",
            "ball's radius (pixels)": f"{outline[1]:.0f}" if outline else "not yet",
            "tape (pixels across, down)": _place(tape) if tape else "not yet",
        }

    def _keep(self, places):
        clip_places.keep(self.name, places, self.places)
        self.places = places

    def _described(self):
        said = f"{self.name}: {self.clip.count} frames; the file says {self.clip.frames_per_s:.0f} a second."
        if self.clip.gaps:
            after = ", ".join(map(str, self.clip.gaps[:3])) + (
                " and others" if len(self.clip.gaps) > 3 else ""
            )
            said += f" The camera seems to have lost a frame after {after}: click on one side of it only."
        if self.places.places:
            said += f" {len(self.places.places)} clicks on it are kept from before."
        return said


def _place(at):
    return f"{at[0]:.0f}, {at[1]:.0f}"


@lru_cache(maxsize=4)
def _fitted(clicked):
    try:
        return fit_clip(clicked)
    except CannotTell as reason:
        return cannot_tell(reason)
