"""Random releases against a separate integration of the full equations: 0.01 board, 0.01 degree.

The second integration is rigid_body.py (scipy DOP853, tight, over time); both read the same friction.
"""

import numpy as np
import pytest
from motion_help import ball_with, random_releases, rows
from rigid_body import follow
from scipy.interpolate import RegularGridInterpolator

from bowlcore.motion import units
from bowlcore.motion.ball import Ball
from bowlcore.motion.oil import OilPattern, load_pattern, pattern_names
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import OiledLane, ZonedLane

STRONG = Ball(rg_in=2.49, cover_in_oil=1.35, cover_on_dry=1.1)


def compare(release, surface, friction, ball, figure=None, **more):
    path = simulate(release, surface, ball)
    board, angle, roll_ft, time, low = follow(release, friction, ball, **more)
    if not (0.6 < low and board < 39.4):
        if low < 0.4:
            assert np.isfinite(path.gutter_ft) and np.isnan(path.entry_board)
        return False
    if figure:
        figure("comes in off by", abs(path.entry_board - board), "boards", asked="0.01")
        figure("angle off by", abs(path.entry_angle_deg - angle), "degrees", asked="0.01")
    assert path.entry_board == pytest.approx(board, abs=0.01)
    assert path.entry_angle_deg == pytest.approx(angle, abs=0.01)
    assert path.time_s[-1] == pytest.approx(time, abs=1e-4)
    assert path.breakpoint_board == pytest.approx(low, abs=0.011)
    if roll_ft == roll_ft:
        assert path.roll_start_ft == pytest.approx(roll_ft, abs=0.02)
    else:
        assert np.isnan(path.roll_start_ft)
    return True


@pytest.mark.claim(
    "On every shipped oil pattern random shots come in where a second program brings them",
    against=(
        "the full equations of a rigid body, followed over time by scipy's DOP853 "
        "(tests/motion/rigid_body.py)"
    ),
    kind="independent",
)
@pytest.mark.parametrize("name", pattern_names())
@pytest.mark.parametrize("ball", [Ball(), STRONG], ids=["benchmark", "strong"])
def test_random_releases_on_every_shipped_pattern(name, ball, figure):
    lane = OiledLane(load_pattern(name))
    table = lane.for_ball(ball)

    def friction(board, ft, slip):
        return float(table.friction(board, ft, slip))

    done = [
        compare(r, lane, friction, ball, figure)
        for r in random_releases(6, len(name) * 7 + int(ball.rg_in * 100))
    ]
    assert sum(done) >= 3


@pytest.mark.claim(
    "A left-hander meets the oil of the left side of the lane, also where the sides differ",
    against=(
        "the full equations of a rigid body, followed over time by scipy's DOP853 "
        "(tests/motion/rigid_body.py)"
    ),
    kind="independent",
)
def test_left_hander_on_a_lane_that_is_not_the_same_on_both_sides(figure):
    rng = np.random.default_rng(3)
    lane = OiledLane(OilPattern(np.linspace(0, 60, 7), np.linspace(1, 39, 6), rng.uniform(0, 2, (7, 6))))
    table, ball = lane.for_ball(Ball()), Ball()

    def mirrored(board, ft, slip):
        return float(table.friction(40 - board, ft, slip))

    releases = random_releases(4, 9, hand="left")
    assert sum(compare(r, lane, mirrored, ball, figure) for r in releases) >= 3
    right = [simulate(Release(**{**vars(r), "hand": "right"}), lane).entry_board for r in releases]
    left = [simulate(r, lane).entry_board for r in releases]
    assert np.nanmax(np.abs(np.subtract(left, right))) > 0.5  # the two sides do differ


def test_loft_and_back_up_and_over_revved_on_the_house_shape():
    lane = OiledLane(load_pattern("house"))
    table, ball = lane.for_ball(Ball()), Ball()
    cases = [
        Release(17, 300, 45, 13, 17, 13, loft_ft=4.3),
        Release(16, 250, -40, 12, 24, 26.5),
        Release(13, 560, 10, 5, 20, 19),
        Release(17, 0, 0, 0, 20, 19),
    ]
    for release in cases:
        assert compare(release, lane, lambda b, ft, s: float(table.friction(b, ft, s)), ball)


class Stribeck:
    """Made up: friction in oil and on the dry that falls with slip, across a soft front at 40 ft."""

    def friction(self, lane_board, distance_ft, slip_mps):
        dry = 1 / (1 + np.exp(-(np.asarray(distance_ft) - 40) / 2))
        falls = np.exp(-np.asarray(slip_mps) / 1.5)
        return (0.02 + 0.06 * falls) * (1 - dry) + (0.12 + 0.13 * falls) * dry


@pytest.mark.claim(
    "The second program agrees as well where friction depends on how fast the ball slips",
    against=(
        "the full equations of a rigid body, followed over time by scipy's DOP853 "
        "(tests/motion/rigid_body.py)"
    ),
    kind="independent",
)
def test_friction_that_depends_on_slip(figure):
    surface = Stribeck()
    releases = random_releases(5, 21, laydown_board=14.0, target_board=11.0)
    done = [
        compare(r, surface, lambda b, ft, s: float(surface.friction(b, ft, s)), Ball(), figure)
        for r in releases
    ]
    assert sum(done) >= 4


@pytest.mark.parametrize("d", rows("nine_deliveries", ("id", "roll_m")), ids=lambda d: d["id"])
def test_nine_deliveries_to_a_micrometre(d):
    ball = ball_with(d["inertia_factor"])
    release = Release(
        d["speed_mps"] / units.MPH_MPS, d["rev_rate_rpm"], d["rotation_deg"], d["tilt_deg"],
        d["laydown_board"], d["laydown_board"],
    ).with_heading(d["launch_deg"])  # fmt: skip
    end = min(d["zone_m"] / units.FOOT_M, 59.9)
    lane = ZonedLane([(end, d["front"]), (60, d["back"])])
    path = simulate(release, lane, ball)
    board, angle, _, time, _ = follow(
        release,
        lambda b, ft, s: d["front"] if ft < end else d["back"],
        ball,
        rtol=1e-11,
        atol=1e-13,
        breaks_ft=(end,),
    )
    assert (path.entry_board - board) * units.BOARD_M == pytest.approx(0, abs=1e-6)
    assert path.entry_angle_deg == pytest.approx(angle, abs=1e-6)
    assert path.time_s[-1] == pytest.approx(time, abs=1e-6)


def test_the_table_is_read_bilinearly():
    table = OiledLane(load_pattern("wet_dry")).for_ball(Ball())
    boards, distances = np.linspace(0.5, 39.5, 79), np.linspace(0, 60, 61)
    other = RegularGridInterpolator((distances, boards), table.values)
    rng = np.random.default_rng(0)
    b, x = rng.uniform(0.5, 39.5, 500), rng.uniform(0, 60, 500)
    assert table.friction(b, x) == pytest.approx(other(np.c_[x, b]), abs=1e-12)
