"""Which worksheet belongs to which lesson; a batch of them for a seed; and its drill with the safety line.

Drills are those of the lessons, in fewer words: common practice, no source.
"""

from typing import NamedTuple

from bowlcore.coaching import sheet_changes, sheet_hands, sheet_lanes, sheet_paths, sheet_pins
from bowlcore.coaching.lesson_titles import numbered
from bowlcore.coaching.sheet import LEVELS, MOST_PEOPLE, MOST_SEED, Sheet
from bowlcore.coaching.sheet_numbers import random_of
from bowlcore.motion.checks import number_in

SAFETY = (
    "One bowler on the approach; wait for the sweep. Never over the foul line: there is oil. Two hands to lift. "
    "Stop at pain, numbness or tingling. The centre's rules come first."
)
_TRIES = 8  # sets of numbers drawn for one sheet before their like may come twice, with other questions


class SheetLesson(NamedTuple):
    """Maker (rng, level, hand) -> Made, and the drill at the lanes."""

    maker: object
    drill: str
    caution: str = ""


LESSONS = {
    "00": SheetLesson(
        sheet_paths.start_here,
        "Say an arrow before you roll, and roll over it. A partner says: over it, left or right.",
    ),
    "01": SheetLesson(
        sheet_hands.leaves_the_hand,
        "Put a strip of tape on a ball. Let the ball roll off an open hand. A partner counts how often the tape comes round "
        "until the arrows. Three balls.",
        "No wrist is turned on purpose.",
    ),
    "02": SheetLesson(
        sheet_paths.skid_hook_roll,
        "A partner stands behind you and says aloud what the ball does: skids, hooks, rolls. Five balls. Then change places.",
    ),
    "03": SheetLesson(
        sheet_paths.five_oils,
        "Same ball, same line, on two lanes. A partner writes down where each ball came in. Three balls on each lane.",
        "Nobody touches the oil or steps on the lane.",
    ),
    "04": SheetLesson(
        sheet_changes.one_change,
        "Five balls as always, five with one thing changed: feet, target or a calmer swing. A partner marks light, pocket or "
        "high.",
        "Slower by a shorter swing, never by gripping or braking. No wrist is turned.",
    ),
    "05": SheetLesson(
        sheet_pins.into_the_pocket,
        "For eight balls a partner calls light, pocket or high as the ball meets the pins, and only then looks at what stands.",
    ),
    "06": SheetLesson(
        sheet_lanes.two_late_balls,
        "Watch one ball of a friend, its last twenty feet only. Say: skids, turns, or rolls straight. Five balls.",
    ),
    "07": SheetLesson(
        sheet_lanes.changing_lane,
        "Write down where every third ball of yours came in. When two of them go the same way, say which way you would move.",
    ),
    "08": SheetLesson(
        sheet_pins.spares,
        "Pick one pin. Keep one arrow. Only the feet move.",
        "Far across you are near the next lane: look both ways first.",
    ),
    "09": SheetLesson(
        sheet_hands.measure,
        "One bowls, one has the watch, one counts the tape. Three balls each. How far do three readings of one ball lie apart?",
        "Clips only with consent, from behind or beside, never from the lane.",
    ),
    "10": SheetLesson(
        sheet_lanes.luck_or_better,
        "Six balls as always, six with one thing tried, in turn. A friend writes yes or no for each.",
    ),
}


def make_sheets(lesson, people, level, seed=1, hand="right") -> list[Sheet]:
    """Worksheets for a group, each with its own numbers; the same words in, the same sheets out.

    Parameters
    ----------
    lesson : str
        A key of `LESSONS`.
    people : int
        1 to 60.
    level : str
        One of `LEVELS`.
    seed : int
        0 to 999,999. Sheet 3 of a seed is the same however many are made.
    hand : "right" or "left"
        Whose boards they are.

    Raises
    ------
    ValueError
        Naming the value and what is allowed.
    """
    checked(lesson, people, level, seed, hand)
    found = LESSONS[lesson]
    seen, sheets, draw = set(), [], 0
    for number in range(1, int(people) + 1):
        for tried in range(2 * _TRIES):
            draw += 1
            made = found.maker(random_of(lesson, level, int(seed), draw), level, hand)
            if made.given not in seen or (tried >= _TRIES and made[1:3] not in seen):
                break
        seen |= {made.given, made[1:3]}
        title, safety = numbered(lesson), f"{found.caution} {SAFETY}".strip()
        about = (lesson, title, level, int(seed), number, hand)
        sheets.append(Sheet(*about, *made[:3], found.drill, safety, made.computed))
    return sheets


def checked(lesson, people, level, seed, hand):
    """Raise ValueError, in one sentence, for what no sheet can be made of."""
    for name, value, allowed in (
        ("lesson", lesson, LESSONS),
        ("level", level, LEVELS),
        ("hand", hand, ("right", "left")),
    ):
        if value not in allowed:
            raise ValueError(f"{name} must be one of {', '.join(allowed)}, got {str(value)[:40]!r}")
    for name, value, low, high in (("people", people, 1, MOST_PEOPLE), ("seed", seed, 0, MOST_SEED)):
        number_in(name, value, low, high)
        if int(value) != value:
            raise ValueError(f"{name} must be a whole number, got {value:g}")
