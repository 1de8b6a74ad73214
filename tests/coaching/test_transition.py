"""A lane that changes: oil is conserved, each ball meets what the one before left, nothing else is touched."""

import numpy as np
import pandas as pd
import pytest

from bowlcore import (
    Bowler,
    FrictionLaw,
    OiledLane,
    Release,
    ZonedLane,
    load_pattern,
    play_shots,
    simulate_many,
)
from bowlcore.motion import units
from bowlcore.motion.oil import OilPattern
from bowlcore.motion.surface import MU_LOW

LINE = Release(17, 300, 45, 13, 17, 13)
STRAIGHT = Release(17, 0, 0, 0, 20, 20)
MIXED = [
    LINE,
    Release(18, 450, 45, 10, 23, 17.75, hand="left"),
    Release(17, 300, 45, 13, 17, 2),  # into the gutter
    Release(16, 250, 40, 15, 15, 11.5, loft_ft=8),
    Release(14, 200, 70, 30, 1, 1),  # at the very edge
]


def lane(pattern="house"):
    return OiledLane(load_pattern(pattern))


def even_lane(thickness_um, boards=(1.0, 39.0)):
    """The same oil everywhere, from the foul line to the pins."""
    return OiledLane(OilPattern([0.0, 60.0], boards, np.full((2, len(boards)), thickness_um)))


def odd_lane():
    """A coarse, lopsided map whose nodes lie beside the friction table's."""
    boards, x = [1.3, 7.9, 20.2, 33.7], [0.4, 11.7, 33.3, 47.1]
    return OiledLane(OilPattern(x, boards, np.outer([4.0, 5.0, 3.0, 0.1], [0.5, 3.0, 4.0, 1.0])))


@pytest.mark.claim(
    "Oil is neither made nor lost: what leaves the lane is on the balls",
    against="exact integrals of the oil map, our own",
    kind="exact",
)
@pytest.mark.parametrize("shares", [(0.08, 0.03), (0.0, 1.0), (1.0, 0.0), (1.0, 1.0), (0.5, 0.9)])
@pytest.mark.parametrize("start", [lane("house"), lane("flat"), lane("wet_dry"), odd_lane()])
def test_oil_is_conserved(start, shares, figure):
    """Lane + what stayed on the balls = start, to 1e-9 (our own calculation: exact integrals of the map)."""
    taken_up, carried = shares
    after, shots = play_shots(start, MIXED * 6, taken_up=taken_up, carried=carried)
    on_balls = shots["taken_ml"].sum() - shots["laid_down_ml"].sum()
    off = abs(after.pattern.volume_ml + on_balls - start.pattern.volume_ml)
    figure("off by", off, "mL", asked="rounding")
    assert after.pattern.volume_ml + on_balls == pytest.approx(start.pattern.volume_ml, rel=1e-9, abs=1e-12)
    assert (shots["laid_down_ml"] <= carried * shots["taken_ml"] + 1e-12).all()


def test_one_pass_over_one_board_takes_its_share():
    """One unit of oil on one board is 1.481 uL a foot (our own calculation from the definition of a unit)."""
    after, shots = play_shots(even_lane(units.OIL_UNIT_UM), [STRAIGHT], taken_up=0.1, carried=0.0)
    assert shots["taken_ml"][0] == pytest.approx(0.1 * 60 * 1.481e-3, rel=1e-3)
    there = after.pattern.oil_um(np.array([19.0, 20.0, 21.0]), 30.0) / units.OIL_UNIT_UM
    assert there == pytest.approx([1.0, 0.9, 1.0])


def test_what_the_ball_flies_over_keeps_its_oil():
    lofted = Release(17, 0, 0, 0, 20, 20, loft_ft=10)
    after, _ = play_shots(even_lane(2.0), [lofted], taken_up=0.5, carried=0.0)
    assert after.pattern.oil_um(20.0, np.array([0.0, 5.0, 9.0])) == pytest.approx(2.0)
    assert after.pattern.oil_um(20.0, np.array([10.0, 40.0])) == pytest.approx(1.0)


def test_a_gutter_ball_takes_nothing_from_where_it_fell():
    start = even_lane(2.0)
    after, shots = play_shots(start, [Release(17, 0, 0, 0, 10, 5)], taken_up=0.5, carried=0.0)
    gone = 2.0 - after.pattern.oil_um(np.linspace(0.5, 39.5, 79)[None, :], np.linspace(0, 60, 61)[:, None])
    fell = shots["gutter_ft"][0]
    assert 20 < fell < 40 and gone[: int(fell)].max() == pytest.approx(1.0, abs=0.3)
    assert gone[int(fell) + 2 :].max() == pytest.approx(0.0, abs=1e-12)


def test_carried_oil_lies_past_the_end_and_nowhere_else():
    start = lane()
    taken, _ = play_shots(start, [LINE] * 20, carried=0.0)
    both, _ = play_shots(start, [LINE], carried=1.0)
    once, _ = play_shots(start, [LINE], carried=0.0)
    x, boards = np.linspace(0, 60, 61)[:, None], np.linspace(0.5, 39.5, 79)[None, :]
    more = both.pattern.oil_um(boards, x) - once.pattern.oil_um(boards, x)
    assert more.min() > -1e-12 and more.max() > 0.05
    assert more[:30].max() == pytest.approx(0.0, abs=1e-12)
    assert taken.pattern.oil_um(25.0, 20.0) == start.pattern.oil_um(25.0, 20.0)  # beside the track


