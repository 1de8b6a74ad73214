"""Writing frames as an mp4, and the demo clip: a made-up release drawn by this course, for trying out clicks.

Needs the extra `clip`.
"""

from functools import lru_cache
from pathlib import Path

import numpy as np

from bowlcore.coaching.clip_file import decoder
from bowlcore.coaching.clip_folder import folder
from bowlcore.coaching.clip_render import DEMO_SEED, demo_clip
from bowlcore.whole_file import make_folder, whole

DEMO_NAME = "demo clip (made up).mp4"
_SCENE = {"frames_per_s": 120.0, "frames": 60, "radius_px": 100.0}
_BITS_PER_S = 3_000_000
_GRAIN = 2.0  # one standard deviation of a camera's noise, in steps of 256


@lru_cache(maxsize=2)
def demo_scene(shutter=0.0):
    """The drawn delivery behind the demo clip: frames, and what is true; `shutter` as in `Scene`."""
    return demo_clip(**_SCENE, shutter=shutter)


def write_demo_clip(shutter=0.0, seed=DEMO_SEED) -> str:
    """Draw the demo clip into the folder of clips, in place of the one that is there; its file name.

    shutter : as in `Scene`: 0 is sharp, 1 blurs a whole frame; blur takes seven times as long to draw
    seed : of the grain

    Raises ValueError when the library is missing, OSError when the folder cannot be written.
    """
    clip, rng = demo_scene(shutter), np.random.default_rng(seed)
    decoder()
    make_folder(folder())
    note = f"made up for teaching, drawn by this course; no bowler was filmed; seed {seed}"
    grained = (_grain(clip.frame(number), rng) for number in range(clip.scene.frames))
    write_mp4(folder() / DEMO_NAME, grained, round(clip.scene.frames_per_s), note)
    return DEMO_NAME


def write_mp4(path: Path, frames, frames_per_s, note=""):
    """Write frames of one size, (height, width, 3) bytes each, as an mp4; an odd row or column is doubled.

    Raises ValueError when the library is missing, OSError when the file cannot be written.
    """
    av = decoder()
    kind = "libx264" if "libx264" in av.codecs_available else "mpeg4"
    with whole(path) as part, av.open(str(part), "w", format="mp4") as file:
        file.metadata["comment"] = note
        stream = file.add_stream(kind, rate=frames_per_s)
        stream.pix_fmt = "yuv420p"  # the one that every player knows; it wants even sizes
        stream.bit_rate = _BITS_PER_S
        if kind == "libx264":
            # With the newest instructions of some processors it packs the same pictures differently each time.
            stream.options = {"x264-params": "asm=SSE4.2"}
        for picture in frames:
            even = np.pad(picture, [(0, size % 2) for size in picture.shape[:2]] + [(0, 0)], mode="edge")
            if not stream.codec_context.is_open:
                stream.height, stream.width = even.shape[:2]
            file.mux(stream.encode(av.VideoFrame.from_ndarray(even, format="rgb24")))
        file.mux(stream.encode())


def _grain(picture, rng):
    noise = rng.normal(0.0, _GRAIN, picture.shape[:2])
    return np.clip(picture + noise[..., None], 0, 255).round().astype(np.uint8)
