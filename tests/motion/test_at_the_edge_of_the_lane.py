"""The gutter: where the ball's centre leaves the lane, and what is left of the path from there on.

The lane's edges are at boards 0.5 and 39.5 (39 boards, boards counted at their middle).
"""

import numpy as np
import pytest
from motion_help import random_releases

from bowlcore.motion.many import simulate_many
from bowlcore.motion.oil import load_pattern
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import OiledLane, ZonedLane

HOUSE = OiledLane(load_pattern("house"))
ARRAYS = (
    "board", "speed_mph", "heading_deg", "slip_mps", "rev_rate_rpm", "axis_rotation_deg", "axis_tilt_deg",
)  # fmt: skip


def straight(laydown, target, lane=None, **more):
    """A ball without side spin: it runs dead straight on any lane."""
    values = {"speed_mph": 17, "rev_rate_rpm": 100, "axis_rotation_deg": 0, "axis_tilt_deg": 0} | more
    lane = ZonedLane([(60, 0.05)]) if lane is None else lane
    return simulate(Release(laydown_board=laydown, target_board=target, **values), lane)


@pytest.mark.parametrize(
    ("laydown", "target", "edge"), [(5, 2, 0.5), (35, 38, 39.5), (20, 15, 0.5), (1, 1, None)]
)
def test_a_straight_ball_leaves_where_its_line_meets_the_edge(laydown, target, edge):
    path = straight(laydown, target)
    if edge is None:
        assert np.isnan(path.gutter_ft)
        assert path.entry_board == pytest.approx(1)
    else:
        assert path.gutter_ft == pytest.approx(15 * (edge - laydown) / (target - laydown), abs=1e-6)


def test_a_line_just_inside_and_just_outside_the_edge():
    just_in, just_out = straight(20, 20 - 4.874), straight(20, 20 - 4.876)  # 19.5 boards in 60 ft: 4.875
    assert np.isnan(just_in.gutter_ft) and just_in.entry_board == pytest.approx(0.504, abs=1e-6)
    assert 59.9 < just_out.gutter_ft < 60 and np.isnan(just_out.entry_board)


def test_from_the_gutter_on_only_distance_and_time_are_left():
    path = straight(5, 2)
    off = path.distance_ft >= path.gutter_ft
    assert off.any() and not off.all()
    for name in ARRAYS:
        values = getattr(path, name)
        assert np.isnan(values[off]).all() and np.isfinite(values[~off]).all(), name
    assert np.isfinite(path.distance_ft).all() and np.isfinite(path.time_s).all()
    assert path.distance_ft[0] == 0 and path.distance_ft[-1] == 60
    for name in ("entry_board", "entry_angle_deg", "entry_speed_mph"):
        assert np.isnan(getattr(path, name)), name


def test_hook_and_roll_after_the_gutter_do_not_count():
    lane = ZonedLane([(30, 0.0), (60, 0.25)])
    path = simulate(Release(14, 100, 0, 0, 5, 2), lane)  # off the lane at 22.5 ft, friction from 30 ft on
    assert path.gutter_ft == pytest.approx(22.5)
    assert np.isnan(path.hook_start_ft) and np.isnan(path.roll_start_ft)
    assert path.breakpoint_board == pytest.approx(0.5) and path.breakpoint_ft == pytest.approx(22.5)


@pytest.mark.parametrize("open_boards", [3.62, 3.7, 3.8])
def test_out_over_the_edge_and_back_between_two_nodes_counts(open_boards):
    # shift a shot on a lane of zones until no node is outside but the turn between two nodes is
    lane = ZonedLane([(60, 0.03)])
    inside = simulate(Release(18, 300, 45, 10, 8, 8 - open_boards), lane)
    gap = inside.board.min() - inside.breakpoint_board
    assert gap > 1e-5
    laydown = 8 - (inside.breakpoint_board - 0.5) - gap / 2
    for shift, lost in ((0, True), (gap, False)):
        release = Release(18, 300, 45, 10, laydown + shift, laydown + shift - open_boards)
        path = simulate(release, lane)
        assert (path.gutter_ft == path.gutter_ft) == lost
        assert np.isnan(path.entry_board) == lost
        batch = simulate_many([release] * 20, lane)
        assert batch["gutter_ft"].to_numpy() == pytest.approx(path.gutter_ft, abs=1e-6, nan_ok=True)
        if lost:
            assert path.gutter_ft == pytest.approx(inside.breakpoint_ft, abs=1)
            assert path.breakpoint_board == pytest.approx(0.5, abs=gap)


def test_off_the_far_side():
    path = simulate(Release(12, 500, 60, 5, 30, 30), ZonedLane([(60, 0.2)]))
    assert 5 < path.gutter_ft < 40
    assert path.breakpoint_ft == 0 and path.breakpoint_board == 30


def test_laid_down_on_the_last_board_and_sent_along_it():
    for board in (1.0, 39.0):
        path = straight(board, board)
        assert np.isnan(path.gutter_ft) and path.entry_board == pytest.approx(board)


def test_breakpoint_is_the_outermost_point():
    for release in random_releases(30, 31):
        path = simulate(release, HOUSE)
        if path.gutter_ft == path.gutter_ft:
            continue
        assert path.breakpoint_board <= path.board.min() + 1e-9
        assert path.breakpoint_board > path.board.min() - 0.02
        near = path.distance_ft[path.board.argmin()]
        assert abs(path.breakpoint_ft - near) <= 1.0


def test_breakpoint_is_at_the_foul_line_for_a_ball_that_never_moves_out():
    path = simulate(Release(17, 300, 45, 13, 15, 16), HOUSE)
    assert path.breakpoint_ft == 0 and path.breakpoint_board == 15
