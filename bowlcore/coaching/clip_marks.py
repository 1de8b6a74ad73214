"""Clicked marks of a clip as plain data: in some frames the ball's outline and the tape.

Pixels as on a screen: x to the right, y down, from the middle of the pixel in the upper left corner.
"""

from dataclasses import dataclass
from math import hypot

import numpy as np

from bowlcore.coaching.spin_axis import view
from bowlcore.motion.checks import number_in

RIM_REACH = 1.15  # a click this many radii from the centre may still be meant for the rim


@dataclass(frozen=True)
class Click:
    """One frame.

    frame : int, 0 or more
    centre_px, radius_px : the ball's outline, (x, y) and radius
    mark_px : (x, y) of the middle of the tape
    """

    frame: int
    centre_px: tuple[float, float]
    radius_px: float
    mark_px: tuple[float, float]

    def __post_init__(self):
        number_in("frame", self.frame, 0, 1_000_000)
        if self.frame != int(self.frame):
            raise ValueError(f"frame must be a whole number, got {self.frame:g}")
        number_in("radius_px", self.radius_px, 5, 5000, "pixels")
        for name in ("centre_px", "mark_px"):
            place = tuple(getattr(self, name))
            if len(place) != 2:
                raise ValueError(f"{name} must be (x, y), got {place!r}")
            for axis, value in zip("xy", place, strict=True):
                number_in(f"{axis} of {name}", value, -10_000, 20_000, "pixels")
            object.__setattr__(self, name, place)
        away = hypot(self.mark_px[0] - self.centre_px[0], self.mark_px[1] - self.centre_px[1])
        if away > RIM_REACH * self.radius_px:
            raise ValueError(
                f"mark_px of frame {self.frame} lies {away:.0f} pixels from the ball's centre, "
                f"outside its outline of {self.radius_px:.0f}"
            )


@dataclass(frozen=True)
class ClickedClip:
    """All clicks of one delivery, and how the clip was taken.

    clicks : Click, one for a frame, in any order
    frames_per_s : 20 to 1000, as filmed (a slow-motion file may say 30: give what the phone filmed)
    camera : "behind", "beside, on the right" or "beside, on the left" of the lane, level with the ball
    hand : of the bowler
    heading_deg : where the ball goes against the camera's line, positive away from the own gutter;
        0 where the camera stands behind the ball's own line
    """

    clicks: tuple[Click, ...]
    frames_per_s: float
    camera: str = "behind"
    hand: str = "right"
    heading_deg: float = 0.0

    def __post_init__(self):
        number_in("frames_per_s", self.frames_per_s, 20, 1000)
        number_in("heading_deg", self.heading_deg, -20, 20, "degrees")
        view(self.camera, self.hand)
        clicks = tuple(sorted(self.clicks, key=lambda click: click.frame))
        frames = [click.frame for click in clicks]
        if len(set(frames)) != len(frames):
            twice = next(f for f in frames if frames.count(f) > 1)
            raise ValueError(f"frame {twice} was clicked twice")
        object.__setattr__(self, "clicks", clicks)

    @property
    def times_s(self):
        """Seconds from frame 0."""
        return np.array([click.frame for click in self.clicks], float) / self.frames_per_s

    @property
    def radius_px(self):
        return np.array([click.radius_px for click in self.clicks], float)

    @property
    def offset_px(self):
        """(n, 2): the tape from the ball's centre, to the right and up."""
        apart = [np.subtract(click.mark_px, click.centre_px) for click in self.clicks]
        return np.array(apart, float).reshape(-1, 2) * (1.0, -1.0)
