"""A reading and its changes in words: one sentence, weights people can say, no advice while it cannot be told."""

from dataclasses import replace

import pytest

from bowlcore.coaching import changes_told, reaction_told
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.hypotheses import CAUSES, ROLLS
from bowlcore.coaching.odds import bowler_odds
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.reading import CANNOT_TELL, read_reaction
from bowlcore.coaching.seen import Seen
from bowlcore.motion.path import simulate

HOUSE, BOWLER = lane_of("house"), load_bowlers()["league one-hander"]
SKIDS = Seen(hit="light", finish="still skidding", target_hit=True)
ROLLED = Seen(hit="light", finish="stood up", target_hit=True)
HIGH = Seen(hit="high", finish="early", target_hit=True)
LEAVE = Seen(leave=(10,))


@pytest.mark.parametrize(
    ("weight", "words"),
    [(0.0, "less than 1 in 20"), (0.06, "about 1 in 10"), (0.6, "about 6 in 10"), (0.93, "about 9 in 10"),
     (0.97, "more than 19 in 20")],
)  # fmt: skip
def test_weights_as_people_say_them(weight, words):
    assert reaction_told.weight_words(weight) == words


def test_the_sentence_names_the_likeliest_cause_with_its_weight_and_the_next_step():
    told, causes = (
        reaction_told.answer(BOWLER, HOUSE, [SKIDS, SKIDS]),
        read_reaction([SKIDS] * 2, BOWLER, HOUSE),
    )
    first = causes[0]
    step = f"{first.next_step[0].lower()}{first.next_step[1:]}"
    assert told.sentence == (
        f"Next ball: {step} From 2 balls, likeliest in this model: '{first.name}', {reaction_told.weight_words(first.weight)}."
    )
    assert [row["what"] for row in told.rows[:8]] == [cause.name for cause in causes]
    assert [row["why"] for row in told.rows[8:]] == ["light, still skidding, target hit"] * 2


def test_without_a_ball_it_asks_for_one():
    for seen in ([], [Seen()], [Seen(lane="left")]):
        told = reaction_told.answer(BOWLER, HOUSE, seen)
        assert told.readings == [] and told.sentence.startswith("Next ball: say what was seen")
        assert changes_told.answer(BOWLER, HOUSE, seen).rows == []


def test_both_paths_are_the_usual_balls():
    reading = reaction_told.answer(BOWLER, HOUSE, [SKIDS] * 2)
    usual = simulate(BOWLER.release, HOUSE, BOWLER.ball)
    assert reading.believed.entry_board == usual.entry_board
    assert reading.readings[0].supposed.entry_board < usual.entry_board - 1


def test_a_light_ball_that_rolled_too_early_is_drawn_light():
    """On the lane of that cause the usual hand comes in higher than was seen: the hand is part of the cause."""
    reading = reaction_told.answer(BOWLER, HOUSE, [ROLLED] * 2).readings[0]
    assert reading.named.name == ROLLS
    usual = simulate(BOWLER.release, reading.named.surface, BOWLER.ball)
    assert reading.supposed.entry_board < 16 < usual.entry_board
    assert reaction_told.as_thrown(BOWLER, ROLLS, [HIGH]) is BOWLER


def test_two_lanes_are_read_and_told_apart():
    seen = [replace(HIGH, lane="left"), replace(SKIDS, lane="right")] * 2
    told = reaction_told.answer(BOWLER, HOUSE, seen)
    assert [(r.lane, r.causes[0].name) for r in told.readings] == [
        ("left", "hooks too early"), ("right", "skids too far"),
    ]  # fmt: skip
    places = [
        told.sentence.index(words)
        for words in ("Next ball, left lane:", "Next ball, right lane:", "Left lane", "Right lane")
    ]
    assert places == sorted(places)
    with pytest.raises(ValueError, match="either every delivery says its lane"):
        reaction_told.answer(BOWLER, HOUSE, [HIGH, *seen])


