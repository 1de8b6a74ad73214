"""What one entry does to the rack: odds, leaves, the ball's way, in words. In a stated pin model."""

from dataclasses import dataclass

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.spares import pins_words
from bowlcore.motion.units import BOARD_M, FOOT_M, LANE_FT
from bowlcore.rack import carry
from bowlcore.rack.discs import roll_through
from bowlcore.rack.leave import Leave
from bowlcore.rack.pins import board_at_touch, misses_head_pin, pin_board

_SHOWN_LEAVES = 6


@dataclass(frozen=True)
class PocketAnswer:
    """Everything a picture of the deck needs; boards from the bowler's own side.

    leaves : list of carry.LeaveShare, commonest first, the strike among them
    standing : share of racks in which pins 1 to 10 stand (own side: pin 10 is the corner on that side)
    way_ft, way_board : the ball's way in the flat model
    """

    strike: float
    low: float
    high: float
    leaves: list
    standing: np.ndarray
    way_ft: np.ndarray
    way_board: np.ndarray
    exit_board: float
    sentence: str
    rows: list


def answer(
    entry_board, entry_angle_deg, speed_at_pins_mph=14.0, ball_lb=15.0, *, metric=False, hand="right"
) -> PocketAnswer:
    """One entry told: how often it strikes (the interval first), what it leaves, where the ball goes.

    Raises ValueError as `carry.strike_odds` does.
    """
    entry = entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb
    odds = carry.strike_odds(*entry)
    leaves = carry.leave_shares(*entry, hand=hand)
    standing = carry.standing_odds(*entry)
    touch = float(board_at_touch(entry_board, entry_angle_deg))
    way_ft, way_board = _way(entry_board, entry_angle_deg, touch, speed_at_pins_mph, ball_lb)
    sentence = (
        f"In this pin model {words.share_between(odds.low, odds.high)} of such balls strike (best guess "
        f"{words.percent(odds.strike)}). {_left(leaves)} {_leaves_deck(way_board, entry_board, entry_angle_deg, hand)}"
    )
    if odds.speed_clamped:
        low, high = words.speed(5, metric), words.speed(17, metric)
        sentence += f" (The table holds {low} to {high}: its end was taken.)"
    rows = [
        {
            "what stands": "nothing: a strike" if item.leave.is_strike else item.leave.text,
            "share": words.percent(item.share),
            "95 % between": f"{words.percent(item.low)} and {words.percent(item.high)}",
        }
        for item in leaves[:_SHOWN_LEAVES]
    ]
    return PocketAnswer(
        odds.strike,
        odds.low,
        odds.high,
        leaves,
        standing,
        way_ft,
        way_board,
        float(way_board[-1]),
        sentence,
        rows,
    )


def _way(entry_board, entry_angle_deg, touch, speed, lb):
    """The ball's way through the deck, from three feet before the head pin."""
    first = LANE_FT - 3.0
    if misses_head_pin(entry_board, entry_angle_deg):
        x = np.array([first, LANE_FT + 2.8])
        return x, _straight(entry_board, entry_angle_deg, x)
    through = roll_through(touch, entry_angle_deg, speed, lb)
    start = _straight(entry_board, entry_angle_deg, first)
    return np.r_[first, through.distance_ft], np.r_[start, through.board]


def _straight(entry_board, entry_angle_deg, x_ft):
    """Board of the incoming line at a distance [ft]: 0.197 board a foot for each degree."""
    return entry_board + np.tan(np.radians(entry_angle_deg)) * (np.asarray(x_ft) - LANE_FT) * FOOT_M / BOARD_M


def _left(leaves):
    left = [item for item in leaves if not item.leave.is_strike and item.share >= 0.005][:2]
    if not left:
        return "It hardly ever leaves anything."
    named = " and ".join(f"{pins_words(item.leave)} ({words.percent(item.share)})" for item in left)
    return f"Most often it leaves {named}."


def _leaves_deck(way_board, entry_board, entry_angle_deg, hand):
    """Where the ball leaves the deck, against the back row: the sign of how far it was thrown aside."""
    if misses_head_pin(entry_board, entry_angle_deg):
        return "It passes the head pin without touching it."
    board, near, far = float(way_board[-1]), float(pin_board(9)), float(pin_board(8))
    nine, eight = ("9", "8") if hand == "right" else ("8", "9")
    if board < near - 2:
        place = f"outside the {nine}"
    elif board <= near + 2:
        place = f"over the {nine}"
    elif board < far - 2:
        place = f"between the {nine} and the {eight}"
    else:
        place = f"over the {eight} or beyond it"
    return f"The ball leaves the deck {place}."


def twenty_balls(entry_board, entry_angle_deg, speed_at_pins_mph=14.0, ball_lb=15.0, *, seed=1, hand="right"):
    """What twenty such balls leave, drawn from the table: a list of 20 texts, and the sentence.

    The same seed gives the same twenty.
    """
    leaves = carry.leave_shares(entry_board, entry_angle_deg, speed_at_pins_mph, ball_lb, hand=hand)
    chances = np.array([item.share for item in leaves])
    drawn = np.random.default_rng(int(seed)).choice(len(leaves), size=20, p=chances / chances.sum())
    texts = ["strike" if leaves[i].leave.is_strike else leaves[i].leave.text for i in drawn]
    kinds = sorted(set(texts), key=lambda text: (-texts.count(text), text))
    strikes = texts.count("strike")
    told = f"The same ball twenty times: {words.count(strikes, 'strike')}"
    for text in kinds:
        if text != "strike":
            told += f", {words.times(texts.count(text))} {pins_words(Leave.from_text(text))}"
    return texts, f"{told}."
