"""The published launch (AIP Advances 15, 045222, 2025; its numbers read second-hand in a news summary)."""

import pytest

from bowlcore.coaching import published_shot
from bowlcore.coaching.best_rotation import rows
from bowlcore.motion.path import simulate


@pytest.mark.parametrize("tilt", [0.0, 13.0])
def test_one_oil_end_between_34_and_40_ft_brings_it_to_board_17_and_a_half(tilt):
    end = published_shot.fitting_end_ft(tilt)
    assert 34 < end < 40  # what the launch is asked to need
    path = simulate(published_shot.published_release(tilt), published_shot.two_zones(end))
    assert path.entry_board == pytest.approx(17.5, abs=1e-3)
    assert 5.3 < path.entry_angle_deg < 5.7  # 5.4-5.6: our own calculation, without any fitted friction


def test_on_a_flat_lane_it_does_not_get_there():
    flat_board = published_shot.answer().flat_board
    assert not abs(flat_board - 17.5) <= 1  # NaN counts: it is in the gutter


def test_best_rotation_falls_with_revs_and_differs_between_the_questions():
    """61 degrees at 18 mph and 350 rpm, 47 at 500 rpm: our own calculation, arccos(spin speed / ball speed)."""
    table = rows()
    pushed = [int(row["most push sideways while it skids"].rstrip("°")) for row in table]
    assert pushed == sorted(pushed, reverse=True)
    medium = [text for title, text in table[1].items() if title != "bowler"]
    assert len(set(medium)) == 4
