"""The picture of a reading: believed and supposed paths on the lane, the causes as bars, the balls in words."""

from textwrap import shorten

import numpy as np

from bowlcore.coaching import reaction_told, words
from bowlcore.coaching.feet import mark_distance_ft
from bowlcore.coaching.hypotheses import CAUSES
from bowlcore.coaching.reading import CANNOT_TELL
from bowlcore.display import style
from bowlcore.display.lane_figure import LanePaths
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure

SIZE = (11.5, 4.25)
LANE, _BARS, _LIST = (0.05, 0.375, 0.60, 0.545), (0.80, 0.375, 0.195, 0.545), (0.05, 0.0, 0.94, 0.255)
_DASHES = {None: (0, (4, 3)), "left": (0, (4, 3)), "right": (0, (1.2, 1.6))}
_ROWS, _LETTERS = 4, 84  # of the list under the lane, in two columns; the table has all of it
_BREAK_FT = 44.0  # where a breakpoint that was read is drawn
NAMES = (*CAUSES, CANNOT_TELL)


@drawn_once(maxsize=1)
def bars_background():
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_BARS)
    _frame(axes)
    axes.set_yticks(range(len(NAMES)), NAMES)
    axes.tick_params(axis="y", length=0)
    axes.set_xticks([0, 5, 10])
    axes.set_xlabel("weight, in 10")
    axes.set_title("How likely", fontsize=style.TEXT_PT, loc="left", fontweight="bold")
    axes.grid(axis="x", color="#e4e4e4", linewidth=0.6)
    axes.set_axisbelow(True)
    return layer(figure)


def _frame(axes):
    axes.set_xlim(0, 12)
    axes.set_ylim(len(NAMES) - 0.4, -0.6)


@drawn_once(maxsize=1)
def moving():
    return ReactionPicture()


class ReactionPicture:
    """The moving layer: paths, bars, what was read off a board, and the list."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lane = LanePaths(self.figure, LANE, style.BLACK)
        self.supposed = [
            self.lane.axes.plot([], [], color=color, linewidth=2.0)[0]
            for color in (style.BLUE, style.VERMILLION)
        ]
        self.ends = [
            self.lane.axes.text(61.0, board, "", va="center", color=color, fontweight="bold")
            for board, color in ((2.5, style.BLUE), (-1.5, style.VERMILLION))
        ]
        self.read = self.lane.axes.plot(
            [], [], linewidth=0, marker="x", markersize=7, color=style.GREEN, markeredgewidth=1.8, zorder=5
        )[0]
        axes = new_axes(self.figure, *_BARS, bare=True)
        _frame(axes)
        self.bars = [BarsOfCauses(axes, color) for color in (style.BLUE, style.VERMILLION)]
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        self.read_name = self.lane.axes.text(18.0, 36.2, "", color=style.GREEN, va="center", bbox=halo)
        self.list = new_axes(self.figure, *_LIST, bare=True)
        self.list.set_xlim(0, 2)
        self.list.set_ylim(_ROWS - 0.4, -1.5)
        self.lines = [self.list.text(i // _ROWS, i % _ROWS, "", va="center") for i in range(2 * _ROWS)]
        self.heading = self.list.text(0, -1, "", va="center", fontweight="bold")

    def show(self, believed, readings, balls, names, title, metric, supposed="if so"):
        """Move everything: `names` of the balls in the list, `supposed` names the dashed path."""
        self.lane.show(title, believed, metric)
        for i, (line, end, bars) in enumerate(zip(self.supposed, self.ends, self.bars, strict=True)):
            reading = readings[i] if i < len(readings) else None
            bars.show(reading, i, len(readings))
            line.set_data([], [])
            end.set_text("")
            if reading is not None:
                line.set_data(reading.supposed.distance_ft, reading.supposed.board)
                line.set_linestyle(_DASHES[reading.lane])
                end.set_text(f"{reading.lane or supposed} {_hit(reading.supposed)}")
        feet, boards = _marks(balls)
        self.read.set_data(feet, boards)
        self.read_name.set_text("× boards that were read" if boards else "")
        self._show_list(balls, names)

    def _show_list(self, balls, names):
        self.heading.set_text("Balls noted" if balls else "No ball noted yet")
        shown = list(zip(names, balls, strict=True))[-2 * _ROWS :]
        for i, line in enumerate(self.lines):
            line.set_text("")
            if i < len(shown):
                name, ball = shown[i]
                line.set_text(
                    shorten(f"{name}: {reaction_told.seen_words(ball)}", _LETTERS, placeholder=" …")
                )


class BarsOfCauses:
    """Bars of one reading, thin where two stand side by side, each with its weight in words."""

    def __init__(self, axes, color):
        self.bars = [axes.plot([], [], color=color, solid_capstyle="butt")[0] for _ in NAMES]
        self.texts = [
            axes.text(0, 0, "", va="center", color=color, fontsize=style.TEXT_PT - 1) for _ in NAMES
        ]

    def show(self, reading, place, count):
        """Move to a reading, or empty."""
        weights = {cause.name: cause.weight for cause in reading.causes} if reading else {}
        lift = 0.0 if count == 1 else (-0.2, 0.2)[place]
        for i, (name, bar, text) in enumerate(zip(NAMES, self.bars, self.texts, strict=True)):
            ten = 10 * weights.get(name, 0.0)
            bar.set_data([0, ten] if reading else [], [i + lift] * 2 if reading else [])
            bar.set_linewidth(11 if count == 1 else 6)
            text.set_text(f"{reading.lane or ''} {ten:.0f}".strip() if ten >= 0.5 else "")
            text.set_position((ten + 0.2, i + lift))


def _hit(path):
    return "gutter" if path.entry_board != path.entry_board else words.halves(path.entry_board)


def _marks(balls):
    """Crosses where boards were read: at the arrows, and furthest out."""
    arrows = [ball.arrow_board for ball in balls if ball.arrow_board is not None]
    breaks = [ball.breakpoint_board for ball in balls if ball.breakpoint_board is not None]
    return [*map(float, mark_distance_ft(np.array(arrows))), *[_BREAK_FT] * len(breaks)], arrows + breaks
