"""Counting systems against the trade's table (our own calculation there, from 60 ft, 15 ft and the pins' boards)."""

from dataclasses import replace

import pytest

from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.three_six_nine import (
    ON_PAPER,
    SYSTEMS,
    THROWN,
    WALKS,
    answer,
    cross_lane_deg,
    laydown_move,
    pins_move,
)
from bowlcore.motion.units import BOARD_M, FOOT_M
from bowlcore.rack.pins import pin_board, pin_distance_ft

LEAGUE = load_bowlers()["league one-hander"]
HOUSE = lane_of("house")
ROWS_FT = [float(pin_distance_ft(pin)) for pin in (2, 4, 7)]


def paper(system="3-6-9", walk="2 to 1", start=20.0):
    return answer(LEAGUE, HOUSE, system, walk, ON_PAPER, start).landings


def test_3_1_2_at_60_ft():
    """Check 19: 2 at the start, 1 at the foul line, 3 at 60 ft; exact (a web page on spare systems, second-hand)."""
    assert laydown_move(2, 0, "2 to 1") == 1
    assert pins_move(2, 0, "2 to 1", 60.0) == -3


@pytest.mark.parametrize(
    "move, levers",
    [
        ({"target_move": 0, "walk": "parallel", "start_move": -1}, (3.06, 3.12, 3.17)),
        ({"target_move": 1, "walk": "parallel", "start_move": 0}, (4.06, 4.12, 4.17)),
        ({"target_move": 1, "walk": "at the target", "start_move": 0}, (2.53, 2.56, 2.59)),
    ],
)
def test_levers_to_rows_2_3_and_4(move, levers):
    """Laydown moved, target moved with the laydown fixed, target moved with the start fixed: table of 3.5."""
    assert [pins_move(distance_ft=row, **move) for row in ROWS_FT] == pytest.approx(levers, abs=0.005)


@pytest.mark.parametrize("pin, laydown, stance", [(2, 1.84, 3.69), (4, 3.62, 7.24), (7, 5.33, 10.66)])
def test_exact_moves(pin, laydown, stance):
    needed = float(pin_board(pin)) - 20.0
    row = float(pin_distance_ft(pin))
    assert needed / -pins_move(1, 0, "parallel", row) == pytest.approx(laydown, abs=0.005)
    assert needed / -pins_move(1, 0, "2 to 1", row) == pytest.approx(stance, abs=0.006)


@pytest.mark.claim(
    "What 3-6-9 and 2-4-6 give a straight ball on paper, and how far that falls short of the pins",
    against="the trade's table, our own calculation from 60 ft, 15 ft and the pins' boards",
    kind="exact",
)
@pytest.mark.parametrize(
    "system, walk, gives, short",
    [
        ("3-6-9", "2 to 1", (4.59, 9.35, 14.28), (1.05, 1.93, 2.64)),
        ("3-6-9", "parallel", (9.2, 18.7, 28.6), None),
        ("2-4-6", "at the target", (5.06, 10.23, 15.52), (0.6, 1.1, 1.4)),
        ("2-4-6", "parallel", (8.1, 16.5, 25.0), None),
    ],
)
def test_what_each_system_gives(system, walk, gives, short):
    """The table of 3.5, both sides of the lane alike."""
    landings = paper(system, walk)
    assert [one.pin for one in landings] == [2, 4, 7, 3, 6, 10]
    for side, sign in ((landings[:3], 1), (landings[3:], -1)):
        assert [sign * (one.board - 20) for one in side] == pytest.approx(
            gives, abs=0.06 if short is None else 0.006
        )
        if short:
            assert [one.short for one in side] == pytest.approx(short, abs=0.06 if short[0] == 0.6 else 0.006)


def test_from_the_pocket_the_7_pin_shot_lands_1_1_boards_inside_its_window():
    """Counted from board 17.5 it lands on 31.8, 1.1 boards inside: result 6 of the trade's list."""
    seven = paper(start=17.5)[2]
    assert seven.board == pytest.approx(31.8, abs=0.05)
    assert seven.board - seven.low == pytest.approx(1.1, abs=0.05) and seven.touched


