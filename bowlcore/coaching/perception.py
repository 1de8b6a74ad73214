"""How a delivery looks to a coach: the chance of each word, with the coach's own errors.

Works on arrays of shots. The error sizes are chosen: about a board at the arrows, two at the breakpoint
(three now and then), a wrong word in a dozen.
"""

from typing import NamedTuple

import numpy as np
from scipy.special import expit, ndtr

from bowlcore.coaching.bowler import SCATTERED
from bowlcore.coaching.feet import mark_board_of
from bowlcore.coaching.odds import entries_of
from bowlcore.coaching.seen import EXITS, FINISHES, HITS, exit_edges
from bowlcore.motion.many import sweep_together
from bowlcore.motion.release import RANGES
from bowlcore.rack.carry import corners, exit_board, leave_share_at

# entry boards between the words of a hit: the pocket of this course is "flush"; beyond the two ends the head
# pin is not touched (our own geometry)
_HIT_EDGES = np.array([13.7, 16.0, 19.0, 20.0, 21.25, 26.3])
_HIT_ORDER = ("missed", "light", "flush", "high", "nose", "other side", "missed")
HIT_ERROR, EXIT_ERROR = 0.6, 1.5  # boards, one standard deviation
ARROW_ERROR, BREAK_ERROR = 1.0, 2.0
WRONG_WORD, OUTLIER = 0.08, 0.03
TARGET_REACH = 1.25  # boards either side of the mark that a bowler calls hit
_SIZES = (0.8, 1.0, 1.2, 1.4)  # of the scatter that a bowler is thought to have
_GROSS, _GROSS_SIZE = 7, 2.5  # every seventh ball misses so many times as far: people do (chosen)
_STILL = 0.3  # boards: a smaller scatter is none
_LEAVE_TRUST = 1.0 / 3.0
_PLAIN = 0.5  # weight of "nothing special" among the finishes


class Shots(NamedTuple):
    """What simulated balls did, arrays of one length; boards from the own side."""

    entry_board: np.ndarray  # NaN in the gutter
    entry_angle_deg: np.ndarray
    roll_start_ft: np.ndarray  # inf while it still skids at the pins
    hook_start_ft: np.ndarray
    breakpoint_board: np.ndarray
    mark_board: np.ndarray
    mark_miss: np.ndarray  # boards inside the usual mark
    exit_board: np.ndarray  # NaN where unknown
    nodes: np.ndarray  # of the carry table, for leaves; and which shots have them
    weights: np.ndarray
    there: np.ndarray
    hand: str
    usual: "Usual"
    restless: float  # spread of entry boards on this lane


class Usual(NamedTuple):
    """The bowler's centre ball where the lane is as believed: what "early" and "stood up" are against."""

    hook_start_ft: float
    roll_start_ft: float
    entry_angle_deg: float
    restless: float | None = None  # spread of entry boards there; None while it is not known


def usual_of(path) -> Usual:
    """The marks of a path that a coach carries in the head; a ball that never rolls counts as 60 ft."""
    roll = path.roll_start_ft if path.roll_start_ft == path.roll_start_ft else 60.0
    angle = path.entry_angle_deg if path.entry_angle_deg == path.entry_angle_deg else 4.0
    hook = path.hook_start_ft if path.hook_start_ft == path.hook_start_ft else 40.0
    return Usual(hook, roll, angle)


def follow(bowler, surface, count, usual) -> Shots:
    """`count` balls of a bowler on one lane, as a coach could see them."""
    return follow_all([(bowler, surface, usual)], count)[0]


def follow_all(throws, count) -> list:
    """`count` balls each for several (bowler, surface, usual), as a coach could see them: list of Shots.

    All with the ball and the hand of the first. Nobody knows a bowler's scatter well: a quarter of the balls
    each scatter by less, by as much, and by more than he is thought to. Every seventh misses its target grossly.
    """
    ball, hand = throws[0][0].ball, throws[0][0].release.hand
    columns = [_thrown(bowler, count) for bowler, _, _ in throws]
    marks = sweep_together(
        [(one, surface) for one, (_, surface, _) in zip(columns, throws, strict=True)], ball
    )
    marks = {name: np.array([one[name] for one in marks]) for name in marks[0]}  # (throw, ball)
    there, entries = entries_of(marks, ball)
    nodes, weights = corners(*entries)
    exits = np.full(there.shape, np.nan)
    exits[there] = exit_board(*entries)
    ends = np.cumsum(there.sum(axis=1))[:-1]
    nodes, weights = np.split(nodes, ends, axis=1), np.split(weights, ends, axis=1)
    found = []
    for i, (bowler, _, usual) in enumerate(throws):
        over = mark_board_of(columns[i]["laydown_board"], columns[i]["target_board"])
        aimed = mark_board_of(bowler.release.laydown_board, bowler.release.target_board)
        roll, board = marks["roll_start_ft"][i], marks["entry_board"][i]
        found.append(
            Shots(
                board,
                marks["entry_angle_deg"][i],
                np.where(np.isfinite(roll), roll, np.inf),
                marks["hook_start_ft"][i],
                marks["breakpoint_board"][i],
                over,
                over - aimed,
                exits[i],
                nodes[i],
                weights[i],
                there[i],
                hand,
                usual,
                max(float(np.nanstd(board)), _STILL) if there[i].any() else 9.0,
            )
        )
    return found


