"""Which part of a frame is on the screen, and the marks on it: closer and farther, always round the cross."""

CLOSEST = 8


class ClipView:
    """A window on a clip's frames.

    Parameters
    ----------
    size_px : (height, width)

    Attributes
    ----------
    cross : (x, y)
        Where the next click goes by keyboard; the window stays round it.
    closer : int
        1 shows the whole frame, 2 half of it each way, and so on to CLOSEST.
    """

    def __init__(self, size_px):
        self.high, self.wide = size_px
        self.closer = 1
        self.cross = ((self.wide - 1) // 2, (self.high - 1) // 2)
        self.frame_on_cross()

    def frame_on_cross(self):
        """Move the window so that the cross is near its middle; it never leaves the frame."""
        self.width, self.height = max(self.wide // self.closer, 8), max(self.high // self.closer, 8)
        x, y = self.cross
        self.left = min(max(round(x) - self.width // 2, 0), self.wide - self.width)
        self.top = min(max(round(y) - self.height // 2, 0), self.high - self.height)

    def go(self, closer):
        """Twice as close, or half."""
        self.closer = min(self.closer * 2, CLOSEST) if closer else max(self.closer // 2, 1)
        self.frame_on_cross()

    def cut(self, picture):
        """The part of a frame that is in the window."""
        return picture[self.top : self.top + self.height, self.left : self.left + self.width]

    def told(self, frame, places, label):
        """All that the page must know, as plain data."""
        return {
            "frame": frame,
            "left": self.left,
            "top": self.top,
            "width": self.width,
            "height": self.height,
            "cross": list(self.cross),
            "marks": _marks(frame, places),
            "label": label,
        }


def _marks(frame, places):
    marks = [{"kind": "rim", "x": x, "y": y} for x, y in places.rim(frame)]
    outline, tape = places.outline(frame), places.tape(frame)
    if outline:
        (x, y), radius = outline
        marks.append({"kind": "outline", "x": x, "y": y, "r": radius})
    if tape:
        marks.append({"kind": "tape", "x": tape[0], "y": tape[1]})
    return marks
