"""Where the hands are on the ball and which number that is said to move: common practice, no source.

How much is each person's own, and was not measured here. Places are seen from behind the ball, in radii, for
a right-hander; the outer side is the own gutter's.
"""

from dataclasses import dataclass, replace
from typing import NamedTuple

from bowlcore.coaching import hand_numbers, words
from bowlcore.motion.release import RANGES, Release

STYLES = ("one-handed", "two-handed")


class Technique(NamedTuple):
    """name_of_number and way (+1 more, -1 less); places of the bowling hand at first and at last, and of the other."""

    number: str
    way: int
    does: str
    hand: tuple
    hand_after: tuple
    support: tuple


TECHNIQUES = {
    "hand follows through round the side": Technique(
        "axis_rotation_deg", 1, "the hand is let follow through, naturally, round the outer side of the ball",
        (0.0, -0.45), (0.72, -0.1), (-0.75, 0.25),
    ),
    "hand stays behind the ball": Technique(
        "axis_rotation_deg", -1, "the hand stays behind the ball, the palm open to the target",
        (0.0, -0.45), (0.0, 0.25), (-0.75, 0.25),
    ),
    "hand inside, support hand outside": Technique(
        "axis_tilt_deg", 1, "the bowling hand is carried inside, the support hand lies on the outer side of the ball",
        (-0.62, -0.35), (-0.3, -0.2), (0.78, 0.15),
    ),
    "neutral hand, support hand centred": Technique(
        "axis_tilt_deg", -1, "the bowling hand is neutral, the support hand lies at the centre of the ball",
        (0.0, -0.5), (0.0, -0.1), (0.0, 0.62),
    ),
}  # fmt: skip
_NAMES = {"axis_rotation_deg": "axis rotation", "axis_tilt_deg": "axis tilt"}
_SUPPORT = {
    "one-handed": "The support hand shows the start; it leaves the ball before the swing.",
    "two-handed": "The support hand stays on the ball until just before it is let go.",
}


@dataclass(frozen=True)
class TechniqueAnswer:
    """before, after : HandAnswer of the release as it was and as it may become"""

    technique: Technique
    before: hand_numbers.HandAnswer
    after: hand_numbers.HandAnswer
    sentence: str
    rows: list


def answer(technique, style, amount_deg=15.0, *, release=None, hand="right", metric=False) -> TechniqueAnswer:
    """One technique: which number it is said to move, and what the ball then looks like.

    Parameters
    ----------
    technique : a name in TECHNIQUES
    style : "one-handed" or "two-handed"
    amount_deg : float
        By how much it moves for this person: to be measured, here only chosen.
    release : Release, optional

    Raises
    ------
    ValueError
        For an unknown technique or style.
    """
    if technique not in TECHNIQUES:
        raise ValueError(f"technique must be one of {'; '.join(TECHNIQUES)}, got {technique!r}")
    if style not in STYLES:
        raise ValueError(f"style must be one of {', '.join(STYLES)}, got {style!r}")
    one = TECHNIQUES[technique]
    usual = Release(17, 300, 45, 15, 17, 13, hand=hand) if release is None else release
    low, high, _ = RANGES[one.number]
    moved = min(max(getattr(usual, one.number) + one.way * amount_deg, low), high)
    after = replace(usual, **{one.number: moved})
    name, more = _NAMES[one.number], "raises" if one.way > 0 else "lowers"
    text = (
        f"{style.capitalize()}: {one.does}. Common practice says that this {more} {name}. If it does so by "
        f"{words.degrees(amount_deg)} for you, {words.degrees(getattr(usual, one.number))} become {words.degrees(moved)}. "
        f"{_SUPPORT[style]}"
    )
    rows = [
        {
            "technique": key,
            "said to": f"{'raise' if item.way > 0 else 'lower'} {_NAMES[item.number]}",
            "how we know": "common practice, no source",
        }
        for key, item in TECHNIQUES.items()
    ]
    before, then = (hand_numbers.answer(item, metric=metric) for item in (usual, after))
    return TechniqueAnswer(one, before, then, text, rows)
