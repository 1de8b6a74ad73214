"""Small least-squares fits: the smallest sum of squares, and how far a number may go (profile likelihood).

`residuals(at)` takes many sets of numbers at once, (k, p) to (k, m), so a derivative costs one call.
"""

from typing import NamedTuple

import numpy as np

_TINY = 1e-5  # step of a derivative


class Answer(NamedTuple):
    """at : the numbers (p,); total : sum of squares; error : one standard error each; spare : data minus numbers"""

    at: np.ndarray
    total: float
    error: np.ndarray
    spare: int


def smallest(residuals, start, spare, held=(), rounds=40) -> Answer:
    """The numbers near `start` with the smallest sum of squares (Levenberg and Marquardt's way).

    spare : how many more data than numbers there are
    held : indices that keep their starting value
    """
    at = np.array(start, float)
    free = [i for i in range(at.size) if i not in held]
    damp, apart = 1e-3, residuals(at[None])[0]
    total = float(apart @ apart)
    for _ in range(rounds):
        slope = _slope(residuals, at, free)
        square, pull = slope.T @ slope, slope.T @ apart
        for _ in range(8):
            step = np.linalg.solve(square + damp * np.diag(np.diag(square) + 1e-6), -pull)
            tried = at.copy()
            tried[free] += step
            new = residuals(tried[None])[0]
            new_total = float(new @ new)
            if new_total < total:
                damp = max(damp / 5.0, 1e-9)
                break
            damp *= 5.0
        else:
            break
        done = total - new_total < 1e-9 * total + 1e-12
        at, apart, total = tried, new, new_total
        if done:
            break
    error = np.full(at.size, np.nan)
    if not held:
        slope = _slope(residuals, at, free)
        spread = np.linalg.pinv(slope.T @ slope) * total / spare
        error = np.sqrt(np.maximum(np.diag(spread), 0.0))
    return Answer(at, total, error, spare)


def bounds(residuals, best: Answer, index, level=0.9):
    """How far one number may go, down and up, while the others follow: the profile's interval at this level.

    The size of the residuals is estimated from them, so the limit is Student's.
    """
    from scipy.special import stdtrit

    limit = float(stdtrit(best.spare, 0.5 + level / 2.0))
    return tuple(_end(residuals, best, index, way, limit) for way in (-1.0, 1.0))


def _end(residuals, best, index, way, limit):
    """Where the root of the rise of the sum of squares, in standard errors, meets the limit."""
    unit, start = best.total / best.spare, best.at
    near, far, reached = 0.0, None, 0.0
    step = limit * float(best.error[index])
    for _ in range(12):
        tried = start.copy()
        tried[index] = best.at[index] + way * step
        answer = smallest(residuals, tried, best.spare, held=(index,), rounds=12)
        rise = np.sqrt(max(answer.total - best.total, 0.0) / unit)
        if abs(rise - limit) < 0.01 * limit:
            return best.at[index] + way * step
        if rise < limit:
            near, reached, start = step, rise, answer.at
            wider = min(step * limit / max(rise, 0.2 * limit), 3.0 * step)
            step = wider if far is None else _between(near, reached, *far, limit)
        else:
            far = (step, rise)
            step = _between(near, reached, *far, limit)
    return best.at[index] + way * step


def _between(near, reached, far, risen, limit):
    """Straight-line guess, kept off both ends."""
    share = (limit - reached) / (risen - reached)
    return near + (far - near) * min(max(share, 0.05), 0.95)


def _slope(residuals, at, free):
    shifted = np.repeat(at[None], 2 * len(free), axis=0)
    sizes = np.array([_TINY * max(1.0, abs(at[i])) for i in free])
    for row, (i, size) in enumerate(zip(free, sizes, strict=True)):
        shifted[2 * row, i] += size
        shifted[2 * row + 1, i] -= size
    found = residuals(shifted)
    return ((found[::2] - found[1::2]) / (2.0 * sizes[:, None])).T
