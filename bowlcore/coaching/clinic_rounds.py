"""How many groups, lanes, rounds and balls an evening holds, and what would do when it does not hold what is asked.

Only counts here: so many children, so many adults. Who that is comes in `clinic`. Each group bowls in each round of
tasks (drill, trial, game) once, for equally long and with equally many balls; the others are at the paper table.
"""

from bisect import bisect_left
from dataclasses import replace
from itertools import combinations
from math import ceil
from typing import NamedTuple

from bowlcore.coaching.clinic_evening import CHANGE_MIN, LANES_A_COACH, RANGES, ClinicEvening

MOST_TASKS = 3  # drill, trial, game
TWO_ADULTS = 2  # with children there are always two
_RELAXED = (
    "lanes",
    "minutes",
    "coaches",
    "longest_wait_min",
    "table_min",
    "balls_each",
)  # never the children for each coach
_LOOSER = {
    "lanes": "{} lanes",
    "minutes": "{} minutes",
    "coaches": "{} coaches",
    "longest_wait_min": "a wait of up to {} minutes",
    "table_min": "{} minutes at the table in one go",
    "balls_each": "{} balls each",
}
_SHOWN = 4


class Arrangement(NamedTuple):
    """Counts of a plan that fits."""

    tasks: int
    balls_a_set: int
    groups: int
    lanes: int
    set_minutes: int
    on_a_lane: int  # most people on one lane
    at_table: tuple[int, ...]  # coaches at the table while each group is on the lanes

    @property
    def balls_each(self) -> int:
        return self.tasks * self.balls_a_set


def arrange(children, adults, evening) -> Arrangement | None:
    """The plan with most tasks, then most balls, then fewest groups; None if nothing fits.

    Parameters
    ----------
    children, adults : int
        Who bowls.
    evening : ClinicEvening
    """
    found = [
        plan
        for groups in range(1, min(children + adults, _most_groups(evening)) + 1)
        for tasks in range(1, MOST_TASKS + 1)
        if (plan := _try(children, adults, evening, groups, tasks))
    ]
    return max(found, key=lambda plan: (plan.tasks, plan.balls_each, -plan.groups), default=None)


def what_would_fit(children, adults, evening) -> list[str]:
    """The fewest and smallest changes with which it fits: ["3 lanes", "105 minutes"], or pairs of them."""
    for count in range(1, len(_RELAXED) + 1):
        found = [_least(children, adults, evening, names) for names in combinations(_RELAXED, count)]
        said = [_in_words(evening, changed) for changed in found if changed]
        if said:
            return said[:_SHOWN]
    return []


def coaches_at_table(children, evening) -> int:
    return ceil(children / evening.children_per_coach)


def coaches_at_lanes(lanes, children_on_one, evening) -> int:
    """Fewest coaches for so many neighbouring lanes, at most so many children on each."""
    if LANES_A_COACH * children_on_one <= evening.children_per_coach:
        return ceil(lanes / LANES_A_COACH)
    return lanes * ceil(children_on_one / evening.children_per_coach)


def dealt(count, into, place) -> int:
    """How many of `count`, dealt out like cards, come to the place `place` of `into`."""
    return (count - place + into - 1) // into


def _most_groups(evening):
    shortest = CHANGE_MIN + 1
    return 1 + evening.table_min // shortest


def _try(children, adults, evening, groups, tasks):
    """One number of groups and tasks, with as many lanes as the coaches can look after."""
    people = children + adults
    longest = evening.lane_minutes // (groups * tasks)
    if groups > 1:
        longest = min(longest, evening.table_min // (groups - 1))
    if longest <= CHANGE_MIN:
        return None
    for lanes in range(min(evening.lanes, dealt(people, groups, 0)), 0, -1):
        at_table = _table_coaches(children, people, evening, groups, lanes)
        if at_table:
            return _with_balls(evening, tasks, groups, lanes, longest, people, children, at_table)
    return None


def _table_coaches(children, people, evening, groups, lanes):
    """Coaches at the table for each group's turn on the lanes; () when there are not enough."""
    if evening.coaches < max(coaches_at_table(children, evening), TWO_ADULTS if children else 1):
        return ()
    counts = []
    for group in range(groups):
        size, young = dealt(people, groups, group), dealt(children, groups, group)
        used = min(lanes, size)
        counts.append(coaches_at_table(children - young, evening))
        if counts[-1] + coaches_at_lanes(used, dealt(young, used, 0), evening) > evening.coaches:
            return ()
    return tuple(counts)


def _with_balls(evening, tasks, groups, lanes, longest, people, children, at_table):
    on_a_lane = dealt(dealt(people, groups, 0), lanes, 0)
    if (on_a_lane - 1) * evening.seconds_a_ball > 60 * evening.longest_wait_min:
        return None
    balls = 60 * (longest - CHANGE_MIN) // (on_a_lane * evening.seconds_a_ball)
    if children:
        balls = min(balls, evening.set_balls)
    if balls < 1 or tasks * balls < evening.balls_each:
        return None
    return Arrangement(
        tasks, balls, groups, lanes, evening.set_minutes(on_a_lane, balls), on_a_lane, at_table
    )


def _least(children, adults, evening, names) -> ClinicEvening | None:
    """The evening with these fields changed as little as does it, one after the other; None if that is not enough."""

    def fits(name, value, evening):
        return arrange(children, adults, replace(evening, **{name: value})) is not None

    looser = replace(evening, **{name: _ways(name, evening)[-1] for name in names})
    if arrange(children, adults, looser) is None:
        return None
    for name in names:
        ways = _ways(name, evening)  # more of it never hurts, so the first that does can be halved down to
        place = bisect_left(ways, True, key=lambda value, name=name: fits(name, value, looser))
        looser = replace(looser, **{name: ways[place]})
    return looser


def _ways(name, evening):
    """Values of a field from the one given to the loosest."""
    now, (low, high) = getattr(evening, name), RANGES[name]
    return range(now, low - 1, -1) if name == "balls_each" else range(now, high + 1)


def _in_words(before, after):
    changed = [name for name in _RELAXED if getattr(before, name) != getattr(after, name)]
    return " and ".join(_singular(_LOOSER[name].format(getattr(after, name))) for name in changed)


def _singular(text):
    return text.replace("1 balls", "1 ball") if text.startswith("1 ") else text
