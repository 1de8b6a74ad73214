"""Where the ball "starts to read the lane": what it means, and that it moves smoothly.

The wish: at most one foot for one step of a control (rotation and tilt 1 degree, 0.1 mph, 10 rpm). It
holds for what the hand changes on everyday lines; of all lines one or two in a hundred go over it. A move
of the line by half a board takes the ball over other oil and
moves it by more; the lane does that (the mean place of friction's whole work moves as far), so there only a bound is kept.
Full figures: tests/studies/hook_start_steps.py.
"""

import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from motion_help import DATA, everyday_lines, random_releases

from bowlcore.motion.data_file import read_table
from bowlcore.motion.landmarks import HOOK_SHARE
from bowlcore.motion.oil import load_pattern, pattern_names
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import OiledLane, ZonedLane

LINES = everyday_lines()


@pytest.fixture(scope="module")
def study():
    sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
    try:
        import hook_start_steps
    finally:
        sys.path.pop(0)
    return hook_start_steps


@pytest.mark.claim(
    "A ball starts to hook where friction has done a fifth of all it does before the pins",
    against="the slip along the path; the fifth is our own choice",
    kind="own",
)
@pytest.mark.parametrize("name", pattern_names())
def test_hook_start_is_where_a_given_share_of_frictions_work_is_done(name, figure):
    lane = OiledLane(load_pattern(name))
    for release in random_releases(6, 17):
        path = simulate(release, lane)
        if not np.isfinite(path.entry_board):
            continue
        total = path.slip_mps[0] - path.slip_mps[-1]
        done = (path.slip_mps[0] - np.interp(path.hook_start_ft, path.distance_ft, path.slip_mps)) / total
        figure("share", done, asked="0.2")
        assert done == pytest.approx(HOOK_SHARE, abs=1e-6)


def test_hook_starts_near_the_end_of_the_oil_for_an_everyday_line():
    # common practice, no source: it "skids through the oil and starts to hook where the oil runs out"
    for line in LINES:
        path = simulate(line, OiledLane(load_pattern("house")))
        assert 30 < path.hook_start_ft < 45 < path.roll_start_ft
        assert path.hook_start_ft < path.breakpoint_ft + 3


def test_hook_starts_sooner_on_a_dried_out_lane_and_later_on_a_long_one():
    for line in LINES:
        dry, house, long = (
            simulate(line, OiledLane(load_pattern(name))).hook_start_ft
            for name in ("dried_out", "house", "long_heavy")
        )
        assert dry < house < long


def test_under_one_friction_it_starts_after_that_share_of_the_time_to_roll():
    # slip falls evenly in time under one friction
    path = simulate(replace(LINES[0], target_board=17), ZonedLane([(60, 0.1)]))
    t_roll = np.interp(path.roll_start_ft, path.distance_ft, path.time_s)
    t_hook = np.interp(path.hook_start_ft, path.distance_ft, path.time_s)
    assert t_hook == pytest.approx(HOOK_SHARE * t_roll, rel=2e-3)


@pytest.mark.parametrize("name", pattern_names())
def test_one_step_of_the_hand_moves_it_by_at_most_a_foot_on_everyday_lines(study, name):
    lane = OiledLane(load_pattern(name))
    for line in LINES:
        here = simulate(line, lane).hook_start_ft
        for control in study.HAND:
            for step in (study.STEPS[control], -study.STEPS[control]):
                moved = simulate(replace(line, **{control: getattr(line, control) + step}), lane)
                assert abs(moved.hook_start_ft - here) <= 1


# where the oil has no hard side edge; on the other two some go further (4 ft at most in the study)
@pytest.mark.parametrize("name", ["house", "flat", "short", "long_heavy", "carried_down"])
def test_one_step_of_the_hand_seldom_moves_it_by_more_than_a_foot_anywhere(study, name):
    shots, lane = study.releases(2500, seed=5), OiledLane(load_pattern(name))
    for control in study.HAND:
        moved = study.moves(shots, lane, control, study.STEPS[control])
        assert len(moved) > 1500
        assert moved.max() < 1.4, control
        assert (moved > 1).mean() < 0.015, control  # those of few revs, at a step of 10 rpm


@pytest.mark.parametrize("name", ["dried_out", "wet_dry"])
def test_beside_a_hard_side_edge_a_step_of_the_hand_seldom_moves_it_more(study, name):
    shots, lane = study.releases(2500, seed=5), OiledLane(load_pattern(name))
    for control in study.HAND:
        moved = study.moves(shots, lane, control, study.STEPS[control])
        assert (moved > 1).mean() < 0.02, control


@pytest.mark.parametrize("line", LINES, ids=lambda r: f"{r.speed_mph:g} mph")
def test_half_a_board_of_line_moves_it_by_what_the_lane_does(line):
    # more than a foot, and recorded as such: up to 4.5 ft for the slow line (target), none on the flat shape
    house, flat = OiledLane(load_pattern("house")), OiledLane(load_pattern("flat"))
    for control in ("laydown_board", "target_board"):
        for step in (-0.5, 0.5):
            moved = replace(line, **{control: getattr(line, control) + step})
            assert abs(simulate(moved, house).hook_start_ft - simulate(line, house).hook_start_ft) < 5
            assert abs(simulate(moved, flat).hook_start_ft - simulate(line, flat).hook_start_ft) < 1e-2


@pytest.mark.parametrize("name", pattern_names())
def test_it_never_jumps(name):
    # a twentieth of the half-board step moves it by a foot at most: steep in places, but continuous
    lane = OiledLane(load_pattern(name))
    for line in LINES:
        starts = [
            simulate(replace(line, target_board=line.target_board + d), lane).hook_start_ft
            for d in np.arange(-0.5, 0.501, 0.025)
        ]
        assert np.abs(np.diff(starts)).max() < 1.0


def test_the_shipped_figures_are_what_the_study_gives(study):
    path = Path(study.__file__).with_name("hook_start_steps.csv")
    shipped, _ = read_table(path, ("pattern", "control"))
    again = study.table(10_000, ["short"])
    rows = shipped[shipped.pattern == "short"]
    assert rows.largest_ft.to_numpy() == pytest.approx(again.largest_ft.to_numpy(), abs=2e-3)
    assert rows.share_above_1_ft.to_numpy() == pytest.approx(again.share_above_1_ft.to_numpy(), abs=2e-3)
    assert DATA.is_dir()


def test_hook_never_starts_after_the_roll():
    # little slip and much friction: both within one foot
    for rpm in range(150, 421, 10):
        path = simulate(Release(8, rpm, 0, 0, 20, 20), ZonedLane([(20, 0.0), (60, 0.3)]))
        assert 20 <= path.hook_start_ft <= path.roll_start_ft or path.slip_mps[0] == 0
