"""Scores by the rules of play (IBF Playing Rules, ch. 1.1, known second-hand); sequences worked out by hand."""

import random

import pytest

from bowlcore.coaching.frame_scores import balls_of_text, frames_of, rows_of, score_of


@pytest.mark.claim(
    "Games are scored by the rules of play, from all strikes, 300, to all misses, 0",
    against=(
        "rules of play, IBF Playing Rules, ch. 1.1, known second-hand; all but the 300 worked out by hand"
    ),
    kind="published",
)
@pytest.mark.parametrize(
    "text, score",
    [
        ("X" * 12, 300),  # IBF: twelve strikes
        ("9/" * 10 + "9", 190),  # this and the others: the rules worked out by hand (check 23 of the sheet)
        ("5/" * 10 + "5", 150),
        ("9-" * 10, 90),
        ("X9/" * 5 + "X", 200),
        ("X" * 9 + "9/X", 279),
        ("X" * 11 + "9", 299),
        ("X 7/ 9- X -8 8/ -6 X X X 8 1", 167),
        ("-" * 20, 0),
        ("-/" * 10 + "-", 100),
    ],
)
def test_scores(text, score):
    assert score_of(balls_of_text(text)) == score


def test_three_strikes_give_thirty_in_the_first_frame():
    """IBF."""
    assert frames_of([10, 10])[0].so_far is None
    assert frames_of([10, 10, 10])[0].so_far == 30


def test_a_game_has_11_to_21_balls():
    """Our own calculation: eleven balls at least (nine strikes, an open tenth), 21 at most."""
    assert score_of([10] * 9 + [0, 0]) == 240
    assert score_of([0, 10] * 10 + [10]) is not None and len([0, 10] * 10 + [10]) == 21
    assert score_of([10] * 9 + [0]) is None


def brute_force(balls):
    """Score by expanding every frame's bonus by itself: a second way, ball by ball."""
    scores, starts, place = [], [], 0
    for _ in range(10):
        starts.append(place)
        place += 1 if balls[place] == 10 else 2
    for start in starts:
        counted = 3 if balls[start] == 10 or balls[start] + balls[start + 1] == 10 else 2
        scores.append(sum(balls[start : start + counted]))
    return sum(scores)


@pytest.mark.claim(
    "Three hundred random games are scored alike in two ways",
    against="every bonus expanded ball by ball, our own",
    kind="independent",
)
def test_drawn_games_agree_with_a_second_way_and_never_fall():
    rng = random.Random(2)
    for _ in range(300):
        balls = []
        for frame in range(10):
            first = rng.randint(0, 10)
            balls.append(first)
            if first < 10:
                balls.append(rng.choice([10 - first, rng.randint(0, 10 - first)]))
            if frame == 9:
                due = 2 if first == 10 else 1 if sum(balls[-2:]) == 10 else 0
                third = rng.randint(0, 10)
                balls += [third, rng.randint(0, 10 if third == 10 else 10 - third)][:due]
        assert score_of(balls) == brute_force(balls)
        so_far = [frame.so_far for frame in frames_of(balls)]
        assert so_far == sorted(so_far) and 0 <= so_far[-1] <= 300


def test_a_game_in_progress_shows_what_is_settled():
    assert [frame.so_far for frame in frames_of(balls_of_text("9- X 7/"))] == [9, 29, None]
    assert frames_of([]) == [] and score_of([]) is None


@pytest.mark.parametrize(
    "balls, said",
    [
        ([7, 4], "frame 1: a ball takes 0 to 3 pins here, got 4"),
        ([11], "frame 1: a ball takes 0 to 10 pins here, got 11"),
        ([10, 5, 5, -1], "frame 3: a ball takes 0 to 10 pins here, got -1"),
        ([10] * 13, "the game ends after 12 balls, got 13"),
        ([9, 0] * 10 + [5], "the game ends after 20 balls, got 21"),
        ([10] * 10 + [8, 5], "frame 10: a ball takes 0 to 2 pins here, got 5"),
    ],
)
def test_impossible_balls(balls, said):
    with pytest.raises(ValueError, match=said):
        frames_of(balls)


@pytest.mark.parametrize(
    "text, said", [("9?", "got '[?]'"), ("/", "after one ball"), ("X/", "after one ball")]
)
def test_unreadable_texts(text, said):
    with pytest.raises(ValueError, match=said):
        balls_of_text(text)


def test_the_table_is_plain_words():
    rows = rows_of(balls_of_text("X 9/ 72"))
    assert [row["balls"] for row in rows] == ["strike", "9, spare", "7, 2"]
    assert [row["score so far"] for row in rows] == [20, 37, 46]
    assert rows_of([10] * 12)[-1]["balls"] == "strike, strike, strike"
    assert rows_of([0, 0] * 9 + [10, 3, 7])[-1]["balls"] == "strike, 3, spare"
