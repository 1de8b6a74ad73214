"""What this bowler can change, best first: each with what it is worth, why, and the customary remedy.

Ranked by the share of balls in the pocket, then room (how near its middle they come), then entry angle, carry
last; under ten points (half a board or a quarter of the bowler's own scatter, one degree) it is a tie, and
then the easier and safer change goes first.
"""

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from bowlcore.coaching import change_words, customary
from bowlcore.coaching.candidates import line_moves, move_effort, moved_line, variants
from bowlcore.coaching.odds import RANKING, Odds, bowler_odds, odds_together
from bowlcore.coaching.words import POCKET_BOARD, POCKET_REACH
from bowlcore.motion.changed_lane import MixedLane
from bowlcore.motion.checks import number_in
from bowlcore.motion.many import sweep_columns, sweep_together
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import FIELD_NAMES
from bowlcore.rack.carry import mixed

TIE_SHARE, TIE_BOARDS, TIE_DEG = 0.10, 0.5, 1.0
_GAIN = 0.02  # share of balls: the least that a change must bring
_OF_SCATTER = 0.25  # boards tie also within this share of the bowler's own scatter at the pins
# candidates tried with the bowler's scatter: lines alone, lines with another change
_LINES, _WITH_OTHERS = 36, 2
_PARTS = 5  # lanes of a mixture on which each candidate is tried
_NEAR = 1.5  # boards from the pocket's middle that a line's own centre may be


@dataclass(frozen=True)
class Change:
    """One suggestion.

    words : what to do; why : the reason; when : "next ball", "next game" or "practice"
    bowler : as changed; before, after : Odds on this surface
    customary : what coaches usually say, and what it would be worth here; caution : "" or a warning
    """

    words: str
    why: str
    when: str
    bowler: object
    before: Odds
    after: Odds
    customary: str
    caution: str
    kind: str
    surface: object

    @property
    def worth_while(self) -> bool:
        """False for a change that only looked good among a few balls: with more of them nothing is gained."""
        more = max(self.after.pocket - self.before.pocket, self.after.strike - self.before.strike)
        return self.kind == "stay" or more > _GAIN

    @cached_property
    def path(self) -> BallPath:
        """The centre ball after the change."""
        return simulate(self.bowler.release, self.surface, self.bowler.ball)


def suggest_changes(bowler, surface, count=5, *, metric=False) -> list[Change]:
    """Changes for this bowler on this surface, best first, at most one of each family.

    Parameters
    ----------
    bowler : Bowler
        Nothing beyond `can_change` is suggested, and no hand at all for one who is young or sore.
    surface : as for `simulate`
    count : int, 1 to 20
    metric : bool
        Metres and km/h in the words.

    Returns
    -------
    list of Change
        "Stay" is among them when nothing beats it by more than a tie.

    Raises
    ------
    ValueError
        Naming the value and the range.
    """
    number_in("count", count, 1, 20)
    tried = _shortlist(bowler, surface)
    pocket, angle, strike, off, spread = _over_lanes(tried, bowler, surface)
    order = [
        i
        for i in _ranked(tried, pocket, np.abs(off), angle, strike, max(TIE_BOARDS, _OF_SCATTER * spread[0]))
        if _earns_its_place(i, tried, pocket, angle)
    ]
    before = bowler_odds(bowler, surface)
    usual = customary.remedy(bowler, surface, before)
    best, chosen = {}, []  # of each family
    for candidate in (tried[i] for i in order):
        best.setdefault(candidate.family, candidate)
        if candidate.kind == "stay":
            break  # whatever comes behind is no better than staying
    changed = [replace(bowler, release=one.release, ball=one.ball) for one in best.values()]
    after = odds_together([(one, surface) for one in changed])
    for candidate, then, odds in zip(best.values(), changed, after, strict=True):
        change = _change(candidate, bowler, then, surface, before, odds, usual, metric)
        if change.worth_while:
            chosen.append(change)
    return chosen[: int(count)]


def _change(candidate, bowler, changed, surface, before, after, usual, metric):
    return Change(
        change_words.what(candidate, changed, bowler, metric),
        change_words.why(candidate, bowler, changed, surface, metric),
        change_words.when(candidate, bowler),
        changed,
        before,
        after,
        usual,
        change_words.caution(candidate, bowler),
        candidate.kind,
        surface,
    )


def _shortlist(bowler, surface):
    """Candidates worth trying with scatter: those whose centre ball comes nearest, easiest first."""
    every = variants(bowler)
    fine, coarse = line_moves(bowler), line_moves(bowler, coarse=True)
    groups = [(every[0], fine, _LINES)] + [(other, coarse, _WITH_OTHERS) for other in every[1:]]
    boards = _centre_boards(groups, surface)
    tried = []
    for (candidate, moves, most), board in zip(groups, boards, strict=True):
        miss = np.abs(board - POCKET_BOARD)
        miss = np.where(np.isfinite(miss), miss, np.inf)
        tried.append(candidate)  # the present line
        effort = candidate.things + candidate.size + np.array([move_effort(*move) for move in moves])
        key = np.where(miss <= _NEAR, effort + 0.5 * miss, 100.0 + miss)
        best = [i for i in np.argsort(key, kind="stable")[:most] if moves[i].any() and np.isfinite(miss[i])]
        tried += [moved_line(candidate, *moves[i]) for i in best]
        if candidate.kind == "stay":  # and lines that differ: the most open ones that still come in
            near = np.flatnonzero((miss <= 0.75 * _NEAR) & moves.any(axis=1))
            wide = near[np.argsort((moves[near, 1] - moves[near, 0]), kind="stable")]
            tried += [moved_line(candidate, *moves[i]) for i in [*wide[:6], *wide[-6:]] if i not in best]
    return tried


