"""Eight made-up cases: what a coach saw, and the lane and bowler hidden behind it. Everything is invented.

The deliveries were drawn from each case's seed with a coach's errors (`watched`) and are kept in `case_seen`,
so that a page shows the same case to everyone. Seeds were picked so that the balls show what the case is about.
"""

from dataclasses import dataclass, field, replace

from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.case_seen import SEEDS, SEEN
from bowlcore.coaching.hypotheses import EARLY, EDGE, LATE, OWN, ROLLS, TARGET
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.seen import Seen
from bowlcore.coaching.watched import watch
from bowlcore.motion.changed_lane import ChangedLane, LaneChange

DIFFER, OPEN = "the two lanes differ", "cannot tell"
ANSWERS = (TARGET, EARLY, LATE, ROLLS, EDGE, OWN, DIFFER, OPEN)
BELIEVED = "house"
_FIRST = ("hit", "finish", "target_hit", "arrow_board", "leave")


@dataclass(frozen=True)
class Case:
    """One case.

    number, title, bowler : what everyone is told; bowler is a demo bowler's name
    truth : one of ANSWERS; told : the truth in words
    count, looks : deliveries noted on each lane, and what the coach looked at
    changes : name of the lane (None for one lane) -> how it differs from the one believed
    hand : what is really thrown differs by so much from the usual release
    """

    number: int
    title: str
    bowler: str
    truth: str
    told: str
    count: int = 4
    looks: tuple = _FIRST
    changes: dict = field(default_factory=lambda: {None: {}})
    hand: dict = field(default_factory=dict)

    @property
    def seed(self) -> int:
        """From which the deliveries were drawn."""
        return SEEDS[self.number]

    @property
    def seen(self) -> list[Seen]:
        """The deliveries as noted."""
        return SEEN[self.number]

    @property
    def known(self):
        """The bowler as the coach knows him."""
        return load_bowlers()[self.bowler]

    def as_thrown(self, bowler):
        """A bowler (the known one, or changed) with what the hand really does today."""
        return moved(bowler, self.hand)

    @property
    def lanes(self) -> dict:
        """The true lanes by name; {None: lane} for one."""
        believed = lane_of(BELIEVED)
        return {
            name: ChangedLane(believed, LaneChange(**change)) if change else believed
            for name, change in self.changes.items()
        }


CASES = {
    case.number: case
    for case in (
        Case(
            1, "High, then three on the other side", "league one-hander", TARGET,
            "The lane was as believed. The ball went over the arrows nearly two boards inside the mark, ball after ball.",
            hand={"target_board": 1.75},
        ),
        Case(
            2, "Third game, everybody is moving", "high-rev two-hander", EARLY,
            "The lane had dried: a fifth more friction, and the oil ended a foot sooner.",
            changes={None: {"looser": 1.2, "longer_ft": -1.0}},
        ),
        Case(
            3, "First balls on a fresh lane", "left-hander", LATE,
            "The lane was tighter than believed, by a quarter.",
            changes={None: {"looser": 0.74}},
        ),
        Case(
            4, "Late again, after a long day", "league one-hander", ROLLS,
            "The lane was a quarter looser, and a tired hand gave less turn: rotation and revs both were down.",
            changes={None: {"looser": 1.25}}, hand={"axis_rotation_deg": -17.0, "rev_rate_rpm": -40.0},
        ),
        Case(
            5, "One light, one through the face", "league one-hander", EDGE,
            "Where this bowler plays, the step from oil to dry was like a wall.",
            count=6, looks=(*_FIRST, "breakpoint_board"),
            changes={None: {"sharper": 0.9, "edge_board": 9.0}},
        ),
        Case(
            6, "Now here, now there", "low-rev senior", OWN,
            "The lane was as believed, and so was the aim. This is how this bowler scatters.",
            count=5,
        ),
        Case(
            7, "A pair of lanes", "league one-hander", DIFFER,
            "The left lane had dried, the right one was tighter than believed.",
            count=3, changes={"left": {"looser": 1.35}, "right": {"looser": 0.7}},
        ),
        Case(
            8, "Two leaves, by telephone", "spinner", OPEN,
            "The lane was a little tighter than believed. Two leaves cannot show that.",
            count=2, looks=("leave",), changes={None: {"looser": 0.86}},
        ),
    )
}  # fmt: skip


def moved(bowler, by):
    """A bowler whose release differs by {field: amount}."""
    release = replace(
        bowler.release, **{name: getattr(bowler.release, name) + step for name, step in by.items()}
    )
    return replace(bowler, release=release)


def drawn(case, seed) -> list[Seen]:
    """Deliveries of a case, drawn from a seed; of a pair the lanes take turns."""
    known, thrown = case.known, case.as_thrown(case.known)
    sides = [
        [
            replace(item, lane=name)
            for item in watch(known, thrown, lane_of(BELIEVED), lane, seed + i, case.count, case.looks)
        ]
        for i, (name, lane) in enumerate(case.lanes.items())
    ]
    return [item for together in zip(*sides, strict=True) for item in together]
