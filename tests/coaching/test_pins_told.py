"""Ball weight, published counts and a bowler told: directions that are known, numbers that are the table's."""

import numpy as np
import pytest

from bowlcore.coaching import ball_weight, bowler_told, published_pins
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.odds import bowler_odds
from bowlcore.coaching.path_lab import lane_of


def test_a_lighter_ball_is_thrown_aside_more_and_takes_fewer_pins():
    """Direction: our own calculation with smooth discs; no published count by ball weight was found."""
    told = ball_weight.answer(3.0, 11.0, 1.5)
    best = told.pinfall[:, told.board <= 20].max(axis=1)
    assert best[0] < best[-1] - 0.3 and best[0] == best.min()
    assert told.best_board[0] >= told.best_board[-1] - 0.5


@pytest.mark.claim(
    "The counts that the lessons use give strikes and 10-pins near the published totals; these were "
    "fitted, so it is no proof",
    against="televised finals 2005-10, known second-hand: 61.13 % strikes, 10-pin 25.5 % of the rest",
    kind="published",
)
def test_model_and_published_totals_that_were_fitted_agree(figure):
    """Televised finals 2005-10: 61.13 % strikes; 10-pin 25.5 % of the rest (known second-hand). A fit, no proof."""
    table = {row["what"]: row for row in published_pins.rows()}
    strikes = float(table["strikes of all first balls"]["this model"].split()[0])
    ten = float(table["the 10-pin, of all balls that did not strike"]["this model"].split()[0])
    figure("strikes", strikes, "%", asked="50 to 67, published 61.1")
    figure("10-pin of the rest", ten, "%", asked="18 to 36, published 25.5")
    assert 50 <= strikes <= 67 and 18 <= ten <= 36


@pytest.mark.claim(
    "Of the totals that were not fitted the 7-10 comes too often here, and the 3-10 never, as lesson 05 says",
    against=(
        "televised finals 2005-10, known second-hand: 7-10 1.9 %, 3-10 1.3 % of the balls that did not strike"
    ),
    kind="disagrees",
)
def test_what_was_not_fitted_is_off_by_as_much_as_the_lesson_says(figure):
    """Same source. A professional's 7-10 should be below 3 %; the model has more than twice the published 1.9."""
    table = {row["what"].split(",")[0]: float(row["this model"].split()[0]) for row in published_pins.rows()}
    figure("7-10", table["the 7-10"], "%", asked="3 to 7")
    figure("3-10", table["the 3-10"], "%", asked="0")
    assert 3 <= table["the 7-10"] <= 7 and table["the 3-10"] == 0 and 1 <= table["the 4-6-7-10"] <= 4


def test_a_bowler_is_told_by_the_same_odds():
    bowler = load_bowlers()["league one-hander"]
    told, odds = bowler_told.answer(bowler, lane_of("house")), bowler_odds(bowler, lane_of("house"))
    assert (
        told.odds == odds and f"{100 * odds.pocket:.0f} % come in within 1.5 boards of 17.5" in told.sentence
    )
    assert np.isfinite(told.entry_board).sum() > 250


def test_bad_scatter_is_one_sentence():
    with pytest.raises(ValueError, match="scatter_boards must be a number between 0.5 and 6 boards, got 40"):
        ball_weight.answer(3, 11, 40)
