"""Aiming: the line found does hit, is the nearest of several, and none is said in words."""

import re
from dataclasses import replace

import numpy as np
import pandas as pd
import pytest
from motion_help import everyday_lines
from scipy.optimize import minimize_scalar

from bowlcore.motion.aiming import aim
from bowlcore.motion.many import simulate_many
from bowlcore.motion.oil import OilPattern, load_pattern, pattern_names
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import OiledLane, ZonedLane

LINES = everyday_lines()
HOUSE, FLAT = OiledLane(load_pattern("house")), OiledLane(load_pattern("flat"))
KEEPS = ["feet", "target", "angle"]


def entry(release, lane):
    return simulate(release, lane).entry_board


def kept(before, after, keep):
    if keep == "feet":
        return before.laydown_board == after.laydown_board
    if keep == "target":
        return before.target_board == after.target_board
    return after.laydown_board - before.laydown_board == pytest.approx(
        after.target_board - before.target_board
    )


@pytest.mark.claim(
    "The line that the course advises does bring the ball to the board asked for",
    against="the same shot thrown again, on every shipped pattern",
    kind="own",
)
@pytest.mark.parametrize("name", pattern_names())
@pytest.mark.parametrize("keep", KEEPS)
def test_the_line_found_hits_and_keeps_what_it_should(name, keep, figure):
    lane, found = OiledLane(load_pattern(name)), 0
    for line in LINES:
        try:
            aimed = aim(line, lane, keep=keep)
        except ValueError:
            continue
        found += 1
        figure("off by", abs(entry(aimed, lane) - 17.5), "boards", asked="0.001")
        assert entry(aimed, lane) == pytest.approx(17.5, abs=1e-3)
        assert kept(line, aimed, keep)
        same = replace(aimed, laydown_board=line.laydown_board, target_board=line.target_board)
        assert same == line  # hand and line apart, nothing changes
    assert found >= 2


@pytest.mark.parametrize("keep", KEEPS)
@pytest.mark.parametrize("wanted", [5.0, 12.25, 17.5, 20.0, 30.0])
def test_any_entry_board_on_a_flat_lane(keep, wanted):
    for line in LINES[:3]:
        try:
            aimed = aim(line, FLAT, entry_board=wanted, keep=keep)
        except ValueError as said:
            assert "no line" in str(said)
            continue
        assert entry(aimed, FLAT) == pytest.approx(wanted, abs=1e-3)


def test_on_a_flat_lane_the_move_is_the_geometry():
    # friction depends on distance alone: the target moves one board for four at the pins (almost)
    line = LINES[0]
    move = aim(line, FLAT).target_board - line.target_board
    assert move == pytest.approx((17.5 - entry(line, FLAT)) / 4, abs=0.06)
    feet = aim(line, FLAT, keep="angle").laydown_board - line.laydown_board
    assert feet == pytest.approx(17.5 - entry(line, FLAT), abs=2e-3)


def test_a_line_that_already_hits_stays():
    for keep in KEEPS:
        here = aim(LINES[2], HOUSE, keep=keep)
        again = aim(here, HOUSE, keep=keep)
        assert again.laydown_board == pytest.approx(here.laydown_board, abs=1e-3)
        assert again.target_board == pytest.approx(here.target_board, abs=1e-3)


def roots(line, lane, wanted):
    """Every target from the same feet that hits, by brute force."""
    targets = np.linspace(1, 39, 1901)
    frame = pd.DataFrame([vars(line)] * len(targets)).assign(target_board=targets)
    miss = simulate_many(frame, lane)["entry_board"].to_numpy() - wanted
    return targets[:-1][miss[:-1] * miss[1:] < 0]


@pytest.mark.parametrize("line", LINES, ids=lambda r: f"{r.speed_mph:g} mph")
def test_of_several_lines_the_nearest_is_taken(line):
    # on the house shape the entry board falls and rises again with the target: often two lines or more
    several = 0
    for wanted in entry(line, HOUSE) + np.array([0.3, 0.8, 1.2, 2.0]):
        all_roots = roots(line, HOUSE, wanted)
        if len(all_roots) < 2:
            continue
        several += 1
        for start in np.linspace(all_roots[0] - 0.4, all_roots[-1] + 0.4, 7):
            far = np.sort(np.abs(all_roots - start))
            if far[1] - far[0] < 0.1:
                continue  # as good as equally near
            aimed = aim(replace(line, target_board=float(start)), HOUSE, entry_board=wanted)
            nearest = all_roots[np.abs(all_roots - start).argmin()]
            assert aimed.target_board == pytest.approx(nearest, abs=0.021)
    assert several >= 1, "the case is there to have several"


@pytest.mark.parametrize("line", LINES[:4], ids=lambda r: f"{r.speed_mph:g} mph")
@pytest.mark.parametrize("above", [1e-3, 0.01, 0.1])
def test_two_lines_that_almost_touch_are_found(line, above):
    # where entry against target turns round, two roots lie close together
    near = minimize_scalar(
        lambda t: entry(replace(line, target_board=t), HOUSE),
        bounds=(line.target_board - 2.5, line.target_board + 1.5), method="bounded", options={"xatol": 1e-9},
    )  # fmt: skip
    edges = [entry(replace(line, target_board=near.x + d), HOUSE) for d in (-0.3, 0.3)]
    assert min(edges) > near.fun, "the case is there to turn round"
    aimed = aim(line, HOUSE, entry_board=near.fun + above)
    assert entry(aimed, HOUSE) == pytest.approx(near.fun + above, abs=1e-3)
    assert abs(aimed.target_board - near.x) < 1


