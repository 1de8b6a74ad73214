"""What a coach saw of one delivery, in the trade's words; whatever is None was not seen.

Boards from the bowler's own side. Pins and sides in the words are those of the lane, as everyone says them.
"""

from dataclasses import dataclass, fields

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.feet import mark_board
from bowlcore.motion.checks import number_in
from bowlcore.rack.leave import MIRROR, Leave
from bowlcore.rack.pins import pin_board

HITS = ("light", "flush", "high", "nose", "other side", "missed")
FINISHES = ("still skidding", "late and hard", "early", "stood up", "unsteady")
EXITS = ("right of the 9", "over the 9", "between 8 and 9", "over the 8", "left of the 8")
LANES = ("left", "right")
_WORDS = {"hit": HITS, "finish": FINISHES, "exit": EXITS, "lane": LANES}
_OVER_A_PIN = 2.0  # boards either side of a pin's centre that an eye calls "over" it: our choice
_ARROW_ERROR, _BREAK_ERROR = 2.0, 3.0  # boards by which a coach may misread arrows and breakpoint: chosen


@dataclass(frozen=True)
class Seen:
    """One delivery as it was seen. None: not seen, or not looked at.

    Parameters
    ----------
    hit : "light", "flush", "high", "nose", "other side" or "missed"
        Against the pocket; "other side" is past the head pin's middle, "missed" touches no head pin.
    finish : "still skidding", "late and hard", "early", "stood up" or "unsteady"
        The last twenty feet; "unsteady": now one, now the other, ball after ball.
    exit : "right of the 9", "over the 9", "between 8 and 9", "over the 8" or "left of the 8"
        Where the ball leaves the deck. Pins and sides are the lane's, so a left-hander uses the same five
        words and they mean the mirror image: a ball thrown aside towards the own gutter is "right of the
        9" for a right-hander and "left of the 8" for a left-hander. "between 9 and 8" is taken as well.
    leave : pins that stand after the ball
        (4, 7), or text: "4-7"; () or "strike" is a strike. Kept as a rising tuple.
    target_hit : True or False
        Did the ball roll over the mark aimed at?
    arrow_board, breakpoint_board : float
        Where it crossed the marks, and its outermost board, 1 to 39 from the bowler's own side.
    lane : "left" or "right"
        Of a pair.

    Raises
    ------
    ValueError
        Naming the field, the value and what is allowed.
    """

    hit: str | None = None
    finish: str | None = None
    exit: str | None = None
    leave: tuple | None = None
    target_hit: bool | None = None
    arrow_board: float | None = None
    breakpoint_board: float | None = None
    lane: str | None = None

    def __post_init__(self):
        if self.exit == "between 9 and 8":
            object.__setattr__(self, "exit", EXITS[2])
        for name, allowed in _WORDS.items():
            value = getattr(self, name)
            if value is not None and not (isinstance(value, str) and value in allowed):
                raise ValueError(f"{name} must be one of {', '.join(allowed)}, got {_short(value)}")
        if self.target_hit is not None:
            if not isinstance(self.target_hit, bool | np.bool_):
                raise ValueError(f"target_hit must be True or False, got {_short(self.target_hit)}")
            object.__setattr__(self, "target_hit", bool(self.target_hit))
        for name in ("arrow_board", "breakpoint_board"):
            if getattr(self, name) is not None:
                object.__setattr__(self, name, number_in(name, getattr(self, name), 1, 39, "boards"))
        if self.leave is not None:
            object.__setattr__(self, "leave", _pins(self.leave))

    @property
    def told(self) -> dict:
        """The fields that were seen, by name; empty if nothing was."""
        return {f.name: getattr(self, f.name) for f in fields(self) if getattr(self, f.name) is not None}

    @property
    def mirror(self) -> "Seen":
        """The same delivery in a mirror: what the other hand's bowler would have seen."""
        leave = None if self.leave is None else Leave.of(*self.leave).mirror.pins
        exit_word = None if self.exit is None else EXITS[4 - EXITS.index(self.exit)]
        lane = None if self.lane is None else LANES[1 - LANES.index(self.lane)]
        return Seen(**{**self.told, **_known(leave=leave, exit=exit_word, lane=lane)})


