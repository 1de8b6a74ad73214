"""Lines as bowlers say them, in and out; where the marks lie."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bowlcore.coaching.feet import Feet, line_words, mark_board, mark_distance_ft, on_line
from bowlcore.coaching.path_lab import lane_of
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release

LINE = Release(17, 300, 45, 13, 17, 13)
boards = st.floats(5, 33)


def test_the_marks_lie_in_a_v_from_12_to_16_ft():
    """Clinic slides after a federation's guide, known second-hand: seven arrows, 12 to 16 ft."""
    assert [mark_distance_ft(board) for board in (5, 20, 35)] == [12.0, 16.0, 12.0]
    assert mark_distance_ft(10) == pytest.approx(12 + 4 / 3)


@given(boards, boards, st.floats(0, 15))
def test_a_line_said_is_the_line_thrown(slide, over, offset):
    """Our own geometry: what goes in as words comes out as the same boards."""
    feet = Feet(offset)
    if not 1 <= slide - offset <= 39:
        return
    try:
        release = on_line(LINE, feet, slide, over)
    except ValueError:
        return
    assert feet.slide_board(release) == pytest.approx(slide)
    assert mark_board(release) == pytest.approx(over, abs=1e-6)


def test_a_mark_lies_nearer_than_15_ft_on_the_outside_boards():
    """A ball sent out is further in at the marks than at 15 ft: our own geometry."""
    board = mark_board(LINE)
    assert LINE.target_board < board < LINE.laydown_board
    assert board == pytest.approx(17 - 4 / 15 * mark_distance_ft(board))


def test_drift():
    """3:1:2 (a web page on spare systems, second-hand): two boards at the start are one at the line."""
    assert Feet(drift="2 to 1").start_move(1) == 2
    assert Feet().start_move(1) == 1


def test_words():
    path = simulate(LINE, lane_of("house"))
    assert line_words(LINE, Feet(8), path).startswith("slide on 25, over 13, out to 9")


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"offset_boards": 40}, "offset_boards must be a number between -5 and 20"),
        ({"drift": "sideways"}, "drift must be one of parallel, 2 to 1, got 'sideways'"),
        ({"style": "no-handed"}, "style must be one of one-handed, two-handed"),
    ],
)
def test_bad_input_gets_one_sentence(given, said):
    with pytest.raises(ValueError, match=said):
        Feet(**given)
