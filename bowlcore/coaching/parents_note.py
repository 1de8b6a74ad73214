"""A note for parents: what was done, what to practise at home, safety. Words only; nothing about a child is kept.

What to practise needs no ball and no lane. Common practice, no source; the words are ours.
"""

from typing import NamedTuple

from bowlcore.coaching.lesson_titles import TITLES
from bowlcore.coaching.sheet_lessons import LESSONS

_WORDS = {
    "00": (
        "We looked at one ball from the hand to the pins: where it skids, where it hooks, where it rolls.",
        "Let your child draw the three parts for you, and say where the oil lies.",
    ),
    "01": (
        "We looked at what leaves the hand: speed, spin, and where the axis of the ball points.",
        "Spin an orange with a dot of ink on it: which dot stays in its place, and which goes round?",
    ),
    "02": (
        "We found out why a ball stops turning: once it rolls, it goes straight.",
        "Slide a coin over a smooth table and over a cloth. Where does it slow down sooner, and why?",
    ),
    "03": (
        "We rolled the same ball on different oil. Oil decides where a ball turns, not how much.",
        "Let your child draw two lanes with different oil and the same ball on both.",
    ),
    "04": (
        "We changed one thing at a time, and left everything else alone.",
        "Play a throwing game with socks and a basket: change one thing, guess first, then look.",
    ),
    "05": (
        "We called hits light, pocket or high, and saw that the same good hit leaves different pins.",
        "Roll a coin twenty times: how often is it heads? That is how luck looks.",
    ),
    "06": (
        "We watched the last twenty feet of a ball and learned to tell skidding from rolling too early.",
        "Ask your child: what would you look at before you change anything?",
    ),
    "07": (
        "We saw how bowling changes the oil, and when it is wise to move, or to stay.",
        "Let your child explain why the same throw goes elsewhere an hour later.",
    ),
    "08": (
        "Your child looked for a place of their own to stand for a single pin.",
        "Walk four calm steps towards a mark on the floor, eyes on the mark. Ten times, no ball.",
    ),
    "09": (
        "We measured: a watch for the speed, counted turns for the spin, and how unsure each of them is.",
        "Time a car past two lamp posts three times. How far do the three times lie apart?",
    ),
    "10": (
        "We kept a tally for a friend and asked whether a change had helped or was luck.",
        "Toss a coin twelve times, twice. How different can two honest rows be?",
    ),
}
SAFETY = (
    "A ball that has to be gripped hard is too heavy. Children grow: have holes and span looked at each season.",
    "No wrist is turned on purpose. Pain, numbness or tingling: stop that day, and see a professional if it stays.",
    "Fingers out of the holes when lifting, two hands, never between two balls. Never over the foul line: there is oil.",
    "A clip is taken only with your consent, kept on our computer, and deleted after the class. Initials only on paper.",
)


class ParentsNote(NamedTuple):
    """Title of the lesson, what was done, what to practise, safety."""

    title: str
    done: str
    practise: str
    safety: tuple


def parents_note(lesson) -> ParentsNote:
    """The note that belongs to a lesson.

    Raises
    ------
    ValueError
        For a lesson without worksheets.
    """
    if lesson not in LESSONS:
        raise ValueError(f"lesson must be one of {', '.join(LESSONS)}, got {str(lesson)[:40]!r}")
    return ParentsNote(TITLES[lesson], *_WORDS[lesson], SAFETY)
