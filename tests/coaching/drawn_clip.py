"""A drawn delivery in place of a decoded file, and where a careful person would click on it.

What is true comes from the renderer alone, whose own tests are in test_clip_render.
"""

import numpy as np

from bowlcore.coaching.clip_places import RIM, TAPE

ROUND = np.radians([20, 140, 260])  # where on the rim a person clicks


class DrawnFile:
    """Behaves as `ClipFile` does, without the decoder library."""

    gaps = ()

    def __init__(self, drawn, frames_per_s=None):
        self.drawn, self.count = drawn, drawn.scene.frames
        self.frames_per_s = frames_per_s or drawn.scene.frames_per_s
        self.size_px, self.closed = drawn.scene.size_px, False

    def frame(self, number):
        return self.drawn.frame(number)

    def close(self):
        self.closed = True


def showing(drawn, count):
    """Frames that show the tape well, spread over the clip."""
    there = np.flatnonzero(drawn.tape_seen()[:, 2] > 0.3)
    return [int(frame) for frame in there[np.linspace(0, len(there) - 1, count).round().astype(int)]]


def to_click(drawn, frame, noise_px=0.0, rng=None):
    """(what, x, y) of three places on the rim and the tape."""
    (x, y), r, seen = drawn.scene.centre_px(frame), drawn.scene.radius_px, drawn.tape_seen()[frame]
    places = [(RIM, x + r * np.cos(a), y + r * np.sin(a)) for a in ROUND]
    places.append((TAPE, x + r * seen[0], y - r * seen[1]))
    off = rng.normal(0.0, noise_px, (4, 2)) if noise_px else np.zeros((4, 2))
    return [(what, float(x + dx), float(y + dy)) for (what, x, y), (dx, dy) in zip(places, off, strict=True)]
