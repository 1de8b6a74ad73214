"""The two studies of reading and advice, on a few fixed cases; the full ones are scripts in tests/studies.

The bounds leave room for so small a sample; the figures of the full studies stand in DEVELOPERS.md.
"""

import sys
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
import advisor  # noqa: E402
import honest_reading  # noqa: E402


@pytest.fixture(scope="module")
def advised():
    return [advisor.one_case(seed) for seed in range(10)]


def test_advice_brings_the_ball_to_the_pocket(advised):
    found = advisor.summary(advised)
    assert found["in the pocket after"] >= 0.75
    assert found["in the pocket after"] >= 0.75 * found["in the pocket if told the lane"]
    assert found["strike odds not lower"] >= 0.9


def test_no_hand_change_where_feet_would_do(advised):
    assert advisor.summary(advised)["a hand change"] <= 0.1


def test_advice_on_a_lane_seen_through_errors_beats_none(advised):
    before, after = (np.mean([row[name] for row in advised]) for name in ("pocket_before", "pocket_after"))
    assert after > before + 0.2


def test_reading_gains_what_can_be_gained_where_its_assumptions_hold():
    share, reader, exact = honest_reading.gains([honest_reading.one_case(seed, True) for seed in range(15)])
    assert reader > 0.3 and share > 0.8
