"""A bowler's balls at the pins: board against angle, the pocket and the published box."""

import numpy as np

from bowlcore.coaching import bowler_told, words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.simple_chart import chart

_LOW, _HIGH, _FLAT, _STEEP = bowler_told.PUBLISHED_BOX
_BOX = (_LOW, _HIGH, _HIGH, _LOW, _LOW), (_FLAT, _FLAT, _STEEP, _STEEP, _FLAT)


def bowler_odds_panel(**start):
    """The demo bowlers on the demo lanes as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")),
            Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
        ]
    return Panel("bowler_odds_panel", draw, main)


def draw(bowler, pattern, metric=False, hand="right") -> Drawn:
    """Where 256 balls come in, the sentence and the shares."""
    told = bowler_told.answer(load_bowlers()[bowler], lane_of(pattern), hand=hand)

    def paint(axes):
        axes.plot(
            told.entry_board, told.entry_angle_deg, linewidth=0, marker="o", markersize=3, color=style.BLUE
        )
        axes.plot(*_BOX, color=style.BLACK, linewidth=1.4)

    seen = int(np.isfinite(told.entry_board).sum())
    alt = f"{told.sentence} Picture: {seen} balls as dots, entry angle in degrees against entry board, the pocket shaded."
    return Drawn(chart(alt, paint, still=(_frame, hand)), told.sentence, told.rows)


def _frame(axes, hand):
    middle, reach = words.POCKET_BOARD, words.POCKET_REACH
    axes.axvspan(middle - reach, middle + reach, color="#d9ece4", zorder=0)
    axes.text(_BOX[0][1] + 0.1, _BOX[1][2], "published box", va="bottom", fontsize=style.TEXT_PT - 0.5)
    axes.text(middle, 9.6, "pocket", color=style.GREEN, ha="center", va="top")
    axes.set_xlim(5, 35)
    axes.set_ylim(-1, 10)
    axes.set_xlabel(f"comes in on board, from the {hand}")
    axes.set_ylabel("entry angle, degrees")