def merged(*parts: Seen) -> Seen:
    """Several things said of one delivery, as one.

    Raises
    ------
    ValueError
        When two of them say different things of one field.
    """
    known = {}
    for part in parts:
        for name, value in part.told.items():
            if known.setdefault(name, value) != value:
                raise ValueError(
                    f"{name} cannot be both {_said(name, known[name])} and {_said(name, value)} for one delivery"
                )
    return Seen(**known)


def contradictions(seen: Seen, bowler=None) -> list[str]:
    """What cannot all be true of one delivery, each in a sentence; empty if it hangs together.

    With a Bowler, target and arrows are compared as well. Room is left for a coach's usual error: two
    boards at the arrows, three at the breakpoint (chosen).
    """
    found = []
    head_pin_stands = seen.leave is not None and 1 in seen.leave
    if seen.hit == "missed" and seen.leave == ():
        found.append("The ball is said to have missed the head pin, yet no pin stands.")
    if seen.hit not in (None, "missed") and head_pin_stands:
        found.append(f"The head pin stands, yet the hit is called {_said('hit', seen.hit)}.")
    if seen.arrow_board is not None and seen.breakpoint_board is not None:
        inside = seen.breakpoint_board - seen.arrow_board
        if inside > _ARROW_ERROR + _BREAK_ERROR:
            found.append(
                f"The breakpoint is the outermost board, yet it lies {words.count(inside, 'board')} further in than "
                "where the ball crossed the marks."
            )
    if bowler is not None and seen.target_hit and seen.arrow_board is not None:
        mark = mark_board(bowler.release)
        if abs(seen.arrow_board - mark) > _ARROW_ERROR:
            found.append(
                f"The target is said to be hit, {words.board(mark)}, yet the ball crossed the marks on "
                f"{words.board(seen.arrow_board)}."
            )
    return found


def exit_edges() -> np.ndarray:
    """Boards of the bowler's own side between the five exit words, rising."""
    near, far = float(pin_board(9)), float(pin_board(8))
    return np.array([near - _OVER_A_PIN, near + _OVER_A_PIN, far - _OVER_A_PIN, far + _OVER_A_PIN])


def exit_word(board: float, hand: str = "right") -> str:
    """The word for a ball that leaves the deck on a board, counted from the bowler's own side."""
    place = int((board > exit_edges()).sum())
    return EXITS[place if hand == "right" else 4 - place]


def _pins(leave):
    """Checked pins in rising order."""
    allowed = 'leave must be the pins that stand, such as (4, 7) or "4-7", () or "strike" for none'
    if isinstance(leave, Leave):
        return leave.pins
    if isinstance(leave, str):
        said = leave.strip()
        if said.lower() in ("strike", "x"):
            return ()
        leave = said.split("-")
        if len(said) > 40 or not all(pin.strip().isdecimal() for pin in leave):
            raise ValueError(f"{allowed}, got {_short(said)}")
        leave = [int(pin) for pin in leave]
    try:
        pins = list(leave)
    except TypeError:
        raise ValueError(f"{allowed}, got {_short(leave)}") from None
    for pin in pins:
        if isinstance(pin, bool) or not isinstance(pin, int | np.integer) or pin not in MIRROR:
            raise ValueError(f"leave: a pin must be a whole number between 1 and 10, got {_short(pin)}")
        if pins.count(pin) > 1:
            raise ValueError(f"leave: pin {pin} is named twice")
    return tuple(sorted(map(int, pins)))


def _known(**values):
    return {name: value for name, value in values.items() if value is not None}


def _said(name, value):
    if name == "leave":
        return f"the {Leave.of(*value)}" if value else "a strike"
    return f'"{value}"' if isinstance(value, str) else f"{value:g}" if name.endswith("board") else str(value)


def _short(value):
    """A value as one short piece of a sentence."""
    text = repr(value[:60] if isinstance(value, str) else value)
    return text if len(text) <= 60 else text[:57] + "..."
