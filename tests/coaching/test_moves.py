"""Move or stay: no move without a gain, none beyond what a bowler can do, and words without signs."""

from dataclasses import replace

import pytest

from bowlcore import bowler_odds, load_bowlers, simulate
from bowlcore.coaching.moves import STAY, WORTH, best_line, best_move, move_words, moved
from bowlcore.coaching.path_lab import lane_of

LEAGUE = load_bowlers()["league one-hander"]


def test_on_the_usual_line_of_the_house_shape_the_answer_is_stay():
    move = best_move(LEAGUE, lane_of("house"))
    assert (move.feet, move.target) == STAY and move.pocket == move.staying


def test_on_the_dried_lane_the_move_is_in_and_pays():
    """Feet 2 and target 1, bigger 3-and-1/2 and 5-and-2, when the ball is high: a web page of 2004, second-hand."""
    lane = lane_of("dried_out")
    move = best_move(LEAGUE, lane)
    assert move.feet >= 2 and 0 < move.target < move.feet
    assert move.pocket >= move.staying + WORTH
    after = bowler_odds(moved(LEAGUE, move.feet, move.target), lane, 64)
    assert after.pocket == pytest.approx(move.pocket, abs=0.02)


@pytest.mark.parametrize("feet, target", [(0, 8), (2, 2), (8, 0), (0, 0)])
def test_no_move_is_larger_than_can_change(feet, target):
    able = replace(LEAGUE, can_change={"feet": feet, "target": target})
    move = best_move(able, lane_of("dried_out"))
    assert abs(move.feet) <= feet and abs(move.target) <= target
    line = best_line(able, lane_of("dried_out")).release
    assert abs(line.laydown_board - LEAGUE.release.laydown_board) <= feet
    assert abs(line.target_board - LEAGUE.release.target_board) <= target


def test_a_line_at_the_edge_is_not_moved_off_the_lane():
    far = replace(LEAGUE, release=replace(LEAGUE.release, laydown_board=38, target_board=38))
    out = moved(far, *best_move(far, lane_of("house"))[:2]).release
    assert 1 <= out.laydown_board <= 39 and 1 <= out.target_board <= 39


def test_the_best_line_brings_more_than_the_present_one_or_is_it():
    for pattern in ("house", "long_heavy", "dried_out", "flat"):
        lane = lane_of(pattern)
        before, after = (bowler_odds(one, lane, 64).pocket for one in (LEAGUE, best_line(LEAGUE, lane)))
        assert after == before or after >= before + WORTH - 0.02


def test_the_move_alone_is_what_the_line_does():
    one = moved(LEAGUE, 2, 1)
    assert simulate(one.release, lane_of("house")).entry_board == pytest.approx(
        simulate(replace(LEAGUE.release, laydown_board=19, target_board=14.5), lane_of("house")).entry_board
    )


@pytest.mark.parametrize(
    "move, told",
    [
        ((0, 0), "stay"),
        ((2, 1), "feet 2 and target 1 in"),
        ((-1, -1), "feet 1 and target 1 out"),
        ((0, -1), "target 1 out"),
        ((2, 0), "feet 2 in"),
    ],
)
def test_moves_are_said_with_in_and_out(move, told):
    assert move_words(*move) == told
