"""Luck or better: two counts compared, from the log or as they are typed, as two bands and one sentence."""

from bowlcore.coaching import did_it_help, log_compare
from bowlcore.coaching.log_source import DEMO, LOGS, people
from bowlcore.display.bands import two_bands
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import svg

_BALLS = 100


def luck_or_better_panel(**start):
    """Good balls and misses, before and after, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("good_before", "Good balls before", "", 0, _BALLS, 1, at("good_before", 5)),
            Number("missed_before", "Missed balls before", "", 0, _BALLS, 1, at("missed_before", 7)),
            Number("good_after", "Good balls after", "", 0, _BALLS, 1, at("good_after", 8)),
            Number("missed_after", "Missed balls after", "", 0, _BALLS, 1, at("missed_after", 4)),
        ]
    return Panel("luck_or_better_panel", draw_counts, main, lines=2)


def draw_counts(good_before, missed_before, good_after, missed_after, metric=False, hand="right") -> Drawn:
    """Two bands, the sentence and the counts."""
    told = did_it_help.shares(
        (good_before, good_before + missed_before), (good_after, good_after + missed_after)
    )
    return _drawn(told, "good balls in 100", 100.0, 100.0)


def did_it_help_panel(**start):
    """Two groups of balls out of a practice log, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler", people(), at("bowler", "AK")),
            Choice("measure", "Look at", log_compare.MEASURES, at("measure", log_compare.POCKETS)),
            Choice("split", "Compare", log_compare.SPLITS, at("split", log_compare.TRIED)),
            Choice("log", "Log", LOGS, at("log", DEMO)),
        ]
    return Panel("did_it_help_panel", draw, main, lines=2)


def draw(bowler, measure, split, log, metric=False, hand="right") -> Drawn:
    """Two bands, the sentence and the groups."""
    told = log_compare.answer(log, bowler, measure, split)
    if isinstance(told, str):
        return Drawn(svg([], 11.5, 0.4, told), told, [])
    if measure == log_compare.MISS:
        return _drawn(told, "boards missed by at the arrows", 1.0, None)
    return _drawn(told, f"{measure}, in 100", 100.0, 100.0)


def _drawn(told, axis, factor, top):
    alt = (
        f"{told.sentence} Picture: two bands, one for each group of balls, along {axis}; where they overlap, both could "
        "be the same."
    )
    return Drawn(two_bands(told, alt, axis, factor, top), told.sentence, told.rows)
