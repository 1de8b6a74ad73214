"""A short run of the study of random settings, tests/studies/any_setting.py, on every panel."""

import sys
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
import any_setting  # noqa: E402

from bowlcore.display.panel import Drawn  # noqa: E402

pytestmark = pytest.mark.slow


@pytest.mark.parametrize("number, make", list(enumerate(any_setting.PANELS)))
def test_a_setting_drawn_at_random_is_answered(number, make):
    rng = np.random.default_rng([2, number])
    assert any_setting.one_panel(make, 1, rng) + any_setting.one_panel(make, 1, rng, pictures=True) == []


def test_the_study_sees_what_is_wrong():
    class Wrong:
        memory = {}

        def _draw(self, **values):
            return Drawn("", values["sentence"], [])

    def found(sentence):
        return any_setting.faults(Wrong(), {"sentence": sentence}, False, "right")

    assert found("It comes in on board nan.") and found("") and found("120 % in the pocket.")
    assert found("It starts to hook at 40 ft and rolls from 30 ft.")
    assert found("It starts to hook at 40 ft and rolls from 50 ft; 90 % in the pocket.") == []
