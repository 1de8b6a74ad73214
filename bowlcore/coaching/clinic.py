"""A clinic as a timetable: who is where at every minute, who bowls when, who looks after them, what each one lifts.

Minutes [min] from the start. People are dealt out like cards, the youngest first, so that every group and every lane
has about as many children and about as many beginners as any other. Everybody gets the same number of balls.
"""

from collections import Counter
from typing import NamedTuple

from bowlcore.coaching.clinic_evening import (
    CLOSE_MIN,
    COMPARE_MIN,
    LANES_A_COACH,
    WARM_UP_MIN,
    WELCOME_MIN,
    ClinicEvening,
)
from bowlcore.coaching.clinic_people import AGE_BANDS, EXPERIENCE, Person, checked
from bowlcore.coaching.clinic_rounds import Arrangement, arrange, what_would_fit
from bowlcore.coaching.words import count
from bowlcore.motion.units import POUND_KG

TABLE, TOGETHER = "table", "all together"
TASKS = {1: ("trial",), 2: ("drill", "game"), 3: ("drill", "trial", "game")}  # by how many there is time for


class DoesNotFit(ValueError):
    """What does not fit, with the numbers that would, in one or two sentences."""


class Place(NamedTuple):
    """Who is in one place; on a lane in the order in which they bowl."""

    name: str
    who: tuple[str, ...]


class Post(NamedTuple):
    """Where one coach stands: the names of one place, or of two neighbouring lanes."""

    coach: str
    places: tuple[str, ...]


class Block(NamedTuple):
    """A stretch of the evening in which nobody changes the place. `task` is a key of the part: "welcome", "drill" ..."""

    start_min: int
    end_min: int
    task: str
    group: str  # letter of the group on the lanes, "" while all are together
    balls: int
    places: tuple[Place, ...]
    posts: tuple[Post, ...]


class Load(NamedTuple):
    """What one person lifts: `lifted_kg` is None while the ball is not known."""

    person: Person
    balls: int
    lifted_kg: float | None


class Plan(NamedTuple):
    """A clinic that fits."""

    people: tuple[Person, ...]
    evening: ClinicEvening
    counts: Arrangement
    blocks: tuple[Block, ...]

    @property
    def balls_each(self) -> int:
        return self.counts.balls_each

    @property
    def longest_wait_s(self) -> int:
        """Seconds between two own balls on the fullest lane; lanes with fewer people keep the same pace."""
        return (self.counts.on_a_lane - 1) * self.evening.seconds_a_ball

    @property
    def spare_min(self) -> int:
        """Minutes at the end that the plan does not need."""
        return self.evening.minutes - self.blocks[-1].end_min

    @property
    def loads(self) -> tuple[Load, ...]:
        """In the order in which the people were given."""
        return tuple(
            Load(person, self.balls_each, lifted_kg(self.balls_each, person.ball_lb))
            for person in self.people
        )

    def balls_at_once(self) -> dict:
        """Ball weight [lb] (None: not known) to how many are on the lanes at the same time, at most."""
        needed = Counter()
        weight = {person.initials: person.ball_lb for person in self.people}
        for block in self.blocks:
            now = Counter(
                weight[who]
                for place in block.places
                if block.balls
                for who in place.who
                if place.name != TABLE
            )
            needed |= now  # the larger of the two counts, for each weight
        return dict(sorted(needed.items(), key=lambda item: item[0] or 99))


def lifted_kg(balls, ball_lb) -> float | None:
    """Weight of all deliveries together [kg]; None for a ball that nobody knows."""
    return None if ball_lb is None else balls * ball_lb * POUND_KG


