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


def spare_ball():
    from bowlcore.display.spares import spares_panel

    told = spares_panel().sentence.split("The strike ball on the same line")
    return 0 if "inside the window" in told[0] and "misses the window" in told[1] else None


def parallel_walk():
    from bowlcore.coaching.three_six_nine import pins_move
    from bowlcore.rack.pins import pin_distance_ft

    over = (
        pins_move(-9, 0, "parallel", float(pin_distance_ft(7))) - 16.92
    )  # boards from the head pin to the 7
    return 2 if over > 6 else 0 if over < 0 else 1


def corner_window():
    from bowlcore.coaching.spare_windows import pin_window

    share = pin_window(10).width / pin_window(5).width
    return 0 if share > 0.9 else 1 if 0.6 < share < 0.8 else 2 if share < 0.4 else None


def strikes_or_spares():
    from bowlcore.coaching import strikes_or_spares
    from bowlcore.coaching.bowler import load_bowlers

    told = strikes_or_spares.answer(load_bowlers()["league one-hander"], lane_of("house"))
    return (
        0
        if told.more_strikes > told.more_spares + 1
        else 1
        if told.more_spares > told.more_strikes + 1
        else 2
    )


def usual_evening(moving=True):
    from bowlcore.coaching.evening_told import NAMES, club_evening

    return NAMES, club_evening(NAMES, "house", 0, 8, 3, moving)


def staying_put():
    names, night = usual_evening(moving=False)
    changes = []
    for i, name in enumerate(names):
        looks = night.looks[i, "left"]
        if name in ("league one-hander", "high-rev two-hander", "low-rev senior", "spinner"):
            changes.append(looks[-1].path.entry_board - looks[0].path.entry_board)
    return 0 if min(changes) > 1 else 1 if max(changes) < -1 else 2


def other_side():
    names, night = usual_evening()
    moves = {
        name: sum(look.feet for lane in ("left", "right") for look in night.looks[i, lane])
        for i, name in enumerate(names)
    }
    left = moves.pop("left-hander")
    moves.pop("beginner of eleven")
    return None if min(moves.values()) <= 0 else 0 if left == 0 else 1 if left > 0 else 2


def which_way_in():
    from bowlcore.coaching.moves import moved
    from bowlcore.coaching.odds import bowler_odds

    names, night = usual_evening(moving=False)
    bowler, worn = night.bowlers[names.index("league one-hander")], night.lanes["left"][-1]

    def best(moves):
        return max(bowler_odds(moved(bowler, *move), worn, 64).pocket for move in moves)

    opening, alike = best([(2, 1), (4, 2), (3, 2)]), best([(i, i) for i in (1, 2, 3, 4)])
    out = best([(-i, -i) for i in (1, 2, 3, 4)])
    return 0 if opening > alike + 0.05 > out + 0.05 else 1 if alike > opening + 0.05 else None


def feet_or_hand():
    from bowlcore.coaching.customary_hand import answer

    gains = [
        answer(name).compared["drying"].own.pocket - answer(name).compared["drying"].custom_here.pocket
        for name in ("league one-hander", "high-rev two-hander", "left-hander", "spinner")
    ]
    return 0 if min(gains) > 0.05 else 1 if max(gains) < -0.05 else 2


def late_and_skidding():
    from bowlcore.coaching.rules_of_lanes import late_less_rotation, late_rolls_sooner

    rolls_sooner = all(case.true for case in late_rolls_sooner() if case.true is not None)
    nearer = [case.number for case in late_less_rotation() if case.true is not None]
    return 1 if rolls_sooner and max(nearer) < 0.5 else 0 if min(nearer) > 0.5 else None


def two_and_one():
    from bowlcore.coaching.rules_of_boards import WALKS, opened_deg

    opened = opened_deg(2.0 * WALKS["2 to 1"], 1.0)
    return 0 if opened > 0.01 else 1 if opened < -0.01 else 2


def rule_of_31():
    from bowlcore.coaching.rules_of_boards import exit_moves

    by_rule, really = exit_moves()
    return 0 if 1 < really < by_rule / 2 else 1 if abs(really - by_rule) < 2 else 2 if really <= 1 else None


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
