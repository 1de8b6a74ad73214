"""Frames of a phone clip by number, decoded when they are asked for; needs the extra `clip`.

The file is read through once to list its frames; pictures are decoded from the nearest key frame before, and only a
few are held, so a long clip takes no more memory than a short one. Frame times are the file's own.
"""

from bisect import bisect_right
from collections import OrderedDict

import numpy as np

from bowlcore.coaching.clip_folder import clip_path

NEEDS = (
    "Clips need two more packages: type .venv/bin/pip install -e '.[clip]' in the folder of the workbook, "
    "then open the lessons again."
)
_HELD_BYTES = 64_000_000  # decoded frames that are kept
_MOST_FRAMES = 100_000
_WIDEST_PX = 4096
_LIKELY = (20, 1000)  # frames a second that a phone may claim
_GAP = 1.6  # times the usual step from frame to frame


def decoder():
    """The decoder library (PyAV). Raises ValueError, in one sentence, when it is not installed."""
    try:
        import av
    except ImportError:
        raise ValueError(NEEDS) from None
    return av


class ClipFile:
    """An open clip.

    Parameters
    ----------
    name : str
        File name in the folder of clips.

    Attributes
    ----------
    count : int
        Frames.
    frames_per_s : float
        As the file says; slow motion is often written with a false one.
    gaps : tuple of int
        Frames after which the file's own times jump, as if the next one had been lost.
    size_px : (height, width), upright as the phone was held

    Raises
    ------
    ValueError
        One sentence: library missing, no such file, broken, no picture in it, too many or too large frames.
    """

    def __init__(self, name):
        self._av, self.name = decoder(), name
        path = clip_path(name)
        try:
            # this family of files only: lists of addresses and other scripts that the library knows stay shut
            self._file = self._av.open(str(path), format="mov", metadata_errors="replace")
        except (self._av.error.FFmpegError, OSError):
            raise ValueError(self._broken()) from None
        try:
            self._list_frames()
            self.size_px = self.frame(0).shape[:2]
        except BaseException:
            self.close()
            raise

    def frame(self, number) -> np.ndarray:
        """One frame as (height, width, 3) bytes, upright.

        Raises ValueError, in one sentence, for a number that is not there or a frame that is broken.
        """
        if not 0 <= number < self.count:
            raise ValueError(f"frame must be between 0 and {self.count - 1}, got {number}")
        found = self._held.get(number)
        if found is None:
            found = self._decode(number)
        picture = found.to_ndarray(format="rgb24")
        return np.ascontiguousarray(np.rot90(picture, round(found.rotation / 90.0)))

    def close(self):
        self._held, self._running = OrderedDict(), None
        self._file.close()

    def _list_frames(self):
        """Frame numbers by time, and where decoding can begin; only the file's packets are read."""
        if not self._file.streams.video or self._file.streams.video[0].codec_context is None:
            raise ValueError(f"{self.name} holds no picture that can be read.")
        self._stream = self._file.streams.video[0]
        wide, high = self._stream.codec_context.width, self._stream.codec_context.height
        if not (16 <= wide <= _WIDEST_PX and 16 <= high <= _WIDEST_PX):
            raise ValueError(
                f"{self.name} is {wide} by {high} pixels; between 16 and {_WIDEST_PX} can be opened."
            )
        times, keys = [], []
        try:
            for packet in self._file.demux(self._stream):
                if packet.pts is None:
                    continue
                if packet.is_keyframe:
                    keys.append((packet.pts, packet.dts if packet.dts is not None else packet.pts))
                if not packet.is_discard:
                    times.append(packet.pts)
                if len(times) > _MOST_FRAMES:
                    raise ValueError(f"{self.name} has more than {_MOST_FRAMES} frames: cut it on the phone.")
        except self._av.error.FFmpegError:
            pass  # a file that breaks off: what came before can be used
        if len(times) < 2 or not keys:
            raise ValueError(self._broken())
        self._times = np.unique(np.array(times, np.int64))
        self._number = {int(time): number for number, time in enumerate(self._times)}
        self._keys = sorted(keys)
        self.count = len(self._times)
        steps = np.diff(self._times) * float(self._stream.time_base)
        usual = steps[steps <= 2.0 * np.median(steps)].mean()  # a coarse clock writes 2, 3, 2, 3
        self.frames_per_s = round(float(np.clip(1.0 / usual, *_LIKELY)), 2)
        self.gaps = tuple(np.flatnonzero(steps > _GAP * usual).tolist())
        # three bytes a pixel: on the safe side for the ways in which phones store colour
        self._most_held = max(_HELD_BYTES // (3 * wide * high), 3)
        self._held, self._running, self._at = OrderedDict(), None, -1
        self._stream.thread_type = "AUTO"

    def _decode(self, number):
        """Go on from where the decoder stands, or begin anew at the key frame before."""
        last = max(bisect_right(self._keys, (int(self._times[number]), np.inf)) - 1, 0)
        ahead = self._running is not None and self._at < number
        try:
            if ahead and self._keys[last][0] <= self._times[self._at + 1]:
                found = self._run_to(number)
                if found is not None:
                    return found
            for key in (last, last - 1):  # in some files decoding can only begin one key frame further back
                if key >= 0:
                    self._file.seek(self._keys[key][1], stream=self._stream)
                    self._running, self._at = self._file.decode(self._stream), -1
                    found = self._run_to(number)
                    if found is not None:
                        return found
        except self._av.error.FFmpegError:
            pass
        self._running = None
        raise ValueError(f"Frame {number} of {self.name} is broken; others may be whole.")

    def _run_to(self, number):
        """The frame, or None when the decoder passes it by."""
        for frame in self._running:
            at = self._number.get(frame.pts)
            if at is None:
                continue
            self._at = at
            self._held[at] = frame
            self._held.move_to_end(at)
            while len(self._held) > self._most_held:
                self._held.popitem(last=False)
            if at == number:
                return frame
            if at > number:
                return None
        self._running = None
        return None

    def _broken(self):
        return (
            f"{self.name} cannot be read: it is broken, or no kind of clip that phones write (mp4 with H.264 or HEVC). "
            "Copy it from the phone once more."
        )
