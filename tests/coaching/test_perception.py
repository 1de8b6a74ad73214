"""What a coach sees: chances that are chances, and words that fit the ball."""

import numpy as np
import pytest

from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.perception import chance_of, follow, target_chance, usual_of, word_chances
from bowlcore.coaching.seen import HITS, Seen
from bowlcore.coaching.words import hit as hit_words
from bowlcore.motion.path import simulate

BOWLER, HOUSE = load_bowlers()["league one-hander"], lane_of("house")
SHOTS = follow(BOWLER, HOUSE, 128, usual_of(simulate(BOWLER.release, HOUSE, BOWLER.ball)))


@pytest.mark.parametrize("field", ["hit", "finish", "exit"])
def test_chances_of_words(field):
    chances = word_chances(field, SHOTS)
    assert (chances > 0).all() and (chances.sum(axis=0) <= 1 + 1e-9).all()
    if field != "finish":  # a finish may also be called nothing
        assert chances.sum(axis=0) == pytest.approx(1.0)


def test_the_likeliest_word_is_that_of_the_screens():
    """Light, flush and high mean the same boards in every lesson."""
    called = np.array(HITS)[word_chances("hit", SHOTS).argmax(axis=0)]
    for board, word in zip(SHOTS.entry_board, called, strict=True):
        if np.isfinite(board) and abs(abs(board - 17.5) - 1.5) > 0.3:
            assert (word == "flush") == (hit_words(board) == "in the pocket")


def test_a_board_that_is_read_is_a_density():
    boards = np.arange(1, 39.01, 0.25)
    total = sum(chance_of(Seen(arrow_board=float(b)), SHOTS) for b in boards) * 0.25
    assert total == pytest.approx(1.0, abs=0.03)


def test_leaves_add_up():
    masks = [tuple(p for p in range(1, 11) if mask >> (p - 1) & 1) for mask in range(1024)]
    total = sum(chance_of(Seen(leave=leave), SHOTS) for leave in masks) - 1024 * 1e-3
    assert total == pytest.approx(1.0, abs=1e-6)


def test_a_miss_at_the_marks_is_seen():
    off = np.abs(SHOTS.mark_miss)
    chance = target_chance(SHOTS)
    assert chance[off < 0.5].min() > 0.9 and chance[off > 2].max() < 0.1