def test_left_and_right_are_mirror_images():
    """Exact: the left-hander reads and wears lane board 40 - n."""
    start = odd_lane()
    turned = OiledLane(
        OilPattern(
            start.pattern.distance_ft,
            40.0 - start.pattern.lane_board[::-1],
            start.pattern.thickness_um[:, ::-1],
        )
    )
    from dataclasses import replace

    right, one = play_shots(start, [LINE] * 3)
    left, other = play_shots(turned, [replace(LINE, hand="left")] * 3)
    boards, x = np.linspace(0.5, 39.5, 79)[None, :], np.linspace(0, 60, 121)[:, None]
    assert left.pattern.oil_um(40.0 - boards, x) == pytest.approx(right.pattern.oil_um(boards, x), abs=1e-12)
    pd.testing.assert_frame_equal(one, other, atol=1e-9)


def test_the_old_lane_is_untouched_and_a_second_run_gives_the_same():
    start = lane()
    oil, friction = start.pattern.thickness_um.copy(), start.friction(13.0, 30.0)
    first = play_shots(start, MIXED)
    again = play_shots(start, MIXED)
    assert np.array_equal(start.pattern.thickness_um, oil) and start.friction(13.0, 30.0) == friction
    assert np.array_equal(first[0].pattern.thickness_um, again[0].pattern.thickness_um)
    pd.testing.assert_frame_equal(first[1], again[1])
    assert first[0].law is start.law and first[0].pattern.title == start.pattern.title


def test_each_ball_meets_the_lane_that_the_one_before_left():
    start = lane()
    together, shots = play_shots(start, MIXED)
    step, rows = start, []
    for release in MIXED:
        step, row = play_shots(step, [release])
        rows.append(row)
    assert step.pattern.oil_um(13.0, 30.0) == together.pattern.oil_um(13.0, 30.0)
    pd.testing.assert_frame_equal(pd.concat(rows, ignore_index=True), shots)


def test_without_shares_nothing_changes_and_the_rows_are_those_of_simulate_many():
    table = pd.DataFrame({"speed_mph": [16.0, 17.0], "hand": ["left", "right"]}, index=["ann", "bo"])
    after, shots = play_shots(lane(), table, taken_up=0.0, carried=0.0)
    seen = simulate_many(table, lane())
    pd.testing.assert_frame_equal(shots[seen.columns], seen, atol=1e-9)
    assert list(shots.index) == ["ann", "bo"]
    assert after.pattern.oil_um(11.5, 33.5) == pytest.approx(lane().pattern.oil_um(11.5, 33.5), rel=1e-12)


def test_more_traffic_dries_more_and_the_ball_comes_in_higher():
    """On a track that others use too the ball goes high: common practice, no source."""
    boards, volumes, thrown = [], [], pd.DataFrame(Bowler(LINE).shots(128))
    for balls in (1, 32, 64, 128):
        after, _ = play_shots(lane(), thrown[:balls])
        boards.append(simulate_many([LINE], after)["entry_board"][0])
        volumes.append(after.pattern.volume_ml)
    assert boards == sorted(boards) and boards[-1] > boards[0] + 2
    assert volumes == sorted(volumes, reverse=True)


def test_much_carried_oil_makes_the_ball_come_in_lower():
    """Carrydown softens the end and the ball comes in light: common practice, no source."""
    after, _ = play_shots(lane(), [LINE] * 40, taken_up=0.02, carried=0.5)
    assert (
        simulate_many([LINE], after)["entry_board"][0] < simulate_many([LINE], lane())["entry_board"][0] - 1
    )


def test_a_bare_lane_stays_bare():
    after, shots = play_shots(even_lane(0.0), [LINE], taken_up=1.0, carried=1.0)
    assert after.pattern.volume_ml == 0.0 and shots["taken_ml"][0] == 0.0


@pytest.mark.parametrize("name", ["taken_up", "carried"])
@pytest.mark.parametrize("value", [-0.01, 1.01, float("nan"), "much", True])
def test_shares_outside_0_to_1_are_refused_in_one_sentence(name, value):
    with pytest.raises(ValueError, match=f"{name} must be a number between 0 and 1, got"):
        play_shots(lane(), [LINE], **{name: value})


class Smooth:
    def friction(self, lane_board, distance_ft, slip_mps):
        return MU_LOW


@pytest.mark.parametrize("surface", [ZonedLane([(60, 0.1)]), Smooth(), load_pattern("house"), None])
def test_a_surface_without_a_map_of_oil_is_named(surface):
    with pytest.raises(ValueError, match=f"must be an OiledLane, got {type(surface).__name__}"):
        play_shots(surface, [LINE])


@pytest.mark.parametrize(
    "releases, told",
    [
        ([], "at least one delivery, got none"),
        (pd.DataFrame({"speed_mph": []}), "at least one delivery, got none"),
        ([LINE, 17], "a sequence of Release, got int"),
        (pd.DataFrame({"axis_tilt_deg": [13, 400]}), "row 1: axis_tilt_deg must be .* got 400"),
        (pd.DataFrame({"speed_mph": ["fast"]}), "row 0: speed_mph must be .* got 'fast'"),
        (pd.DataFrame({"hand": ["both"]}), "row 0: hand must be"),
    ],
)
def test_bad_deliveries_are_one_sentence(releases, told):
    with pytest.raises(ValueError, match=told):
        play_shots(lane(), releases)


def test_the_law_of_the_lane_is_kept():
    tight = OiledLane(load_pattern("house"), FrictionLaw().scaled(0.8))
    assert play_shots(tight, [LINE])[0].law == tight.law
