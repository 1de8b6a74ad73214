"""Find your own numbers: the slide board for each pin, a staircase for each ball."""

import numpy as np

from bowlcore.coaching import own_numbers, words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spares import BALLS, PLAIN_BALL
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.simple_chart import chart
from bowlcore.display.spares import bowler_of


def own_numbers_panel(**start):
    """Where the feet go for each pin, target fixed, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")),
            Choice("ball", "Ball", list(BALLS), at("ball", PLAIN_BALL)),
            Number("target_board", "Target at 15 ft", "board", 5, 30, 0.5, at("target_board", 13.5)),
            Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
        ]
    return Panel("own_numbers_panel", draw, main, lines=4)


def draw(bowler, ball, target_board, pattern, metric=False, hand="right") -> Drawn:
    """The staircase, the sentence and the table of feet."""
    told = own_numbers.answer(bowler_of(bowler, hand), lane_of(pattern), target_board, ball)

    def paint(axes):
        place = np.arange(len(told.pins))[:: 1 if hand == "left" else -1]  # the 7-pin left, as people see it
        for name, numbers in told.numbers.items():
            mine = name == ball
            axes.plot(
                place, numbers.slide_board, color=style.BLUE if mine else style.GREY, linewidth=1.2,
                linestyle="-" if mine else (0, (4, 3)), marker="o", mfc=style.BLUE if mine else "white",
                markersize=6 if mine else 4.5, label=name,
            )  # fmt: skip
            for x, board in zip(place, numbers.slide_board, strict=True):
                if mine and board == board:
                    axes.annotate(words.halves(board), (x, board), (0, -13), textcoords="offset points",
                                  ha="center", color=style.BLUE, fontweight="bold")  # fmt: skip
        axes.set_xticks(place, [str(pin) for pin in told.pins])
        axes.set_xlabel("pin, as seen from the approach")
        axes.set_ylabel(f"slide foot on board, from the {hand}")
        seen = np.concatenate([numbers.slide_board for numbers in told.numbers.values()])
        low, high = (np.nanmin(seen), np.nanmax(seen)) if np.isfinite(seen).any() else (0, 40)
        axes.set_ylim(low - 5, high + 3)
        axes.legend(loc="center left", bbox_to_anchor=(1.02, 0.5), frameon=False)

    alt = f"{told.sentence} Picture: slide board for each pin, as seen from the approach, a line a ball."
    return Drawn(chart(alt, paint), told.sentence, told.rows)
