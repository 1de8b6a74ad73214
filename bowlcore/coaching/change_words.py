"""A change told so that it can be carried out: what, why, when, and the caution that belongs to it.

Hand technique is common practice, no source.
"""

from bowlcore.coaching import words
from bowlcore.coaching.candidates import HAND
from bowlcore.coaching.feet import line_words
from bowlcore.motion.path import simulate

_HAND = {
    "more rotation": "let the hand follow through naturally round the side of the ball",
    "come round the ball": "let the hand follow through naturally round the side of the ball",
    "less rotation": "stay behind the ball, palm open to the target",
    "stay behind the ball": "stay behind the ball, palm open to the target",
    "more tilt": "carry the bowling hand inside, support hand on the outer side of the ball",
    "less tilt": "neutral hand, support hand at the centre of the ball",
    "more revs": "keep the fingers under the ball a little longer",
    "fewer revs": "a flatter, quieter hand at the release",
}
_TWO_HANDED = {
    "more rotation": "let the upper hand travel round the side as the lower arm swings through",
    "come round the ball": "let the upper hand travel round the side as the lower arm swings through",
    "less rotation": "keep the bowling hand under and behind the ball as the support hand leaves it",
    "stay behind the ball": "keep the bowling hand under and behind the ball as the support hand leaves it",
}
SAFE_HAND = (
    "Turn the whole hand with the swing, never force the wrist; a light ball and few repeats first. "
    "Stop at pain, numbness or tingling and see a professional."
)
_NO_HAND = (
    "No change of the hand is offered. At pain, numbness or tingling stop for the day and tell the coach or a "
    "parent, and see a professional."
)
_HEAVY = "Only with a ball that fits the hand; holes and weight are checked by the shop."


def _inward(boards):
    return f"{words.halves(abs(boards))} {'in' if boards > 0 else 'out'}"


def _line_move(candidate, bowler):
    feet, target = candidate.feet, candidate.target
    at_start = bowler.feet.start_move(feet)
    walk = f" ({words.halves(abs(at_start))} at the start of the approach)" if at_start != feet else ""
    if feet == target:
        return f"move feet and target {_inward(feet)} together{walk}"
    if not target:
        return f"move the feet {_inward(feet)}{walk}, same target"
    if not feet:
        return f"same feet, look {_inward(target)}"
    return f"move the feet {_inward(feet)}{walk} and the target {_inward(target)}"


def what(candidate, changed, bowler, metric=False) -> str:
    """The change in words that can be carried out, ending with the line as bowlers say it."""
    line = line_words(changed.release, bowler.feet)
    if candidate.kind == "stay":
        return f"Stay as you are: {line}."
    parts = []
    if candidate.kind == "ball":
        parts.append(f"take {candidate.told}")
    elif candidate.kind == "hand":
        cues = _HAND | _TWO_HANDED if bowler.feet.style == "two-handed" else _HAND
        parts.append(f"{candidate.told}: {cues[candidate.told]} ({_numbers(changed, bowler)})")
    elif candidate.kind in ("speed", "loft"):
        parts.append(f"{_amount(candidate, bowler, metric)} {candidate.told}")
    if candidate.feet or candidate.target:
        parts.append(_line_move(candidate, bowler))
    elif parts:
        parts.append("same line")
    told = "; ".join(parts)
    return f"{told[0].upper()}{told[1:]}: {line}."


def _amount(candidate, bowler, metric):
    """By how much speed or loft is changed."""
    now, then = bowler.release, candidate.release
    if candidate.kind == "speed":
        return words.step_of_speed(abs(then.speed_mph - now.speed_mph), metric)
    return words.distance(abs(then.loft_ft - now.loft_ft), metric)


def _numbers(changed, bowler):
    now, then = bowler.release, changed.release
    told = {
        "axis_rotation_deg": f"rotation {words.degrees(then.axis_rotation_deg)}",
        "axis_tilt_deg": f"tilt {words.degrees(then.axis_tilt_deg)}",
        "rev_rate_rpm": words.revs(then.rev_rate_rpm),
    }
    return ", ".join(told[name] for name in HAND if getattr(now, name) != getattr(then, name))


def why(candidate, bowler, changed, surface, metric=False) -> str:
    """What the centre ball does now and would do, and the reason."""
    now = _told(simulate(bowler.release, surface, bowler.ball), metric)
    if candidate.kind == "stay":
        return f"The centre ball {now}; nothing tried is better by more than a tie."
    then = _told(simulate(changed.release, surface, changed.ball), metric)
    return f"Now the centre ball {now}; then it {then}. {_reason(candidate)}"


def _told(path, metric):
    if path.gutter_ft == path.gutter_ft:
        return "is in the gutter"
    hit = words.hit(path.entry_board)
    met = (
        "hits the pocket"
        if hit == "in the pocket"
        else f"goes {hit}"
        if hit.startswith("past")
        else f"is {hit}"
    )
    return (
        f"{met} at {words.degrees(abs(path.entry_angle_deg))} and {words.rolling(path.roll_start_ft, metric)}"
    )


def _reason(candidate):
    if candidate.kind == "speed":
        faster = candidate.told == "faster"
        return "A faster ball has less time to turn." if faster else "A slower ball has more time to turn."
    if candidate.kind == "ball":
        return "Its cover takes the oil and the dry boards in another way; the hand stays the same."
    if candidate.kind == "loft":
        return "In the air nothing slows the slip, so the whole path begins later or sooner."
    if candidate.kind == "hand":
        return "The hand decides how much turn the ball has; the oil only decides where it turns."
    opened = candidate.feet - candidate.target
    if abs(opened) < 0.25:
        return (
            "Further in it has more oil under it and turns later."
            if candidate.feet > 0
            else "Further out it meets dry boards sooner."
        )
    return (
        "The ball is sent further out and must come back."
        if opened > 0
        else "The ball is sent less far out and reaches the pins further in."
    )


def when(candidate, bowler) -> str:
    """ "next ball", "next game" or "practice"."""
    if candidate.kind != "hand":
        return "next ball" if candidate.things < 2 else "next game"
    share = max(
        abs(getattr(candidate.release, name) - getattr(bowler.release, name)) / bowler.can_change[name]
        for name in HAND
        if bowler.can_change.get(name, 0) > 0
    )
    return "next game" if share <= 0.5 + 1e-9 and candidate.things < 2 else "practice"


def caution(candidate, bowler) -> str:
    """The warning that belongs to a change; "" when there is none."""
    if bowler.young_or_sore:
        return _NO_HAND
    return {"hand": SAFE_HAND, "ball": _HEAVY}.get(candidate.kind, "")
