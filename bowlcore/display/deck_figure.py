"""The pin deck from above, lying as the lane does: the ball comes from the left, own side below."""

import numpy as np

from bowlcore.coaching import words
from bowlcore.display import style
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure
from bowlcore.rack.leave import MIRROR
from bowlcore.rack.pins import BALL_DIAMETER_IN, BOARD_IN, PIN_DIAMETER_IN, pin_board, pin_distance_ft

SIZE = (11.5, 3.9)
DECK = (0.05, 0.13, 0.52, 0.80)
BARS = (0.72, 0.13, 0.26, 0.75)
X_LIMITS, Y_LIMITS = (57.0, 64.2), (-1.0, 41.0)
_MOST_LEAVES = 6  # bars shown


@drawn_once(maxsize=8)
def deck_background(metric, hand):
    """Empty deck with its axes, and the frame of the bars of leaves."""
    from bowlcore.motion.units import FOOT_M

    figure = new_figure(*SIZE)
    axes = new_axes(figure, *DECK)
    axes.set_xlim(*X_LIMITS)
    axes.set_ylim(*Y_LIMITS)
    for low, high in ((-1.0, 0.5), (39.5, 41.0)):
        axes.fill_between([57, 62.9], low, high, color=style.GUTTER, linewidth=0)
    axes.plot([57, 62.9, np.nan, 57, 62.9], [0.5, 0.5, np.nan, 39.5, 39.5], color=style.GREY, linewidth=0.8)
    axes.plot([62.85, 62.85], [0.5, 39.5], color=style.GREY, linewidth=1.2, linestyle=(0, (2, 2)))
    axes.text(62.95, 37, "end of\nthe deck", color=style.GREY, fontsize=style.TEXT_PT - 1, va="top")
    side = "right" if hand == "right" else "left"
    axes.set_ylabel(f"board from the {side}")
    axes.set_yticks([1, 10, 20, 30, 39])
    feet = [57, 58, 59, 60, 61, 62, 63]
    if metric:
        metres = [17.5, 18.0, 18.5, 19.0]
        axes.set_xticks([m / FOOT_M for m in metres], [f"{m:g}" for m in metres])
    else:
        axes.set_xticks(feet)
    axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'} (length stretched)")
    bars = _bars_frame(new_axes(figure, *BARS))
    bars.set_yticks([])
    bars.set_xticks([0, 0.25, 0.5, 0.75, 1.0], ["0", "25", "50", "75", "100"])
    bars.set_xlabel("in 100 balls (bar) and 95 % interval (line)")
    bars.set_title("What stands", loc="left", fontsize=style.TEXT_PT, fontweight="bold")
    return layer(figure)


def _bars_frame(axes):
    axes.set_xlim(0, 1)
    axes.set_ylim(_MOST_LEAVES - 0.4, -0.6)
    return axes


class DeckPicture:
    """The moving layer: pins shaded by how often they stand, the ball's way, bars of leaves."""

    def __init__(self):
        from matplotlib.patches import Ellipse

        self.figure = new_figure(*SIZE)
        axes = new_axes(self.figure, *DECK, bare=True)
        axes.set_xlim(*X_LIMITS)
        axes.set_ylim(*Y_LIMITS)
        self.pins, self.names = [], []
        tall, wide = PIN_DIAMETER_IN / BOARD_IN, PIN_DIAMETER_IN / 12.0
        for pin in range(1, 11):
            place = float(pin_distance_ft(pin)), float(pin_board(pin))
            spot = Ellipse(
                place, wide, tall, facecolor="white", edgecolor=style.BLACK, linewidth=1.0, zorder=2
            )
            axes.add_patch(spot)
            self.pins.append(spot)
            self.names.append(
                axes.text(*place, "", ha="center", va="center", fontsize=style.TEXT_PT - 0.5, zorder=3)
            )
        self.ball = Ellipse((58, 17), BALL_DIAMETER_IN / 12, BALL_DIAMETER_IN / BOARD_IN, facecolor="none",
                            edgecolor=style.BLUE, linewidth=1.4)  # fmt: skip
        axes.add_patch(self.ball)
        self.way = axes.plot([], [], color=style.BLUE, linewidth=2.2, zorder=4)[0]
        bars, rows = _bars_frame(new_axes(self.figure, *BARS, bare=True)), range(_MOST_LEAVES)
        self.bars = bars.barh(rows, [0.0] * _MOST_LEAVES, height=0.5).patches
        look = {"color": style.BLACK, "linewidth": 1.4, "marker": "|"}
        self.intervals = [bars.plot([], [], **look)[0] for _ in rows]
        self.leaves = [bars.text(-0.03, row, "", ha="right", va="center") for row in rows]

    def show(self, told, hand):
        """Move everything to an answer."""
        for pin, (spot, name) in enumerate(zip(self.pins, self.names, strict=True), 1):
            share = told.standing[pin - 1]
            grey = 1.0 - 0.75 * share
            spot.set_facecolor((grey, grey, grey))
            number = pin if hand == "right" else MIRROR[pin]
            name.set_text(f"{number}\n{words.percent(share)}")
            name.set_color("white" if share > 0.72 else "black")
        self.way.set_data(told.way_ft, told.way_board)
        self.ball.set_center((told.way_ft[0], told.way_board[0]))
        self._show_bars(told)

    def _show_bars(self, told):
        shown = [*told.leaves[:_MOST_LEAVES], *[None] * _MOST_LEAVES]
        for row, (bar, line, name) in enumerate(zip(self.bars, self.intervals, self.leaves, strict=True)):
            item = shown[row]
            bar.set_visible(item is not None)
            bar.set_width(item.share if item else 0.0)
            line.set_data(([item.low, item.high], [row, row]) if item else ([], []))
            name.set_text(("strike" if item.leave.is_strike else item.leave.text) if item else "")
            bar.set_facecolor(style.GREEN if item and item.leave.is_strike else style.GREY)
