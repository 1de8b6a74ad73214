"""Tilt from the track ring: a table of our own geometry, its errors, and the sign trap."""

import numpy as np
import pytest

from bowlcore.coaching import track_ring as t
from bowlcore.coaching.spin_axis import axis_point

# section 4: W in inches for tilt
WIDTHS = {0: 13.50, 5: 12.75, 10: 12.00, 13: 11.55, 15: 11.25, 20: 10.50, 30: 9.00, 40: 7.50, 60: 4.50}


@pytest.mark.claim(
    "Tilt follows from the width of the track ring, measured across the ball's surface",
    against="a table of our own, worked out on paper; the method: a web page on tilt, known second-hand",
    kind="exact",
)
@pytest.mark.parametrize("tilt, width", WIDTHS.items())
def test_width_across_the_negative_side(tilt, width, figure):
    figure("off by", abs(t.tilt_from_width(width).value - tilt), "degrees", asked="0.1")
    assert t.tilt_from_width(width).value == pytest.approx(tilt, abs=0.1)


def test_check_20():
    assert t.tilt_from_width(11.55).value == pytest.approx(13.0, abs=0.1)
    assert t.tilt_from_width(13.5).value == 0
    assert t.tilt_from_axis_point(6.75 * (1 + 13 / 90)).value == pytest.approx(13.0)


@pytest.mark.parametrize("tilt", [0, 5, 13, 30, 60])
@pytest.mark.parametrize(
    "whole", [26.704, 27.0, 27.002]
)  # section 1.3: the rules' limits, and the usual value
def test_the_ring_of_a_sphere_of_any_circumference(tilt, whole):
    # our own geometry: the lane touches the ball at its lowest point, and the axis leans up by the tilt
    axis = axis_point(35.0, tilt)
    from_axis = np.arccos(-axis[2]) / (2 * np.pi) * whole
    from_far = np.arccos(axis[2]) / (2 * np.pi) * whole
    assert t.tilt_from_axis_point(from_axis, whole).value == pytest.approx(tilt)
    assert t.tilt_from_width(2 * from_far, whole).value == pytest.approx(tilt)
    assert t.tilt_from_width(2 * from_axis, whole, side="positive").value == pytest.approx(tilt)
    assert t.tilt_from_ring_length(whole * np.cos(np.radians(tilt)), whole).value == pytest.approx(
        tilt, abs=1e-5
    )


def test_sign_trap():  # section 4: 90 + tilt from the axis point, 90 - tilt from the opposite one
    wrong = t.tilt_from_width(27 - 11.55)  # measured across the larger side by mistake
    assert wrong.value == pytest.approx(-13) and "larger side? Then it is 13 degrees" in wrong.sentence
    assert t.tilt_from_width(27 - 11.55, side="positive").value == pytest.approx(13)


def test_an_eighth_of_an_inch_is_the_same_everywhere():  # section 4: 0.83 degrees
    assert {round(t.tilt_from_width(w).error, 2) for w in WIDTHS.values()} == {0.83}


@pytest.mark.parametrize("tilt, error", [(5, 4.8), (10, 2.4), (13, 1.9), (20, 1.2), (30, 0.8)])  # section 4
def test_a_caliper_is_poor_at_low_tilt(tilt, error):
    found = t.tilt_from_chord(27.0 / np.pi * np.cos(np.radians(tilt)))
    assert found.value == pytest.approx(tilt, abs=0.05) and found.error == pytest.approx(error, abs=0.06)


def test_a_caliper_at_no_tilt_says_so():
    found = t.tilt_from_chord(27.0 / np.pi)
    assert found.value == 0 and found.error > 6 and "Too unsure" in found.sentence


def ring(tilt, moved, toward=40):
    return t.ring_distances(tilt, moved, toward)


def test_ring_distances_lie_on_the_moved_ring():
    # our own geometry, checked with vectors: every point is 90 + tilt from where the axis has moved to
    distance, around = ring(13, 25, 40) / 27 * 2 * np.pi, 2 * np.pi * np.arange(8) / 8
    points = np.column_stack(
        [np.sin(distance) * np.cos(around), np.sin(distance) * np.sin(around), np.cos(distance)]
    )
    a, b = np.radians([25, 40])
    moved = np.array([np.sin(a) * np.cos(b), np.sin(a) * np.sin(b), np.cos(a)])
    assert np.degrees(np.arccos(points @ moved)) == pytest.approx(103)


@pytest.mark.parametrize("order", [(0, 1, 2), (2, 0, 1), (1, 2, 0)])
def test_the_first_ring_is_the_one_that_does_not_wobble(order):
    rings = [ring(13, 0), ring(12.5, 10), ring(12, 20)]
    found = t.release_ring([rings[i] for i in order])
    assert found.index == order.index(0) and found.tilt.value == pytest.approx(13)


def test_the_wrong_ring_adds_degrees():  # section 4: several degrees
    one_place = [t.tilt_from_axis_point(float(d)).value for d in ring(12, 20)]
    assert max(one_place) - 13 > 5 and min(one_place) - 13 < -5


def test_rings_too_near_each_other_are_not_told_apart():
    found = t.release_ring([ring(13, 0), ring(13, 1.0)])
    assert "hardly flares" in found.sentence


def test_a_tape_off_the_axis_is_noticed():
    assert "is the tape on the axis point?" in t.release_ring([ring(13, 8)]).sentence


@pytest.mark.parametrize("call, words", [
    (lambda: t.tilt_from_width(0.2), "width_in must be a number between 0.5 and 26.5 in, got 0.2"),
    (lambda: t.tilt_from_width(12, 21.6), "circumference_in must be a number between 26.7 and 27.01 in, got 21.6"),
    (lambda: t.tilt_from_width(12, side="left"), "side must be one of negative, positive, got 'left'"),
    (lambda: t.tilt_from_chord(9), "chord_in must be a number between 0.5"),
    (lambda: t.tilt_from_ring_length(28), "ring_in must be a number between 0.5"),
    (lambda: t.tilt_from_axis_point(14), "distance_in must be a number between 0.25 and 13.25 in, got 14"),
    (lambda: t.release_ring([]), "rings must hold the distances of at least one ring"),
    (lambda: t.release_ring([[7, 7]]), "ring 1 must have 4 to 12 distances from the tape, got 2"),
    (lambda: t.release_ring([[7, 7, 7, 70]]), "distance of ring 1 must be a number between"),
])  # fmt: skip
def test_bad_input_is_one_sentence(call, words):
    with pytest.raises(ValueError) as problem:
        call()
    assert words in str(problem.value) and "\n" not in str(problem.value)
