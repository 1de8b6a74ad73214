"""The four numbers of a hand as things to see: where the axis points, where the ring runs, spin against speed.

Seen from behind the ball and from above it, in radii from its centre; a left-hander's picture is the mirror.
"""

from dataclasses import dataclass
from math import cos, radians

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.spin_axis import axis_point, turning, view
from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.closed_form import best_rotation_deg
from bowlcore.motion.release import Release

MATCHED = (0.40, 0.55)  # spin speed over ball speed between which this course says "matched": our choice
KINDS = ("speed-dominant", "matched", "rev-dominant")
_TAPE_DEG = 35.0  # the second strip of tape, from the axis point
_TRAIL = 12  # places of the tape in one turn
ABOVE = ((0, -1, 0), (1, 0, 0), (0, 0, 1))  # what is right, up and towards the eye, seen from above, pins up


@dataclass(frozen=True)
class Seen:
    """One view of the ball: arrays (n, 3) of right, up and towards the eye, in radii.

    axis : from the far axis point to the near one with the tape
    ring : the track ring, closed
    tape : the second strip of tape now, one row
    trail : where that strip is in twelve moments of one turn
    """

    axis: np.ndarray
    ring: np.ndarray
    tape: np.ndarray
    trail: np.ndarray


@dataclass(frozen=True)
class HandAnswer:
    """behind, above : Seen; ratio : spin speed over ball speed; kind : one of KINDS"""

    behind: Seen
    above: Seen
    ratio: float
    kind: str
    sentence: str
    rows: list


def spin_ratio(release, ball=None) -> float:
    """How fast the cover moves because of the spin that lies level, against how fast the ball moves.

    1 is a ball that spins as fast as it travels: end over end it would roll at once.
    """
    ball = Ball() if ball is None else ball
    spin_mps = ball.radius_m * release.rev_rate_rpm * units.RPM_RADS * cos(radians(release.axis_tilt_deg))
    return spin_mps / (release.speed_mph * units.MPH_MPS)


def kind_of(ratio) -> str:
    """ "speed-dominant", "matched" or "rev-dominant", by our own limits."""
    low, high = MATCHED
    return KINDS[0] if ratio < low else KINDS[2] if ratio > high else KINDS[1]


def demo_ratios() -> list[tuple[str, float]]:
    """The invented demo bowlers who spin the ball, with their ratios, from small to large."""
    found = [(name, spin_ratio(one.release, one.ball)) for name, one in load_bowlers().items()]
    return sorted(((name, ratio) for name, ratio in found if ratio > 0), key=lambda pair: pair[1])


def answer(release: Release, turned_deg=0.0, *, metric=False) -> HandAnswer:
    """What the four numbers look like.

    Parameters
    ----------
    release : Release
        Its line is not used.
    turned_deg : float
        How far the ball has turned since it was let go.
    metric : bool
        Metres and km/h in the words.
    """
    axis = axis_point(release.axis_rotation_deg, release.axis_tilt_deg)
    around = turning(np.radians(np.linspace(0.0, 360.0, 121))[:, None] * axis)
    ring = around @ np.array([0.0, 0.0, -1.0])  # through the lowest point, where it touches the lane
    start = _tape(axis)
    moments = np.radians(turned_deg + np.arange(_TRAIL) * 360.0 / _TRAIL)
    trail = turning(moments[:, None] * axis) @ start
    side = 1.0 if release.hand == "right" else -1.0
    views = [
        Seen(*(points @ eye.T for points in (np.array([-axis, axis]), ring, trail[:1], trail)))
        for eye in (view("behind", release.hand), np.array(ABOVE, float) * (1.0, side, 1.0))
    ]
    ratio = spin_ratio(release)
    kind = kind_of(ratio)
    far = (
        release.speed_mph * units.MPH_MPS / units.FOOT_M * 60.0 / release.rev_rate_rpm
        if release.rev_rate_rpm
        else None
    )
    return HandAnswer(
        *views, ratio, kind, _sentence(release, ratio, kind, far, metric), _rows(release, ratio, kind, metric)
    )


def _tape(axis):
    """A second strip of tape, above the axis point as the ball is let go."""
    up = np.array([0.0, 0.0, 1.0]) - axis[2] * axis
    size = np.linalg.norm(up)
    up = up / size if size > 1e-9 else np.array([1.0, 0.0, 0.0])
    return np.cos(np.radians(_TAPE_DEG)) * axis + np.sin(np.radians(_TAPE_DEG)) * up


def _sentence(release, ratio, kind, far, metric):
    rotation, tilt = (words.to_half(x) for x in (release.axis_rotation_deg, release.axis_tilt_deg))
    way = "you" if rotation > 0 else "the pins"
    looks = (
        f"{words.degrees(abs(rotation))} from the side towards {way}" if rotation else "straight to the side"
    )
    leans = f"{words.degrees(abs(tilt))} {'up' if tilt > 0 else 'down'}" if tilt else "level"
    parts = [f"The tape on the axis looks {looks} and {leans}."]
    if far is None:
        parts.append("Without revs nothing turns.")
    else:
        parts.append(f"One turn takes {words.distance(far, metric)} of lane at first.")
    parts.append(f"{_spin_words(ratio)}: {kind}, by our limits.")
    return " ".join(parts)


def _spin_words(ratio):
    """Spin against speed as a share of 100."""
    return f"The cover spins at {100 * ratio:.0f} of 100 of the ball's speed"


def _rows(release, ratio, kind, metric):
    you = [{"who": "as set above", **_row(release, ratio, kind, metric)}]
    demo = load_bowlers()
    return you + [
        {"who": f"{name} (invented)", **_row(demo[name].release, r, kind_of(r), metric)}
        for name, r in demo_ratios()
    ]


def _row(release, ratio, kind, metric):
    best = float(best_rotation_deg(1.0, ratio))
    return {
        "speed": words.speed(release.speed_mph, metric),
        "rev rate": words.revs(release.rev_rate_rpm),
        "rotation": words.degrees(release.axis_rotation_deg),
        "tilt": words.degrees(release.axis_tilt_deg),
        "spin over speed": f"{ratio:.2f}",
        "": kind,
        "most sideways push while it skids at": words.degrees(best) if best == best else "no such rotation",
    }
