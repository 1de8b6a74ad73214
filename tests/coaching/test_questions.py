"""The right answer of each question is what the model does now."""

from dataclasses import replace

import numpy as np
import pytest

from bowlcore.coaching.lines import lines_to_pocket
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.coaching.questions import QUESTIONS
from bowlcore.coaching.words import IN_TIME_FT
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release

EVERYDAY = Release(17, 300, 45, 13, 17, 13)


def shot(pattern="house", **moved):
    return simulate(replace(EVERYDAY, **moved), lane_of(pattern), ball_of("benchmark"))


def dried_lane():
    house, dry = shot(), shot("dried_out")
    same_turn = abs(house.entry_angle_deg - dry.entry_angle_deg) < 0.1
    same_speed = abs(house.entry_speed_mph - dry.entry_speed_mph) < 0.1
    return 0 if dry.breakpoint_ft < house.breakpoint_ft - 2 and same_turn and same_speed else None


def faster():
    change = shot(speed_mph=19).entry_board - shot().entry_board
    return 0 if change < -1 else 1 if change > 1 else 2


def more_rotation():
    now, then = shot(), shot(axis_rotation_deg=65)
    later, steeper = (
        then.roll_start_ft > now.roll_start_ft + 1,
        then.entry_angle_deg > now.entry_angle_deg + 0.5,
    )
    return {(True, True): 0, (False, True): 1, (True, False): 2}[later, steeper]


def more_tilt():
    now, then = shot(), shot(axis_tilt_deg=30)
    return (
        1
        if then.entry_angle_deg < now.entry_angle_deg - 0.4 and then.entry_board < now.entry_board - 1
        else None
    )


def rolled_too_early():
    lines = lines_to_pocket(EVERYDAY, lane_of("house"), ball_of("benchmark"))
    early = lines.roll_start_ft < IN_TIME_FT
    change = np.mean(lines.entry_angle_deg[early]) - np.max(lines.entry_angle_deg[~early])
    return 0 if change < -1 else None


def same_hit():
    from bowlcore.coaching.pocket import twenty_balls

    kinds = [len(set(twenty_balls(17.5, 3.0, seed=seed)[0])) for seed in range(20)]
    return 0 if min(kinds) >= 2 else None


def light_ball():
    from bowlcore.rack.discs import head_pin_blow

    light, heavy = (
        head_pin_blow(2.5, 3.0, lb)[0] for lb in (6.0, 15.0)
    )  # positive: away from the own gutter
    return 0 if light < heavy - 5 else 1 if light > heavy + 5 else 2


@pytest.mark.parametrize("name", QUESTIONS)
def test_the_right_choice_is_what_the_model_does(name):
    assert QUESTIONS[name].right == globals()[name.replace(" ", "_")]()


@pytest.mark.parametrize("name", QUESTIONS)
def test_a_first_wrong_try_gets_the_hint_and_a_second_the_reason(name):
    from bowlcore.display.questions import check

    question = QUESTIONS[name]
    wrong = [i for i in range(len(question.choices)) if i != question.right]
    asked = check(name)
    asked.choice.value = wrong[0]
    assert (
        question.hint.split("'")[0].split("&")[0] in asked.answer.value and "It is:" not in asked.answer.value
    )
    asked.choice.value = wrong[1]
    assert f"It is: {question.choices[question.right]}" in asked.answer.value
    asked.choice.value = question.right
    assert asked.answer.value.count("Yes: ") == 1


def test_a_guess_is_repeated_and_not_judged():
    from bowlcore.display.questions import predict

    asked = predict("more tilt")
    asked.choice.value = 0
    assert "Your guess: hook later and finish sharper." in asked.answer.value


def test_unknown_question_is_one_sentence():
    from bowlcore.display.questions import check

    with pytest.raises(ValueError, match="there is no question 'spin'; there are: dried lane"):
        check("spin")
