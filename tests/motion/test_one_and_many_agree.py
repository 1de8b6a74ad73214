"""`simulate` and `simulate_many` are one model: the same scalars to rounding, on every lane, for both hands."""

import numpy as np
import pandas as pd
import pytest
from motion_help import random_releases

from bowlcore.motion.ball import Ball
from bowlcore.motion.many import DEFAULTS, simulate_many, sweep_columns, sweep_together
from bowlcore.motion.oil import OilPattern, load_pattern, pattern_names
from bowlcore.motion.path import simulate
from bowlcore.motion.release import FIELD_NAMES, Release
from bowlcore.motion.surface import FrictionLaw, OiledLane, ZonedLane

SCALARS = (
    "entry_board", "entry_angle_deg", "entry_speed_mph", "breakpoint_board", "breakpoint_ft",
    "hook_start_ft", "roll_start_ft", "gutter_ft",
)  # fmt: skip


def wild_releases(count, seed):
    """Ordinary and odd: back-up, loft, no revs, over-spun, gutters on both sides, both hands."""
    rng = np.random.default_rng(seed)
    return pd.DataFrame(
        {
            "speed_mph": rng.uniform(10, 22, count),
            "rev_rate_rpm": rng.choice([0, 60, 200, 350, 500, 650], count),
            "axis_rotation_deg": rng.choice([-60, -20, 0, 30, 45, 70, 90], count),
            "axis_tilt_deg": rng.choice([-20, 0, 15, 60, 90], count),
            "laydown_board": rng.uniform(3, 37, count),
            "target_board": rng.uniform(3, 37, count),
            "loft_ft": rng.choice([0, 0, 1.0, 2.5, 6.0], count),
            "hand": rng.choice(["right", "left"], count),
        },
        index=rng.permutation(count) + 100,
    )


class Slippery:
    """A callable surface: friction falls with slip."""

    def friction(self, lane_board, distance_ft, slip_mps):
        return (0.02 + 0.003 * np.asarray(distance_ft)) * np.exp(-np.asarray(slip_mps) / 10)


LOPSIDED = OilPattern([0, 20, 45, 60], [1, 10, 39], [[3, 1, 0], [1, 2, 1], [0, 0.5, 0], [0, 0, 0]])
LANES = {name: OiledLane(load_pattern(name)) for name in pattern_names()}
LANES |= {
    "not symmetric": OiledLane(LOPSIDED),
    "zones": ZonedLane([(39.5, 0.03), (60, 0.2)]),
    "callable": Slippery(),
}


@pytest.mark.claim(
    "Many shots followed at once, for maps and odds, give the numbers of single shots",
    against="our own single-shot program",
    kind="own",
)
@pytest.mark.parametrize("lane", LANES.values(), ids=LANES)
def test_every_scalar_agrees_to_rounding(lane, figure):
    ball = Ball(rg_in=2.5, cover_in_oil=1.2, cover_on_dry=0.9)
    releases = wild_releases(80, 4)
    table = simulate_many(releases, lane, ball)
    assert list(table.columns) == list(SCALARS)
    singles = [simulate(Release(**row), lane, ball) for row in releases.to_dict("records")]
    for name in SCALARS:
        ones = np.array([getattr(path, name) for path in singles])
        figure("off by", np.nanmax(np.abs(table[name].to_numpy() - ones), initial=0), asked="0.0000001")
        assert table[name].to_numpy() == pytest.approx(ones, abs=1e-7, nan_ok=True), name
    assert table["gutter_ft"].notna().sum() > 5  # the odd cases do occur
    assert table["entry_board"].notna().sum() > 5


def test_a_batch_does_not_depend_on_its_size():
    # one by one below a dozen shots, in columns above it, in blocks above eight thousand
    lane = LANES["house"]
    releases = wild_releases(8200, 5)
    table = simulate_many(releases, lane)
    for rows in (slice(0, 5), slice(8190, 8200), slice(100, 150)):
        part = simulate_many(releases.iloc[rows], lane)
        for name in SCALARS:
            want = table[name].iloc[rows].to_numpy()
            assert part[name].to_numpy() == pytest.approx(want, abs=1e-7, nan_ok=True), name


def test_index_is_preserved():
    releases = wild_releases(30, 6)
    assert list(simulate_many(releases, LANES["flat"]).index) == list(releases.index)
    named = releases.iloc[:3].set_axis(["a", "b", "b"])
    assert list(simulate_many(named, LANES["flat"]).index) == ["a", "b", "b"]


def test_absent_columns_take_the_defaults():
    assert DEFAULTS == {
        "speed_mph": 17, "rev_rate_rpm": 300, "axis_rotation_deg": 45, "axis_tilt_deg": 13,
        "laydown_board": 17, "target_board": 13, "loft_ft": 0, "hand": "right",
    }  # fmt: skip
    path = simulate(Release(**DEFAULTS), LANES["house"])
    table = simulate_many(pd.DataFrame(index=["only"]), LANES["house"])
    assert table.loc["only", "entry_board"] == pytest.approx(path.entry_board, abs=1e-12)
    table = simulate_many(pd.DataFrame({"speed_mph": [16, 18]}), LANES["house"])
    assert table["entry_board"][0] > path.entry_board > table["entry_board"][1]


