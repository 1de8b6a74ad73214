"""One line thrown by a person and not by a machine: strikes and the commonest leave over a scatter."""

from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.bowler import Bowler, Spread
from bowlcore.coaching.odds import Odds, entries_of, odds_of_entries
from bowlcore.motion.many import sweep_columns
from bowlcore.rack.carry import leaves_of_many
from bowlcore.rack.leave import Leave

ORDINARY = Spread()  # a practised bowler's, invented
_SHOTS = 128


class Scattered(NamedTuple):
    odds: Odds
    leave: Leave | None  # commonest of those that leave a pin
    leave_share: float


def scattered(releases, surface, ball, spread=ORDINARY) -> list[Scattered]:
    """What 128 balls on each of these lines do, thrown with this scatter; all are followed together."""
    bowlers = [Bowler(release, spread, ball) for release in releases]
    shots = [bowler.shots(_SHOTS) for bowler in bowlers]
    marks, _ = sweep_columns(
        {name: np.concatenate([one[name] for one in shots]) for name in shots[0]}, surface, ball
    )
    each = [
        {name: values[i * _SHOTS : (i + 1) * _SHOTS] for name, values in marks.items()}
        for i in range(len(shots))
    ]
    return [_of_line(own, bowler) for own, bowler in zip(each, bowlers, strict=True)]


def _of_line(marks, bowler):
    release, ball = bowler.release, bowler.ball
    odds = odds_of_entries(marks, bowler)
    there, entries = entries_of(marks, ball)
    if not there.any():
        return Scattered(odds, None, 0.0)
    leaves = leaves_of_many(*entries, hand=release.hand)
    leave, share = next(((item, share) for item, share in leaves if not item.is_strike), (None, 0.0))
    return Scattered(odds, leave, share * float(np.mean(there)))


def strikes_and_leave(found: Scattered) -> str:
    """ "between 41 and 47 in 100 strike (most often left: 10)": the interval comes first."""
    told = f"{words.share_between(*found.odds.interval)} strike"
    return told + (f" (most often left: {found.leave.text})" if found.leave else "")
