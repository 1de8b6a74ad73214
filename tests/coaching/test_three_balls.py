"""Mean, error and number of balls: textbook statistics and a large sample."""

import numpy as np
import pytest

from bowlcore.coaching.measuring import measured, rotation_from_tape
from bowlcore.coaching.three_balls import balls_needed, needed_words, of_several


def balls(values, error=0.5, name="axis_rotation_deg"):
    return [measured(name, value, error) for value in values]


def test_mean_and_scatter_of_three():
    found = of_several(balls([40, 45, 50]))
    assert found.value == 45 and found.scatter == pytest.approx(5)
    # Student's t for 2 spare numbers at 84.13 % is 1.321 (tables print 1.32)
    assert found.error == pytest.approx(1.321 * 5 / np.sqrt(3), rel=1e-3)
    assert found.sentence == "3 balls: axis rotation 45 degrees, give or take 4 degrees."


def test_equal_readings_keep_the_eye_s_error():
    found = of_several([rotation_from_tape("7:30")] * 3)
    assert found.scatter == 0 and found.error == pytest.approx(5 / np.sqrt(3))


@pytest.mark.claim(
    "The doubt told for a mean of a few balls holds the truth two times in three",
    against="textbook statistics (Student), 1,500 draws",
    kind="exact",
)
@pytest.mark.parametrize("count", [3, 5, 12])
def test_two_times_of_three_the_truth_is_within(count, figure):
    rng = np.random.default_rng(count)
    hits = 0
    for _ in range(1500):
        found = of_several(balls(45 + 4 * rng.standard_normal(count)))
        hits += abs(found.value - 45) <= found.error
    figure("held in, most", hits / 1500, asked="0.72")
    figure("least", hits / 1500, asked="0.64", least=True)
    assert hits / 1500 == pytest.approx(0.683, abs=0.04)


def test_one_ball_is_as_good_as_its_reading():
    found = of_several([rotation_from_tape("7:30")])
    assert found.error == 5 and found.sentence.startswith("One ball:")
    assert "throw at least 3 balls" in needed_words(found, 2)


@pytest.mark.parametrize(
    "scatter, wanted, count", [(4, 2, 4), (5, 2, 7), (4, 4, 2), (1, 4, 2), (100, 1, 401)]
)
def test_balls_needed(scatter, wanted, count):  # (scatter / wanted)^2, rounded up: textbook
    assert balls_needed(scatter, wanted) == count


def test_so_many_balls_do_give_that_precision():
    rng, count = np.random.default_rng(7), balls_needed(4, 1)
    means = 4 * rng.standard_normal((4000, count)).mean(axis=1)
    assert means.std() == pytest.approx(1, rel=0.05)


def test_words_for_too_many():
    assert needed_words(of_several(balls([0, 60, 120])), 1).endswith("more than 400 balls")


@pytest.mark.parametrize("wrong", [[], [rotation_from_tape(9), measured("speed_mph", 17, 1)]])
def test_bad_input_is_one_sentence(wrong):
    with pytest.raises(ValueError, match="balls must be one or more readings of the same number"):
        of_several(wrong)
    with pytest.raises(ValueError, match="wanted must be a number"):
        balls_needed(4, 0)
