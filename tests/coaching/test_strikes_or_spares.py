"""What ten points are worth, against whole games drawn and scored by the rules of play (IBF, ch. 1.1)."""

import numpy as np
import pytest

from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.odds import bowler_odds, spare_chances
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.strikes_or_spares import answer, first_balls, spares_made, with_more_strikes

HOUSE = lane_of("house")
BOWLERS = load_bowlers()


def score(balls):
    """Score of one game from its balls: our own reading of the rules, checked below."""
    total, i = 0, 0
    for _ in range(10):
        if balls[i] == 10:
            total, i = total + sum(balls[i : i + 3]), i + 1
        else:
            pair = balls[i] + balls[i + 1]
            total, i = total + pair + (balls[i + 2] if pair == 10 else 0), i + 2
    return total


@pytest.mark.parametrize(
    "balls, expected",
    [
        ([10] * 12, 300),
        ([9, 1] * 10 + [9], 190),
        ([5, 5] * 10 + [5], 150),
        ([9, 0] * 10, 90),
        ([10, 9, 1] * 5 + [10, 9, 1], 200),
        ([10, 7, 3, 9, 0, 10, 0, 8, 8, 2, 0, 6, 10, 10, 10, 8, 1], 167),
    ],
)
def test_the_scorer(balls, expected):
    """Check 23: IBF, and our own calculation."""
    assert score(balls) == expected


def games(strike, spare, first, count=40_000):
    """Mean of games of equal frames: a strike, else `first` pins and the spare or nothing more."""
    random = np.random.default_rng(5)
    total = 0
    for _ in range(count // 10):
        struck, made = random.random(12) < strike, random.random(12) < spare
        balls = []
        for s, m in zip(struck, made, strict=True):
            balls += [10] if s else [first, 10 - first if m else 0]
        total += score([*balls, 0, 0])
    return total / (count // 10)


@pytest.mark.claim(
    "What ten points more strikes or spares are worth agrees with whole games drawn by lot",
    against="4,000 drawn games scored by the rules of play (IBF, ch. 1.1, known second-hand)",
    kind="independent",
)
@pytest.mark.parametrize("strike, spare", [(0.5, 0.6), (0.1, 0.3), (0.6, 0.9)])
def test_worth_of_ten_points_against_drawn_games(strike, spare, figure):
    """The frame model with the leaves of one class (all nine pins down first), against drawn games."""
    from bowlcore.coaching.odds import pins_per_game

    none = dict.fromkeys(("corner", "cluster", "split", "left in clusters", "left in splits"), 0.0)

    def mean(strike):
        return {"strike": strike, "lone": 1 - strike, "pinfall": 10 * strike + 9 * (1 - strike)} | none

    def chances(spare):
        return dict.fromkeys(("lone", "corner", "cluster", "split"), spare)

    for more_strikes, more_spares in ((0.1, 0.0), (0.0, 0.1)):
        gained = pins_per_game(
            with_more_strikes(mean(strike), more_strikes), chances(spare + more_spares)
        ) - pins_per_game(mean(strike), chances(spare))
        drawn = games(strike + more_strikes, spare + more_spares, 9) - games(strike, spare, 9)
        figure("apart", abs(gained - drawn), "pins a game", asked="2.5")
        assert gained == pytest.approx(
            drawn, abs=2.5
        )  # two standard errors of 4,000 drawn games are about 1.3


@pytest.mark.parametrize("name", BOWLERS)
def test_the_first_balls_are_those_of_the_odds(name):
    told, odds = answer(BOWLERS[name], HOUSE), bowler_odds(BOWLERS[name], HOUSE)
    assert told.now == pytest.approx(odds.pins_per_game) and told.strike == pytest.approx(odds.strike)
    assert told.more_strikes > told.now and told.more_spares > told.now


def test_more_strikes_leave_the_rest_in_proportion():
    mean = first_balls(BOWLERS["league one-hander"], HOUSE)
    more = with_more_strikes(mean, 0.1)
    assert more["strike"] == pytest.approx(mean["strike"] + 0.1)
    others = ("lone", "corner", "cluster", "split")
    assert sum(more[name] for name in others) == pytest.approx(1 - more["strike"], abs=1e-6)
    for part in (mean, more):  # pins of a first ball that is no strike stay what they were
        part["rest"] = (part["pinfall"] - 10 * part["strike"]) / (1 - part["strike"])
    assert more["rest"] == pytest.approx(mean["rest"])
    chances = spare_chances(BOWLERS["league one-hander"].spread)
    assert spares_made(more, chances) == pytest.approx(spares_made(mean, chances))
    assert with_more_strikes(mean, 5.0)["pinfall"] == 10.0


def test_strikes_pay_more_the_more_a_bowler_strikes():
    """Rules of play: a strike adds the next two balls."""
    gains = {name: answer(BOWLERS[name], HOUSE) for name in ("beginner of eleven", "league one-hander")}
    worth = [told.more_strikes - told.now for told in gains.values()]
    assert worth[1] > worth[0] + 2


@pytest.mark.parametrize("points", [0, 21, float("nan"), "ten"])
def test_points_out_of_range(points):
    with pytest.raises(ValueError, match="points must be a number between 1 and 20 points"):
        answer(BOWLERS["league one-hander"], HOUSE, points)
