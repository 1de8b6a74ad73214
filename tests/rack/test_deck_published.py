"""What the pin deck does, against sums made by hand and what is published; extra tier.

Boards are at first touch, speeds at the pins. Samples are small and fixed, with bounds wide enough for them.
How often the deck leaves what is asked of its table of 60,000 racks (`test_carry.py`, `test_shipped_table.py`)
and of the rows of `tests/studies/rack_tuning.py`.
"""

from collections import Counter

import numpy as np
import pytest

from bowlcore.rack.deck_model import simulate_rack
from bowlcore.rack.deck_params import DeckParams
from bowlcore.rack.discs import head_pin_blow, roll_through
from bowlcore.rack.scatter import scatter

pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("mujoco")]

BALLS_LB = (16, 15, 14, 12, 10, 8, 6)


def _heading(board, angle, mph=16.5, ball_lb=15.0, params=None):
    return simulate_rack(board, angle, mph, ball_lb, params=params).heading_after_head_pin_deg


def _racks(boards, angles, count):
    return [
        simulate_rack(board, angle, 16.5, 15.0, scatter(k))
        for board in boards
        for angle in angles
        for k in range(count)
    ]


def test_lighter_balls_turn_more_off_the_head_pin():
    frictions = [name for name in DeckParams.__dataclass_fields__ if name.endswith("friction")]
    smooth = DeckParams(ball_pin_restitution=0.70, **dict.fromkeys(frictions, 0.0))
    headings = [_heading(17.5, 6.0, ball_lb=lb, params=smooth) for lb in BALLS_LB]
    # our own calculation with an earlier prototype of this deck
    assert headings == pytest.approx([-0.15, -0.69, -1.23, -2.60, -4.61, -7.81, -13.68], abs=0.3)
    discs = [head_pin_blow(2.5, 6.0, lb)[0] for lb in BALLS_LB]
    # the blow lands below the pin's centre of gravity, so flat discs overstate the turn
    assert all(flat < deck for flat, deck in zip(discs, headings, strict=True))


def test_shipped_deck_turns_light_balls_more():
    headings = [_heading(17.5, 6.0, ball_lb=lb) for lb in BALLS_LB]
    # our own calculation with an earlier prototype, ball-pin friction 0.15 there and 0.10 here
    assert headings == pytest.approx([0.24, -0.18, -0.67, -1.94, -3.79, -6.75, -12.21], abs=0.5)
    assert all(a > b for a, b in zip(headings, headings[1:], strict=False))


def test_heading_after_the_head_pin_does_not_depend_on_speed():
    headings = [_heading(17.5, 6.0, mph) for mph in (8, 12, 14, 16, 18, 20)]
    assert max(headings) - min(headings) < 0.6


def test_heading_rises_with_the_entry_angle():
    headings = [_heading(17.5, angle) for angle in range(1, 8)]
    assert all(1.0 < step < 1.5 for step in np.diff(headings))
    # our own calculation with an earlier prototype of this deck
    assert headings == pytest.approx([-6.4, -5.2, -4.0, -2.7, -1.5, -0.2, 1.1], abs=0.4)


def test_flush_hit():
    # in at 17, out near 19, touching 1-3-5-9: P. Ridenour (USBC), "Is that the 3 pin carrying the 10 pin?"
    results = _racks((17.0,), (6.0,), 10)
    assert np.median([result.exit_board for result in results]) == pytest.approx(19, abs=2)
    assert np.mean([result.contacts[:3] == (1, 3, 5) for result in results]) > 0.8
    assert all(result.finished for result in results)


@pytest.mark.claim(
    "A ball a little light, in at 16.5, goes out near 14 and leaves the 10-pin most often",
    against="P. Ridenour (USBC), Is that the 3 pin carrying the 10 pin?, known second-hand; sixteen racks",
    kind="published",
)
def test_a_little_light_leaves_the_ten_pin(figure):
    # in at 16.5, out near 14, 10-pin stays: P. Ridenour (USBC), same
    results = _racks((16.5,), (5.0, 6.0), 8)
    figure("out at board", np.median([result.exit_board for result in results]), asked="12 to 16")
    assert np.median([result.exit_board for result in results]) == pytest.approx(14, abs=2)
    assert all(result.finished for result in results)
    left = Counter(result.leave.text for result in results if not result.leave.is_strike)
    assert left.most_common(1)[0][0] == "10"


def test_flat_discs_send_the_ball_where_the_deck_does():
    rng = np.random.default_rng(4)
    pairs = []
    for k in range(60):
        board, angle = rng.uniform(14, 20), rng.uniform(1, 7)
        deck = simulate_rack(board, angle, 16.5, 15.0, scatter(k)).exit_board
        pairs.append((deck, roll_through(board, angle, 16.5, 15.0, scatter(k)).exit_board))
    deck, flat = np.array(pairs).T
    both = np.isfinite(deck) & np.isfinite(flat)
    assert both.mean() > 0.95
    assert np.corrcoef(deck[both], flat[both])[0, 1] > 0.95
    assert np.median(np.abs(deck[both] - flat[both])) < 0.8