def test_a_sequence_of_releases_will_do():
    releases = random_releases(15, 7)
    table = simulate_many(tuple(releases), LANES["house"])
    frame = simulate_many(pd.DataFrame([vars(r) for r in releases]), LANES["house"])
    pd.testing.assert_frame_equal(table, frame)


def test_whole_numbers_will_do():
    frame = pd.DataFrame({name: [int(value)] for name, value in DEFAULTS.items() if name != "hand"})
    assert simulate_many(frame, LANES["house"])["entry_board"].notna().all()


@pytest.mark.parametrize(
    "nothing", [[], pd.DataFrame({name: [] for name in FIELD_NAMES})], ids=["list", "frame"]
)
def test_no_releases_give_no_rows(nothing):
    table = simulate_many(nothing, LANES["house"])
    assert len(table) == 0
    assert list(table.columns) == list(SCALARS)


def test_the_releases_are_not_changed():
    releases = wild_releases(20, 8)
    before = releases.copy()
    simulate_many(releases, LANES["house"])
    pd.testing.assert_frame_equal(releases, before)


def bad(**values):
    frame = pd.DataFrame([dict(DEFAULTS), dict(DEFAULTS)], index=["first", "second"]).astype(object)
    for name, value in values.items():
        frame.loc["second", name] = value
    return frame


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"speed_mph": 0}, ("second", "speed_mph", "between 3 and 30 mph", "got 0")),
        ({"rev_rate_rpm": -5}, ("second", "rev_rate_rpm", "between 0 and 700", "got -5")),
        ({"axis_rotation_deg": 400}, ("second", "axis_rotation_deg", "got 400")),
        ({"laydown_board": 44}, ("second", "laydown_board", "between 1 and 39", "got 44")),
        ({"target_board": float("nan")}, ("second", "target_board", "got nan")),
        ({"loft_ft": float("inf")}, ("second", "loft_ft", "got inf")),
        ({"hand": "both"}, ("second", "hand", '"right" or "left"', "both")),
        ({"hand": None}, ("second", "hand", '"right" or "left"')),
        ({"speed_mph": 3, "rev_rate_rpm": 700, "axis_rotation_deg": 180}, ("second", "stand")),
        ({"speed_mph": "fast"}, ("second", "speed_mph", "number", "fast")),
        ({"speed_mph": None}, ("second", "speed_mph", "number")),
    ],
    ids=lambda v: "-".join(map(str, v)) if isinstance(v, dict) else "",
)
def test_a_bad_row_is_named(values, words):
    with pytest.raises(ValueError) as caught:
        simulate_many(bad(**values), LANES["house"])
    said = str(caught.value)
    assert "\n" not in said
    for word in words:
        assert word in said


def test_anything_else_is_refused_in_words():
    with pytest.raises(ValueError, match="sequence of Release, got int"):
        simulate_many([1, 2], LANES["house"])
    with pytest.raises(ValueError, match="friction"):
        simulate_many([Release(**DEFAULTS)], object())


def columns_of(releases):
    return {name: np.array([getattr(one, name) for one in releases]) for name in FIELD_NAMES}


@pytest.mark.parametrize("hand", ["right", "left"])
def test_lanes_side_by_side_give_the_same_numbers_as_one_by_one(hand):
    rough = OilPattern([0, 30, 60], [1, 10, 11, 39], 9 * np.eye(3, 4))  # steep: twice the steps
    surfaces = [*(OiledLane(load_pattern(name)) for name in pattern_names()), OiledLane(rough)]
    surfaces += [ZonedLane([(40, 0.04), (60, 0.2)])]
    columns = columns_of(random_releases(60, seed=5, hand=hand))
    few = {name: values[:5] for name, values in columns.items()}
    jobs = [(columns, surface) for surface in surfaces] + [(few, surfaces[0])]
    for (mine, surface), marks in zip(jobs, sweep_together(jobs), strict=True):
        alone, _ = sweep_columns(mine, surface)
        for name, values in alone.items():
            np.testing.assert_allclose(marks[name], values, rtol=1e-10, atol=1e-10, err_msg=name)


def test_balls_and_hands_of_their_own_side_by_side_give_the_same_numbers_as_one_by_one():
    heavy, light = Ball(), Ball(12, rg_in=2.7, diameter_in=8.5, cover_on_dry=1.4)
    lane, other = OiledLane(load_pattern("house")), OiledLane(load_pattern("short"))
    right, left = (columns_of(random_releases(40, seed=7, hand=hand)) for hand in ("right", "left"))
    jobs = [(right, lane), (left, lane), (left, other), (right, lane)]
    balls = [heavy, light, heavy, light]
    for (mine, surface), ball, marks in zip(jobs, balls, sweep_together(jobs, balls), strict=True):
        alone, _ = sweep_columns(mine, surface, ball)
        for name, values in alone.items():
            np.testing.assert_allclose(marks[name], values, rtol=1e-10, atol=1e-10, err_msg=name)


def test_more_shots_side_by_side_than_a_block_holds():
    lanes = [OiledLane(load_pattern("house"), law) for law in map(FrictionLaw().scaled, (0.8, 1.0, 1.2))]
    columns = columns_of(random_releases(3000, seed=6))
    for lane, marks in zip(lanes, sweep_together([(columns, lane) for lane in lanes]), strict=True):
        alone, _ = sweep_columns(columns, lane)
        np.testing.assert_allclose(marks["entry_board"], alone["entry_board"], rtol=1e-10)
