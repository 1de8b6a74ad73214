"""From what was seen to the likely causes, each with its evidence and what to look at next.

Bayes by simulation: the bowler's own scatter on the believed lane and on variants of it, compared with what
was seen, the coach's errors allowed for. One leave alone never gives a verdict.
"""

from dataclasses import dataclass

import numpy as np

from bowlcore.coaching import next_look, reading_words
from bowlcore.coaching.hypotheses import CAUSES, GOOD, OWN, TARGET, aimed_wrong, execution, possible_lanes
from bowlcore.coaching.perception import chance_of
from bowlcore.coaching.seen import LANES, Seen
from bowlcore.motion.changed_lane import MixedLane

BOWLERS_OWN = (TARGET, OWN, GOOD)  # causes that leave the lane as it was believed to be
CANNOT_TELL = "cannot tell"
_TRUST = 0.8  # of what was seen: the real lane is none of those thought of, so it tells a little less
_DOUBT = 1.585  # log2(3): at p = 1/2 "cannot tell" and the likeliest cause weigh the same
_ONE_LEAVE = 0.45  # the surest that a single leave, and nothing else, may make anyone


@dataclass(frozen=True)
class Cause:
    """One reading of what was seen.

    name : one of the seven causes, or "cannot tell"
    weight : how likely; the weights add to 1. "Cannot tell" takes (1 - p)^1.585 of them, where p is the
        chance of the likeliest named cause: so it comes first when that is less likely than not.
    evidence : what speaks for it; next_step : what to watch or throw next
    surface : the lane if this is true (a dict for a pair); for "cannot tell", and where it was the bowler,
        the lane that was believed
    possible : the lanes that remain possible if this is true, as one mixture: what `believed_lane` adds up
    """

    name: str
    weight: float
    evidence: str
    next_step: str
    surface: object
    possible: object = None


def read_reaction(seen, bowler, surface) -> list[Cause]:
    """Likely causes of what was seen, likeliest first.

    Parameters
    ----------
    seen : Seen or list of Seen
        Several deliveries of one bowler.
    bowler : Bowler
    surface : what the lane is believed to be, or {"left": ..., "right": ...} for a pair
        Deliveries on two lanes are kept apart, also when both are believed to be alike.

    Returns
    -------
    list of Cause
        All seven causes and "cannot tell".

    Raises
    ------
    ValueError
        When something in the list is no Seen, or a pair is given and a delivery does not say its lane.
    """
    deliveries = [seen] if isinstance(seen, Seen) else list(seen)
    for item in deliveries:
        if not isinstance(item, Seen):
            raise ValueError(f"seen must be one Seen or a list of them, got {type(item).__name__}")
    told = [item for item in deliveries if set(item.told) - {"lane"}]
    lanes = _lanes(told, surface)
    if not told:
        return [Cause(CANNOT_TELL, 1.0, "Nothing was seen.", next_look.FIRST, _whole(surface, {}))]
    posts = {
        name: Posterior(bowler, lane, [d for d in told if name is None or d.lane == name])
        for name, lane in lanes.items()
        if name is None or any(d.lane == name for d in told)
    }
    counts = {name: len(post.deliveries) for name, post in posts.items()}
    share = {
        cause: float(sum(counts[name] * post.share[cause] for name, post in posts.items()) / len(told))
        for cause in CAUSES
    }
    if len(told) == 1 and not set(told[0].told) - {"leave", "lane"}:
        share = _tempered(share, _ONE_LEAVE)
    likeliest = max(share, key=share.get)
    doubt = (1.0 - share[likeliest]) ** _DOUBT
    step = next_look.next_step(posts, share, told)
    keys = None if isinstance(surface, dict) else (set(posts) if len(posts) > 1 else None)
    causes = [
        Cause(
            cause,
            share[cause] * (1.0 - doubt),
            reading_words.evidence(cause, posts, told),
            step,
            _whole(
                surface,
                {n: p.surface if cause in BOWLERS_OWN else p.lanes_if(cause) for n, p in posts.items()},
                keys,
            ),
            _whole(surface, {name: post.lanes_if(cause) for name, post in posts.items()}, keys),
        )
        for cause in CAUSES
    ]
    causes.append(Cause(CANNOT_TELL, doubt, reading_words.doubt(share), step, _whole(surface, {}, keys)))
    return sorted(causes, key=lambda cause: -cause.weight)


