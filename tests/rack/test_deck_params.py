"""The contact numbers of the pin deck: what a restitution means, and bad ones named."""

import pytest

from bowlcore.rack.deck_params import PARAMETER_SETS, DeckParams, restitution_of_damping, spring_and_damper


def test_spring_and_damper_have_the_restitution_asked_for():
    for wanted in (0.2, 0.4, 0.65, 0.9):
        stiffness, damping = spring_and_damper(wanted, 2.0)
        assert restitution_of_damping(damping / 2 / stiffness**0.5) == pytest.approx(wanted, abs=1e-9)
        place, speed, step = 0.0, -1.0, 1e-7  # the blow itself, in small steps
        while True:
            push = -damping * speed - stiffness * place
            if place < 0 and push <= 0:
                break
            speed += step * push
            place += step * speed
        assert speed == pytest.approx(wanted, abs=2e-3)


def test_bad_parameters_are_named():
    with pytest.raises(ValueError, match="pin_pin_restitution"):
        DeckParams(pin_pin_restitution=1.2)
    with pytest.raises(ValueError, match="step_ms"):
        DeckParams(step_ms=1.0)


def test_all_sets_differ():
    assert PARAMETER_SETS["shipped"] == DeckParams()
    assert len(set(PARAMETER_SETS.values())) == len(PARAMETER_SETS) >= 4
