"""Move or stay: the moves of feet and target that coaches call, tried on the lane as it is now.

Boards from the bowler's own side; a move is (feet, target) in boards at the foul line and at 15 ft, positive
in, away from the own gutter.
"""

from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Bowler
from bowlcore.coaching.lines import lines_to_pocket
from bowlcore.coaching.odds import RANKING
from bowlcore.coaching.words import POCKET_BOARD, POCKET_REACH
from bowlcore.motion.many import sweep_together
from bowlcore.motion.release import RANGES

STAY = (0, 0)
WORTH = 0.10  # ten more of a hundred balls in the pocket: under ten points it is a tie
_ALIKE = 0.02  # among moves that do about as much, the smallest is taken
# parallel; 2-and-1 and its doubles; 3-and-2 and 5-and-2; one of the two alone (trade names, common practice)
_SIZES = ((1, 1), (2, 2), (3, 3), (4, 4), (2, 1), (4, 2), (6, 3), (3, 2), (5, 2), (1, 0), (2, 0), (0, 1))


class Move(NamedTuple):
    """A move, and the share of balls in the pocket without and with it."""

    feet: int
    target: int
    staying: float
    pocket: float


def best_move(bowler, surface, shots=RANKING) -> Move:
    """The smallest move that does about as much as any, or none where none gains WORTH.

    Parameters
    ----------
    bowler : Bowler
        On the present line; no move is larger than can_change allows.
    surface : as for `simulate`
    shots : int
        Deliveries tried for each move, the same accidents for all.
    """
    return best_moves([(bowler, surface)], shots)[0]


def best_moves(lines, shots=RANKING) -> list[Move]:
    """The same for several (bowler, surface), all in one batch."""
    tried = [[STAY, *_allowed(bowler)] for bowler, _ in lines]
    shares = _shares(lines, tried, shots)
    return [_best(dict(zip(*both, strict=True))) for both in zip(tried, shares, strict=True)]


def _best(share):
    """Of the pocket share of every move."""
    best = max(share.values())
    staying = share[STAY]
    if best < staying + WORTH - 1e-9:
        return Move(*STAY, staying, staying)
    move = min((m for m in share if share[m] >= best - _ALIKE and m != STAY), key=_size)
    return Move(*move, staying, share[move])


def best_line(bowler, surface, shots=RANKING, worth=WORTH):
    """The bowler on that line to the pocket, within can_change, that brings most balls into it.

    The bowler unchanged when none brings `worth` more (a share of the balls) than the present line.
    """
    most = (bowler.can_change.get("feet", 0), bowler.can_change.get("target", 0))
    return replace(
        bowler, release=_best_line(bowler.release, bowler.spread, bowler.ball, most, surface, shots, worth)
    )


@lru_cache(maxsize=256)  # evenings with other shares begin on the same lines
def _best_line(release, spread, ball, most, surface, shots, worth):
    lines = lines_to_pocket(release, surface, ball)
    feet, target = lines.laydown_board - release.laydown_board, lines.target_board - release.target_board
    near = (np.abs(feet) <= most[0]) & (np.abs(target) <= most[1])
    tried = [STAY, *zip(feet[near], target[near], strict=True)]
    bowler = Bowler(release, spread, ball)
    share = np.array(_shares([(bowler, surface)], [tried], shots)[0])
    best = int(share.argmax())
    if share[best] < share[0] + worth - 1e-9:
        return release
    return moved(bowler, *map(float, tried[best])).release


def moved(bowler, feet, target):
    """The bowler on the line so many boards further in (negative: out)."""
    line = bowler.release
    return replace(
        bowler,
        release=replace(
            line, laydown_board=line.laydown_board + feet, target_board=line.target_board + target
        ),
    )


def move_words(feet, target) -> str:
    """ "feet 2 and target 1 in", "feet 1 out", "stay"."""
    if not feet and not target:
        return "stay"
    way = "in" if feet + target > 0 else "out"
    parts = [f"{name} {words.halves(abs(by))}" for name, by in (("feet", feet), ("target", target)) if by]
    return f"{' and '.join(parts)} {way}"


def _size(move):
    return max(map(abs, move)), sum(map(abs, move)), move


def _allowed(bowler):
    """Moves within can_change that leave feet and target on the lane."""
    most = (bowler.can_change.get("feet", 0), bowler.can_change.get("target", 0))
    at = (bowler.release.laydown_board, bowler.release.target_board)
    ends = (RANGES["laydown_board"][:2], RANGES["target_board"][:2])
    for size in _SIZES:
        for way in (1, -1):
            move = (way * size[0], way * size[1])
            small = all(abs(by) <= limit for by, limit in zip(move, most, strict=True))
            if small and all(
                low <= board + by <= high for board, by, (low, high) in zip(at, move, ends, strict=True)
            ):
                yield move


def _shares(lines, tried, shots):
    """Pocket share of every move tried of each (bowler, surface), all in one batch."""
    jobs = []
    for (bowler, surface), moves in zip(lines, tried, strict=True):
        columns = {name: np.tile(values, len(moves)) for name, values in bowler.shots(shots).items()}
        for name, by in zip(("laydown_board", "target_board"), np.array(moves).T, strict=True):
            low, high, _ = RANGES[name]
            columns[name] = np.clip(columns[name] + np.repeat(by, shots), low, high)
        jobs.append((columns, surface))
    found = []
    for marks in sweep_together(jobs, [bowler.ball for bowler, _ in lines]):
        off = np.abs(marks["entry_board"].reshape(-1, shots) - POCKET_BOARD)
        found.append((off <= POCKET_REACH).mean(axis=1).tolist())
    return found
