"""Windows of pins and leaves against the trade's figures (our own geometry, named in trade sheets as such)."""

import numpy as np
import pytest

from bowlcore.coaching.spare_windows import (
    board_at,
    front_pin,
    leave_window,
    pin_window,
    spare_leave,
    touched,
)
from bowlcore.rack.leave import MIRROR, Leave
from bowlcore.rack.pins import BOARD_IN, TOUCH_DISTANCE_IN, pin_board, pin_distance_ft, window_boards

ANGLES = (-3.0, -1.0, 0.0, 2.0, 6.0)


@pytest.mark.claim(
    "A ball touches a free pin over 12.5 boards and a corner pin over 8.8",
    against="our own geometry from the widths of ball and pin, named as such in trade sheets",
    kind="exact",
)
@pytest.mark.parametrize(
    "pin, wide", [(10, 8.84), (7, 8.84), *[(pin, 12.51) for pin in (1, 2, 3, 4, 5, 6, 8, 9)]]
)
def test_windows_of_a_ball_along_the_boards(pin, wide, figure):
    """2 x 6.656 in = 12.51 boards for a free pin, 8.84 for a corner pin: our own geometry, check 18."""
    figure("off by", abs(pin_window(pin).width - wide), "boards", asked="0.05")
    assert pin_window(pin).width == pytest.approx(wide, abs=0.05)
    assert pin_window(pin).width == pytest.approx(window_boards(pin), abs=1e-12)


def test_the_10_pin_is_touched_from_the_edge_to_board_9_34():
    """From the edge to board 9.34: our own geometry, given with two decimals in the trade's table."""
    window = pin_window(10)
    assert window.low == pytest.approx(0.5) and window.high == pytest.approx(9.34, abs=0.005)
    assert window.row_ft == pytest.approx(62.598, abs=0.001)


@pytest.mark.parametrize("pin", range(1, 11))
@pytest.mark.parametrize("angle", ANGLES)
def test_at_the_edge_of_a_window_ball_and_pin_just_touch(pin, angle):
    """Definition, walked in small steps: the least distance of the centres along the way, on the lane."""
    window = pin_window(pin, angle)
    for edge in (window.low, window.high):
        along = np.linspace(-1.5, 0.8, 4001)  # ft around the pin's row
        board = board_at(edge, angle, 60.0 + along)
        apart = np.hypot(along * 12.0, (board - float(pin_board(pin))) * BOARD_IN)
        first = int(np.argmax(apart <= TOUCH_DISTANCE_IN)) if (apart < TOUCH_DISTANCE_IN).any() else None
        just = abs(apart.min() - TOUCH_DISTANCE_IN) < 0.01
        at_the_edge = first is not None and min(abs(board[first] - 0.5), abs(board[first] - 39.5)) < 0.01
        assert just or at_the_edge


@pytest.mark.parametrize("pin", range(1, 11))
@pytest.mark.parametrize("angle", ANGLES)
def test_mirror_a_left_handers_7_is_the_10(pin, angle):
    """Exact: the own corner of either hand, and the other side of the lane with the ball's way turned round."""
    assert pin_window(pin, angle, "left") == pin_window(MIRROR[pin], angle, "right")
    here, there = pin_window(pin, angle), pin_window(MIRROR[pin], -angle)
    assert 40.0 - there.high == pytest.approx(here.low, abs=1e-12)
    assert 40.0 - there.low == pytest.approx(here.high, abs=1e-12)
    leave = Leave.of(pin, 5) if pin != 5 else Leave.of(5)
    assert leave_window(leave.mirror, angle, "left") == leave_window(leave, angle, "right")


@pytest.mark.parametrize(
    "text, wide", [("6-10", 9.34 - 2.465), ("3-10", 9.34 - 8.11), ("2-8", 12.51), ("2-4-5-8", 1.23)]
)
def test_a_leaves_window_is_what_its_pins_share(text, wide):
    """Our own geometry from the pins' boards (14.36, 8.72, 3.08; checks 1.1) and the reach of 6.25 boards."""
    assert leave_window(text).width == pytest.approx(wide, abs=0.01)


def test_no_straight_ball_touches_7_and_10():
    assert leave_window("7-10").width < 0
    every, front = touched(spare_leave("7-10"), np.linspace(1, 39, 200), 0.0)
    assert not every.any() and front.any()


def test_a_board_comes_off_each_side_of_a_lone_pin():
    """Very thin touches may leave the pin (common practice)."""
    boards = np.arange(1.0, 39.0, 0.01)
    well, _ = touched(spare_leave(5), boards, 0.0)
    any_touch, _ = touched(spare_leave(5), boards, 0.0, thin_boards=0.0)
    assert (any_touch.sum() - well.sum()) * 0.01 == pytest.approx(2.0, abs=0.03)


def test_front_pin():
    assert front_pin(spare_leave("3-10")) == 3 and front_pin(spare_leave("2-4-5-8")) == 2
    assert front_pin(spare_leave("7-10")) == 10 and front_pin(spare_leave("7-10"), "left") == 7


def test_rows_lie_where_pins_stand():
    assert leave_window("3-10").row_ft == pytest.approx(float(pin_distance_ft(3)))


@pytest.mark.parametrize("given", ["10", 10, (10,), Leave.of(10)])
def test_a_leave_may_be_said_in_several_ways(given):
    assert spare_leave(given) == Leave.of(10)


@pytest.mark.parametrize(
    "given, said",
    [
        (11, "pin must be a whole number between 1 and 10, got 11"),
        ("3-11", "between 1 and 10, got 11"),
        ((6, 6), "a leave names each pin once, got"),
        ("10-10", "a leave names each pin once, got '10-10'"),
        ((), "at least one standing pin, got none"),
        ("", "at least one standing pin, got none"),
        (Leave(0), "at least one standing pin, got none"),
        ("ten", "pin numbers joined by hyphens"),
    ],
)
def test_bad_leaves_get_one_sentence(given, said):
    with pytest.raises(ValueError, match=said):
        spare_leave(given)
