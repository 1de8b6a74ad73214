"""The words of the lessons and what each means here, in one place.

Meanings are common practice without a source, except where a number says otherwise: those are choices of ours.
"""

from typing import NamedTuple


class Word(NamedTuple):
    """`forms`: other ways in which the lessons write it; `everyday`: also a plain word, so it is not linked."""

    name: str
    meaning: str
    forms: tuple[str, ...] = ()
    everyday: bool = False

    @property
    def anchor(self) -> str:
        """Where the word stands on the page of words; Jupyter names its headings so."""
        return self.name.replace(" ", "-")


GLOSSARY = (
    Word("Approach", "The floor in front of the foul line, on which you walk and slide."),
    Word(
        "Area",
        "The room to be wrong: how far one thing may be off, all else the same, before the ball leaves the pocket.",
        everyday=True,
    ),
    Word("Arrows", "Seven marks on the lane, 12 to 16 ft past the foul line. Bowlers aim over them."),
    Word(
        "Axis rotation",
        "How far the spin points sideways as the ball leaves the hand. 0 degrees is end over end, 90 is full side roll.",
        ("rotation",),
    ),
    Word(
        "Axis tilt",
        "How far the spin axis leans up from level. 0 degrees lies level; 90 would spin on the spot like a top.",
        ("tilt",),
    ),
    Word(
        "Board",
        "One of the 39 strips across a lane, a little over an inch wide. We count from your own side.",
        ("boards",),
    ),
    Word(
        "Breakpoint",
        "The point of the path nearest your own gutter: there the ball turns back towards the pins.",
    ),
    Word("Carry", "What knocks down the pins that the ball itself does not touch."),
    Word("Carrydown", "A thin film of oil that balls carry from the oiled part to the dry part of the lane."),
    Word("Cover", "The outer shell of the ball, which meets the lane.", ("cover stock",)),
    Word("Deck", "The part of the lane on which the pins stand.", ("pin deck",)),
    Word("Drift", "How many boards your feet move sideways from the first step to the slide."),
    Word("Dry", "Boards with little or no oil. There the ball is held and turned.", everyday=True),
    Word(
        "Entry angle",
        "How steeply the ball crosses the boards when it meets the pins, in degrees from straight down the lane.",
    ),
    Word("Flat shape", "An oil pattern with nearly the same oil on all boards.", ("flat pattern",)),
    Word("Foul line", "Where the approach ends and the lane begins. Never step over it."),
    Word("Gutter", "The channel on each side of the lane."),
    Word("Head pin", "The pin in front, number 1."),
    Word("High", "Further over than the pocket, towards the nose of the rack.", everyday=True),
    Word("Hook", "The part of the path where the ball turns; also how much it turns.", ("hooks",)),
    Word(
        "House shape",
        "An oil pattern with much oil in the middle and little outside. Most centres use something like it.",
    ),
    Word("In", "Away from your own gutter.", everyday=True),
    Word(
        "Inertia factor",
        "The square of (radius of gyration / radius of the ball). It says how far out the weight sits.",
    ),
    Word("Laydown", "The board under the ball at the foul line, where it first touches the lane."),
    Word("Leave", "The pins that still stand after the first ball.", ("leaves",), everyday=True),
    Word("Light", "Not far enough over to reach the pocket.", everyday=True),
    Word("Loft", "How far the ball flies before it first touches the lane."),
    Word(
        "Looser",
        "More grip: the ball hooks more than you believed. Also said of a whole lane.",
        ("loose",),
        everyday=True,
    ),
    Word("Odds", "How often out of a hundred such balls.", everyday=True),
    Word("Oil pattern", "How much oil lies where on the lane.", ("oil patterns", "pattern")),
    Word("Out", "Towards your own gutter.", everyday=True),
    Word(
        "Pocket",
        "Between the head pin and the pin beside it. For us it is board 17.5, give or take a board and a half.",
    ),
    Word(
        "Radius of gyration",
        "How far from the middle the weight of the ball sits on average; often written RG.",
    ),
    Word(
        "Release",
        "The moment in which the ball leaves the hand, and what it has then: speed, revs, rotation and tilt.",
    ),
    Word("Re-aimed", "With feet and target moved so that the ball reaches the pocket again."),
    Word("Rev rate", "How fast the ball spins, in turns a minute (rpm).", ("revs",)),
    Word(
        "Roll",
        "The ball turns exactly as fast as it travels. It slips no more, and goes straight.",
        ("rolls",),
    ),
    Word("Same line", "The same laydown and the same target as before."),
    Word(
        "Scatter", "How much a bowler's own balls differ from each other when all are meant to be the same."
    ),
    Word(
        "Skid", "The first part of the path, where the ball slides and hardly turns.", ("skids", "skidding")
    ),
    Word("Slide board", "The board under your sliding foot at the end of the approach."),
    Word(
        "Slip",
        "How fast the bottom of the ball rubs over the lane. When it is used up, the ball rolls.",
        ("slips",),
    ),
    Word("Spare", "All ten pins down with two balls.", ("spares",)),
    Word("Strike", "All ten pins down with the first ball.", ("strikes",)),
    Word("Target", "The board over which you mean to roll the ball, at the arrows."),
    Word(
        "Tighter",
        "Less grip: the ball hooks less than you believed. Also said of a whole lane.",
        ("tight",),
        everyday=True,
    ),
    Word(
        "Track", "The ring on the ball that touches the lane; also the part of the lane where most balls run."
    ),
    Word("Transition", "The slow change of the lane while people bowl on it."),
    Word("Wet-dry shape", "An oil pattern that goes suddenly from much oil to none.", ("wet-dry",)),
    Word("Window", "The boards within which a ball takes the pin you want.", everyday=True),
)

PAGE = "words_and_formulas.md"  # lies beside the lessons and is made from here; the lessons link to it
