"""What a coach notes of simulated balls, with a coach's errors: the other direction of a reading.

Each field of each ball has its own random numbers, so the same seed gives the same words again.
"""

import numpy as np

from bowlcore.coaching.feet import mark_board
from bowlcore.coaching.perception import (
    ARROW_ERROR,
    BREAK_ERROR,
    follow,
    target_chance,
    usual_of,
    word_chances,
)
from bowlcore.coaching.seen import EXITS, FINISHES, HITS, Seen
from bowlcore.motion.path import simulate
from bowlcore.rack.carry_table import carry_table
from bowlcore.rack.leave import Leave

FIELDS = ("hit", "finish", "target_hit", "arrow_board", "breakpoint_board", "exit", "leave")
_WORDS = {"hit": HITS, "finish": FINISHES, "exit": EXITS}
_BALLS = 256  # of the bowler's accidents from which the balls are drawn


def watch(known, thrown, believed, lane, seed, count, looks=FIELDS) -> list[Seen]:
    """Some deliveries as a coach noted them.

    Parameters
    ----------
    known : Bowler
        As the coach knows him: his usual marks, on the believed lane, are what "early" is against.
    thrown : Bowler
        As he bowls today.
    believed, lane : surfaces
        What the coach takes the lane for, and what it is.
    seed : int
    count : int
        Deliveries, 1 to 256.
    looks : names of fields
        What the coach looked at.
    """
    usual = usual_of(simulate(known.release, believed, known.ball))
    usual = usual._replace(restless=follow(known, believed, _BALLS, usual).restless)
    shots = follow(thrown, lane, _BALLS, usual)
    shots = shots._replace(mark_miss=shots.mark_board - mark_board(known.release))
    balls = np.random.default_rng(seed).choice(_BALLS, size=count, replace=False)
    return [note(shots, int(ball), [seed, place], looks) for place, ball in enumerate(balls)]


def note(shots, ball, seed, looks) -> Seen:
    """One of the simulated balls as noted; every field draws from its own stream of `seed` (a list of int)."""
    told = {}
    for i, name in enumerate(FIELDS):
        if name in looks:
            value = _drawn(name, shots, ball, np.random.default_rng([*seed, i]))
            if value is not None:
                told[name] = value
    return Seen(**told)


def _drawn(name, shots, ball, rng):
    if name in _WORDS:
        chances = np.cumsum(word_chances(name, shots)[:, ball])
        at = int(np.searchsorted(chances, rng.random()))
        return _WORDS[name][at] if at < len(chances) else None  # nothing special to see
    if name == "target_hit":
        return bool(rng.random() < target_chance(shots)[ball])
    if name == "leave":
        return _leave(shots, ball, rng) if shots.there[ball] else None
    at, error = {
        "arrow_board": (shots.mark_board, ARROW_ERROR),
        "breakpoint_board": (shots.breakpoint_board, BREAK_ERROR),
    }[name]
    read = at[ball] + error * rng.normal()
    return float(np.clip(round(read), 1, 39)) if np.isfinite(read) else None


def _leave(shots, ball, rng):
    """Pins left, drawn from the table of the pin model."""
    table, column = carry_table(), int(np.flatnonzero(shots.there).searchsorted(ball))
    nodes, weights = shots.nodes[:, column], np.maximum(shots.weights[:, column], 0.0)
    mixes = weights[:, None] * table.mixes[nodes]
    share = np.cumsum((mixes.ravel()[:, None] * table.shares[table.rows[nodes].ravel()]).sum(axis=0))
    leave = Leave(int(np.searchsorted(share, rng.random() * share[-1])))
    return (leave.mirror if shots.hand == "left" else leave).pins
