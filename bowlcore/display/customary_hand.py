"""Own hand against customary hand on four states of the lane: share in the pocket, where it is and re-aimed."""

from bowlcore.coaching import customary_hand
from bowlcore.coaching.evening_told import NAMES, label_of
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.simple_chart import chart

_MARKS = (  # field, label, look, height above the row
    ("own_here", "own hand, first line", {"marker": "o", "mfc": "white", "color": style.BLACK}, 0.12),
    ("own", "own hand, re-aimed", {"marker": "o", "color": style.BLACK}, 0.12),
    (
        "custom_here",
        "customary hand, first line",
        {"marker": "D", "mfc": "white", "color": style.BLUE},
        -0.12,
    ),
    ("custom", "customary hand, re-aimed", {"marker": "D", "color": style.BLUE}, -0.12),
)


def customary_hand_panel(**start):
    """What the customary change of the hand is worth on each state of the lane, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    people = [(label_of(name), name) for name in NAMES]
    with starting(start) as at:
        main = [Choice("bowler", "Bowler (invented)", people, at("bowler", "league one-hander"))]
    return Panel("customary_hand_panel", draw, main)


def draw(bowler, metric=False, hand="right") -> Drawn:
    """The dots, the sentence and the table; the same for either hand, the shapes being symmetric."""
    told = customary_hand.answer(bowler)
    states = tuple(told.compared)

    def paint(axes):
        for name, _, look, height in _marks(told.hand_offered):
            share = [100 * getattr(found, name).pocket for found in told.compared.values()]
            rows = [i - height for i in range(len(states))]
            axes.plot(share, rows, linewidth=0, markersize=7, **look)

    alt = (
        f"{told.sentence} Picture: for each state of the lane four marks, balls of 100 in the pocket with the own hand and "
        "with the customary one, on the first line and re-aimed."
    )
    still = _frame, states, told.hand_offered
    return Drawn(chart(alt, paint, (0.09, 0.16, 0.58, 0.78), still=still), told.sentence, told.rows)


def _marks(hand_offered):
    return _MARKS if hand_offered else _MARKS[:2]


def _frame(axes, states, hand_offered):
    for _, label, look, _ in _marks(hand_offered):
        axes.plot([], [], linewidth=0, markersize=7, label=label, **look)
    axes.legend(loc="upper left", bbox_to_anchor=(1.02, 1.0), frameon=False)
    axes.set_xlim(0, 100)
    axes.set_ylim(3.5, -0.5)
    axes.set_yticks(range(len(states)), states)
    axes.set_xlabel("of 100 balls in the pocket")
