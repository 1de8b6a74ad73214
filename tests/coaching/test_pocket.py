"""One entry told: the words are the table's numbers, mirrored for a left-hander."""

import re

import numpy as np
import pytest

from bowlcore import strike_odds
from bowlcore.coaching import pocket, words
from bowlcore.rack import carry


def test_the_sentence_gives_the_interval_first_and_the_commonest_leave():
    told, odds = pocket.answer(17.5, 4.5, 14), strike_odds(17.5, 4.5, 14)
    first = next(x for x in carry.leave_shares(17.5, 4.5, 14) if not x.leave.is_strike)
    low, high, guess = (words.percent(value).split()[0] for value in (odds.low, odds.high, odds.strike))
    assert told.sentence.startswith(f"In this pin model between {low} and {high} in 100 of such balls strike")
    assert f"best guess {guess} %" in told.sentence
    assert f"Most often it leaves the {first.leave.text}-pin ({words.percent(first.share)})" in told.sentence


def test_standing_odds_fit_the_pinfall():
    told = pocket.answer(16.0, 3.0, 14)
    assert 10 - told.standing.sum() == pytest.approx(strike_odds(16.0, 3.0, 14).mean_pinfall)


def test_the_way_is_the_incoming_line_until_the_touch():
    told = pocket.answer(17.5, 6.0, 14)
    # 6 degrees are 1.185 boards a foot: our own calculation
    assert (told.way_board[1] - told.way_board[0]) / (told.way_ft[1] - told.way_ft[0]) == pytest.approx(
        1.185, abs=0.02
    )
    assert (np.diff(told.way_ft) >= -1e-9).all()


def test_left_handers_read_their_own_pins():
    right, left = pocket.answer(17.5, 4.5, 14), pocket.answer(17.5, 4.5, 14, hand="left")
    assert np.array_equal(right.standing, left.standing)
    assert sorted(a.leave.mirror.mask for a in right.leaves) == sorted(b.leave.mask for b in left.leaves)
    assert right.sentence != left.sentence  # the 10-pin of the one is the 7-pin of the other


def test_a_miss_and_a_clamped_speed_are_said():
    assert "passes the head pin without touching it" in pocket.answer(12, 0.0, 14).sentence
    assert "its end was taken" in pocket.answer(17.5, 4.5, 20).sentence


def test_twenty_balls_are_repeatable_and_drawn_from_the_table():
    texts, sentence = pocket.twenty_balls(17.5, 4.5, 14, seed=3)
    assert texts == pocket.twenty_balls(17.5, 4.5, 14, seed=3)[0]
    assert len(texts) == 20 and f"{texts.count('strike')} strikes" in sentence
    possible = {"strike" if x.leave.is_strike else x.leave.text for x in carry.leave_shares(17.5, 4.5, 14)}
    assert set(texts) <= possible
    for text in set(texts) - {"strike"}:
        assert re.search(rf"{words.times(texts.count(text))} the {text}\b", sentence)
    strikes = (
        np.mean([pocket.twenty_balls(17.5, 4.5, 14, seed=s)[0].count("strike") for s in range(100)]) / 20
    )
    assert strikes == pytest.approx(strike_odds(17.5, 4.5, 14).strike, abs=0.06)
