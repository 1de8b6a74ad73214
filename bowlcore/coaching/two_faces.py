"""The two faces of "late": one ball is still skidding at the pins, one rolled too early; both come in light.

One line, one speed, two lanes and two hands. In this model a lane alone cannot do it: of two equal launches
the one that rolls earlier ends further in (`earlier_ends_further_in` counts). So the ball that rolled too
early has a hand that gave less turn. Remedies are tried with the bowler's scatter on both.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.odds import Odds, odds_together
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.reaction_told import with_less_hand
from bowlcore.motion.changed_lane import ChangedLane, LaneChange
from bowlcore.motion.path import BallPath, simulate

ALIKE_FT = 50.0  # where the two are compared
LINE = {"laydown_board": 15.0, "target_board": 11.5}  # slide on 22: chosen so that both can be seen
SKIDS, ROLLED = "still skidding", "rolled too early"
_TIE = 0.10  # a share that counts, as in `changes`
ONLY_LANE_BOWLERS = (
    "league one-hander",
    "high-rev two-hander",
    "low-rev senior",
    "spinner",
    "beginner of eleven",
)
ONLY_LANE_PATTERNS = ("house", "flat", "long_heavy", "wet_dry", "short")
_LOOSER = np.round(np.arange(0.4, 2.05, 0.05), 2)


def _move(feet=0.0, target=0.0, **hand):
    return {"laydown_board": feet, "target_board": target, **hand}


# what people do about a late ball; the second word is for whom the custom has it (common practice, no source).
# `remedy_words` puts the speed before "slower" and "faster"
REMEDIES = {
    "same feet, look 1.5 out": (_move(0, -1.5), ""),
    "feet and target 2 out": (_move(-2, -2), SKIDS),
    "slower": (_move(speed_mph=-1.0), SKIDS),
    "feet and target 4 in": (_move(4, 4), ROLLED),
    "faster": (_move(speed_mph=1.0), ROLLED),
    "20 degrees more rotation": (_move(axis_rotation_deg=20.0), ""),
}


def remedy_words(name, metric=False) -> str:
    """A remedy as it is said: "1 mph slower", "feet and target 2 out"."""
    by = REMEDIES[name][0].get("speed_mph", 0.0)
    return f"{words.step_of_speed(abs(by), metric)} {name}" if by else name


@dataclass(frozen=True)
class Face:
    """One ball: its bowler (hand and line), lane, path and odds."""

    bowler: object
    lane: object
    path: BallPath
    odds: Odds


@dataclass(frozen=True)
class FacesAnswer:
    """helped: remedy -> change of the share in the pocket of the two faces, skidding first."""

    skids: Face
    rolled: Face
    helped: dict
    sentence: str
    rows: list


def answer(
    tighter_percent=32, looser_percent=30, less_rotation_deg=17, fewer_revs_rpm=40, *,
    bowler="league one-hander", hand="right", metric=False,
) -> FacesAnswer:  # fmt: skip
    """Two late balls of one bowler on one line.

    Parameters
    ----------
    tighter_percent : how much less friction the lane of the skidding ball has, 0 to 60
    looser_percent : how much more the lane of the other has, 0 to 100
    less_rotation_deg, fewer_revs_rpm : what the hand of that ball gave away
    bowler : name of a demo bowler
    hand : "right" or "left"
    metric : bool

    Raises
    ------
    ValueError
        From the lane or the release, in words.
    """
    usual = load_bowlers()[bowler]
    usual = replace(usual, release=replace(usual.release, hand=hand, **LINE))
    weak = replace(usual, release=with_less_hand(usual.release, -less_rotation_deg, -fewer_revs_rpm))
    house = lane_of("house")
    thrown = [
        (usual, ChangedLane(house, LaneChange(looser=1.0 - tighter_percent / 100.0))),
        (weak, ChangedLane(house, LaneChange(looser=1.0 + looser_percent / 100.0))),
    ]
    moved = [(_moved(one, move), lane) for move, _ in REMEDIES.values() for one, lane in thrown]
    skids, rolled, *then = faces(thrown + moved)
    tried = dict(zip(REMEDIES, zip(then[::2], then[1::2], strict=True), strict=True))
    helped = {
        name: tuple(
            then.odds.pocket - one.odds.pocket for one, then in zip((skids, rolled), both, strict=True)
        )
        for name, both in tried.items()
    }
    rows = [_row("as thrown", (skids, rolled), "")]
    rows += [_row(remedy_words(name, metric), both, REMEDIES[name][1]) for name, both in tried.items()]
    return FacesAnswer(skids, rolled, helped, _sentence(skids, rolled, helped, metric), rows)


def faces(thrown) -> list[Face]:
    """Centre ball and scatter of several (bowler, lane), in one batch."""
    return [
        Face(bowler, lane, simulate(bowler.release, lane, bowler.ball), odds)
        for (bowler, lane), odds in zip(thrown, odds_together(thrown), strict=True)
    ]


def _moved(bowler, move):
    release = bowler.release
    to = {name: getattr(release, name) + by for name, by in move.items() if by}
    return replace(bowler, release=replace(release, **to))


@lru_cache(maxsize=32)
def earlier_ends_further_in(bowler="league one-hander", pattern="house") -> tuple[int, int]:
    """If only the lane changes: pairs of neighbouring lanes, one a little looser than the other, on which the
    same ball stays on the lane and rolls earlier; and in how many of them it then ends further in."""
    one = load_bowlers()[bowler]
    paths = [
        simulate(one.release, ChangedLane(lane_of(pattern), LaneChange(looser=float(factor))), one.ball)
        for factor in _LOOSER
    ]
    rolls = [path.roll_start_ft if path.roll_start_ft == path.roll_start_ft else np.inf for path in paths]
    steps = [
        paths[i + 1].entry_board - paths[i].entry_board
        for i in range(len(paths) - 1)
        if rolls[i + 1] < rolls[i] and np.isfinite([paths[i].entry_board, paths[i + 1].entry_board]).all()
    ]
    return len(steps), sum(step > 0 for step in steps)


def only_the_lane(bowlers=ONLY_LANE_BOWLERS, patterns=ONLY_LANE_PATTERNS):
    """The same for several bowlers and shapes: (sentence, rows)."""
    rows, total, further = [], 0, 0
    for bowler in bowlers:
        row = {"bowler (invented)": bowler}
        for pattern in patterns:
            pairs, more = earlier_ends_further_in(bowler, pattern)
            total, further = total + pairs, further + more
            row[pattern.replace("_", " ")] = f"{more} of {pairs}"
        rows.append(row)
    sentence = (
        f"The same ball on the same line, on lanes that are looser step by step. In {total} steps it rolled earlier, and in "
        f"{further} of these it also ended further in."
    )
    return sentence, rows


def _sentence(skids, rolled, helped, metric):
    apart = abs(float(np.diff([board_at(one.path, ALIKE_FT) for one in (skids, rolled)])[0]))
    where = words.distance(ALIKE_FT, metric)
    parts = [
        f"At {where} the two balls are {words.count(apart, 'board')} apart. The first {_end(skids.path, metric)}, "
        f"the second {_end(rolled.path, metric)}."
    ]
    split = [name for name, (one, other) in helped.items() if _opposite(one, other)]
    both = [name for name, (one, other) in helped.items() if one > _TIE and other > _TIE]
    if split:
        told = "; ".join(
            f"{remedy_words(name, metric)} ({' and '.join(map(_gain, helped[name]))})" for name in split
        )
        parts.append(f"Helps one and not the other, in balls of 100 that find the pocket: {told}.")
    else:
        parts.append("No remedy tried helps only one of them here.")
    if both:
        parts.append(f"Helps both: {', '.join(remedy_words(name, metric) for name in both)}.")
    return " ".join(parts)


def _opposite(one, other):
    """One gains more than a tie, and the other does not gain."""
    return (one > _TIE and other <= 0) or (other > _TIE and one <= 0)


def _gain(share):
    points = round(100 * share)
    return f"{abs(points)} more" if points > 0 else f"{abs(points)} fewer" if points else "no change"


def board_at(path, distance_ft) -> float:
    return float(np.interp(distance_ft, path.distance_ft, path.board))


def _end(path, metric):
    if path.gutter_ft == path.gutter_ft:
        return "ends in the gutter"
    hit = words.hit(path.entry_board)
    return f"{words.rolling(path.roll_start_ft, metric)} and comes in {hit} at {words.degrees(abs(path.entry_angle_deg))}"


def _row(name, both, custom):
    row = {"what": name}
    for title, one in zip((SKIDS, ROLLED), both, strict=True):
        gone = one.path.entry_board != one.path.entry_board
        row[f"{title}: comes in on board"] = "gutter" if gone else words.halves(one.path.entry_board)
        row[f"{title}: angle"] = "" if gone else words.degrees(one.path.entry_angle_deg)
        row[f"{title}: in the pocket, of 100"] = f"{100 * one.odds.pocket:.0f}"
    return row | {"custom says it to": custom or "no one"}
