"""Groups and evenings drawn at random, and a reading of the timetable that shares nothing with the plan's own code."""

import numpy as np

from bowlcore.coaching.clinic_evening import ClinicEvening
from bowlcore.coaching.clinic_people import AGE_BANDS, EXPERIENCE, HANDS, Person


def random_group(rng):
    """1 to 30 people of any age, with initials that are all different."""
    names = rng.permutation([a + b for a in "ABCDEFG" for b in "HIJKLM"])[: rng.integers(1, 31)]
    return [
        Person(
            str(name),
            str(rng.choice(AGE_BANDS)),
            str(rng.choice(HANDS)),
            None if rng.random() < 0.2 else float(rng.integers(8, 33)) / 2,
            str(rng.choice(EXPERIENCE)),
        )
        for name in names
    ]


def random_evening(rng):
    return ClinicEvening(
        lanes=int(rng.integers(1, 13)),
        minutes=int(rng.integers(45, 181)),
        coaches=int(rng.integers(1, 11)),
        first_lane=int(rng.integers(1, 30)),
        balls_each=int(rng.integers(1, 16)),
        longest_wait_min=int(rng.integers(1, 7)),
        children_per_coach=int(rng.integers(2, 9)),
        seconds_a_ball=int(rng.integers(25, 61)),
        set_balls=int(rng.integers(3, 13)),
        table_min=int(rng.integers(10, 31)),
        talk_min=int(rng.integers(5, 16)),
    )


def random_pairs(count, seed=11):
    rng = np.random.default_rng(seed)
    return [(random_group(rng), random_evening(rng)) for _ in range(count)]


def where_everybody_is(plan, minute):
    """(person, place) pairs and (coach, places) pairs at one minute, read from the timetable alone."""
    now = [block for block in plan.blocks if block.start_min <= minute < block.end_min]
    return (
        [(who, place.name) for block in now for place in block.places for who in place.who],
        [(post.coach, post.places) for block in now for post in block.posts],
    )
