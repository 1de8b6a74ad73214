"""The evidence for a cause, in words."""

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.hypotheses import EARLY, EDGE, GOOD, LATE, OWN, ROLLS, TARGET
from bowlcore.coaching.perception import chance_of
from bowlcore.coaching.seen import contradictions

MEANING = {
    TARGET: "the ball was not sent where it was meant to go, so the lane is not to blame",
    EARLY: "the lane takes hold too soon for this line: it comes in high",
    LATE: "there is too much oil for this line: the ball is still skidding when it should turn",
    ROLLS: "the ball has used up its turn before the pins: it stands up and comes in flat",
    EDGE: "the step from oil to dry is so sharp that a small miss becomes a large one",
    OWN: "line and lane fit; this is the bowler's ordinary scatter",
    GOOD: "a ball in the pocket, as it was meant; what stands afterwards is no reason to change",
}


def evidence(cause, posts, told) -> str:
    """What the cause means, how well it explains what was seen, and what does not fit together."""
    parts = [f"{MEANING[cause][0].upper()}{MEANING[cause][1:]}."]
    for name, post in posts.items():
        on = "" if name is None else f" on the {name} lane"
        fits = _fit(cause, post)
        if fits is not None:
            parts.append(f"If so, {words.percent(fits)} of such balls would look like this{on}.")
        for item in post.deliveries:
            parts += contradictions(item, post.bowler)
    return " ".join(dict.fromkeys(parts))


def _fit(cause, post):
    """Geometric mean over the deliveries of the chance to look like this, if it is this cause."""
    column = list(post.share).index(cause)
    weight = post.lane_chance * post.joint[:, column]
    if weight.sum() < 1e-4:
        return None
    best = post.possible[int(weight.argmax())]
    shown = [_words_only(item) for item in post.deliveries]
    shown = [item for item in shown if item is not None]
    if not shown:
        return None
    chances = [float(chance_of(item, best.shots).mean()) for item in shown]
    return float(np.exp(np.mean(np.log(chances))))


def _words_only(seen):
    """Hit and finish alone: a chance of whole words is one that a reader can judge."""
    from bowlcore.coaching.seen import Seen

    kept = {name: value for name, value in seen.told.items() if name in ("hit", "finish")}
    return Seen(**kept) if kept else None


def doubt(share) -> str:
    """Why it cannot be told."""
    first, second = sorted(share, key=share.get, reverse=True)[:2]
    return (
        f"Much of what was seen suits '{first}' ({words.percent(share[first])}) as well as "
        f"'{second}' ({words.percent(share[second])})."
    )
