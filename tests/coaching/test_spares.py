"""Lines to a window and chances: limits that are known, straight geometry, mirror, bad input."""

from dataclasses import replace
from math import erf, sqrt

import pytest

from bowlcore.coaching.bowler import Bowler, Spread, load_bowlers
from bowlcore.coaching.feet import Feet
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spare_windows import aimed_window, board_at, spare_leave
from bowlcore.coaching.spares import (
    BALLS,
    COMMON,
    PLAIN_BALL,
    STRIKE_BALL,
    answer,
    ball_for,
    chances_of,
    lines_to_middle,
    spare_chance,
)
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.surface import ZonedLane

HOUSE = lane_of("house")
ICE = ZonedLane([(60, 0.0001)])  # hardly any friction: the ball goes straight
STRAIGHT = Release(17, 0, 0, 0, 20, 20)
STILL = Spread(0, 0, 0, 0, 0, 0)
LEAGUE = load_bowlers()["league one-hander"]


@pytest.mark.parametrize("keep", ["target", "feet"])
@pytest.mark.parametrize("text", COMMON)
def test_a_line_found_comes_into_the_middle(text, keep):
    leave = spare_leave(text)
    for ball in (ball_for(LEAGUE, kind) for kind in BALLS):
        line = lines_to_middle([LEAGUE.release], [leave], HOUSE, ball, keep)[0]
        if line is None:
            continue
        path = simulate(line, HOUSE, ball)
        window = aimed_window(leave, path.entry_angle_deg)
        board = board_at(path.entry_board, path.entry_angle_deg, window.row_ft)
        assert board == pytest.approx(window.middle, abs=0.03)
        kept = {"target": "target_board", "feet": "laydown_board"}[keep]
        assert getattr(line, kept) == getattr(LEAGUE.release, kept)


def test_feet_move_as_the_lever_says_when_nothing_hooks():
    """Target fixed, laydown moved 1: rows 2 / 3 / 4 move 3.06 / 3.12 / 3.17 the other way (our own geometry)."""
    lines = lines_to_middle([STRAIGHT] * 4, [spare_leave(pin) for pin in (1, 2, 4, 8)], ICE, None)
    moved = [lines[0].laydown_board - line.laydown_board for line in lines[1:]]
    assert moved == pytest.approx([5.64 / 3.06, 11.28 / 3.12, 5.64 / 3.17], abs=0.03)


@pytest.mark.claim(
    "The chance of a straight ball at a spare is the normal law over the window",
    against="the error function, and the two levers of feet and target",
    kind="exact",
)
def test_chance_of_a_straight_ball_is_the_normal_law(figure):
    """Sideways scatter at the pin's row = the two levers, squared and added; 4.06 and 3.06 at row 2."""
    bowler = Bowler(STRAIGHT, Spread(0, 0, 0, 0, 0.5, 0.8))
    for pin, levers in ((1, (3.0, 4.0)), (2, (3.06, 4.06))):
        line = lines_to_middle([STRAIGHT], [spare_leave(pin)], ICE, None)[0]
        wide = sqrt((levers[0] * 0.5) ** 2 + (levers[1] * 0.8) ** 2)
        expected = erf((12.51 / 2 - 1.0) / wide / sqrt(2.0))
        chance = spare_chance(replace(bowler, release=line), ICE, pin, shots=2048)
        figure("chance off by", abs(chance.front - expected), asked="0.01")
        assert chance.front == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize("pin", range(1, 11))
def test_without_scatter_a_ball_in_the_middle_always_hits(pin):
    still = replace(LEAGUE, spread=STILL)
    line = lines_to_middle([still.release], [spare_leave(pin)], HOUSE, ball_for(still, PLAIN_BALL))[0]
    chance = spare_chance(replace(still, release=line), HOUSE, pin, ball_for(still, PLAIN_BALL), 64)
    assert chance == (1.0, 1.0, 0.0)


def test_more_scatter_makes_fewer():
    line = lines_to_middle([STRAIGHT], [spare_leave(10)], ICE, None, "feet")[0]
    made = [
        spare_chance(Bowler(line, Spread(0, 0, 0, 0, 0.4 * k, 0.7 * k)), ICE, 10).front
        for k in (0.5, 1, 2, 4, 8)
    ]
    assert made == sorted(made, reverse=True) and made[0] > 0.9 and made[-1] < 0.35


