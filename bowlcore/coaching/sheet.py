"""What stands on a worksheet, as data: numbers, a lane to draw on, tables, questions, a drill; and every answer.

An answer is a `Blank`, the text of an `Ask`, or what a picture is asked to show. A page for a student leaves all of
these out; the coach's copy prints them.
"""

from typing import NamedTuple

LEVELS = ("8-9", "from 10", "from 14")
LEVEL_WORDS = {"8-9": "ages 8 and 9", "from 10": "from 10 years", "from 14": "from 14 years"}
MOST_PEOPLE, MOST_SEED = 60, 999_999


class Blank(str):
    """A cell to fill in; the text is the answer, "" where it is a guess or a note of one's own."""


class Ask(NamedTuple):
    """A question. With choices one is ticked, and `answer` is one of them; else it is written."""

    text: str
    answer: str
    choices: tuple = ()


class Table(NamedTuple):
    """A table: texts that are given, and `Blank` cells."""

    caption: str
    columns: tuple
    rows: tuple


class Line(NamedTuple):
    """One ball on a lane: where it starts and where it is sent is given, its path is the answer."""

    name: str
    shot: object  # a `Shot` of sheet_numbers
    marks_ft: tuple = ()  # places along it that are asked for


class Lane(NamedTuple):
    """A lane to draw on; `pattern` is the oil that is shaded."""

    task: str
    pattern: str
    lines: tuple
    pin: int = 0  # a pin that stands alone; 0: the whole rack


class Pins(NamedTuple):
    """The rack from above; the pins to be ringed are the answer."""

    task: str
    ringed: tuple


class Balls(NamedTuple):
    """Empty balls seen from above, pins at the top: (name, axis rotation, axis tilt) is the answer of each."""

    task: str
    balls: tuple


class Sheet(NamedTuple):
    """One sheet.

    given : pairs (label, text), the numbers of this sheet
    parts : Ask, Table, Lane, Pins, Balls
    computed : what the answers were computed with, for the coach's copy
    """

    lesson: str
    title: str
    level: str
    seed: int
    number: int
    hand: str
    intro: str
    given: tuple
    parts: tuple
    drill: str
    safety: str
    computed: str

    @property
    def mark(self) -> str:
        """What is printed on sheet and coach's copy, so that they find each other."""
        return f"seed {self.seed}, sheet {self.number}"


def without_answers(part):
    """The part as a student has it: blanks empty, nothing answered."""
    if isinstance(part, Ask):
        return part._replace(answer="")
    if isinstance(part, Table):
        rows = tuple(
            tuple(Blank("") if isinstance(cell, Blank) else cell for cell in row) for row in part.rows
        )
        return part._replace(rows=rows)
    if isinstance(part, Pins):
        return part._replace(ringed=())
    if isinstance(part, Balls):
        return part._replace(balls=tuple((name, None, None) for name, _, _ in part.balls))
    return part._replace(lines=tuple(line._replace(marks_ft=()) for line in part.lines))
