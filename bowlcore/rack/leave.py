"""A leave: the pins that stand after the first ball, as a small type.

Text is pin numbers joined by hyphens, "4-7"; a strike is "". A bit mask has bit 0 for pin 1.
"""

from dataclasses import dataclass

ALL_PINS = tuple(range(1, 11))
MIRROR = {1: 1, 2: 3, 3: 2, 4: 6, 5: 5, 6: 4, 7: 10, 8: 9, 9: 8, 10: 7}
_COLUMN = {1: 0, 2: -1, 3: 1, 4: -2, 5: 0, 6: 2, 7: -3, 8: -1, 9: 1, 10: 3}


@dataclass(frozen=True, order=True)
class Leave:
    """The pins left standing.

    Parameters
    ----------
    mask : int
        Bit ``pin - 1`` is set for a standing pin [0 to 1023]. 0 is a strike.
    """

    mask: int = 0

    def __post_init__(self):
        if isinstance(self.mask, bool) or int(self.mask) != self.mask or not 0 <= self.mask < 1024:
            raise ValueError(f"mask must be a whole number between 0 and 1023, got {self.mask!r}")
        object.__setattr__(self, "mask", int(self.mask))

    @classmethod
    def of(cls, *pins):
        """Leave of the pins named: ``Leave.of(4, 7)``."""
        mask = 0
        for pin in pins:
            if pin not in MIRROR:
                raise ValueError(f"pin must be a whole number between 1 and 10, got {pin!r}")
            mask |= 1 << (int(pin) - 1)
        return cls(mask)

    @classmethod
    def from_text(cls, text):
        """Leave from text such as "4-7"; "" (or "X") is a strike."""
        words = str(text).strip()
        if words in ("", "X"):
            return cls(0)
        try:
            pins = [int(word) for word in words.split("-")]
        except ValueError:
            message = f'leave must be pin numbers joined by hyphens, such as "4-7", got {text!r}'
            raise ValueError(message) from None
        return cls.of(*pins)

    @property
    def pins(self):
        """Standing pins in rising order."""
        return tuple(pin for pin in ALL_PINS if self.mask >> (pin - 1) & 1)

    @property
    def text(self):
        """Standing pins as text, "4-7"; "" for a strike."""
        return "-".join(map(str, self.pins))

    @property
    def pinfall(self):
        """Pins knocked down [0 to 10]."""
        return 10 - len(self.pins)

    @property
    def is_strike(self):
        """True if nothing stands."""
        return self.mask == 0

    @property
    def mirror(self):
        """The same leave seen by a left-hander: 7 for 10, 4 for 6, 2 for 3, 8 for 9."""
        return Leave.of(*(MIRROR[pin] for pin in self.pins))

    @property
    def is_split(self):
        """True for a split: head pin down and a gap between the pins that stand.

        The rule of play: the head pin is down, and at least one pin is down between two or more standing
        pins (7-9, 3-10) or just ahead of two or more (5-6) (IBF playing rules, from memory). Seen from the
        foul line the pins stand in seven columns; both cases are an empty column between standing pins.
        """
        if self.mask & 1:
            return False
        columns = sorted({_COLUMN[pin] for pin in self.pins})
        return any(b - a > 1 for a, b in zip(columns, columns[1:], strict=False))

    def __str__(self):
        return self.text or "strike"
