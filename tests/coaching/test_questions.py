"""The right answer of each question is what the model does now."""

import pytest
import right_answers
import right_answers_of_clinics
import right_answers_of_paths

from bowlcore.coaching.questions import QUESTIONS


@pytest.mark.claim(
    "The right answer of every question in the lessons is what the model does today",
    against="the model asked again",
    kind="own",
)
@pytest.mark.parametrize("name", QUESTIONS)
def test_the_right_choice_is_what_the_model_does(name):
    answers = vars(right_answers) | vars(right_answers_of_clinics) | vars(right_answers_of_paths)
    assert QUESTIONS[name].right == answers[name.replace(",", "").replace(" ", "_")]()


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
