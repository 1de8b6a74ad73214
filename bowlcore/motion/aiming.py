"""Where to stand and look so that the ball comes in on a wanted board.

One unknown, the move in boards: of the target (feet kept), of the feet (target kept) or of both
(angle kept). All candidate moves of all releases run as one batch.
"""

from dataclasses import replace

import numpy as np

from bowlcore.motion.checks import number_in, of_kind
from bowlcore.motion.many import sweep_columns
from bowlcore.motion.release import FIELD_NAMES, Release

MOVES = {"feet": (0.0, 1.0), "target": (1.0, 0.0), "angle": (1.0, 1.0)}  # boards of feet, of target
LOW, HIGH = 1.0, 39.0


def aim(release: Release, surface, ball=None, *, entry_board=17.5, keep="feet", through=None) -> Release:
    """The release on the line that enters at `entry_board`.

    Parameters
    ----------
    release : Release
        Its line is where the search starts: of several lines the nearest is returned.
    surface, ball : as for `simulate`
    entry_board : float
        Wanted board at 60 ft, 1 to 39.
    keep : str
        "feet" (laydown stays, target moves), "target" (target stays, laydown moves) or "angle" (both
        move alike).
    through : (board, distance_ft), optional
        The line must also pass this place, 1 to 59 ft from the foul line; feet and target are then both
        found and `keep` is not used.

    Raises
    ------
    ValueError
        In words, when there is no such line, or naming the value and the range.
    """
    of_kind("release", release, Release, "a Release")
    number_in("entry_board", entry_board, 1, 39)
    if keep not in MOVES:
        raise ValueError(f'keep must be "feet", "target" or "angle", got {keep!r}')
    if through is not None:
        from bowlcore.motion.aiming_through import aim_through

        return aim_through(release, surface, ball, entry_board, through)
    columns = {name: np.array([getattr(release, name)]) for name in FIELD_NAMES}
    move, seen = solve_moves(columns, surface, ball, entry_board, keep, step=0.5, refinements=7)
    if np.isnan(move[0]):
        raise ValueError(_no_line(release, entry_board, keep, seen))
    feet, target = MOVES[keep]
    return replace(
        release,
        laydown_board=float(release.laydown_board + feet * move[0]),
        target_board=float(release.target_board + target * move[0]),
    )


def _no_line(release, entry_board, keep, seen):
    kept = {
        "feet": f"the laydown on board {release.laydown_board:g}",
        "target": f"the target on board {release.target_board:g}",
        "angle": "this launch angle",
    }[keep]
    finite = seen[np.isfinite(seen)]
    if not len(finite):
        return f"no line reaches board {entry_board:g} with {kept}: every one ends in the gutter"
    return (
        f"no line reaches board {entry_board:g} with {kept}: "
        f"the ball comes in between boards {finite.min():.1f} and {finite.max():.1f}"
    )


def solve_moves(columns, surface, ball, entry_board, keep, step=1.0, refinements=1):
    """For each release the nearest move [boards] that enters at `entry_board`; NaN where none does.

    Returns the moves and the entry boards seen on the way, one row a release. `step` is the spacing of
    candidate moves [boards]; each refinement is one more batch, a chord step inside the bracket.
    """
    feet, target = MOVES[keep]
    laydown, aimed = columns["laydown_board"], columns["target_board"]
    count = len(laydown)
    low = np.max([(LOW - b) for b, m in ((laydown, feet), (aimed, target)) if m], axis=0)
    high = np.min([(HIGH - b) for b, m in ((laydown, feet), (aimed, target)) if m], axis=0)

    def miss(rows, moves):
        shots = {name: columns[name][rows] for name in FIELD_NAMES}
        shots["laydown_board"] = np.clip(laydown[rows] + feet * moves, LOW, HIGH)
        shots["target_board"] = np.clip(aimed[rows] + target * moves, LOW, HIGH)
        return sweep_columns(shots, surface, ball)[0]["entry_board"] - entry_board

    steps = max(int(np.ceil((high - low).max() / step)), 1)
    moves = low[:, None] + (high - low)[:, None] * np.linspace(0.0, 1.0, steps + 1)
    rows = np.repeat(np.arange(count), steps + 1)
    misses = miss(rows, moves.ravel()).reshape(moves.shape)
    seen = misses + entry_board
    for _ in range(6 if refinements > 1 else 1):
        moves, misses = _with_vertices(moves, misses, miss)
    return _refine(moves, misses, miss, refinements), seen


def _with_vertices(moves, misses, miss):
    """Add the turning points of the curve between candidates, where it may just touch the wanted board."""
    a, b, c = misses[:, :-2], misses[:, 1:-1], misses[:, 2:]
    with np.errstate(invalid="ignore"):
        dips = ((b > 0) & (b <= a) & (b <= c)) | ((b < 0) & (b >= a) & (b >= c))
    i, j = np.nonzero(dips)
    if not len(i):
        return moves, misses
    left, right = moves[i, j + 1] - moves[i, j], moves[i, j + 1] - moves[i, j + 2]
    p, q = left * (b[i, j] - c[i, j]), right * (b[i, j] - a[i, j])
    bend = np.where(p == q, 1.0, p - q)
    at = moves[i, j + 1] - 0.5 * np.where(p == q, 0.0, (left * p - right * q) / bend)
    at = np.clip(at, moves[i, j], moves[i, j + 2])
    value = miss(i, at)
    extra = np.bincount(i, minlength=len(moves)).max()
    more_moves, more = np.full((len(moves), extra), np.nan), np.full((len(moves), extra), np.nan)
    slot = np.zeros(len(moves), int)
    for row, x, v in zip(i, at, value, strict=True):
        more_moves[row, slot[row]], more[row, slot[row]] = x, v
        slot[row] += 1
    moves, misses = np.hstack([moves, more_moves]), np.hstack([misses, more])
    order = np.argsort(moves, axis=1)
    return np.take_along_axis(moves, order, 1), np.take_along_axis(misses, order, 1)


def _refine(moves, misses, miss, refinements):
    """The nearest bracket of each row, narrowed by chords (Illinois form)."""
    result = np.full(len(moves), np.nan)
    a, b, fa, fb = moves[:, :-1], moves[:, 1:], misses[:, :-1], misses[:, 1:]
    with np.errstate(invalid="ignore", divide="ignore"):
        hit = fa * fb <= 0
        root = np.where(fa == fb, a, a - fa * (b - a) / (fb - fa))
        far = np.where(hit, np.abs(root), np.inf)
    pick = far.argmin(axis=1)
    rows = np.flatnonzero(np.isfinite(far[np.arange(len(moves)), pick]))
    if not len(rows):
        return result
    at = rows, pick[rows]
    a, b, fa, fb = a[at].copy(), b[at].copy(), fa[at].copy(), fb[at].copy()
    best = np.where(np.abs(fa) < np.abs(fb), a, b)
    best_miss = np.minimum(np.abs(fa), np.abs(fb))
    for _ in range(refinements):
        x = np.where(fb == fa, a, b - fb * (b - a) / np.where(fb == fa, 1.0, fb - fa))
        f = miss(rows, x)
        f = np.where(np.isfinite(f), f, best_miss)
        better = np.abs(f) < best_miss
        best, best_miss = np.where(better, x, best), np.where(better, np.abs(f), best_miss)
        if best_miss.max() < 1e-9:
            break
        flip = f * fb < 0
        a, fa = np.where(flip, b, a), np.where(flip, fb, fa * 0.5)
        b, fb = x, f
    result[rows] = best
    return result