def plan_clinic(people, evening) -> Plan:
    """The plan of an evening; the same people and the same evening give the same plan.

    Parameters
    ----------
    people : sequence of Person
    evening : ClinicEvening

    Raises
    ------
    DoesNotFit
        A ValueError that says what would fit.
    ValueError
        Nobody, too many, or the same initials twice.
    """
    people = checked(people)
    children = sum(person.child for person in people)
    counts = arrange(children, len(people) - children, evening)
    if counts is None:
        raise DoesNotFit(_why_not(children, len(people) - children, evening))
    groups = _deal(people, counts)
    return Plan(people, evening, counts, tuple(_blocks(groups, evening, counts)))


def crowd(children, adults) -> str:
    """ "8 children and 4 adults"."""
    parts = []
    if children:
        parts.append("1 child" if children == 1 else f"{children} children")
    if adults:
        parts.append(count(adults, "adult"))
    return " and ".join(parts)


def coaches(number) -> str:
    return "1 coach" if number == 1 else f"{number} coaches"


def _why_not(children, adults, evening):
    given = (
        f"{crowd(children, adults)} on {count(evening.lanes, 'lane')} in {evening.minutes} minutes with "
        f"{coaches(evening.coaches)}: at least {count(evening.balls_each, 'ball')} each"
    )
    would = what_would_fit(children, adults, evening)
    if not would:
        return f"{given} do not fit: there are too many children for so few to each coach. Make two evenings of it."
    why = " With children there are always two adults." if children and evening.coaches < 2 else ""
    return f"{given} do not fit.{why} What would: {'; or '.join(would)}."


def _deal(people, counts):
    """Groups of lanes of initials."""
    young_first = sorted(
        people, key=lambda p: (not p.child, AGE_BANDS.index(p.age_band), EXPERIENCE.index(p.experience))
    )
    names = [person.initials for person in young_first]
    groups = [names[k :: counts.groups] for k in range(counts.groups)]
    return [
        [tuple(group[j :: counts.lanes]) for j in range(min(counts.lanes, len(group)))] for group in groups
    ]


def _blocks(groups, evening, counts):
    """The evening from the welcome to the close."""
    minute, everyone = 0, tuple(who for group in groups for lane in group for who in lane)
    staff = [f"coach {n}" for n in range(1, evening.coaches + 1)]

    def together(task, length):
        nonlocal minute
        minute += length
        return Block(
            minute - length, minute, task, "", 0,
            (Place(TOGETHER, everyone),), tuple(Post(coach, (TOGETHER,)) for coach in staff),
        )  # fmt: skip

    yield together("welcome", WELCOME_MIN)
    yield together("warm-up", WARM_UP_MIN)
    yield together("talk", evening.talk_min)
    for task in TASKS[counts.tasks]:
        for k, group in enumerate(groups):
            start, minute = minute, minute + counts.set_minutes
            lanes = [Place(f"lane {evening.first_lane + j}", who) for j, who in enumerate(group)]
            rest = tuple(who for other in groups if other is not group for lane in other for who in lane)
            places = (*lanes, Place(TABLE, rest)) if rest else tuple(lanes)
            posts = _posts(staff, [lane.name for lane in lanes], counts.at_table[k])
            yield Block(start, minute, task, group_letter(k), counts.balls_a_set, places, posts)
    left = evening.minutes - minute - COMPARE_MIN - CLOSE_MIN
    yield together("compare", COMPARE_MIN + min(left, COMPARE_MIN))
    yield together("close", CLOSE_MIN)


def group_letter(k) -> str:
    return "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[k]


def _posts(staff, lanes, at_table):
    """The last coaches at the table, the others on the lanes: some on two neighbours if there are fewer than lanes."""
    on_lanes, seated = staff[: len(staff) - at_table], staff[len(staff) - at_table :]
    doubled = max(len(lanes) - len(on_lanes), 0)
    shared = [tuple(lanes[2 * k : 2 * k + LANES_A_COACH]) for k in range(doubled)]
    stands = [*shared, *((lane,) for lane in lanes[2 * doubled :])]
    posts = [Post(coach, stands[j % len(stands)]) for j, coach in enumerate(on_lanes)]
    return (*posts, *(Post(coach, (TABLE,)) for coach in seated))
