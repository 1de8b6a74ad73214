"""The evening as it is given: lanes, minutes, coaches, lesson, and the manners that a coach may tighten or loosen.

Minutes [min] from the start, seconds [s]. Defaults of the manners are common practice or our choice, without source.
"""

import re
from dataclasses import dataclass
from math import ceil

from bowlcore.coaching.lesson_plans import LESSONS
from bowlcore.coaching.log_entries import one_of
from bowlcore.motion.checks import number_in

EQUIPMENT = {
    "screen": "a screen or a laptop that everyone can see",
    "tape": "white tape for the balls",
    "bumpers": "bumpers",
    "ramp": "a ramp",
    "seats": "seats at the table, one with room for a wheelchair",
    "light balls": "house balls of 6 lb and lighter",
}
WELCOME_MIN = WARM_UP_MIN = COMPARE_MIN = CLOSE_MIN = 5
CHANGE_MIN = 2  # of each lane round: the groups change over, the coach says the task
LANES_A_COACH = 2  # one coach for two lanes: common practice, no source
RANGES = {
    "lanes": (1, 24), "minutes": (30, 240), "coaches": (1, 20), "first_lane": (1, 100), "balls_each": (1, 60),
    "longest_wait_min": (1, 10), "children_per_coach": (1, 10), "seconds_a_ball": (20, 120), "set_balls": (3, 15),
    "table_min": (5, 40), "talk_min": (5, 20),
}  # fmt: skip


@dataclass(frozen=True)
class ClinicEvening:
    """What there is, and what is kept to.

    Parameters
    ----------
    lanes, minutes, coaches : int
        1 to 24 lanes, 30 to 240 min; coaches are adults who look after the group, helpers included.
    lesson : str
        Number of a lesson in `lesson_plans.LESSONS`.
    equipment : tuple of keys of EQUIPMENT
        What the centre has ready.
    start : str
        "17:00".
    first_lane : int
        Number of the first of the neighbouring lanes.
    balls_each : int
        Deliveries that each person should have at least.
    longest_wait_min : int
        Between two own balls, and before the first one, while at the lane [min].
    children_per_coach : int
        Most children for each coach, wherever they are. Common practice, no source; the local rule decides.
    seconds_a_ball : int
        From one ball on a lane to the next [s], ball return and pins included. Common practice, no source.
    set_balls : int
        Most balls in a row between two rests, as soon as a child is there. Our choice.
    table_min : int
        Longest stay at the paper table in one go [min]: what a sheet fills. Our choice.
    talk_min : int
        Talk and guess [min].

    Raises
    ------
    ValueError
        Naming the field, the value and what is allowed.
    """

    lanes: int
    minutes: int
    coaches: int
    lesson: str = "05"
    equipment: tuple[str, ...] = ()
    start: str = "17:00"
    first_lane: int = 1
    balls_each: int = 10
    longest_wait_min: int = 3
    children_per_coach: int = 4
    seconds_a_ball: int = 40
    set_balls: int = 10
    table_min: int = 20
    talk_min: int = 10

    def __post_init__(self):
        for name, (low, high) in RANGES.items():
            value = number_in(name, getattr(self, name), low, high)
            if value != int(value):
                raise ValueError(f"{name} must be a whole number between {low} and {high}, got {value:g}")
            object.__setattr__(self, name, int(value))
        one_of("lesson", self.lesson, tuple(LESSONS))
        object.__setattr__(self, "equipment", tuple(self.equipment))
        for thing in self.equipment:
            one_of("equipment", thing, tuple(EQUIPMENT))
        start_minute(self.start)

    @property
    def lane_minutes(self) -> int:
        """Minutes left for the lanes once welcome, warm-up, talk, compare and close are taken off; may be negative."""
        return self.minutes - WELCOME_MIN - WARM_UP_MIN - self.talk_min - COMPARE_MIN - CLOSE_MIN

    def set_minutes(self, on_a_lane, balls) -> int:
        """Minutes of a lane round in which so many people on a lane have so many balls each."""
        return CHANGE_MIN + ceil(on_a_lane * balls * self.seconds_a_ball / 60)

    def clock(self, minute) -> str:
        """Time of day, so many minutes after the start."""
        hours, minutes = divmod(start_minute(self.start) + minute, 60)
        return f"{hours % 24}:{minutes:02d}"


def start_minute(text) -> int:
    """Minutes since midnight of a time such as "17:00"; ValueError for anything else."""
    found = re.fullmatch(r"(\d{1,2})[:.](\d\d)", text.strip(), re.ASCII) if isinstance(text, str) else None
    if not found or int(found[1]) > 23 or int(found[2]) > 59:
        raise ValueError(f"start must be a time between 0:00 and 23:59, such as 17:00, got {text!r:.30}")
    return 60 * int(found[1]) + int(found[2])


def read_equipment(text) -> tuple[str, ...]:
    """What the centre has ready, from words with commas between them."""
    found = tuple(word for part in text.split(",") if (word := part.strip().lower()))
    for word in found:
        one_of("equipment", word, tuple(EQUIPMENT))
    return found
