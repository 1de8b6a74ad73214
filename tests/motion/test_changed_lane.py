"""A changed lane changes as it says, and a mixture lies between its parts."""

import numpy as np
import pytest

from bowlcore import Ball, Release, simulate
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.changed_lane import ChangedLane, LaneChange, MixedLane, table_values
from bowlcore.motion.surface import ZonedLane

HOUSE, BALL, LINE = lane_of("house"), Ball(), Release(17, 300, 45, 13, 17, 13)


def test_no_change_is_the_same_lane():
    assert np.array_equal(table_values(ChangedLane(HOUSE, LaneChange()), BALL), table_values(HOUSE, BALL))


def test_a_looser_house_is_the_same_as_a_scaled_friction_law():
    """Two ways to the same lane: on the table, and through the law; they differ only at the rules' limit."""
    ours = table_values(ChangedLane(HOUSE, LaneChange(looser=1.2)), BALL)
    assert ours == pytest.approx(table_values(lane_of("house", 20), BALL), rel=1e-12)


def test_a_longer_pattern_is_read_further_down():
    ours = ChangedLane(HOUSE, LaneChange(longer_ft=3))
    assert ours.friction(12, 43) == pytest.approx(HOUSE.friction(12, 40))
    assert simulate(LINE, ours).hook_start_ft > simulate(LINE, HOUSE).hook_start_ft + 1


def test_a_worn_track_hooks_earlier_and_leaves_the_rest_alone():
    path = simulate(LINE, HOUSE)
    worn = ChangedLane(
        HOUSE, LaneChange(worn=0.3, track=tuple(zip(path.distance_ft, path.board, strict=True)))
    )
    assert simulate(LINE, worn).entry_board > path.entry_board + 0.5
    assert worn.friction(35, 30) == pytest.approx(HOUSE.friction(35, 30))


def test_a_flatter_lane_forgives_less():
    """Plain geometry: one board at 15 ft is about four at the pins where nothing turns the ball back."""
    flat = ChangedLane(HOUSE, LaneChange(flatter=1))
    out, on = (simulate(Release(17, 300, 45, 13, 17, target), flat).entry_board for target in (13, 14))
    assert on - out == pytest.approx(4.0, abs=0.5)
    assert flat.friction(3, 30) == pytest.approx(table_values(HOUSE, BALL)[30].min())


def test_a_sharper_edge_is_a_wall_where_it_is_said_to_be():
    before = table_values(HOUSE, BALL)
    after = table_values(ChangedLane(HOUSE, LaneChange(sharper=1, edge_board=12)), BALL)
    row = after[30]
    steepest = int(np.abs(np.diff(row[:39])).argmax())
    assert abs(0.5 + steepest / 2 - 12) <= 1
    assert np.abs(np.diff(after, axis=1)).max() > 1.5 * np.abs(np.diff(before, axis=1)).max()
    assert row.max() > before[30].max() and row.min() < before[30].min()


def test_the_cover_of_the_ball_still_counts():
    strong = Ball(cover_on_dry=1.2)
    lane = ChangedLane(HOUSE, LaneChange(looser=0.8))
    assert lane.for_ball(strong).friction(3, 50) == pytest.approx(
        1.2 * lane.for_ball(BALL).friction(3, 50), rel=1e-3
    )


def test_a_mixture_is_the_mean():
    flat = lane_of("flat")
    mixed = MixedLane([(1, HOUSE), (3, flat)])
    expected = 0.25 * table_values(HOUSE, BALL) + 0.75 * table_values(flat, BALL)
    assert table_values(mixed, BALL) == pytest.approx(expected)


def test_any_surface_can_be_changed():
    zones = ZonedLane([(36, 0.04), (60, 0.2)])
    assert ChangedLane(zones, LaneChange(longer_ft=2)).friction(20, 37) == pytest.approx(0.04)


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"looser": 9}, "looser must be a number between 0.3 and 3"),
        ({"worn": -1}, "worn must be a number between 0 and 1"),
        ({"longer_ft": float("nan")}, "longer_ft must be a number between -12 and 12"),
    ],
)
def test_bad_input(given, said):
    with pytest.raises(ValueError, match=said):
        LaneChange(**given)


def test_an_empty_mixture():
    with pytest.raises(ValueError, match="a mixture needs lanes"):
        MixedLane([])
