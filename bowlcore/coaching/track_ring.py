"""Axis tilt from the ring of oil that the lane leaves on the ball.

Seen from the axis point (the positive one, where the tape goes) the ring lies 90 + tilt degrees away, seen
from the opposite, negative point 90 - tilt. So which side is measured across decides the sign.
"""

from math import acos, cos, degrees, pi, radians, sin
from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.measuring import Measured, measured
from bowlcore.motion.checks import number_in

CIRCUMFERENCE_IN = 27.0
_SIDES = ("negative", "positive")
_APART_IN = 0.25  # two rings whose wobble differs by less than this cannot be told apart: our choice


def tilt_from_width(width_in, circumference_in=CIRCUMFERENCE_IN, side="negative", error_in=0.125) -> Measured:
    """Axis tilt [deg] from the ring's width along the surface: 90 (1 - width / half the circumference).

    Lay a tape measure on the ball, from ring to ring, over the middle of the smaller cap. That cap holds the
    negative axis point, on the far side from the tape. Thirteen and a half inches is no tilt at all.

    Parameters
    ----------
    width_in : float
        Along the surface, 0.5 in to twice half the circumference.
    circumference_in : float
        Of the ball, 26.7 to 27.01 in.
    side : "negative" or "positive"
        Which axis point lies under the middle of the measure.
    error_in : float
        One standard deviation of the width, 0.01 to 1: an eighth of an inch is 0.83 degrees, everywhere.
    """
    half = _circumference(circumference_in) / 2.0
    number_in("width_in", width_in, 0.5, 2.0 * half - 0.5, "in")
    number_in("error_in", error_in, 0.01, 1, "in")
    if side not in _SIDES:
        raise ValueError(f"side must be one of {', '.join(_SIDES)}, got {side!r}")
    tilt = 90.0 * (1.0 - width_in / half) * (1.0 if side == "negative" else -1.0)
    extra = ""
    if tilt < 0:
        extra = (
            " Below 0 is rare: was it measured across the larger side? Then it is "
            f"{words.degrees(-tilt)} up instead."
        )
    return measured("axis_tilt_deg", tilt, 90.0 * error_in / half, extra)


def tilt_from_axis_point(distance_in, circumference_in=CIRCUMFERENCE_IN, error_in=0.125) -> Measured:
    """Axis tilt [deg] from the distance between axis point and ring along the surface.

    A quarter of the circumference is no tilt; the ring lies further away by 0.075 in for each degree.
    """
    quarter = _circumference(circumference_in) / 4.0
    number_in("distance_in", distance_in, 0.25, 2.0 * quarter - 0.25, "in")
    number_in("error_in", error_in, 0.01, 1, "in")
    return measured("axis_tilt_deg", 90.0 * (distance_in / quarter - 1.0), 90.0 * error_in / quarter)


def tilt_from_ring_length(ring_in, circumference_in=CIRCUMFERENCE_IN, error_in=0.125) -> Measured:
    """Axis tilt [deg] from the length of the ring itself, a string laid along it: cos(tilt) = ring / circumference."""
    whole = _circumference(circumference_in)
    return _from_cosine("ring_in", ring_in, whole, error_in)


def tilt_from_chord(chord_in, circumference_in=CIRCUMFERENCE_IN, error_in=1.0 / 16.0) -> Measured:
    """Axis tilt [deg] from a caliper across the ring: cos(tilt) = chord / diameter. Hardly any use at low tilt."""
    return _from_cosine("chord_in", chord_in, _circumference(circumference_in) / pi, error_in)


def _from_cosine(name, length_in, whole_in, error_in):
    number_in(name, length_in, 0.5, whole_in + error_in, "in")
    number_in("error_in", error_in, 0.01, 1, "in")
    tilt = degrees(acos(min(length_in / whole_in, 1.0)))
    steep = sin(radians(tilt))
    least = degrees(
        acos(1.0 - error_in / whole_in)
    )  # what the error alone can look like when there is no tilt
    error = min(degrees(error_in / whole_in / steep), least) if steep > 0 else least
    extra = " Too unsure at so little tilt: measure across the surface instead." if error > 3.0 else ""
    return measured("axis_tilt_deg", tilt, error, extra)


class Ring(NamedTuple):
    """One of several rings on a ball: which it is in the list given, how much it wobbles [in], and its tilt."""

    index: int
    wobble_in: float
    tilt: Measured
    sentence: str


def release_ring(rings, circumference_in=CIRCUMFERENCE_IN, error_in=0.125) -> Ring:
    """Which of several rings was made first, as the ball left the hand; its tilt.

    A ball that flares turns about other points as it goes, and draws a ring about each. Only the first is
    the same distance from the tape all the way round, because the tape sat on the first axis point.

    Parameters
    ----------
    rings : list of sequences
        For each ring its distance [in] from the tape along the surface, in 4 to 12 directions a like
        angle apart.
    circumference_in, error_in : float
        As in `tilt_from_axis_point`.

    Returns
    -------
    Ring

    Raises
    ------
    ValueError
        When the distances are too few, or off the ball.
    """
    if len(rings) < 1:
        raise ValueError("rings must hold the distances of at least one ring")
    wobbles, means = [], []
    for i, ring in enumerate(rings):
        ring = np.asarray(ring, float)
        if ring.ndim != 1 or not 4 <= ring.size <= 12:
            raise ValueError(f"ring {i + 1} must have 4 to 12 distances from the tape, got {ring.size}")
        for distance in ring:
            number_in(f"distance of ring {i + 1}", float(distance), 0.25, circumference_in / 2 - 0.25, "in")
        wobbles.append(float(ring.max() - ring.min()))
        means.append(float(ring.mean()))
    order = np.argsort(wobbles)
    first = int(order[0])
    tilt = tilt_from_axis_point(means[first], circumference_in, error_in)
    text = f"Ring {first + 1} keeps its distance from the tape best (to {wobbles[first]:.2f} in): {tilt.sentence}"
    if len(rings) > 1 and wobbles[order[1]] - wobbles[first] < _APART_IN:
        other = tilt_from_axis_point(means[int(order[1])], circumference_in, error_in)
        text += (
            f" But ring {int(order[1]) + 1} does so nearly as well and would give {words.degrees(other.value)}. "
            "Throw a ball that hardly flares and measure its single ring."
        )
    elif wobbles[first] > 4 * error_in:
        text += " Even this ring wobbles: is the tape on the axis point?"
    return Ring(first, wobbles[first], tilt, text)


def ring_distances(tilt_deg, moved_deg, toward_deg, count=8, circumference_in=CIRCUMFERENCE_IN):
    """Distances [in] from the tape to the ring that is drawn once the axis has moved over the ball: our geometry.

    Parameters
    ----------
    tilt_deg : float
        Elevation of the axis when this ring is drawn.
    moved_deg, toward_deg : float
        How far the axis point has moved over the ball, and in which direction round the tape.
    """
    around = 2.0 * pi * np.arange(count) / count - radians(toward_deg)
    a, wanted = radians(moved_deg), -sin(radians(tilt_deg))
    # points at distance d from the tape in direction `around` lie at 90 + tilt from the moved axis point:
    # cos(d) cos(a) + sin(d) sin(a) cos(around) = -sin(tilt)
    size = np.hypot(cos(a), sin(a) * np.cos(around))
    middle = np.arctan2(sin(a) * np.cos(around), cos(a))
    return (middle + np.arccos(wanted / size)) / (2.0 * pi) * circumference_in


def _circumference(circumference_in):
    return number_in("circumference_in", circumference_in, 26.7, 27.01, "in")