def test_no_change_is_advised_while_it_cannot_be_told():
    told = changes_told.answer(BOWLER, HOUSE, [LEAVE])
    assert told.lanes[0].changes == [] and told.sentence.startswith("No change is advised")
    assert [row["what to do"] for row in told.rows] == [read_reaction(LEAVE, BOWLER, HOUSE)[0].next_step]


def test_the_lane_is_left_alone_after_a_missed_target_and_a_good_shot():
    """ "Was it me?" comes first (common practice; a web page of 2004, second-hand)."""
    for seen, said in (
        (
            [Seen(hit="high", target_hit=False, arrow_board=16)] * 2,
            "Change nothing: throw it over the target",
        ),
        ([Seen(hit="flush", leave=(), target_hit=True)] * 3, "a ball as it was meant. Change nothing."),
    ):
        told = changes_told.answer(BOWLER, HOUSE, seen)
        assert told.lanes[0].changes == [] and said in told.sentence and len(told.rows) == 1
        assert changes_told.answer(BOWLER, HOUSE, seen, suppose="hooks too early").lanes[0].changes


def test_a_cause_may_be_supposed_and_says_so():
    told = changes_told.answer(BOWLER, HOUSE, [LEAVE], suppose="hooks too early")
    assert told.lanes[0].changes and "Supposing 'hooks too early' (the reading gives it" in told.sentence
    with pytest.raises(ValueError, match="suppose must be one of"):
        changes_told.answer(BOWLER, HOUSE, [SKIDS], suppose=CANNOT_TELL)


def test_rows_are_grouped_and_hold_what_the_odds_say():
    told = changes_told.answer(BOWLER, HOUSE, [SKIDS] * 2, count=8)
    lane = told.lanes[0]
    whens = [row["when"].split(". ", 1)[1] for row in told.rows[:-1]]
    assert whens == sorted(whens, key=changes_told.WHEN.index) and told.rows[-1]["when"] == "custom"
    for row, change in zip(told.rows, lane.in_order, strict=False):
        after = bowler_odds(change.bowler, lane.surface)
        assert row["in the pocket, of 100"].endswith(changes_told.of_hundred(after.pocket))
        pins = int(row["pins a game"].split()[-1])
        assert pins % 5 == 0 and abs(pins - after.pins_per_game) <= 2.5
    assert all(row["pins a game"].startswith("about ") for row in told.rows[:-1])


def test_where_the_hand_was_lost_it_is_asked_about_first():
    told = changes_told.answer(BOWLER, HOUSE, [ROLLED] * 2)
    lane = told.lanes[0]
    assert "first ask about the hand" in told.sentence and lane.rotation_lost == 15
    assert told.rows[0]["when"] == "1. once the usual hand is back" and lane.again is lane.in_order[0]
    for change in lane.changes:
        assert change.before.pocket == bowler_odds(lane.bowler, lane.surface).pocket


def test_a_child_is_told_to_stop_and_offered_no_hand():
    child = load_bowlers()["beginner of eleven"]
    told = changes_told.answer(child, HOUSE, [SKIDS] * 3)
    assert all(change.kind != "hand" for lane in told.lanes for change in lane.changes)
    assert any("tell the coach or a parent" in row["why"] for row in told.rows)


@pytest.mark.parametrize("cause", CAUSES)
@pytest.mark.parametrize("bowler", ["left-hander", "low-rev senior", "ramp bowler", "child of eight"])
def test_every_cause_and_bowler_gets_words(cause, bowler):
    told = changes_told.answer(load_bowlers()[bowler], HOUSE, [SKIDS], suppose=cause, count=3)
    assert "nan" not in told.sentence + str(told.rows) and told.rows


def test_a_delivery_in_words():
    seen = Seen("light", "early", "over the 9", (2, 8), True, 14, 8, "left")
    assert reaction_told.seen_words(seen) == (
        "light, early, target hit, over 14, out to 8, off the deck over the 9, 2-8 stand, left lane"
    )
    assert (
        reaction_told.seen_words(Seen(leave=())) == "strike"
        and reaction_told.seen_words(Seen()) == "nothing seen"
    )
