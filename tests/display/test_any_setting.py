"""A short run of the study of random settings, tests/studies/any_setting.py, on every panel."""

import sys
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "studies"))
import any_setting  # noqa: E402

from bowlcore.display.panel import Drawn  # noqa: E402

pytestmark = pytest.mark.slow


@pytest.mark.claim(
    "Any setting of any panel with a picture is answered: no error, no number that is none, shares within 0 to 100",
    against="settings drawn at random here; 100,000 of them in tests/studies/any_setting.py, with their count in its CSV",
    kind="own",
)
@pytest.mark.parametrize("number, make", list(enumerate(any_setting.PANELS)))
def test_a_setting_drawn_at_random_is_answered(number, make):
    rng = np.random.default_rng([2, number])
    for pictures in (False, True):
        found, refused = any_setting.one_panel(make, 1, rng, pictures)
        assert found == [] and refused in (0, 1)


def test_the_study_sees_what_is_wrong():
    class Wrong:
        memory = {}

        def _draw(self, sentence, number=0.0, rows=(), **values):
            round(number)
            return Drawn("", sentence, list(rows))

    def found(sentence, **values):
        return any_setting.faults(Wrong(), {"sentence": sentence} | values, False, "right")

    assert found("It comes in on board nan.") and found("") and found("120 % in the pocket.")
    assert found("It starts to hook at 40 ft and rolls from 30 ft.")
    assert found("In this pin model between 90 and 110 in 100 strike.") and found("-3 % more.")
    assert found("The cover spins at 120 of 100 of the ball's speed.") == []  # no share
    assert found("So it is.", number=float("nan")), "a sentence of Python's own is no clear sentence"
    assert found("So it is.", rows=[{"starts to hook (ft)": "40", "rolls from (ft)": "30"}])
    assert found("It starts to hook at 40 ft and rolls from 50 ft; 90 % in the pocket.") == []
    assert found("So it is.", rows=[{"starts to hook (ft)": "40", "rolls from (ft)": "no"}]) == []


def test_the_study_counts_what_a_panel_refuses():
    [spares] = [make for make in any_setting.PANELS if make.__name__ == "spares_panel"]
    panel = spares()
    with pytest.raises(any_setting.Refused):
        any_setting.faults(panel, panel.values | {"slide_board": 39, "over_board": 5}, False, "right")
    assert any_setting.faults(panel, panel.values, False, "right") == []