def _centre_boards(groups, surface):
    """Entry board of the centre ball of every move of every group, one batch a ball."""
    boards = [None] * len(groups)
    for ball in {id(group[0].ball): group[0].ball for group in groups}.values():
        mine = [i for i, group in enumerate(groups) if group[0].ball is ball]
        parts = []
        for i in mine:
            candidate, moves, _ = groups[i]
            part = {name: np.full(len(moves), getattr(candidate.release, name)) for name in FIELD_NAMES}
            part["laydown_board"] = part["laydown_board"] + moves[:, 0]
            part["target_board"] = part["target_board"] + moves[:, 1]
            parts.append(part)
        marks, _ = sweep_columns(_joined(parts), surface, ball)
        ends = np.cumsum([len(groups[i][1]) for i in mine])[:-1]
        for i, board in zip(mine, np.split(marks["entry_board"], ends), strict=True):
            boards[i] = board
    return boards


def _joined(parts):
    return {name: np.concatenate([part[name] for part in parts]) for name in parts[0]}


def _over_lanes(tried, bowler, surface):
    """What each candidate does, as a mean over the lanes that a mixture holds possible."""
    if not isinstance(surface, MixedLane):
        return _with_scatter(tried, bowler, [surface], RANKING)[0]
    parts = sorted(surface.parts, key=lambda part: -part[0])[:_PARTS]
    found = _with_scatter(tried, bowler, [lane for _, lane in parts], RANKING // 2)
    weights = np.array([weight for weight, _ in parts])
    return tuple(weights / weights.sum() @ np.array(column) for column in zip(*found, strict=True))


def _with_scatter(tried, bowler, lanes, count):
    """Of each candidate over the scatter, for each lane: pocket share, mean angle, strike share, boards that the
    middle is off, and scatter of the entry boards.
    """
    shape = (len(lanes), len(tried), count)
    board, angle, speed, weight = (np.full(shape, np.nan) for _ in range(4))
    for ball in {id(one.ball): one.ball for one in tried}.values():
        mine = [i for i, one in enumerate(tried) if one.ball is ball]
        columns = _joined([replace(bowler, release=tried[i].release).shots(count) for i in mine])
        for k, marks in enumerate(sweep_together([(columns, lane) for lane in lanes], ball)):
            for values, name in (
                (board, "entry_board"),
                (angle, "entry_angle_deg"),
                (speed, "entry_speed_mph"),
            ):
                values[k, mine] = marks[name].reshape(len(mine), count)
        weight[:, mine] = max(ball.mass_lb, 6.0)
    return [_judged(*entries) for entries in zip(board, angle, speed, weight, strict=True)]


def _judged(board, angle, speed, weight):
    """The five numbers of each candidate from its balls: arrays (candidate, ball)."""
    there = np.isfinite(board)
    with np.errstate(invalid="ignore"):
        pocket = (np.abs(board - POCKET_BOARD) <= POCKET_REACH).mean(axis=1)
    strike = np.zeros(board.shape)
    strike[there] = mixed(
        board[there], np.clip(angle[there], -20, 20), np.clip(speed[there], 2, 30), weight[there], ("strike",)
    )[0]
    steep = np.where(there, angle, 0.0).sum(axis=1) / np.maximum(there.sum(axis=1), 1)
    middle = np.where(there, board, 0.0).sum(axis=1) / np.maximum(there.sum(axis=1), 1)
    apart = np.where(there, board - middle[:, None], 0.0)
    spread = np.sqrt((apart**2).sum(axis=1) / np.maximum(there.sum(axis=1), 1))
    return pocket, steep, strike.mean(axis=1), middle - POCKET_BOARD, spread


def _earns_its_place(i, tried, pocket, angle):
    """False for a change that only looks good because of the line thrown with it."""
    one = tried[i]
    if one.kind in ("stay", "line") or not (one.feet or one.target):
        return True
    lines = [j for j, other in enumerate(tried) if other.kind in ("stay", "line")]
    best = max(lines, key=lambda j: pocket[j])
    if one.kind in ("ball", "speed"):
        return angle[i] >= angle[best] - 0.25
    steeper = angle[i] > angle[best] + TIE_DEG and pocket[i] > pocket[best] - TIE_SHARE
    return pocket[i] > pocket[best] + TIE_SHARE or steeper


def _ranked(tried, pocket, off, angle, strike, tie_boards):
    """Order of the candidates. A tie is counted from the best that is left, so that it is a real tie.

    Room: a line in the middle of the pocket stands more of a lane that is not quite as believed.
    """
    effort = np.array([one.things + one.size for one in tried])
    hand = np.array([one.kind == "hand" for one in tried])
    left, order = list(range(len(tried))), []
    while left:
        best = [i for i in left if pocket[i] > pocket[left].max() - TIE_SHARE]
        best = [i for i in best if not hand[i]] or best  # no hand where feet would do
        best = [i for i in best if off[i] < off[best].min() + tie_boards]
        best = [i for i in best if angle[i] > angle[best].max() - TIE_DEG]
        best = [i for i in best if strike[i] > strike[best].max() - TIE_SHARE]
        pick = min(best, key=lambda i: (effort[i] - 4.0 * strike[i], i))
        order.append(pick)
        left.remove(pick)
    return order
