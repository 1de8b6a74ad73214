"""What a panel says is in the units that were chosen, and no label says its unit twice."""

import re

import pytest
from panels_help import ALL_PANELS, RACK_PANELS

from bowlcore.display.settings import SETTINGS

EVERY = pytest.mark.parametrize("make", ALL_PANELS + RACK_PANELS)
TRADE = re.compile(r"\b(mph|ft)\b")  # boards, rpm, degrees and the pounds of a ball are the same for everyone
METRIC = re.compile(r"km/h|\d m\b|\(m\)|, m\b")


@EVERY
def test_sentence_and_table_are_in_the_units_that_were_chosen(make):
    panel = make()
    assert not METRIC.search(said(panel)), METRIC.search(said(panel))
    SETTINGS.metric = True
    assert not TRADE.search(said(panel)), TRADE.search(said(panel))


def said(panel):
    return f"{panel.sentence} {panel._drawn.rows}"


@EVERY
def test_no_label_says_its_unit_twice(make):
    panel = make()
    for SETTINGS.metric in (False, True):
        for control in numbers(panel):
            control.use_units(SETTINGS.metric)
            unit = control.title.removeprefix(control.label)
            assert not stems(control.label) & stems(unit), control.title


def numbers(panel):
    return [control for control in panel.controls.values() if hasattr(control, "slider")]


def stems(text):
    """Words without a plural's s."""
    return {word.removesuffix("s") for word in re.findall(r"\w+", text.lower())}
