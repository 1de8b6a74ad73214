"""What must hold on any lane: named after the laws, each derived for equal moments of inertia.

Source of all: our own calculation (Newton and Euler for a ball on a plane, friction against the slip);
angular momentum about a point of the lane is also in C. Broholm's lecture notes of 1997, second-hand.
"""

from dataclasses import replace
from math import cos, radians

import numpy as np
import pytest
from motion_help import everyday_lines, random_releases, vectors

from bowlcore.motion import closed_form, units
from bowlcore.motion.ball import Ball
from bowlcore.motion.oil import OilPattern, load_pattern, pattern_names
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import FrictionLaw, OiledLane, ZonedLane

GRIPPY = FrictionLaw(oil=0.1, dry=0.3)


def random_pattern(seed):
    rng = np.random.default_rng(seed)
    return OilPattern(np.linspace(0, 60, 9), np.linspace(1, 39, 8), rng.uniform(0, 1, (9, 8)))


class Falling:
    """Friction that depends on place and slip: a made-up surface."""

    def friction(self, lane_board, distance_ft, slip_mps):
        wave = 0.5 + 0.5 * np.sin(0.3 * np.asarray(lane_board)) * np.cos(0.1 * np.asarray(distance_ft))
        return 0.02 + 0.12 * wave * np.exp(-np.asarray(slip_mps) / 4)


LANES = {
    "house": OiledLane(load_pattern("house")),
    "wet-dry": OiledLane(load_pattern("wet_dry")),
    "random oil": OiledLane(random_pattern(5)),
    "slip and place": Falling(),
    "zones": ZonedLane([(20, 0.01), (40, 0.08), (60, 0.2)]),
}
on_every_lane = pytest.mark.parametrize("lane", LANES.values(), ids=LANES)


@pytest.mark.claim(
    "Once it rolls, the direction of a ball depends on the hand alone and not on the oil",
    against="Newton and Euler for a ball on a plane, our own calculation",
    kind="exact",
)
@pytest.mark.parametrize("seed", range(12))
def test_final_heading_does_not_depend_on_the_oil(seed, figure):
    lane, ball, rolled = OiledLane(random_pattern(seed), GRIPPY), Ball(), 0
    for release in random_releases(6, seed, laydown_board=8.0, target_board=4.0, rev_rate_rpm=200.0):
        path = simulate(release, lane)
        if not path.roll_start_ft < 59:
            continue
        rolled += 1
        roll = ball.radius_m * release.rev_rate_rpm * units.RPM_RADS * cos(radians(release.axis_tilt_deg))
        turn = radians(release.axis_rotation_deg)
        b_w, speed = ball.inertia_factor * roll, release.speed_mph * units.MPH_MPS
        wanted = np.degrees(np.arctan2(b_w * np.sin(turn), speed + b_w * np.cos(turn)))
        k = int((path.distance_ft < path.roll_start_ft).sum())  # the first node that rolls
        off = abs(path.heading_deg[k] - release.launch_heading_deg - wanted)
        figure("direction off by", off, "degrees", asked="rounding")
        assert path.heading_deg[k] - release.launch_heading_deg == pytest.approx(wanted, abs=1e-9)
        named = closed_form.final_heading_deg(speed, roll, release.axis_rotation_deg, ball.inertia_factor)
        assert named == pytest.approx(wanted, abs=1e-12)
    assert rolled >= 4


@pytest.mark.claim(
    "Friction only trades speed for spin: speed plus b times spin velocity stays what it was in the hand",
    against=(
        "angular momentum about a point of the lane: our own calculation; also C. Broholm's lecture notes of "
        "1997, read second-hand"
    ),
    kind="exact",
)
@on_every_lane
def test_speed_plus_inertia_times_spin_is_constant(lane, figure):
    ball = Ball(rg_in=2.6)
    for release in random_releases(5, 1):
        v, w, upright = vectors(simulate(release, lane, ball), ball)
        kept = v + ball.inertia_factor * w
        figure("sum off by", np.nanmax(np.abs(kept - kept[0])), "m/s", asked="rounding")
        assert np.nanmax(np.abs(kept - kept[0])) < 1e-9
        assert np.nanmax(np.abs(upright - upright[0])) < 1e-9


@pytest.mark.claim(
    "A ball never gains energy on the lane, and what it loses is told by its slip",
    against="Newton and Euler for a ball on a plane, our own calculation",
    kind="exact",
)
@on_every_lane
def test_energy_never_rises_and_its_loss_is_told_by_the_slip(lane, figure):
    ball = Ball()
    mass = ball.mass_lb * units.POUND_KG
    for release in random_releases(5, 2):
        path = simulate(release, lane, ball)
        v, w, _ = vectors(path, ball)
        energy = closed_form.kinetic_energy_j(mass, v, w, ball.inertia_factor)
        on_lane = energy[np.isfinite(energy)]
        assert (np.diff(on_lane) < 1e-9).all()
        assert on_lane[0] - on_lane[-1] > 1
        lost = closed_form.energy_lost_j(mass, path.slip_mps[0], path.slip_mps, ball.inertia_factor)
        figure("lost energy off by", np.nanmax(np.abs(energy[0] - energy - lost)), "J", asked="rounding")
        assert np.nanmax(np.abs(energy[0] - energy - lost)) < 1e-9


