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


@pytest.mark.claim(
    "After at most two rounds of advice the ball comes into the pocket in nine cases of ten",
    against=(
        "ten made-up lanes; full study: python tests/studies/advisor.py 300 1, figures in DEVELOPERS.md"
    ),
    kind="own",
)
def test_advice_brings_the_ball_to_the_pocket(advised, figure):
    found = advisor.summary(advised)
    figure(
        "in the pocket in this small sample", found["in the pocket after"], asked="0.75 and more", least=True
    )
    figure("strike odds not lower", found["strike odds not lower"], asked="0.9 and more", least=True)
    assert found["in the pocket after"] >= 0.75
    assert found["in the pocket after"] >= 0.75 * found["in the pocket if told the lane"]
    assert found["strike odds not lower"] >= 0.9


@pytest.mark.claim(
    "The advice does not change a hand where the feet would do",
    against=(
        "ten made-up lanes; full study: python tests/studies/advisor.py 300 1, figures in DEVELOPERS.md"
    ),
    kind="own",
)
def test_no_hand_change_where_feet_would_do(advised, figure):
    figure("hand changed in", advisor.summary(advised)["a hand change"], asked="0.1")
    assert advisor.summary(advised)["a hand change"] <= 0.1


def test_advice_on_a_lane_seen_through_errors_beats_none(advised):
    before, after = (np.mean([row[name] for row in advised]) for name in ("pocket_before", "pocket_after"))
    assert after > before + 0.2


@pytest.mark.claim(
    "Where its assumptions hold, the reading of a reaction draws nearly all from what was seen that can "
    "be drawn",
    against=(
        "the exact posterior by brute force, fifteen cases; full study: python "
        "tests/studies/honest_reading.py 600 1, figures in DEVELOPERS.md"
    ),
    kind="independent",
)
def test_reading_gains_what_can_be_gained_where_its_assumptions_hold(figure):
    share, reader, exact = honest_reading.gains([honest_reading.one_case(seed, True) for seed in range(15)])
    figure("share of the possible gain", share, asked="more than 0.8", least=True)
    assert reader > 0.3 and share > 0.8
