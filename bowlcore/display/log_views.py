"""What a practice log shows, one view at a time: bars with bands, or the misses at the arrows."""

import numpy as np

from bowlcore.coaching import log_views
from bowlcore.coaching.log_source import DEMO, EVERYBODY, LOGS, people
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import layer, new_axes, new_figure, svg

_WIDTH_IN, _ROW_IN, _AROUND_IN = 11.5, 0.34, 0.9
_FURTHEST = 12  # boards either side that the picture of misses shows


def log_views_panel(**start):
    """Views of a log, the demo log or one's own, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("view", "Show", log_views.VIEWS, at("view", log_views.LOST)),
            Choice("bowler", "Bowler", people(), at("bowler", EVERYBODY)),
            Choice("log", "Log", LOGS, at("log", DEMO)),
        ]
    return Panel("log_views_panel", draw, main, lines=2)


def draw(view, bowler, log, metric=False, hand="right") -> Drawn:
    """Picture, sentence and table of one view."""
    told = log_views.answer(log, bowler, view)
    if told.bars:
        alt = f"{told.sentence} Picture: bars of {told.axis}, one a row, the longest given in words above; thin lines are bands."
        picture = _picture(_ROW_IN * len(told.bars) + _AROUND_IN, alt, lambda axes: _bars(axes, told))
    elif told.misses:
        alt = f"{told.sentence} Picture: how many balls crossed the arrows so many boards out or in of the board meant."
        picture = _picture(3.4, alt, lambda axes: _misses(axes, told))
    else:
        picture = svg([], _WIDTH_IN, 0.4, told.sentence)
    return Drawn(picture, told.sentence, told.rows)


def _picture(height, alt, paint):
    from matplotlib import rc_context

    figure = new_figure(_WIDTH_IN, height)
    axes = new_axes(figure, 0.19, 0.6 / height, 0.76, (height - 0.8) / height)
    with rc_context(style.RC):
        axes.grid(axis="x", color="#e4e4e4", linewidth=0.6)
        axes.set_axisbelow(True)
        paint(axes)
    return svg([layer(figure)], _WIDTH_IN, height, alt)


def _bars(axes, told):
    most = max(max(bar.value, bar.high or 0) for bar in told.bars) or 1.0
    for place, bar in enumerate(told.bars):
        axes.barh(place, bar.value, color=style.OIL, edgecolor=style.BLUE, height=0.62)
        if bar.low is not None:
            axes.plot(
                [bar.low, bar.high],
                [place, place],
                color=style.BLACK,
                linewidth=1.2,
                marker="|",
                markersize=8,
            )
        axes.text(
            max(bar.value, bar.high or 0) + 0.012 * most,
            place,
            f"{bar.value:.0f}",
            va="center",
            fontweight="bold",
        )
    axes.set_yticks(range(len(told.bars)), [bar.label for bar in told.bars])
    axes.set_ylim(len(told.bars) - 0.4, -0.6)
    axes.set_xlim(0, 1.08 * most)
    bands = any(bar.low is not None for bar in told.bars)
    axes.set_xlabel(told.axis + (" (thin line: where it could be, nine chances in ten)" if bands else ""))


def _misses(axes, told):
    from matplotlib.ticker import MaxNLocator

    miss = np.clip(told.misses, -_FURTHEST, _FURTHEST)
    edges = np.arange(-_FURTHEST - 0.5, _FURTHEST + 1.5)
    axes.hist(miss, bins=edges, color=style.OIL, edgecolor=style.BLUE)
    axes.axvline(0, color=style.GREY, linewidth=0.8)
    axes.plot(
        [np.mean(told.misses)], [0], marker="^", color=style.BLACK, markersize=10, clip_on=False, zorder=5
    )
    axes.set_xlim(-_FURTHEST - 0.5, _FURTHEST + 0.5)
    axes.xaxis.set_major_formatter(lambda value, _: f"{abs(value):.0f}")
    axes.set_xlabel(f"← out | {told.axis}, at the arrows (triangle: mean) | in →")
    axes.yaxis.set_major_locator(MaxNLocator(5, integer=True))
    axes.set_ylabel("balls")
