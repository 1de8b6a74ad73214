"""The corner pin by ball and release: share made over the tilt, a line for each ball and rotation."""

from bowlcore.coaching import ten_pin, words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spares import PLAIN_BALL
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.simple_chart import TITLE, chart
from bowlcore.display.spares import bowler_of

_KEY = (
    "small marks: each tilt with its own aim\nlarge, full: this bowler's tilt\nlarge, open: that line on the other lane\n"
    "no mark: no line to the pin"
)
# colour of a ball, and of its usual and its low rotation the dash and the mark
_LOOKS = {
    True: (style.BLUE, (("-", "o"), ("--", "s"))),
    False: (style.VERMILLION, (("-.", "D"), (":", "^"))),
}


def ten_pin_panel(**start):
    """The corner pin on the own side by ball, rotation and tilt, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")),
            Number("laydown_board", "Laydown", "board", 15, 36, 0.5, at("laydown_board", 25)),
            Choice("pattern", "Aimed on", pattern_options(), at("pattern", "house")),
            Choice("other", "If the lane is really", pattern_options(), at("other", "flat")),
        ]
        folds = {
            "Low rotation": [
                Number("low_rotation_deg", "Low rotation", "degrees", 0, 45, 1, at("low_rotation_deg", 10))
            ]
        }
    return Panel("ten_pin_panel", draw, main, folds, lines=4)


def draw(bowler, laydown_board, pattern, other, low_rotation_deg, metric=False, hand="right") -> Drawn:
    """The curves, the sentence and the shares."""
    told = ten_pin.answer(
        bowler_of(bowler, hand), lane_of(pattern), lane_of(other), laydown_board, low_rotation_deg
    )

    usual = next(iter(told.made))[1]
    lines = tuple((ball, rotation == usual, words.halves(rotation)) for ball, rotation in told.made)

    def paint(axes):
        for (ball, rotation), row in told.made.items():
            look = _look(ball, rotation == usual)
            axes.plot(ten_pin.TILTS_DEG[: len(row)], 100 * row, linewidth=1.8, markersize=3.5, **look)
            large = look | {"linewidth": 0, "markersize": 8}
            axes.plot([told.tilt_deg], [100 * told.usual[ball, rotation]], **large)
            away = 100 * told.elsewhere[ball, rotation]
            axes.plot([told.tilt_deg], [away], mfc="white", mew=1.8, **large)

    alt = (
        f"{told.sentence} Picture: corner pins made, of 100 balls, against axis tilt, a line for each ball and rotation; a "
        "large mark at this bowler's tilt, an open one for the same line on the other lane."
    )
    return Drawn(chart(alt, paint, still=(_frame, lines)), told.sentence, told.rows)


def _look(ball, usual):
    """Of a ball with its usual or its low rotation."""
    color, looks = _LOOKS[ball == PLAIN_BALL]
    dash, marker = looks[not usual]
    return {"color": color, "linestyle": dash, "marker": marker}


def _frame(axes, lines):
    for ball, usual, degrees in lines:
        label = f"{ball}, {'usual' if usual else 'low'} rotation ({degrees}°)"
        axes.plot([], [], linewidth=1.8, markersize=3.5, label=label, **_look(ball, usual))
    axes.legend(loc="center left", bbox_to_anchor=(1.02, 0.5), frameon=False, title=_KEY, alignment="left")
    axes.set_ylim(0, 102)
    axes.set_xlim(-1, 31)
    axes.set_title("The corner pin on the own side: how often it is made", **TITLE)
    axes.set_xlabel("axis tilt, degrees")
    axes.set_ylabel("made, of 100 balls")