class Posterior:
    """What the deliveries on one lane say: chances of the possible lanes, and of the causes."""

    def __init__(self, bowler, surface, deliveries):
        self.bowler, self.surface, self.deliveries = bowler, surface, deliveries
        self.possible = possible_lanes(bowler, surface)
        seen = np.array([[chance_of(d, p.shots) for d in deliveries] for p in self.possible])
        mean = seen.mean(axis=2)  # (lane, delivery)
        log = np.log([p.chance for p in self.possible]) + _TRUST * np.log(mean + 1e-12).sum(axis=1)
        self.lane_chance = np.exp(log - log.max())
        self.lane_chance /= self.lane_chance.sum()
        ball_chance = seen / (seen.sum(axis=2, keepdims=True) + 1e-12)
        self.ball_chance = ball_chance  # which ball it was, on each lane: (lane, delivery, ball)
        self.joint = np.array([self._of_lane(i) for i in range(len(self.possible))])  # (lane, cause)
        self.share = dict(zip(CAUSES, self.lane_chance @ self.joint, strict=True))

    def _of_lane(self, i):
        """Chances of the causes if this lane is the true one, over the deliveries."""
        possible, ball = self.possible[i], self.ball_chance[i].mean(axis=0)
        if possible.cause is None:
            names = execution(possible.shots)
        else:
            names = np.where(aimed_wrong(possible.shots), TARGET, possible.cause)
        return [float(ball[names == cause].sum()) for cause in CAUSES]

    def lanes_if(self, cause):
        """The lanes that would be called so, as a mixture by their chances."""
        wanted = None if cause in BOWLERS_OWN else cause
        chance = [
            (weight, p.lane)
            for weight, p in zip(self.lane_chance, self.possible, strict=True)
            if p.cause == wanted and weight > 1e-3
        ]
        return MixedLane(chance) if chance else self.surface


def believed_lane(causes):
    """What to take the lane for after a reading: the mean of the causes' lanes by their weights.

    A dict for a pair.
    """
    lanes = [cause.surface if cause.possible is None else cause.possible for cause in causes]
    weights = [cause.weight for cause in causes]
    if isinstance(lanes[0], dict):
        return {
            name: MixedLane([(weight, lane[name]) for weight, lane in zip(weights, lanes, strict=True)])
            for name in lanes[0]
        }
    return MixedLane(list(zip(weights, lanes, strict=True)))


def _lanes(told, surface):
    """The lanes that deliveries are sorted into: {None: surface} for one lane."""
    if isinstance(surface, dict):
        if set(surface) != set(LANES):
            raise ValueError(
                f'a pair of surfaces has the keys "left" and "right", got {sorted(map(str, surface))}'
            )
        for item in told:
            if item.lane is None:
                raise ValueError("each delivery on a pair must say its lane, left or right; one says none")
        return surface
    named = {item.lane for item in told}
    if len(named) > 1:
        if None in named:
            raise ValueError("either every delivery says its lane, left or right, or none does")
        return dict.fromkeys(sorted(named), surface)
    return {None: surface}


def _whole(surface, found, keys=None):
    """What goes into Cause.surface: one lane, or a dict of lanes."""
    if isinstance(surface, dict):
        return {name: found.get(name, lane) for name, lane in surface.items()}
    if keys:
        return {name: found.get(name, surface) for name in sorted(keys)}
    return next(iter(found.values()), surface)


def _tempered(share, most):
    """The same order, nobody surer than `most`."""
    top = max(share.values())
    if top <= most:
        return share
    level = 1.0 / len(share)
    part = (most - level) / (top - level)
    return {cause: level + part * (value - level) for cause, value in share.items()}
