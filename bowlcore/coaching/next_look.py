"""What to watch, or which single ball to throw, so that the two likeliest causes part: tried by simulation."""

import numpy as np

from bowlcore.coaching.hypotheses import GOOD, OWN, TARGET
from bowlcore.coaching.moves import moved
from bowlcore.coaching.perception import follow_all, word_chances
from bowlcore.coaching.seen import EXITS

FIRST = "Say what was seen: was the target hit, and was the ball light, flush or high?"
ASK_TARGET = "Did the ball roll over its target, at the usual speed? Ask that first."
# what to do about a cause that is clear, where nothing is to be changed
_SAME_AGAIN = {
    TARGET: "Throw it over the target, at the usual speed: that was missed.",
    OWN: "The same ball again: it is the bowler's own scatter.",
    GOOD: "The same ball again: it was as it was meant.",
}
_HARDLY, _TRIED = (
    0.02,
    32,
)  # a lane that is less than this of a cause is passed over; test balls tried on each
_GOOD_ENOUGH = 0.35  # share of cases in which the answer differs between the two causes
_LOOKS = {
    "finish": "watch the last third of the lane: still skidding, or rolled out and standing up?",
    "exit": "watch where the ball leaves the deck, {}, over it, or further in",
    "hit": "look whether it meets the head pin light, flush or high",
}
_TEST_BALLS = (
    ("throw one ball with feet and target 2 boards further in", 2.0, 2.0),
    ("throw one ball with feet and target 2 boards further out", -2.0, -2.0),
    ("throw one ball over a target 1 board further out, same feet", 0.0, -1.0),
)


def next_step(posts, share, told) -> str:
    """The next thing to do: the look, or the ball, that separates the two likeliest causes best.

    Parameters
    ----------
    posts : dict lane name -> Posterior
    share : dict cause -> chance
    told : list of Seen
    """
    if all(item.target_hit is None and item.arrow_board is None for item in told):
        return ASK_TARGET
    first, second = sorted(share, key=share.get, reverse=True)[:2]
    if share[first] > 0.85:
        return _SAME_AGAIN.get(first, f"Act on '{first}', which is clear enough, then look again.")
    found = []
    for post in posts.values():
        edge = EXITS[0 if post.bowler.release.hand == "right" else -1]
        seen = set().union(*(item.told for item in post.deliveries))
        for field, text in _LOOKS.items():
            if field not in seen:
                found.append((_parted(post, field, first, second, None), text.format(edge)))
        if TARGET not in (first, second):
            found += [
                (_parted(post, "hit", first, second, move), f"{text}, and see how it hits")
                for text, *move in _TEST_BALLS
            ]
    best, text = max(found, default=(0.0, ""))
    if best < _GOOD_ENOUGH:
        return f"Throw the same ball again and compare: no single look tells '{first}' from '{second}' well."
    return (
        f"{text[0].upper()}{text[1:]}{'' if text[-1] == '?' else '.'} That tells '{first}' from '{second}'."
    )


def _parted(post, field, first, second, move):
    """How far the chances of the words differ between two causes (0 to 1, total variation)."""
    columns = [list(post.share).index(cause) for cause in (first, second)]
    weight = post.lane_chance[:, None] * post.joint[:, columns]  # (lane, cause)
    if not weight.any(axis=0).all():
        return 0.0
    weight /= weight.sum(axis=0)
    weight[weight < _HARDLY] = 0.0
    lanes = np.flatnonzero(weight.any(axis=1))
    if move is None:
        shots = [post.possible[i].shots for i in lanes]
        which = [post.ball_chance[i].mean(axis=0) for i in lanes]
    else:
        shots = _thrown(post, lanes, move)
        which = np.full((len(lanes), _TRIED), 1.0 / _TRIED)
    chances = [(word_chances(field, s) * ball).sum(axis=1) for s, ball in zip(shots, which, strict=True)]
    one, two = (weight[lanes] / weight.sum(axis=0)).T @ np.array(chances)
    return float(0.5 * np.abs(one - two).sum())


def _thrown(post, lanes, move):
    """The same bowler's balls on a moved line, on some of the possible lanes."""
    try:
        bowler = moved(post.bowler, *move)
    except ValueError:  # off the lane
        bowler = post.bowler
    return follow_all([(bowler, post.possible[i].lane, post.possible[i].shots.usual) for i in lanes], _TRIED)
