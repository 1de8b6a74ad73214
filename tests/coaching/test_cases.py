"""The eight made-up cases are what they say: drawn from their seeds, true, and read sanely."""

import sys
from pathlib import Path

import pytest

from bowlcore.coaching import case_told
from bowlcore.coaching.case_seen import SEEDS, SEEN
from bowlcore.coaching.cases import ANSWERS, BELIEVED, CASES, DIFFER, OPEN, drawn
from bowlcore.coaching.hypotheses import EARLY, LATE, OWN, ROLLS, TARGET
from bowlcore.coaching.odds import bowler_odds
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.reading import CANNOT_TELL, read_reaction
from bowlcore.coaching.seen import contradictions
from bowlcore.coaching.watched import watch
from bowlcore.coaching.words import POCKET_BOARD, POCKET_REACH
from bowlcore.motion.path import simulate

PINS = {"leave", "exit"}  # these come from the pin table, which may be built anew
ALL = pytest.mark.parametrize("case", CASES.values(), ids=lambda case: case.truth)


def of_lane(case, name):
    return [item for item in case.seen if item.lane == name]


def today(case):
    bowler = case.as_thrown(case.known)
    return {name: simulate(bowler.release, lane, bowler.ball) for name, lane in case.lanes.items()}


def test_one_for_each_answer():
    assert sorted(case.truth for case in CASES.values()) == sorted(ANSWERS)
    assert list(CASES) == list(range(1, 9))


@ALL
def test_what_is_kept_comes_from_the_seed(case):
    again = drawn(case, case.seed)
    assert len(again) == len(case.seen)
    for kept, new in zip(case.seen, again, strict=True):
        assert {name: value for name, value in kept.told.items() if name not in PINS} == {
            name: value for name, value in new.told.items() if name not in PINS
        }


def test_another_seed_gives_other_balls():
    case = CASES[3]
    known = case.known
    balls = [watch(known, known, lane_of(BELIEVED), case.lanes[None], seed, 4) for seed in (1, 1, 2)]
    assert balls[0] == balls[1] != balls[2]


def test_the_truth_is_what_it_says():
    """Of the usual release as it really came out, on the true lane."""
    for case in CASES.values():
        off = {name: path.entry_board - POCKET_BOARD for name, path in today(case).items()}
        match case.truth:
            case "missed the target":
                meant = simulate(case.known.release, case.lanes[None], case.known.ball).entry_board
                assert off[None] > POCKET_REACH >= abs(meant - POCKET_BOARD)
            case "hooks too early":
                assert off[None] > POCKET_REACH
            case "skids too far":
                assert off[None] < -POCKET_REACH and not today(case)[None].roll_start_ft < 60
            case "rolls too early":
                assert off[None] < -POCKET_REACH and today(case)[None].roll_start_ft < 54
            case "own scatter":
                assert abs(off[None]) <= POCKET_REACH and not case.hand
            case "the two lanes differ":
                assert off["left"] > POCKET_REACH and off["right"] < -POCKET_REACH


def test_the_sharp_edge_scatters_the_balls():
    from bowlcore.motion.many import sweep_columns

    case = next(case for case in CASES.values() if case.truth == "sharp oil edge")
    spread = []
    for lane in (lane_of(BELIEVED), case.lanes[None]):
        marks, _ = sweep_columns(case.known.shots(256), lane, case.known.ball)
        spread.append(float(marks["entry_board"].std()))
    assert spread[1] > 1.25 * spread[0]


@ALL
def test_the_reading_is_sane(case):
    believed = lane_of(BELIEVED)
    if case.truth == DIFFER:
        first = {
            name: read_reaction(of_lane(case, name), case.known, believed)[0].name for name in case.lanes
        }
        assert first == {"left": EARLY, "right": LATE}
        return
    names = [cause.name for cause in read_reaction(case.seen, case.known, believed)]
    if case.truth == OPEN:
        assert names[0] == CANNOT_TELL
    else:
        assert case.truth in [name for name in names if name != CANNOT_TELL][:2]


@ALL
def test_the_balls_hang_together(case):
    assert not any(contradictions(item, case.known) for item in case.seen)


def test_the_first_title_counts_what_was_noted():
    assert CASES[1].title == "High, then three on the other side"
    assert [ball.hit for ball in CASES[1].seen] == ["high"] + ["other side"] * 3


@ALL
def test_nothing_is_given_away_before_the_truth(case):
    told = case_told.answer(case.number)
    assert not told.readings and not told.true_paths and case.told not in told.sentence
    assert len(told.rows) == len(case.seen)


@ALL
def test_odds_shown_are_those_on_the_hidden_lane(case):
    change = "feet 2 in, target 1 in"
    told = case_told.answer(case.number, case.truth, change, shown=True)
    assert case.told in told.sentence and "You read it too." in told.sentence
    before = case.as_thrown(case.known)
    for name, lane in case.lanes.items():
        prefix = f"{name} lane, " if name else ""
        rows = {row["what"]: row["in the pocket, of 100"] for row in told.rows}
        assert rows[f"{prefix}as it was"] == f"{100 * bowler_odds(before, lane).pocket:.0f}"
        assert f"{prefix}your change: {change}" in rows


@ALL
def test_the_first_one_advised_does_not_harm(case):
    """Common sense: advice that leaves fewer balls in the pocket than before is none (a tie is ten of a hundred)."""
    told = case_told.answer(case.number, shown=True)
    shares = {row["what"]: row["in the pocket, of 100"] for row in told.rows if row["in the pocket, of 100"]}
    for name in case.lanes:
        prefix = f"{name} lane, " if name else ""
        advised = [int(share) for what, share in shares.items() if what.startswith(f"{prefix}advised")]
        assert all(share >= int(shares[f"{prefix}as it was"]) - 10 for share in advised)
        assert bool(advised) == (case.truth not in (OPEN, TARGET))


@pytest.mark.parametrize(
    ("given", "said"),
    [((9,), "number must be one of 1, 2"), ((1, "bad luck"), "guess must be one of"),
     ((1, OPEN, "pray"), "change must be one of")],
)  # fmt: skip
def test_bad_input_is_one_sentence(given, said):
    with pytest.raises(ValueError, match=said):
        case_told.answer(*given)


def test_where_the_hand_or_aim_was_off_the_usual_one_is_told():
    for case in CASES.values():
        told = case_told.answer(case.number, shown=True)
        assert ("usual hand and aim again" in told.sentence) == (case.truth in (TARGET, ROLLS))
    assert CASES[6].truth == OWN and not CASES[6].hand


def test_test_balls_fly_with_the_change_chosen():
    told = case_told.answer(7, thrown=("feet and target 2 in", case_told.STAY))
    assert [ball.lane for ball in told.test_balls] == ["left", "right"] * 2
    assert "Test balls:" in told.sentence
    again = case_told.answer(7, thrown=("feet and target 2 in",))
    assert again.test_balls == told.test_balls[:2]


def test_the_script_writes_what_is_kept():
    sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
    import make_cases

    namespace = {}
    exec(make_cases.text(SEEDS, SEEN), namespace)
    assert namespace["SEEN"] == SEEN and namespace["SEEDS"] == SEEDS