@pytest.mark.claim(
    "The direction in which the bottom of the ball slips never turns, on any lane",
    against="Newton and Euler for a ball on a plane, our own calculation",
    kind="exact",
)
@on_every_lane
def test_slip_direction_never_turns(lane, figure):
    ball = Ball()
    for release in random_releases(5, 3):
        path = simulate(release, lane, ball)
        v, w, _ = vectors(path, ball)
        slip = np.hypot(*(v - w).T)
        assert np.nanmax(np.abs(slip - path.slip_mps)) < 1e-9
        sliding = path.slip_mps > 0.05
        direction = (v - w)[sliding] / slip[sliding, None]
        figure("direction turned by", np.abs(direction - direction[0]).max(), "radians", asked="rounding")
        assert np.abs(direction - direction[0]).max() < 1e-9
        assert (np.diff(slip[np.isfinite(slip)]) < 1e-12).all()


def test_rotation_is_gone_at_roll_out_and_tilt_only_if_there_was_none():
    lane, ball = ZonedLane([(60, 0.2)]), Ball()
    for release in random_releases(8, 4, laydown_board=6.0, target_board=6.0, speed_mph=13.0):
        path = simulate(release, lane)
        rolling = path.distance_ft > path.roll_start_ft
        assert rolling.any()
        assert np.nanmax(np.abs(path.axis_rotation_deg[rolling])) < 1e-9
        upright = release.rev_rate_rpm * units.RPM_RADS * np.sin(radians(release.axis_tilt_deg))
        speed = path.speed_mph[rolling] * units.MPH_MPS
        wanted = np.degrees(np.arctan2(ball.radius_m * upright, speed))
        assert np.nanmax(np.abs(path.axis_tilt_deg[rolling] - wanted)) < 1e-9
        level = simulate(replace(release, axis_tilt_deg=0), lane)
        assert np.nanmax(np.abs(level.axis_tilt_deg)) == 0


@pytest.mark.claim(
    "A shot thrown in the mirror runs the mirrored way on every shipped pattern",
    against="Newton and Euler for a ball on a plane, our own calculation",
    kind="exact",
)
@pytest.mark.parametrize("name", pattern_names())
def test_mirror(name, figure):
    lane = OiledLane(load_pattern(name))  # the shipped shapes are alike on both sides
    for r in random_releases(5, 6):
        mirrored = replace(
            r,
            axis_rotation_deg=-r.axis_rotation_deg,
            axis_tilt_deg=-r.axis_tilt_deg,
            laydown_board=40 - r.laydown_board,
            target_board=40 - r.target_board,
        )
        path, other = simulate(r, lane), simulate(mirrored, lane)
        figure("off by", np.nanmax(np.abs(other.board - 40 + path.board)), "boards", asked="rounding")
        assert other.board == pytest.approx(40 - path.board, abs=1e-9, nan_ok=True)
        assert other.heading_deg == pytest.approx(-path.heading_deg, abs=1e-9, nan_ok=True)
        assert other.speed_mph == pytest.approx(path.speed_mph, abs=1e-9, nan_ok=True)


def test_sign_of_tilt_does_not_touch_the_path():
    lane = LANES["house"]
    for r in random_releases(5, 7):
        path, other = simulate(r, lane), simulate(replace(r, axis_tilt_deg=-r.axis_tilt_deg), lane)
        assert other.board == pytest.approx(path.board, abs=1e-12, nan_ok=True)
        assert other.axis_tilt_deg == pytest.approx(-path.axis_tilt_deg, abs=1e-12, nan_ok=True)


@pytest.mark.claim(
    "A heavier ball, all else alike, takes exactly the same way to the pins",
    against="Newton and Euler for a ball on a plane, our own calculation",
    kind="exact",
)
def test_mass_does_not_matter():
    for r in random_releases(5, 8):
        light = simulate(r, LANES["house"], Ball(mass_lb=13))
        heavy = simulate(r, LANES["house"], Ball(mass_lb=16))
        assert np.array_equal(light.board, heavy.board, equal_nan=True)


@pytest.mark.claim(
    "Tilt changes the way of a ball only by taking from its level spin",
    against="Newton and Euler for a ball on a plane, our own calculation",
    kind="exact",
)
def test_with_the_same_level_spin_tilt_has_no_effect_on_the_path(figure):
    for tilt in (10, 30, 50):
        r = Release(17, 300, 45, 0, 17, 13)
        tilted = replace(r, axis_tilt_deg=tilt, rev_rate_rpm=300 / cos(radians(tilt)))
        path, other = simulate(r, LANES["house"]), simulate(tilted, LANES["house"])
        figure("off by", np.abs(other.board - path.board).max(), "boards", asked="rounding")
        assert other.board == pytest.approx(path.board, abs=1e-9)


@pytest.mark.parametrize("name", pattern_names())
def test_more_speed_turns_less(name):
    lane = OiledLane(load_pattern(name))
    for line in everyday_lines():
        paths = [simulate(replace(line, speed_mph=line.speed_mph + more), lane) for more in (-1, 0, 1, 2)]
        turned = [p.heading_deg[-1] - line.launch_heading_deg for p in paths]
        boards = [p.entry_board for p in paths]
        assert np.diff(turned).max() < 0
        assert np.diff(boards).max() < 0


def test_no_spin_gives_no_side():
    for name in pattern_names():
        path = simulate(Release(17, 0, 90, 0, 20, 20), OiledLane(load_pattern(name)))
        assert np.abs(path.board - 20).max() < 1e-12
        assert path.speed_mph[-1] < 17
