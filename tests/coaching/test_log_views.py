"""What a log shows: shares that add up, causes worked out by hand, the demo log's own truth."""

from datetime import date

import pytest

from bowlcore.coaching import log_compare, log_views
from bowlcore.coaching.frame_scores import balls_of_text
from bowlcore.coaching.log_entries import Session, Shot
from bowlcore.coaching.log_games import CAUSES, balls_of, games_of, leave_class, pins_lost
from bowlcore.coaching.log_source import DEMO, EVERYBODY, LOGS, NO_LOG, OWN, entries_of, people
from bowlcore.coaching.practice_log import FILE_NAME, Kept, PracticeLog


def game(*turns):
    """One finished game; a turn is (pins left, second ball, hit)."""
    shots = [Shot("AK", standing, second, hit, game=1) for standing, second, hit in turns]
    (made,) = games_of([Kept(f"k{i}", "s1", date(2026, 3, 5), shot) for i, shot in enumerate(shots)])
    return made


STRIKE, SPARE = ((), None, "flush"), ((10,), 1, "flush")


@pytest.mark.parametrize(
    "turns, score",
    [
        ([STRIKE] * 12, 300),
        ([SPARE] * 10 + [((7,), None, "flush")], 190),
        ([((7,), 0, "high")] * 10, 90),
        ([STRIKE] * 9 + [SPARE, STRIKE], 279),
    ],
)
def test_games_from_turns_score_as_the_rules_say(turns, score):
    """A worked example of our own, as turns."""
    assert game(*turns).score == score


def test_a_game_with_a_missing_count_has_no_score():
    assert game(*[((7,), None, "high")] * 10).score is None
    assert game(*[(None, None, "high")] * 10).score is None
    assert game(*[SPARE] * 4).score is None
    with pytest.raises(ValueError, match="turn 1: it is not noted what the second ball took"):
        balls_of(game(*[((7,), None, "high")] * 10).shots)


def test_one_cause_alone_takes_all_that_was_lost():
    """By hand: ten pocket hits that leave one pin, all made, 190: all 110 pins went with the pocket hits."""
    lost = pins_lost(game(*[SPARE] * 10, ((7,), None, "flush")))
    assert lost["pocket, no strike"] == pytest.approx(110) and sum(lost.values()) == pytest.approx(110)


def test_two_causes_share_by_hand():
    """Ten times the pocket, the 10-pin left and missed, 90. Misses put right first: spares, 190 (fill ball 9), so 100, and
    then strikes, 110 more. Strikes first: 300 at once, nothing left for the spares. Mean of both orders: 50 and 160."""
    lost = pins_lost(game(*[((10,), 0, "flush")] * 10))
    assert lost["single pins"] == pytest.approx(50) and lost["pocket, no strike"] == pytest.approx(160)


def test_causes_add_up_to_what_a_game_lost():
    """Every demo game: shares are never negative and add to 300 less the score."""
    games = games_of(entries_of(DEMO).shots)
    assert len(games) == 36
    for one in games:
        lost = pins_lost(one)
        assert sum(lost.values()) == pytest.approx(300 - one.score) and min(lost.values()) > -1e-9
        assert set(lost) == set(CAUSES)


def test_scores_of_the_demo_games_are_the_totals_by_hand():
    found = entries_of(DEMO)
    totals = {(kept.session, kept.entry.bowler): kept.entry.total for kept in found.totals}
    assert {(one.session, one.bowler): one.score for one in games_of(found.shots)} == totals


@pytest.mark.parametrize(
    "standing, kind",
    [
        ((10,), "single pins"),
        ((4, 7), "several pins"),
        ((7, 10), "splits"),
        ((3, 10), "splits"),
        ((1, 2, 4, 10), "several pins"),
    ],
)
def test_classes_of_leaves(standing, kind):
    """Splits by the rule of play: head pin down, and a gap."""
    assert leave_class(standing) == kind


