"""A made-up case as a panel: what was noted, your reading and change, a test ball, and then the truth."""

from dataclasses import replace

from bowlcore.coaching import case_told
from bowlcore.coaching.cases import ANSWERS, BELIEVED, CASES
from bowlcore.display.controls import Choice, starting
from bowlcore.display.lane_figure import lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import layer, svg
from bowlcore.display.reaction_figure import LANE, SIZE, bars_background, moving


def case_panel(number=1, **start):
    """One of eight made-up cases with a hidden lane and hand.

    Parameters
    ----------
    number : 1 to 8
    start
        Starting values of the other controls.

    Raises
    ------
    ValueError
        When a name or a value does not belong to a control.
    """
    options = [(f"{case.number}. {case.title}", case.number) for case in CASES.values()]
    with starting(start) as at:
        main = [
            Choice("number", "Case", options, number),
            Choice("guess", "My reading", [case_told.NO_GUESS, *ANSWERS], at("guess", case_told.NO_GUESS)),
            Choice("change", "I would change", list(case_told.CHOICES), at("change", case_told.STAY)),
        ]
    return Panel("case_panel", draw, main, buttons=_BUTTONS, lines=4)


def _throw(panel):
    number, change = panel.values["number"], panel.values["change"]
    panel.memory["thrown"] = (*panel.memory.get("thrown", ()), (number, change))


def _show_truth(panel):
    panel.memory["shown"] = panel.memory.get("shown", frozenset()) | {panel.values["number"]}


_BUTTONS = {"Throw the test ball": _throw, "Show the truth": _show_truth}


def draw(number, guess, change, thrown=(), shown=frozenset(), metric=False, hand="right") -> Drawn:
    """The believed path and the balls; with the truth its path and the reading; sentence and table.

    The cases have their bowlers' own hands, whatever the settings say.
    """
    before = [name for case, name in thrown if case == number]
    told = case_told.answer(number, guess, change, thrown=before, shown=number in shown, metric=metric)
    side = told.case.known.release.hand
    readings = [replace(reading, supposed=told.true_paths[reading.lane]) for reading in told.readings]
    balls = [*told.case.seen, *told.test_balls]
    names = [*range(1, len(told.case.seen) + 1), *["test"] * len(told.test_balls)]
    title = "Line: the usual ball as the lane is believed" + ("; dashes: the truth" if readings else "")
    picture = moving()
    picture.show(told.believed, readings, balls, names, title, metric, supposed="truth")
    what = (
        "in dashes as it was in truth, and a bar for the weight of each cause" if readings else "no more yet"
    )
    alt = (
        f"{told.sentence} Picture: the lane on its side with the usual ball's path as believed, distance from the foul line "
        f"against board; {what}."
    )
    layers = [lanes_background(SIZE, (LANE,), BELIEVED, metric, side), layer(picture.figure)]
    if readings:
        layers.insert(1, bars_background())
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)
