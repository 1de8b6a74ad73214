"""Reading a reaction: what it concludes, what it refuses to conclude, and the lane it hands on."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.changes import suggest_changes
from bowlcore.coaching.hypotheses import possible_lanes
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.reading import believed_lane, read_reaction
from bowlcore.coaching.seen import Seen
from bowlcore.motion.path import simulate

HOUSE, BOWLER = lane_of("house"), load_bowlers()["league one-hander"]
HIGH = Seen(hit="high", finish="early", target_hit=True)
SKIDS = Seen(hit="light", finish="still skidding", target_hit=True)
ROLLED = Seen(hit="light", finish="stood up", target_hit=True)
NAMES = {"missed the target", "hooks too early", "skids too far", "rolls too early", "sharp oil edge", "own scatter",
         "good shot", "cannot tell"}  # fmt: skip


def first(seen, **more):
    return read_reaction(seen, more.get("bowler", BOWLER), more.get("surface", HOUSE))[0]


def test_weights_add_to_one_and_the_likeliest_comes_first():
    causes = read_reaction([HIGH, SKIDS], BOWLER, HOUSE)
    weights = [cause.weight for cause in causes]
    assert {cause.name for cause in causes} == NAMES
    assert sum(weights) == pytest.approx(1.0) and weights == sorted(weights, reverse=True)


@pytest.mark.claim(
    "Six plain reactions are read as coaches read them",
    against="common practice, no source",
    kind="practice",
)
@pytest.mark.parametrize(
    ("seen", "name"),
    [
        ([HIGH, HIGH, replace(HIGH, hit="nose")], "hooks too early"),
        ([SKIDS, SKIDS], "skids too far"),
        ([ROLLED, ROLLED], "rolls too early"),
        (Seen(hit="high", target_hit=False), "missed the target"),
        (Seen(hit="high", target_hit=False, arrow_board=16), "missed the target"),
        (Seen(hit="flush", leave=(), target_hit=True), "good shot"),
    ],
)
def test_customary_readings(seen, name):
    """What coaches conclude from such balls (common practice, no source)."""
    assert first(seen).name == name


@pytest.mark.claim(
    "One leave alone is never a verdict: the reading says that it cannot tell",
    against="our own calculation: a good hit leaves something one time in four anyway",
    kind="own",
)
def test_one_leave_is_never_a_verdict():
    """With 74 % carry the same good hit leaves something one time in four: our own calculation, see trade sources."""
    for leave in ((10,), (4,), (9,), (7, 10), (2, 8), (5,)):
        assert first(Seen(leave=leave)).name == "cannot tell"


@pytest.mark.claim(
    "Advice for late goes out if the ball still skidded, and in if it rolled too early",
    against="common practice, no source",
    kind="practice",
)
def test_the_two_faces_of_late_have_opposite_remedies():
    """Still skidding: out, or slower. Rolled too early: in, into the oil (common practice, no source)."""
    line = BOWLER.release.laydown_board + BOWLER.release.target_board
    moved = {}
    for name, seen in (("skids too far", [SKIDS] * 2), ("rolls too early", [ROLLED] * 2)):
        cause = first(seen)
        assert cause.name == name
        only_line = replace(BOWLER, can_change={"feet": 8, "target": 8})
        release = suggest_changes(only_line, cause.surface)[0].bowler.release
        moved[name] = release.laydown_board + release.target_board - line
    assert moved["skids too far"] < 0 < moved["rolls too early"]


def test_more_of_the_same_makes_surer():
    sure = [read_reaction([SKIDS] * n, BOWLER, HOUSE) for n in (1, 2, 4)]
    weights = [next(c.weight for c in causes if c.name == "skids too far") for causes in sure]
    assert weights == sorted(weights) and weights[-1] > 0.9


def test_the_lane_handed_on_plays_as_was_seen():
    usual = simulate(BOWLER.release, HOUSE, BOWLER.ball).entry_board
    high, light = (first([seen] * 3).surface for seen in (HIGH, SKIDS))
    assert simulate(BOWLER.release, high, BOWLER.ball).entry_board > usual + 0.75
    assert simulate(BOWLER.release, light, BOWLER.ball).entry_board < usual - 0.75


def test_cannot_tell_hands_back_the_lane_given():
    causes = read_reaction(Seen(leave=(10,)), BOWLER, HOUSE)
    assert next(c for c in causes if c.name == "cannot tell").surface is HOUSE


def test_the_mean_of_all_readings_lies_between_them():
    usual = simulate(BOWLER.release, HOUSE, BOWLER.ball).entry_board
    mean = believed_lane(read_reaction([SKIDS] * 2, BOWLER, HOUSE))
    assert simulate(BOWLER.release, mean, BOWLER.ball).entry_board < usual


def test_two_lanes_are_kept_apart():
    seen = [replace(HIGH, lane="left")] * 3 + [replace(SKIDS, lane="right")] * 3
    causes = read_reaction(seen, BOWLER, {"left": HOUSE, "right": HOUSE})
    by_name = {cause.name: cause for cause in causes}
    assert set(causes[0].surface) == {"left", "right"}
    assert by_name["hooks too early"].weight > 0.2 and by_name["skids too far"].weight > 0.2
    assert by_name["hooks too early"].surface["left"] is not HOUSE
    lanes = believed_lane(causes)
    left, right = (
        simulate(BOWLER.release, lanes[name], BOWLER.ball).entry_board for name in ("left", "right")
    )
    assert left > right + 1
    assert set(read_reaction(seen, BOWLER, HOUSE)[0].surface) == {"left", "right"}


def test_a_left_hander_reads_the_mirror_image():
    left = replace(BOWLER, release=replace(BOWLER.release, hand="left"))
    seen = [Seen(hit="light", exit="right of the 9", leave=(10,), target_hit=True)] * 2
    right_weights = {c.name: c.weight for c in read_reaction(seen, BOWLER, HOUSE)}
    for cause in read_reaction([s.mirror for s in seen], left, HOUSE):
        assert cause.weight == pytest.approx(right_weights[cause.name])


def test_it_asks_first_whether_the_shot_was_the_bowlers_own():
    assert "roll over its target" in first(Seen(hit="high")).next_step


def test_the_next_look_is_one_that_was_not_taken():
    step = first(Seen(hit="light", target_hit=True)).next_step
    assert "head pin light" not in step
    assert (
        "That tells 'skids too far' from '" in step or "no single look tells 'skids too far' from '" in step
    )


def test_nothing_seen():
    for seen in (Seen(), [Seen(), Seen(lane="left")], []):
        cause = first(seen)
        assert (cause.name, cause.weight) == ("cannot tell", 1.0) and "Say what was seen" in cause.next_step


def test_what_contradicts_itself_is_said():
    assert "yet no pin stands" in first(Seen(hit="missed", leave=(), target_hit=True)).evidence or any(
        "yet no pin stands" in c.evidence for c in read_reaction(Seen(hit="missed", leave=()), BOWLER, HOUSE)
    )


def test_possible_lanes_are_chances_and_the_believed_one_leads():
    lanes = possible_lanes(BOWLER, HOUSE)
    assert sum(lane.chance for lane in lanes) == pytest.approx(1.0)
    assert lanes[0].lane is HOUSE and lanes[0].chance == max(lane.chance for lane in lanes)
    assert {"hooks too early", "skids too far", "sharp oil edge", "rolls too early"} <= {
        lane.cause for lane in lanes
    }


def test_scatter_of_nothing_and_of_everything():
    from bowlcore.coaching.bowler import Spread

    for spread in (Spread(0, 0, 0, 0, 0, 0), Spread(5, 150, 45, 30, 8, 8)):
        causes = read_reaction([HIGH, SKIDS], replace(BOWLER, spread=spread), HOUSE)
        assert np.isfinite([cause.weight for cause in causes]).all()


@pytest.mark.parametrize(
    ("seen", "surface", "said"),
    [
        ("high", HOUSE, "seen must be one Seen or a list of them, got str"),
        ([HIGH, 3], HOUSE, "seen must be one Seen or a list of them, got int"),
        (HIGH, {"left": HOUSE, "right": HOUSE}, "must say its lane"),
        (HIGH, {"left": HOUSE}, 'has the keys "left" and "right"'),
        (
            [HIGH, replace(HIGH, lane="left"), replace(HIGH, lane="right")],
            HOUSE,
            "either every delivery says its lane",
        ),
    ],
)
def test_bad_input_is_one_sentence(seen, surface, said):
    with pytest.raises(ValueError, match=said):
        read_reaction(seen, BOWLER, surface)
