"""Pins over the entry board for each ball weight."""

from bowlcore.coaching import ball_weight
from bowlcore.display import style
from bowlcore.display.controls import Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.simple_chart import chart
from bowlcore.motion.units import KMH_PER_MPH

_LOOKS = [
    (style.BLACK, "-"), (style.BLUE, "--"), (style.VERMILLION, "-."), (style.GREEN, (0, (1, 1))), (style.GREY, (0, (7, 1.5)))
]  # fmt: skip


def ball_weight_panel(**start):
    """Why a light ball leaves other pins, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("entry_angle_deg", "Entry angle", "degrees", 0, 8, 0.5, at("entry_angle_deg", 2.0)),
            Number("speed_at_pins_mph", "Speed at the pins", "mph", 5, 17, 0.5, at("speed_at_pins_mph", 11),
                   ("km/h", KMH_PER_MPH, 0.5)),
            Number("scatter_boards", "Scatter of hits", "boards", 0.5, 6, 0.5, at("scatter_boards", 1.5)),
        ]  # fmt: skip
    return Panel("ball_weight_panel", draw, main)


def draw(metric=False, hand="right", **v) -> Drawn:
    """The curves, the sentence and the best boards."""
    told = ball_weight.answer(**v, metric=metric)

    def paint(axes):
        for i, (color, dash) in enumerate(_LOOKS):
            axes.plot(told.board, told.pinfall[i], color=color, linestyle=dash, linewidth=1.8)
            best = told.pinfall[i][told.board == told.best_board[i]]
            axes.plot([told.best_board[i]], best, marker="o", color=color, markersize=5)

    alt = f"{told.sentence} Picture: pins with the first ball against the entry board, a curve for each ball weight."
    return Drawn(chart(alt, paint, still=(_frame, hand)), told.sentence, told.rows)


def _frame(axes, hand):
    axes.set_xlim(13, 23)
    axes.set_ylim(4.8, 10)
    axes.set_xlabel(f"comes in on board, from the {hand}")
    axes.set_ylabel("pins with the first ball")
    for lb, (color, dash) in zip(ball_weight.WEIGHTS_LB, _LOOKS, strict=True):
        axes.plot([], [], color=color, linestyle=dash, linewidth=1.8, label=f"{lb} lb")
    axes.legend(
        loc="lower right", frameon=False, ncols=5, title="dot: the best board on the own side of the head pin"
    )