def test_the_corner_is_harder_than_the_middle():
    """Windows of 8.84 and 12.51 boards; by how much depends on the scatter."""
    pins = [spare_leave(pin) for pin in (10, 5)]
    lines = lines_to_middle([STRAIGHT] * 2, pins, ICE, None)
    corner, free = chances_of([Bowler(line) for line in lines], ICE, pins, None)
    assert corner.front < free.front - 0.1


def test_the_pin_in_front_is_touched_at_least_as_often_as_every_pin():
    for text in COMMON:
        told = answer(LEAGUE, HOUSE, text)
        assert told.chance.every <= told.chance.front


@pytest.mark.claim(
    "A left-hander makes the 7-pin as often as the right-hander the 10-pin",
    against="the right-hander on a lane alike on both sides",
    kind="exact",
)
@pytest.mark.parametrize("text", ["10", "7", "6-10", "2-4-5-8"])
@pytest.mark.parametrize("kind", BALLS)
def test_a_left_hander_makes_the_mirror_leave_as_often(text, kind):
    """Exact on a symmetric lane: the 7-pin of a left-hander is the 10-pin of a right-hander."""
    left = replace(LEAGUE, release=replace(LEAGUE.release, hand="left"))
    here, there = answer(LEAGUE, HOUSE, text, kind), answer(left, HOUSE, spare_leave(text).mirror, kind)
    assert here.chance == there.chance and here.path.entry_board == there.path.entry_board
    assert (here.low, here.high) == (there.low, there.high)
    assert (here.better and here.better.laydown_board) == (there.better and there.better.laydown_board)


def test_the_picture_of_the_lesson_the_strike_ball_bends_away_from_the_corner():
    """Common practice: a plain ball for the 10-pin. On the same line the strike ball misses it on the inside."""
    line = lines_to_middle(
        [replace(LEAGUE.release, laydown_board=25)],
        [spare_leave(10)],
        HOUSE,
        ball_for(LEAGUE, PLAIN_BALL),
        "feet",
    )[0]
    told = answer(replace(LEAGUE, release=line), HOUSE, 10)
    assert told.low < told.path.entry_board < told.high < told.other.entry_board - 3
    assert "inside the window" in told.sentence and "misses the window" in told.sentence


def test_a_plain_ball_weighs_what_the_bowlers_ball_weighs():
    child = load_bowlers()["child of eight"]
    assert ball_for(child, PLAIN_BALL).mass_lb == child.ball.mass_lb == 6
    assert ball_for(child, STRIKE_BALL) is child.ball


def test_feet_words_follow_the_walk():
    """Half of the move at the start reaches the line with a drift of 2 to 1 (3:1:2, known second-hand)."""
    drifting = replace(LEAGUE, feet=Feet(7, "2 to 1"))
    here, there = answer(LEAGUE, HOUSE, "7").sentence, answer(drifting, HOUSE, "7").sentence
    moves = [float(text.split("feet ")[1].split(" board")[0]) for text in (here, there)]
    assert moves[1] == pytest.approx(2 * moves[0], abs=1.0) and moves[0] > 2


def test_a_ball_lost_before_the_pins_is_said():
    out = replace(LEAGUE, release=replace(LEAGUE.release, laydown_board=10, target_board=3))
    told = answer(out, lane_of("flat"), 10)
    assert "ends in the gutter before the pins" in told.sentence and told.chance.gutter > 0.5


@pytest.mark.parametrize(
    "change, said",
    [
        ({"leave": 11}, "between 1 and 10, got 11"),
        ({"leave": "6-6"}, "each pin once"),
        ({"leave": ()}, "at least one standing pin"),
        ({"kind": "house ball"}, "ball must be one of plain spare ball, strike ball, got 'house ball'"),
    ],
)
def test_bad_input_gets_one_sentence(change, said):
    with pytest.raises(ValueError, match=said):
        answer(**({"bowler": LEAGUE, "surface": HOUSE, "leave": 10} | change))


def test_absurd_scatter_is_refused_and_scatter_0_is_not():
    with pytest.raises(ValueError, match="spread of target_board must be a number between 0 and 8, got 40"):
        Spread(target_board=40)
    assert spare_chance(Bowler(STRAIGHT, STILL), ICE, 1) == (1.0, 1.0, 0.0)
    wild = spare_chance(Bowler(STRAIGHT, Spread(5, 150, 45, 30, 8, 8)), HOUSE, 1)
    assert 0 < wild.front < 0.5 and wild.gutter > 0.2