def test_the_parallel_walk_is_a_bad_miss():
    assert [one.pin for one in paper(walk="parallel") if not one.touched] == [4, 7, 6, 10]
    assert all(one.touched for one in paper())


@pytest.mark.parametrize("board, angle", [(30, 2.18), (25, 1.78)])
def test_cross_lane_angles(board, angle):
    """From board 30 to the 10-pin 2.18 degrees, from 25 1.78: table of 3.5; the other corner is the mirror."""
    assert -cross_lane_deg(board, 10) == pytest.approx(angle, abs=0.005)
    assert cross_lane_deg(40 - board, 7) == pytest.approx(-cross_lane_deg(board, 10), abs=1e-12)


def test_2_and_1_is_two_moves():
    """Check 24: parallel walk 0.339 degrees opened and 0.8 board at 42 ft; with the 2:1 drift straight, 1 board."""
    from math import atan2, degrees

    opened = laydown_move(2, 1, "parallel") - 1
    assert degrees(atan2(opened * BOARD_M, 15 * FOOT_M)) == pytest.approx(0.339, abs=0.001)
    assert pins_move(2, 1, "parallel", 42.0) == pytest.approx(-0.8, abs=0.01)
    assert laydown_move(2, 1, "2 to 1") == 1 and pins_move(2, 1, "2 to 1", 42.0) == pytest.approx(
        1.0, abs=1e-12
    )


def test_a_cross_lane_line_and_3_and_6_back_reach_every_pin_with_the_drift():
    landings = paper("cross-lane")
    assert all(one.touched for one in landings)
    assert landings[2].short == landings[5].short == 0
    assert landings[0].short == pytest.approx(landings[3].short) and landings[0].short > landings[1].short > 0


@pytest.mark.parametrize("walk", WALKS)
@pytest.mark.parametrize("thrown", THROWN)
@pytest.mark.parametrize("system", SYSTEMS)
def test_a_left_hander_is_the_mirror(system, thrown, walk):
    left = replace(LEAGUE, release=replace(LEAGUE.release, hand="left"))
    here, there = (answer(one, HOUSE, system, walk, thrown).landings for one in (LEAGUE, left))
    assert [one.pin for one in there] == [3, 6, 10, 2, 4, 7]
    for a, b in zip(here, there, strict=True):
        assert (a.board == b.board or a.lost) and a.lost == b.lost and a.moved == b.moved


def test_thrown_on_a_lane_without_friction_it_is_the_paper():
    from bowlcore.motion.surface import ZonedLane

    straight = replace(
        LEAGUE, release=replace(LEAGUE.release, rev_rate_rpm=0, laydown_board=20, target_board=20)
    )
    ice = ZonedLane([(60, 0.0001)])
    for system in ("3-6-9", "2-4-6"):
        seen = answer(straight, ice, system, "2 to 1", "strike ball").landings
        expected = answer(straight, ice, system).landings
        for a, b in zip(seen, expected, strict=True):
            if not a.lost:
                assert a.board == pytest.approx(b.board, abs=0.01)


@pytest.mark.claim(
    "With a hooking ball on the house shape 3-6-9 falls further short of the 2, 4 and 7 than on paper",
    against="a web page on spare systems, known second-hand",
    kind="disagrees",
)
def test_with_a_hook_the_custom_falls_further_short_of_the_far_pins(figure):
    """A web page on spare systems gives 3-6-9 from the strike line; on our house shape the hook eats part of it."""
    far = answer(LEAGUE, HOUSE, "3-6-9", "2 to 1", "strike ball").landings[:3]
    figure("short by up to", max(one.short for one in far), "boards")
    assert all(one.short > on.short for one, on in zip(far, paper()[:3], strict=True))


@pytest.mark.parametrize(
    "change, said",
    [
        ({"system": "1-2-3"}, "system must be one of 3-6-9, 2-4-6, cross-lane, got '1-2-3'"),
        ({"walk": "sideways"}, "walk must be one of 2 to 1, parallel, at the target, got 'sideways'"),
        ({"thrown": "rock"}, "thrown must be one of straight, on paper, plain spare ball, strike ball"),
    ],
)
def test_bad_input_gets_one_sentence(change, said):
    with pytest.raises(ValueError, match=said):
        answer(LEAGUE, HOUSE, **change)
