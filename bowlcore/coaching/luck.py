"""How far few balls can be trusted: bands of shares and of means, and the chance that one share is the larger.

Shares: before the balls every share is as likely as any other (uniform prior), so after k of n it has a beta
distribution, and further balls a beta-binomial one. Means: bootstrap, fixed seed.
"""

import numpy as np

from bowlcore.motion.checks import number_in

BAND = 0.90  # share of the plausible values inside a band: our choice
_RESAMPLED = 4000


def band_of_share(good, balls, band=BAND) -> tuple[float, float]:
    """Between which shares the true one lies with chance `band`: quantiles of the beta distribution."""
    from scipy.special import betaincinv

    a, b = _beta(good, balls)
    return tuple(float(betaincinv(a, b, edge)) for edge in ((1 - band) / 2, (1 + band) / 2))


def chance_better(good, balls, good_after, balls_after) -> float:
    """Chance that the second share is really the larger one.

    The exact sum for whole counts: the second share exceeds the first with chance sum over i < a2 of
    B(a1 + i, b1 + b2) / ((b2 + i) B(1 + i, b2) B(a1, b1)).
    """
    from scipy.special import betaln

    (a1, b1), (a2, b2) = _beta(good, balls), _beta(good_after, balls_after)
    i = np.arange(a2)
    terms = betaln(a1 + i, b1 + b2) - np.log(b2 + i) - betaln(1 + i, b2) - betaln(a1, b1)
    return float(min(np.exp(terms).sum(), 1.0))


def chance_of_next(good, balls, next_good, next_balls) -> float:
    """Chance of `next_good` in the next `next_balls` balls after `good` of `balls`: beta-binomial."""
    from scipy.special import betaln, gammaln

    a, b = _beta(good, balls)
    number_in("next_good", next_good, 0, next_balls, "balls")
    ways = gammaln(next_balls + 1) - gammaln(next_good + 1) - gammaln(next_balls - next_good + 1)
    return float(np.exp(ways + betaln(next_good + a, next_balls - next_good + b) - betaln(a, b)))


def _beta(good, balls):
    number_in("balls", balls, 0, 10_000)
    number_in("good balls", good, 0, balls)
    if int(good) != good or int(balls) != balls:
        raise ValueError(f"balls are whole numbers, got {good:g} of {balls:g}")
    return int(good) + 1, int(balls) - int(good) + 1


def bootstrap_means(values, seed=0) -> np.ndarray:
    """Means of 4,000 samples drawn from the values with replacement."""
    values = np.asarray(values, dtype=float)
    picks = np.random.default_rng(seed).integers(0, len(values), (_RESAMPLED, len(values)))
    return values[picks].mean(axis=1)


def band_of_mean(means, band=BAND) -> tuple[float, float]:
    """The middle `band` of bootstrapped means."""
    low, high = np.quantile(means, ((1 - band) / 2, (1 + band) / 2))
    return float(low), float(high)


def in_hundred(low, high) -> str:
    """A band of shares in words: "28 to 49"."""
    return f"{100 * low:.0f} to {100 * high:.0f}"
