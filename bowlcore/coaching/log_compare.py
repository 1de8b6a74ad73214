"""Did it help? Two groups of balls out of a log, compared by one measure."""

from collections import Counter
from dataclasses import replace

from bowlcore.coaching import did_it_help
from bowlcore.coaching.log_games import POCKET
from bowlcore.coaching.log_source import DEMO, shots_of

POCKETS, STRIKES, SINGLES, MISS = "in the pocket", "strikes", "single pins made", "miss at the arrows"
MEASURES = (POCKETS, STRIKES, SINGLES, MISS)
TRIED, HALVES, LANES = "by what was tried", "first half, second half", "left lane, right lane"
SPLITS = (TRIED, HALVES, LANES)


def answer(log, bowler, measure, split):
    """A `Helped`, or a sentence when the log does not hold two groups for it.

    Parameters
    ----------
    log : one of `log_source.LOGS`
    bowler : initials, or "everybody"
    measure : one of MEASURES
    split : one of SPLITS

    Raises
    ------
    ValueError
        For a file that is no log.
    """
    shots = shots_of(log, bowler)
    if isinstance(shots, str):
        return shots
    found = _SPLIT[split](shots)
    if isinstance(found, str):
        return found
    names, groups = found
    told = ([_MEASURE[measure](shot) for shot in group] for group in groups)
    seen = [[value for value in group if value is not None] for group in told]
    helped = _compared(measure, seen, names)
    if isinstance(helped, str) or log != DEMO:
        return helped
    return replace(helped, sentence=f"In an invented log, {helped.sentence}")


def _compared(measure, seen, names):
    """A `Helped` of two lists of what was measured, or why not."""
    if measure == MISS:
        if min(map(len, seen)) < did_it_help.FEWEST:
            return f"Boards are compared from {did_it_help.FEWEST} balls on; here are {len(seen[0])} and {len(seen[1])}."
        return did_it_help.boards(*seen, names=names, what="missed the board meant by")
    return did_it_help.shares(*((sum(good), len(good)) for good in seen), names=names, what=measure)


def _by_trying(shots):
    """The two things tried most often, the earlier one first, by bowlers who did both."""
    counts = Counter(kept.entry.trying for kept in shots if kept.entry.trying)
    if len(counts) < 2:
        return (
            "Only one thing was tried in these balls: write what is new under 'Trying' when you copy them in."
        )
    most = {name for name, _ in counts.most_common(2)}
    both = {
        who
        for who in {kept.entry.bowler for kept in shots}
        if most <= {kept.entry.trying for kept in shots if kept.entry.bowler == who}
    }
    names = [name for name in dict.fromkeys(kept.entry.trying for kept in shots) if name in most]
    groups = [[k.entry for k in shots if k.entry.trying == name and k.entry.bowler in both] for name in names]
    return [f"'{name}'" for name in names], groups


def _by_half(shots):
    days = sorted({kept.day for kept in shots})
    if len(days) < 2:
        return "All these balls are of one day: there is no second half."
    middle = days[len(days) // 2]
    early = [kept.entry for kept in shots if kept.day < middle]
    late = [kept.entry for kept in shots if kept.day >= middle]
    return [f"before {middle:%d %b}", f"from {middle:%d %b} on"], [early, late]


def _by_lane(shots):
    return [f"{lane} lane" for lane in ("left", "right")], [
        [kept.entry for kept in shots if kept.entry.lane == lane] for lane in ("left", "right")
    ]


def _miss(shot):
    if shot.arrow_board is None or shot.over_board is None:
        return None
    return abs(shot.arrow_board - shot.over_board)


_SPLIT = {TRIED: _by_trying, HALVES: _by_half, LANES: _by_lane}
_MEASURE = {
    POCKETS: lambda shot: None if shot.hit is None else shot.hit == POCKET,
    STRIKES: lambda shot: None if shot.standing is None else not shot.standing,
    SINGLES: lambda shot: shot.made if shot.standing and len(shot.standing) == 1 else None,
    MISS: _miss,
}