@pytest.mark.parametrize("line", LINES[:4], ids=lambda r: f"{r.speed_mph:g} mph")
def test_below_the_turning_point_there_is_no_line_nearby(line):
    near = minimize_scalar(
        lambda t: entry(replace(line, target_board=t), HOUSE),
        bounds=(line.target_board - 2.5, line.target_board + 1.5), method="bounded",
    )  # fmt: skip
    wanted = near.fun - 0.2
    try:
        aimed = aim(line, HOUSE, entry_board=wanted)
    except ValueError as said:
        assert "no line" in str(said)
    else:
        assert abs(aimed.target_board - near.x) > 1
        assert entry(aimed, HOUSE) == pytest.approx(wanted, abs=1e-3)


@pytest.mark.parametrize(
    ("place", "lane"),
    [
        ((8, 40), FLAT),
        ((10, 42), HOUSE),
        ((12.5, 16), FLAT),
        ((9, 33.3), FLAT),
        ((16, 2), HOUSE),
        ((14, 12), HOUSE),
    ],
)
def test_through_passes_the_place_and_hits(place, lane):
    aimed = aim(LINES[0], lane, through=place)
    path = simulate(aimed, lane)
    assert path.entry_board == pytest.approx(17.5, abs=1e-3)
    k = int(np.searchsorted(path.distance_ft, place[1]))
    there = np.interp(place[1], path.distance_ft[k - 1 : k + 1], path.board[k - 1 : k + 1])
    assert there == pytest.approx(place[0], abs=0.01)


def test_through_on_zones_too():
    lane = ZonedLane([(40, 0.03), (60, 0.2)])
    aimed = aim(LINES[0], lane, through=(9, 40))
    path = simulate(aimed, lane)
    assert path.board[40] == pytest.approx(9, abs=1e-3)
    assert path.entry_board == pytest.approx(17.5, abs=1e-3)


@pytest.mark.parametrize("keep", KEEPS)
def test_none_is_said_in_words(keep):
    # without side spin and from the outside the ball can only be sent straight
    spinner = Release(20, 550, 90, 0, 38, 38)
    with pytest.raises(ValueError, match="no line reaches board 2") as caught:
        aim(spinner, ZonedLane([(60, 0.3)]), entry_board=2, keep=keep)
    said = str(caught.value)
    assert "\n" not in said
    assert re.search(r"comes in between boards [\d.]+ and [\d.]+|gutter", said)
    assert {"feet": "laydown on board 38", "target": "target on board 38", "angle": "launch angle"}[
        keep
    ] in said


def test_no_line_through_a_place_is_said_in_words():
    with pytest.raises(ValueError, match=r"no line over board 39 at 59 ft reaches board 5"):
        aim(LINES[0], HOUSE, entry_board=5, through=(39, 59))


@pytest.mark.parametrize("keep", KEEPS)
def test_left_hander_on_a_symmetric_lane_gets_the_same_line(keep):
    for line in LINES[:2]:
        try:
            right = aim(line, HOUSE, keep=keep)
        except ValueError:
            continue
        left = aim(replace(line, hand="left"), HOUSE, keep=keep)
        assert left.hand == "left"
        assert left.laydown_board == pytest.approx(right.laydown_board, abs=1e-6)
        assert left.target_board == pytest.approx(right.target_board, abs=1e-6)


def test_left_hander_on_the_mirrored_lane_gets_the_same_line():
    oil = np.random.default_rng(2).uniform(0.2, 2, (5, 6)) * np.linspace(1, 0.1, 5)[:, None]
    boards, feet = np.array([1, 8, 15, 25, 32, 39.0]), np.linspace(0, 60, 5)
    lane, mirrored = (
        OiledLane(OilPattern(feet, b, o)) for b, o in ((boards, oil), (40 - boards[::-1], oil[:, ::-1]))
    )
    right = aim(LINES[0], lane)
    left = aim(replace(LINES[0], hand="left"), mirrored)
    assert left.target_board == pytest.approx(right.target_board, abs=1e-6)
    same_lane = entry(replace(right, hand="left"), lane)
    assert not abs(same_lane - 17.5) < 0.1  # the lane does differ from side to side


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"entry_board": 0}, ("entry_board", "1 and 39", "got 0")),
        ({"entry_board": 40}, ("entry_board", "1 and 39", "got 40")),
        ({"entry_board": "pocket"}, ("entry_board", "pocket")),
        ({"keep": "speed"}, ("keep", '"feet", "target" or "angle"', "speed")),
        ({"through": 8}, ("through", "(board, distance_ft)", "8")),
        ({"through": (8, 0.5)}, ("through", "1", "59", "0.5")),
        ({"through": (50, 40)}, ("through", "0.5", "39.5", "50")),
        ({"through": ("ten", 40)}, ("through", "ten")),
    ],
    ids=lambda v: str(v) if isinstance(v, dict) else "",
)
def test_bad_wishes_are_refused_in_words(given, words):
    with pytest.raises(ValueError) as caught:
        aim(LINES[0], HOUSE, **given)
    for word in words:
        assert word in str(caught.value)
