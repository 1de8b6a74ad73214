"""The two pieces of a page that no other library has: a frame to click on, and a file handed over in pieces.

Needs the extra `clip`. Plain scripts of our own beside this file; nothing is fetched.
"""

from io import BytesIO
from pathlib import Path

import anywidget
from traitlets import Bytes, Dict, Unicode

_HERE = Path(__file__)
_WIDEST_PX, _QUALITY = 1600, 92  # of the picture that is sent


class ClipPicture(anywidget.AnyWidget):
    """A frame, and what was clicked on it.

    Attributes
    ----------
    picture : bytes
        JPEG.
    view : dict
        frame; left, top, width, height: the part of the clip that is shown, in its pixels; cross (x, y);
        marks: a list of dicts with kind "outline" (x, y, r), "rim" or "tape" (x, y); label for those who cannot see it.

    Parameters
    ----------
    heard : callable
        heard(what, message) for "click" (frame, x, y), "cross" (x, y), "step" (by) and "undo".
    """

    _esm = _HERE.with_suffix(".js").read_text(encoding="utf-8")
    _css = _HERE.with_suffix(".css").read_text(encoding="utf-8")
    picture = Bytes(b"").tag(sync=True)
    view = Dict().tag(sync=True)

    def __init__(self, heard):
        super().__init__()
        self.on_msg(lambda _, message, buffers: heard(message.get("do"), message))

    def show(self, pixels, view):
        """Pictures and marks in one message, so that a mark never stands on another frame.

        pixels : (h, w, 3) bytes of the part that is shown, or None where it has not changed
        """
        with self.hold_sync():
            if pixels is not None:
                self.picture = jpeg(pixels)
            self.view = view


class ClipPicker(anywidget.AnyWidget):
    """A file of the person's computer, brought in piece by piece.

    Parameters
    ----------
    label : str
    endings : tuple of str
    begin : callable
        begin(name, size) returns something with `add(bytes) -> bool`, `give_up()`, `here` (bytes that came) and
        `name`; a ValueError or OSError ends it.
    done, failed : callable
        done(name) once it is whole; failed(problem).
    """

    _esm = _HERE.with_name("clip_picker.js").read_text(encoding="utf-8")
    label = Unicode().tag(sync=True)
    endings = Unicode().tag(sync=True)

    def __init__(self, label, endings, begin, done, failed):
        super().__init__(label=label, endings=",".join(endings))
        self._begin, self._done, self._failed, self._arrival = begin, done, failed, None
        self.on_msg(lambda _, message, buffers: self.take(message, buffers))

    def take(self, message, buffers):
        """One message of the page: the beginning of a file, or a piece of it."""
        try:
            if message.get("do") == "begin":
                self._give_up()
                self._arrival, whole = self._begin(message.get("name"), message.get("size")), False
            elif self._arrival and message.get("from") == self._arrival.here:
                whole = self._arrival.add(bytes(buffers[0]))
            else:
                return  # a piece of a file that was given up
        except (ValueError, OSError) as problem:
            self._give_up()
            self.send({"do": "end"})
            self._failed(problem)
            return
        if not whole:
            self.send({"do": "more", "from": self._arrival.here})
            return
        name, self._arrival = self._arrival.name, None
        self.send({"do": "end"})
        self._done(name)

    def _give_up(self):
        if self._arrival:
            self._arrival.give_up()
        self._arrival = None


def jpeg(pixels) -> bytes:
    """(h, w, 3) bytes as a JPEG, made smaller when wider than a screen."""
    from PIL import Image

    image, memory = Image.fromarray(pixels), BytesIO()
    if image.width > _WIDEST_PX:
        image = image.resize((_WIDEST_PX, round(image.height * _WIDEST_PX / image.width)))
    image.save(memory, "JPEG", quality=_QUALITY, subsampling=0)
    return memory.getvalue()
