"""What lesson 07 says of the table of moves is what the model does.

2-and-1, 3-and-2 and 5-and-2 for balls that come in high: partly a web page of 2004, known second-hand, partly
common practice without source.
"""

import pytest

from bowlcore import bowler_odds
from bowlcore.coaching.moves import STAY, move_words, moved
from bowlcore.coaching.which_move import BOWLERS, MOVES, rows, worn_lane

OPENING = [(2, 1), (3, 2), (5, 2)]
ALIKE = [(1, 1), (2, 2), (3, 3)]


@pytest.fixture(scope="module")
def pocket():
    lane, people = worn_lane()
    return {
        name: {move: bowler_odds(moved(people[name], *move), lane).pocket for move in MOVES}
        for name in BOWLERS
    }


def best(shares, moves):
    return max(shares[move] for move in moves)


@pytest.mark.claim(
    "When balls come in high, 2-and-1, 3-and-2 or 5-and-2 is the best move for two of the demo bowlers",
    against="a web page of 2004, known second-hand, and common practice without source",
    kind="practice",
)
@pytest.mark.parametrize("name", ["league one-hander", "high-rev two-hander"])
def test_for_these_two_the_customary_moves_come_out_on_top(pocket, name, figure):
    shares = pocket[name]
    assert max(shares, key=shares.get) in OPENING
    more = best(shares, OPENING) - best(shares, ALIKE)
    figure(
        "better than feet and target alike by", 100 * more, "balls in 100", asked="more than 5", least=True
    )
    assert best(shares, OPENING) > best(shares, ALIKE) + 0.05


def test_more_revs_need_the_bigger_move(pocket):
    top = [max(pocket[name], key=pocket[name].get) for name in ("league one-hander", "high-rev two-hander")]
    assert top[1][0] > top[0][0]


@pytest.mark.claim(
    "For a bowler with much tilt the customary moves are not best: feet and target move alike",
    against="a web page of 2004, known second-hand, and common practice without source",
    kind="disagrees",
)
def test_for_the_spinner_feet_and_target_alike_are_best(pocket):
    assert max(pocket["spinner"], key=pocket["spinner"].get) in ALIKE


@pytest.mark.parametrize("name", ["league one-hander", "high-rev two-hander", "spinner"])
def test_out_is_wrong_for_whoever_comes_in_high(pocket, name):
    assert best(pocket[name], [(-1, -1), (-2, -1)]) < pocket[name][STAY]


def test_no_move_is_worth_it_on_boards_without_traffic(pocket):
    shares = pocket["left-hander"]
    assert max(shares.values()) < shares[STAY] + 0.10
    worse = [move for move in MOVES if shares[move] < shares[STAY]]
    assert len(worse) > len(MOVES) / 2


def test_the_table_shows_these_shares(pocket):
    told = rows()
    assert [row["move"] for row in told] == [move_words(*move) for move in MOVES]
    assert told[0]["spinner"] == f"{100 * pocket['spinner'][STAY]:.0f} %"
