"""What the lane could be instead of what is believed, and what this bowler's balls would then do.

Each possible lane has a chance before anything is seen (chosen, not measured) and a cause: the name of what
the coach would call it, read off the bowler's own centre ball on that lane.
"""

from dataclasses import replace
from functools import lru_cache
from itertools import product
from typing import NamedTuple

import numpy as np

from bowlcore.coaching.bowler import Bowler
from bowlcore.coaching.perception import TARGET_REACH, Shots, follow_all, usual_of
from bowlcore.coaching.words import IN_TIME_FT, POCKET_BOARD, POCKET_REACH
from bowlcore.motion.changed_lane import ChangedLane, LaneChange, MixedLane
from bowlcore.motion.path import simulate

TARGET, EARLY, LATE, ROLLS, EDGE, OWN, GOOD = (
    "missed the target",
    "hooks too early",
    "skids too far",
    "rolls too early",
    "sharp oil edge",
    "own scatter",
    "good shot",
)
CAUSES = (TARGET, EARLY, LATE, ROLLS, EDGE, OWN, GOOD)
COUNT = 128  # balls followed on each lane
_PARTS, _PARTS_CHANCE = 10, 0.5  # of a mixture: how many of its lanes are kept, and their chance together
_RESTLESS = 1.25  # an edge is sharp if it scatters the balls so much more than the believed lane does

_WEAK = {"axis_rotation_deg": -15.0, "rev_rate_rpm": 0.88}  # a hand that gives less turn than usual
_TIRED = {"axis_rotation_deg": -9.0, "rev_rate_rpm": 0.94}
# Chances before anything is seen: how much tighter or looser and how much flatter the lane is, each by itself ...
_LOOSER = {1.0: 0.30, 0.4: 0.02, 0.55: 0.06, 0.72: 0.12, 0.86: 0.16, 1.15: 0.16, 1.32: 0.12, 1.6: 0.06}
_FLATTER = {0.0: 0.60, 0.35: 0.25, 0.7: 0.15}
_PLAIN_LANES = 0.68
# ... and other ways to differ: the chance, the change of the lane, and of the hand
_OTHERS = (
    (0.05, {"longer_ft": 3.0}, {}), (0.04, {"longer_ft": 6.0}, {}), (0.05, {"longer_ft": -4.0}, {}),
    (0.03, {"worn": 0.04}, {}), (0.03, {"worn": 0.10}, {}),
    (0.03, {"sharper": 0.5}, {}), (0.03, {"sharper": 1.0}, {}),
    (0.02, {}, _WEAK), (0.01, {"looser": 1.3}, _WEAK), (0.01, {"looser": 1.6}, _WEAK),
    (0.01, {"looser": 1.3}, _TIRED), (0.01, {"looser": 1.6}, _TIRED),
)  # fmt: skip


def _plain_lanes():
    """Tighter, looser and flatter lanes, the believed one first."""
    for (looser, one), (flatter, two) in product(_LOOSER.items(), _FLATTER.items()):
        moved = ({"looser": looser} if looser != 1.0 else {}) | ({"flatter": flatter} if flatter else {})
        yield _PLAIN_LANES * one * two, moved, {}


_LANES = (*_plain_lanes(), *_OTHERS)


class Possible(NamedTuple):
    """One lane that could be the true one."""

    chance: float
    lane: object
    cause: str | None  # None where the lane plays well enough: then it was the bowler
    shots: Shots
    hand: dict  # what the hand gave less of; empty for the usual hand

    def thrown_by(self, bowler):
        """The bowler as he throws if this is true."""
        return replace(bowler, release=_with_hand(bowler.release, self.hand)) if self.hand else bowler


def possible_lanes(bowler, surface) -> tuple[Possible, ...]:
    """All lanes that are thought of, the believed one first; their chances add to 1."""
    return _possible(bowler.release, bowler.spread, bowler.ball, surface)