def _thrown(bowler, count):
    """Releases of the balls, as `Bowler.shots`."""
    columns = bowler.shots(count)
    for name in SCATTERED:
        middle, (low, high, _) = getattr(bowler.release, name), RANGES[name]
        size = np.resize(_SIZES, count)
        columns[name] = np.clip(middle + size * (columns[name] - middle), low, high)
    # these always reach the pins
    columns["axis_rotation_deg"] = np.clip(columns["axis_rotation_deg"], -90.0, 90.0)
    aimed_at, target = bowler.release.target_board, columns["target_board"]
    target[::_GROSS] = np.clip(aimed_at + _GROSS_SIZE * (target[::_GROSS] - aimed_at), 1.0, 39.0)
    return columns


def word_chances(field, shots) -> np.ndarray:
    """Chance of each word of "hit", "finish" or "exit" for each shot: array (words, shots)."""
    return {"hit": _hit, "finish": _finish, "exit": _exit}[field](shots)


def chance_of(seen, shots) -> np.ndarray:
    """Chance of all that was seen of one delivery, for each shot (a density where boards were read)."""
    chance = np.ones(len(shots.entry_board))
    for field, words in (("hit", HITS), ("finish", FINISHES), ("exit", EXITS)):
        value = getattr(seen, field)
        if value is not None:
            chance = chance * word_chances(field, shots)[words.index(value)]
    if seen.target_hit is not None:
        hit = target_chance(shots)
        chance = chance * (hit if seen.target_hit else 1.0 - hit)
    for value, at, error in (
        (seen.arrow_board, shots.mark_board, ARROW_ERROR),
        (seen.breakpoint_board, shots.breakpoint_board, BREAK_ERROR),
    ):
        if value is not None:
            chance = chance * _read_board(value, at, error)
    if seen.leave is not None:
        chance = chance * _leave(seen.leave, shots)
    return chance


def target_chance(shots) -> np.ndarray:
    """Chance that the mark is called hit."""
    near = ndtr((TARGET_REACH - np.abs(shots.mark_miss)) / 0.2)
    return 0.5 * OUTLIER + (1.0 - OUTLIER) * near


def _read_board(value, at, error):
    bell = np.exp(-0.5 * ((value - at) / error) ** 2) / (error * 2.5066)
    return OUTLIER / 39.0 + (1.0 - OUTLIER) * np.nan_to_num(bell)


def _between(edges, at, error):
    """Chance of each stretch between the edges for a place read with an error: (stretches, shots)."""
    below = ndtr((edges[:, None] - at[None, :]) / error)
    whole = np.vstack([np.zeros(len(at)), below, np.ones(len(at))])
    return np.diff(whole, axis=0)


def _with_slips(chances):
    """A wrong word now and then."""
    return WRONG_WORD / len(chances) + (1.0 - WRONG_WORD) * chances


def _hit(shots):
    board = np.where(np.isfinite(shots.entry_board), shots.entry_board, 0.0)
    stretches = _between(_HIT_EDGES, board, HIT_ERROR)
    chances = np.zeros((len(HITS), len(board)))
    for word, stretch in zip(_HIT_ORDER, stretches, strict=True):
        chances[HITS.index(word)] += stretch
    return _with_slips(chances)


def _finish(shots):
    usual, angle = shots.usual, np.nan_to_num(shots.entry_angle_deg)
    roll = np.minimum(shots.roll_start_ft, 99.0)
    earlier = np.nan_to_num(usual.hook_start_ft - shots.hook_start_ft)
    skids = expit((roll - 58.5) / 0.8)
    rolled = np.maximum(expit((50.5 - roll) / 0.8), expit((usual.roll_start_ft - 3.5 - roll) / 0.8))
    flat = expit((max(usual.entry_angle_deg - 0.75, 2.5) - angle) / 0.4)
    weight = np.array(
        [
            skids,
            (1.0 - skids) * (1.0 - rolled) * expit((angle - 4.5) / 0.4) * 0.6,
            np.maximum(expit((earlier - 2.5) / 0.8), 0.7 * rolled * (1.0 - flat)) * (1.0 - skids),
            rolled * flat,
            np.full(
                len(roll), 0.02 + expit((shots.restless / (usual.restless or shots.restless) - 1.35) / 0.06)
            ),
        ]
    )
    return _with_slips(weight / (weight.sum(axis=0) + _PLAIN))


def _exit(shots):
    board = shots.exit_board
    chances = _between(exit_edges(), np.nan_to_num(board), EXIT_ERROR)
    chances = np.where(np.isfinite(board), chances, 1.0 / len(EXITS))
    return _with_slips(chances if shots.hand == "right" else chances[::-1])


def _leave(leave, shots):
    """The pin model is in doubt itself: a third of it is believed, the rest is what any of these shots leave."""
    share = np.zeros(len(shots.there))
    share[shots.there] = leave_share_at(shots.nodes, shots.weights, leave, shots.hand)
    return _LEAVE_TRUST * share + (1.0 - _LEAVE_TRUST) * share.mean() + 1e-3
