"""A drawn clip as a file, the clip panel on it, and a hand that clicks where the renderer says; needs the extra `clip`."""

import json

import numpy as np

from bowlcore.coaching.clip_folder import clicks_path
from bowlcore.coaching.clip_render import demo_clip

NAME = "mine.mp4"
DRAWN = demo_clip(radius_px=60.0, frames_per_s=120.0, frames=48)


def places_of(frame):
    """Three places on the rim, and the tape."""
    (x, y), r, seen = DRAWN.scene.centre_px(frame), DRAWN.scene.radius_px, DRAWN.tape_seen()[frame]
    rim = [(x + r * np.cos(a), y + r * np.sin(a)) for a in (0.4, 2.5, 4.6)]
    return [*rim, (x + r * seen[0], y - r * seen[1])]


def click(panel, frame, x, y):
    """As the page says it."""
    panel.clip.heard("click", {"frame": frame, "x": float(x), "y": float(y)})


def fill(panel, count):
    """Click so many frames to the end."""
    there = np.flatnonzero(DRAWN.tape_seen()[:, 2] > 0.3)
    for frame in there[np.linspace(0, len(there) - 1, count).astype(int)]:
        panel.clip.frame.slider.value = int(frame)
        for x, y in places_of(frame):
            click(panel, int(frame), x, y)


def on_disk():
    """What lies beside the clip."""
    return json.loads(clicks_path(NAME).read_text())