@pytest.mark.parametrize("view", log_views.VIEWS)
@pytest.mark.parametrize("bowler", [EVERYBODY, "AK"])
def test_every_view_of_the_demo_log_says_something(view, bowler):
    told = log_views.answer(DEMO, bowler, view)
    assert told.rows and (told.bars or told.misses) and told.sentence.endswith(".")
    for bar in told.bars:  # none of n, or all: a band that allows for luck begins beside what was seen
        assert bar.low is None or bar.value in (0, 100) or bar.low < bar.value < bar.high


def test_the_views_find_what_was_put_into_the_demo_log():
    """From tests/studies/make_demo_log.py: the left lane hooks more; misses of the arrows scatter about the board meant."""
    assert log_views.answer(DEMO, EVERYBODY, log_views.LANES).sentence.endswith("The left lane plays higher.")
    assert "on average on the board meant" in log_views.answer(DEMO, EVERYBODY, log_views.SCATTER).sentence
    by_eye = log_compare.answer(DEMO, "AK", log_compare.MISS, log_compare.TRIED)
    assert by_eye.better > 0.99  # the one trial that really helps
    none = log_compare.answer(DEMO, "EL", log_compare.MISS, log_compare.TRIED)
    assert not none.told  # and the one that changes nothing


def test_a_real_gain_at_the_arrows_need_not_show_in_the_pocket_yet():
    """The same trial of the same bowler, seen by the pocket: what lesson 10 says of measures near the cause."""
    assert not log_compare.answer(DEMO, "AK", log_compare.POCKETS, log_compare.TRIED).told


@pytest.mark.parametrize("measure", log_compare.MEASURES)
@pytest.mark.parametrize("split", log_compare.SPLITS)
def test_every_comparison_of_the_demo_log(measure, split):
    told = log_compare.answer(DEMO, "AK", measure, split)
    assert 0 <= told.better <= 1 and told.before.balls > 0 and told.after.balls > 0


def test_everybody_by_trial_counts_only_those_who_tried():
    told = log_compare.answer(DEMO, EVERYBODY, log_compare.POCKETS, log_compare.TRIED)
    alone = log_compare.answer(DEMO, told.after.name.strip("'") == "eyes on the arrow" and "AK" or "EL",
                               log_compare.POCKETS, log_compare.TRIED)  # fmt: skip
    assert (told.before.balls, told.after.balls) == (alone.before.balls, alone.after.balls)


def test_no_own_log_and_unknown_bowlers_get_a_sentence(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for view in log_views.VIEWS:
        assert log_views.answer(OWN, EVERYBODY, view).sentence == NO_LOG
    assert log_compare.answer(OWN, "AK", log_compare.MISS, log_compare.HALVES) == NO_LOG
    assert log_views.answer(DEMO, "QQ", log_views.LOST).sentence.startswith(
        "QQ is not in this log; there are AK"
    )
    assert not list(tmp_path.iterdir()), "looking makes no file"


def test_ones_own_log_with_next_to_nothing_in_it(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with PracticeLog(tmp_path / FILE_NAME) as log:
        log.add_shot(log.add_session(Session("2026-03-05")), Shot("XY", (7,)))
    assert "XY" in people()
    for view in log_views.VIEWS:
        told = log_views.answer(OWN, "XY", view)
        assert told.sentence and "nan" not in str(told).lower()
    for split in log_compare.SPLITS:
        for measure in log_compare.MEASURES:
            told = log_compare.answer(OWN, EVERYBODY, measure, split)
            assert isinstance(told, str) or "No balls yet" in told.sentence


def test_a_file_that_is_no_log_is_a_sentence_in_every_view(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / FILE_NAME).write_bytes(b"something else " * 100)
    assert people()[0] == EVERYBODY
    with pytest.raises(ValueError, match="is no practice log; it was left as it is"):
        log_views.answer(LOGS[1], EVERYBODY, log_views.LOST)


def test_text_of_the_scorer_and_turns_agree():
    assert balls_of(game(STRIKE, SPARE, *[((7,), 0, "high")] * 8).shots) == balls_of_text("X 9/" + "9-" * 8)
