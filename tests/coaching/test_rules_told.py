"""How a verdict on a saying is put into words and tables."""

import re
from math import nan

import numpy as np
import pytest

from bowlcore.coaching import rules_told
from bowlcore.coaching.rule_bench import HANDS
from bowlcore.coaching.rule_verdict import Case, Part, Unit, judge
from bowlcore.coaching.rules import RULES
from bowlcore.coaching.rules_of_hand import on_all

HOLDS, PARTLY, NOT, UNTESTED = "holds", "holds for", "not in this model", "cannot be tested here"
# (kind, true of, tried where it applies) for each claim in turn: what this model gives

BOARD = Unit("board", "higher", "lower")


def part_of(*cases):
    return Part("a claim", "never", BOARD, lambda: list(cases))


def table(rows):
    """Cases from {bowler: "yn-"}, one letter a lane."""
    letters = {"y": True, "n": False, "-": None}
    return part_of(
        *(Case(who, f"lane {i}", 1.0, letters[x]) for who, row in rows.items() for i, x in enumerate(row))
    )


@pytest.mark.parametrize(
    "rows, said",
    [
        ({"a": "yy", "b": "yy"}, "holds in this model (4 of 4)"),
        ({"a": "nn", "b": "nn"}, "not in this model (0 of 4)"),
        ({"a": "nnn", "b": "nny"}, "not in this model: only the b (lane 2) (1 of 6)"),
        ({"a": "yy", "b": "nn"}, "holds in this model for the a (2 of 4)"),
        ({"a": "yn", "b": "yn"}, "holds in this model for everyone on the lane 0 (2 of 4)"),
        (
            {"a": "yyn", "b": "yny"},
            "holds in this model for all but the a (lane 2) and the b (lane 1) (4 of 6)",
        ),
        (
            {"a": "yyn", "b": "yyn", "c": "yyy"},
            "holds in this model for all but the a and the b (lane 2) (7 of 9)",
        ),
        (
            {"a": "ynn", "b": "yyy", "c": "yyy", "d": "nyy"},
            "holds in this model for all but the a (lane 1; lane 2) and the d (lane 0) (9 of 12)",
        ),
        ({"a": "nnny", "b": "yyyn"}, "holds in this model for some: a 1 of 4, b 3 of 4 (4 of 8)"),
        (
            {"a": "ynyn", "b": "ynnn", "c": "ynnn"},
            "holds in this model for some: lane 0 3 of 3, lane 2 1 of 3 (4 of 12)",
        ),
        ({"a": "y-", "b": "--"}, "holds in this model (1 of 1)"),
        ({"a": "--", "b": "--"}, "cannot be tested here"),
    ],
)
def test_for_whom(rows, said):
    assert judge(table(rows)).words == said


@pytest.mark.parametrize(
    "values, said",
    [
        ([1, 2, 3.1], "2 boards higher (1 to 3)"),
        ([-1, -2, -3.1], "2 boards lower (1 to 3)"),
        ([-1, 0.1, 2], "no change (1 board lower to 2 higher)"),
        ([-0.1, 0.1, 2], "no change (0 to 2 boards higher)"),
        ([0.1, 0.2, -0.1], "no change"),
        ([nan, 1], "1 board higher"),
    ],
)
def test_by_how_much(values, said):
    assert BOARD.spread(values) == said


def test_feet_become_metres():
    later = Unit("ft", "later", "sooner")
    assert later.of(2.4) == "2.5 ft later" and later.shown(True).of(2.4) == "0.7 m later"
    assert "ft" not in rules_told.answer(5, metric=True).rows[0]["measured"]


def test_what_was_not_tried_says_so():
    assert "was not tried" in rules_told.answer(6, "low-rev senior").sentence
    assert "never met" in rules_told.answer(8, "spinner").sentence
    assert "counts as true if" in rules_told.answer(3, tell="how it was tried").sentence


@pytest.mark.parametrize(
    "given, said",
    [((21,), "number must be a rule from 1 to 20, got 21"), ((1, "me"), "bowler must be one of everyone tried, .*got 'me'"),
     ((1, "spinner", "all"), "tell must be one of what came out, how it was tried, got 'all'")],
)  # fmt: skip
def test_bad_input_gets_one_sentence(given, said):
    with pytest.raises(ValueError, match=said):
        rules_told.answer(*given)


def test_overview_has_every_saying_once_and_no_empty_size():
    rows = rules_told.overview(True) + rules_told.overview(False)
    assert sorted(int(row["saying"].split(".")[0]) for row in rows if row["saying"]) == list(range(1, 21))
    assert len(rules_told.overview(True)) == sum(len(rule.parts) for rule in RULES if rule.first)
    for row in rows:
        assert bool(row["by how much"]) == (row["true for whom"] != UNTESTED)
        assert "nan" not in str(row)


@pytest.mark.parametrize("first", [True, False])
def test_the_short_table_says_what_the_verdicts_say(first):
    """Yes, no or to some by the kind of the verdict; everyone, nobody or those named."""
    parts = [part for rule in RULES if rule.first == first for part in rule.parts]
    rows = rules_told.safe_to_say(first)
    assert {row["saying"].split(". ")[0] for row in rows} == {
        str(r.number) for r in RULES if r.first == first
    }
    for row, verdict in zip(rows, map(judge, parts), strict=True):
        said = row["say it?"], row["to whom"]
        if verdict.kind == HOLDS:
            assert said == ("yes", "everyone tried")
        elif verdict.kind == NOT:
            assert row["say it?"] == "no" and row["to whom"].startswith("nobody")
        elif verdict.kind == UNTESTED:
            assert said == ("not tested here", "")
        else:
            true = {getattr(case, key) for case in verdict.cases if case.true for key in ("bowler", "where")}
            assert row["say it?"] == "to some" and any(name in row["to whom"] for name in true)
        assert " of " not in row["to whom"], "counts are for the second table"


def test_every_verdict_says_where_it_holds_in_the_same_breath():
    for rule in RULES:
        for part in rule.parts:
            assert re.search("in this model|tested here", judge(part).words), rule.saying


def test_a_saying_asks_everyone_on_every_lane():
    cases = on_all(lambda name, lane: Case(name, lane.words, 1.0, True))
    assert len(cases) == len(HANDS) * 3 and np.all([case.true for case in cases])
