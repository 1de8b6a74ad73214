"""Laws that the pin deck must keep whatever its fitted numbers: extra tier, needs the extra ``rack``."""

from math import hypot

import numpy as np
import pytest

from bowlcore.rack import deck_model
from bowlcore.rack.deck_model import simulate_rack
from bowlcore.rack.deck_params import DeckParams
from bowlcore.rack.deck_xml import IN, PLAYING
from bowlcore.rack.leave import MIRROR
from bowlcore.rack.pins import TOUCH_DISTANCE_IN
from bowlcore.rack.scatter import Scatter, scatter

pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("mujoco")]

SMOOTH = {name: 0.0 for name in DeckParams.__dataclass_fields__ if name.endswith("friction")}


@pytest.fixture
def lone_pin(mujoco):
    """Makes a weightless ball against the head pin alone; the cached model is thrown away afterwards."""

    def make(restitution, board=17.5, angle_deg=6.0, mph=16.5, ball_lb=15.0):
        params = DeckParams(**SMOOTH | {"ball_pin_restitution": restitution})
        run = deck_model._Run(board, angle_deg, mph, ball_lb, Scatter(), params)
        for index in range(2, 11):
            run._put_away(index)
        run.model.opt.gravity[:] = 0.0
        run.model.geom_conaffinity[run.model.geom_bodyid > 0] = PLAYING
        run.model.opt.timestep = params.step_ms * 1e-3
        return run

    yield make
    deck_model._model.cache_clear()


def _momentum(run):
    mass = run.model.body_mass[1:3]
    return (mass[:, None] * run.vel[:2, :3]).sum(axis=0)


def _energy(run):
    mass, inertia = run.model.body_mass[1:3], run.model.body_inertia[1:3]
    return float(
        (mass[:, None] * run.vel[:2, :3] ** 2 / 2).sum() + (inertia * run.vel[:2, 3:] ** 2 / 2).sum()
    )


def _blow(run):
    before = _momentum(run), _energy(run)
    run.mujoco.mj_step(run.model, run.data, 400)
    assert hypot(*run.vel[1, :2]) > 5.0  # the pin was hit
    return before, (_momentum(run), _energy(run))


@pytest.mark.claim(
    "In the pin deck a blow keeps the momentum of ball and pin",
    against="mechanics",
    kind="exact",
)
def test_momentum_is_kept(lone_pin, figure):
    (before, _), (after, _) = _blow(lone_pin(0.65))
    figure(
        "off by", np.abs(after / np.abs(before).max() - before / np.abs(before).max()).max(), asked="rounding"
    )
    assert after == pytest.approx(before, rel=1e-9, abs=1e-9)


def test_energy_is_kept_by_a_perfect_blow(lone_pin):
    (_, before), (_, after) = _blow(lone_pin(1.0))
    assert after == pytest.approx(before, rel=3e-3)


@pytest.mark.parametrize("restitution", [0.4, 0.65, 0.7])
def test_a_blow_acts_with_its_restitution(lone_pin, restitution):
    run = lone_pin(restitution)
    (_, before), (_, after) = _blow(lone_pin(0.0))
    loss_of_dead_blow = before - after
    (_, before), (_, after) = _blow(run)
    acts_like = (1 - (before - after) / loss_of_dead_blow) ** 0.5
    assert acts_like == pytest.approx(restitution, abs=0.03)


@pytest.mark.claim(
    "A rack that nobody touches stands still",
    against="mechanics, ten thousand steps",
    kind="exact",
)
def test_a_rack_left_alone_stands_still(mujoco):
    run = deck_model._Run(20.0, 0.0, 5.0, 15.0, Scatter(), DeckParams())
    run._put_away(0)
    run.model.opt.enableflags &= ~int(mujoco.mjtEnableBit.mjENBL_SLEEP)  # awake, so it is really computed
    try:
        start = run.pos[1:].copy()
        mujoco.mj_step(run.model, run.data, 10_000)
        assert np.abs(run.pos[1:, :2] - start[:, :2]).max() / IN < 1e-6
        assert (
            np.abs(run.pos[1:, 2] - start[:, 2]).max() / IN < 1e-3
        )  # sinks into its springs by g / stiffness
        assert np.abs(run.vel[1:]).max() < 1e-6
    finally:
        deck_model._model.cache_clear()


def test_first_touch_is_where_geometry_says(lone_pin, mujoco):  # our own calculation, 6.656 in for flat discs
    run = lone_pin(0.65)
    mujoco.mj_step(run.model, run.data)  # forgets the touch with the deck
    run.model.opt.timestep = 5e-6  # 0.0015 in
    while not run.data.ncon:
        mujoco.mj_step(run.model, run.data)
    apart = hypot(*(run.pos[0, :2] - run.pos[1, :2])) / IN
    assert apart == pytest.approx(TOUCH_DISTANCE_IN, abs=0.02)


def test_mirror():
    rng = np.random.default_rng(8)
    for k in range(12):
        board, angle, accidents = rng.uniform(15, 25), rng.uniform(-5, 5), scatter(k)
        one = simulate_rack(board, angle, 14.0, 12.0, accidents)
        two = simulate_rack(40 - board, -angle, 14.0, 12.0, accidents.mirrored)
        assert two.contacts == tuple(MIRROR[pin] for pin in one.contacts)
        assert two.heading_after_head_pin_deg == pytest.approx(-one.heading_after_head_pin_deg, abs=1e-4)
        assert two.leave == one.leave.mirror


def test_same_input_same_rack():
    one, _, two = (simulate_rack(b, 5.0, 16.0, 15.0, scatter(3)) for b in (17.3, 25.0, 17.3))
    assert one == two


def test_nothing_flies_faster_than_a_blow_can_send_it(mujoco):
    # A pin at rest can leave a blow with at most twice the ball's speed; a chain cannot multiply that much.
    for k in range(24):
        run = deck_model._Run(14.0 + 0.5 * k, 4.0, 14.0, 15.0, scatter(k), DeckParams())
        fastest = 0.0
        while run.data.time < 0.6 and not run._is_over():
            before = run.pos[0, :2].copy()
            mujoco.mj_step(run.model, run.data, 10)
            if run.in_play[0]:
                run._watch_ball(before)
            run._watch_pins(5e-4)
            fastest = max(fastest, float(np.linalg.norm(run.vel[1:, :3], axis=1).max()))
            assert np.isfinite(run.pos).all()
        assert 0.5 * 14.0 * deck_model.MPH < fastest < 2 * 14.0 * deck_model.MPH


def test_no_pin_passes_through_the_ball():
    log = []
    for k in range(6):
        simulate_rack(17.0 + 0.2 * k, 5.0, 17.0, 15.0, scatter(k), log=log)
    apart = [np.linalg.norm(place[1:, :3] - place[0, :3], axis=1).min() / IN for _, place in log]
    assert min(apart) > 4.0  # ball radius 4.27 in and a pin's neck 0.9 in, less the give of a blow


@pytest.mark.parametrize(
    "bad",
    [
        {"board_at_touch": 45.0},
        {"entry_angle_deg": 60.0},
        {"ball_lb": 3.0},
        {"speed_at_pins_mph": 0.0},
        {"board_at_touch": float("nan")},
    ],
)
def test_bad_input_is_named(bad):
    given = {"board_at_touch": 17.0, "entry_angle_deg": 5.0, "speed_at_pins_mph": 15.0, "ball_lb": 15.0} | bad
    with pytest.raises(ValueError, match=next(iter(bad))):
        simulate_rack(**given)
