"""Strikes or spares: pins a game now, and with ten points more of each, as three bars."""

from bowlcore.coaching import strikes_or_spares
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.simple_chart import chart
from bowlcore.display.spares import bowler_of


def strikes_or_spares_panel(**start):
    """What more strikes or more spares are worth to a demo bowler, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")),
            Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
            Number("points", "More of each", "points", 1, 20, 1, at("points", 10)),
        ]
    return Panel("strikes_or_spares_panel", draw, main)


def draw(bowler, pattern, points, metric=False, hand="right") -> Drawn:
    """Three bars, the sentence and the table."""
    told = strikes_or_spares.answer(bowler_of(bowler, hand), lane_of(pattern), points)

    def paint(axes):
        bars = (told.now, style.GREY), (told.more_strikes, style.BLUE), (told.more_spares, style.GREEN)
        for i, (pins, color) in enumerate(bars):
            axes.barh(i, pins, color=color, height=0.5)
            gain = f" ({pins - told.now:.0f} more)" if i else ""
            axes.text(pins + 2, i, f"{pins:.0f}{gain}", va="center", color=color, fontweight="bold")
        axes.axvline(told.now, color=style.GREY, linewidth=0.8, linestyle=(0, (3, 3)))

    alt = f"{told.sentence} Picture: pins a game as three bars: now, with more strikes, with more spares."
    still = _frame, f"{points:.0f} points more"
    return Drawn(chart(alt, paint, (0.21, 0.16, 0.70, 0.74), still=still), told.sentence, told.rows)


def _frame(axes, more):
    axes.set_yticks(range(3), ["now", f"{more} strikes", f"{more} on each spare"])
    axes.set_ylim(2.6, -0.6)
    axes.set_xlim(0, 300)
    axes.set_xlabel("pins a game, in this pin model")
