"""3-6-9, 2-4-6 and the cross-lane line: windows of six pins and where each system's ball comes."""

from bowlcore.coaching import three_six_nine
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spare_windows import own_pin
from bowlcore.coaching.spares import PLAIN_BALL
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.simple_chart import chart
from bowlcore.display.spares import bowler_of
from bowlcore.motion.units import EDGE_HIGH_BOARD, EDGE_LOW_BOARD
from bowlcore.rack.pins import pin_board


def three_six_nine_panel(**start):
    """Counting systems on paper and on the lane, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("system", "System", list(three_six_nine.SYSTEMS), at("system", "3-6-9")),
            Choice("walk", "Walk", list(three_six_nine.WALKS), at("walk", "2 to 1")),
            Choice("thrown", "Ball", list(three_six_nine.THROWN), at("thrown", PLAIN_BALL)),
        ]
        folds = {
            "For a real ball: bowler and lane": [
                Choice(
                    "bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")
                ),
                Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
            ]
        }
    return Panel("three_six_nine_panel", draw, main, folds, lines=4)


def draw(system, walk, thrown, bowler, pattern, metric=False, hand="right") -> Drawn:
    """Windows as bars, the balls as dots, the sentence and the table."""
    told = three_six_nine.answer(bowler_of(bowler, hand), lane_of(pattern), system, walk, thrown)

    seen = sorted(told.landings, key=lambda one: -pin_board(one.pin))  # the 7-pin left, as people see it

    def paint(axes):
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        for i, one in enumerate(seen):
            low, high = max(one.low, EDGE_LOW_BOARD), min(one.high, EDGE_HIGH_BOARD)
            axes.bar(i, high - low, bottom=low, width=0.8, color="#d9ece4", edgecolor=style.GREEN)
            centre = float(pin_board(own_pin(one.pin, hand)))
            axes.plot(
                [i - 0.4, i + 0.4], [centre, centre], color=style.GREEN, linewidth=1, linestyle=(0, (2, 2))
            )
            color = style.BLUE if one.touched else style.VERMILLION
            at = 20.0 if one.lost else min(max(one.board, -2.0), 42.0)
            if at == one.board:
                axes.plot([i], [at], marker="o" if one.touched else "X", color=color, markersize=8)
            text = three_six_nine.short_words(one)
            axes.annotate(text, (i, at), (0, -14 if at == one.board else 0), textcoords="offset points", color=color,
                          va="center", ha="center", fontweight="bold", bbox=halo)  # fmt: skip

    pins = tuple(f"{one.pin}: {one.moved}" for one in seen)
    alt = f"{told.sentence} Picture: six pins with the boards that touch them as bars, and where the ball comes as dots."
    return Drawn(
        chart(alt, paint, (0.07, 0.17, 0.91, 0.77), still=(_frame, pins, hand)), told.sentence, told.rows
    )


def _frame(axes, pins, hand):
    axes.axvline(2.5, color=style.GREY, linewidth=0.8)
    axes.set_xticks(range(6), pins, fontsize=style.TEXT_PT - 1)
    axes.set_xlim(-0.5, 5.5)
    axes.set_ylim(-4, 44)
    axes.set_yticks([1, 10, 20, 30, 39])
    axes.set_xlabel(
        "pin, as seen from the approach, and its move (bars: boards that touch it; dotted: its centre)"
    )
    axes.set_ylabel(f"board from the {hand}")