@lru_cache(maxsize=32)
def _possible(release, spread, ball, surface):
    bowler = Bowler(release, spread, ball)
    centre = simulate(release, surface, ball)
    usual, track = usual_of(centre), _track(centre, release.hand)
    edge = centre.breakpoint_board if release.hand == "right" else 40.0 - centre.breakpoint_board
    thought_of = []
    for chance, moved, hand, base in _lanes_of(surface):
        places = ({"track": track} if "worn" in moved else {}) | (
            {"edge_board": edge} if "sharper" in moved else {}
        )
        lane = ChangedLane(base, LaneChange(**moved, **places)) if moved else base
        thrown = replace(bowler, release=_with_hand(release, hand)) if hand else bowler
        thought_of.append((chance, moved, hand, lane, thrown))
    followed = follow_all([(thrown, lane, usual) for *_, lane, thrown in thought_of], COUNT)
    believed, found = followed[0], []
    for (chance, moved, hand, lane, _), shots in zip(thought_of, followed, strict=True):
        # a weak hand is no sharp edge: only the lane makes a ball restless
        shots = shots._replace(
            usual=usual if hand or shots is believed else usual._replace(restless=believed.restless)
        )
        cause = ROLLS if hand else _cause(bowler, lane, shots, believed, moved)
        found.append(Possible(chance, lane, cause, shots, hand))
    return tuple(found)


def _lanes_of(surface):
    """(chance, change, hand, lane to change) of all lanes; a mixture that is believed is not melted down."""
    total = sum(chance for chance, _, _ in _LANES)
    (believed, _, _), *others = _LANES
    parts = [(1.0, surface)]
    if isinstance(surface, MixedLane):
        parts = sorted(surface.parts, key=lambda part: -part[0])[:_PARTS]
        believed, others = (
            _PARTS_CHANCE * total,
            [(c * (1 - _PARTS_CHANCE) / (1 - believed / total), m, h) for c, m, h in others],
        )
    whole = sum(weight for weight, _ in parts)
    for weight, lane in parts:
        yield believed / total * weight / whole, {}, {}, lane
    for chance, moved, hand in others:
        yield chance / total, moved, hand, surface


def _with_hand(release, hand):
    """The same line thrown with less turn."""
    rotation = max(release.axis_rotation_deg + hand["axis_rotation_deg"], 0.0)
    return replace(
        release, axis_rotation_deg=rotation, rev_rate_rpm=release.rev_rate_rpm * hand["rev_rate_rpm"]
    )


def execution(shots) -> np.ndarray:
    """What each ball would be called on a lane that plays well: an array of names."""
    in_pocket = np.abs(np.nan_to_num(shots.entry_board) - POCKET_BOARD) <= POCKET_REACH
    return np.where(aimed_wrong(shots), TARGET, np.where(in_pocket, GOOD, OWN))


def aimed_wrong(shots) -> np.ndarray:
    """Balls that crossed the marks far from the usual board."""
    return np.abs(shots.mark_miss) > TARGET_REACH


def _cause(bowler, lane, shots, believed, moved):
    centre = simulate(bowler.release, lane, bowler.ball)
    off = centre.entry_board - POCKET_BOARD
    early = centre.roll_start_ft < IN_TIME_FT  # False where it still skids
    if "sharper" in moved and shots.restless > _RESTLESS * believed.restless:
        return EDGE
    if off != off:
        return LATE if centre.board[np.isfinite(centre.board)][-1] < POCKET_BOARD else EARLY
    if off > POCKET_REACH:
        return EARLY
    if off < -POCKET_REACH:
        return ROLLS if early else LATE
    return ROLLS if early else None


def _track(path, hand):
    """The centre ball's way as (distance, lane board) every three feet."""
    there = np.isfinite(path.board)
    feet, board = path.distance_ft[there][::3], path.board[there][::3]
    return tuple(zip(feet.tolist(), (board if hand == "right" else 40.0 - board).tolist(), strict=True))
