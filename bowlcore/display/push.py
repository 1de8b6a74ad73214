"""Push sideways, hook and entry angle against axis rotation, for a low and a high rev rate."""

import numpy as np

from bowlcore.coaching import best_rotation
from bowlcore.coaching.best_rotation import ROTATIONS
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, emptied, layer, new_axes, new_figure, rc_in_use, svg

SIZE = (11.5, 5.2)
_LEFTS, _BOTTOMS, _BOX = (0.045, 0.55), (0.70, 0.40, 0.09), (0.43, 0.19)
_CHARTS = (  # heading, top and step of each
    ("push sideways while it skids, % of friction", 100, 25),
    ("hook on the same line, boards", 30, 10),
    ("entry angle, degrees: same line (full), re-aimed (dashes)", 10, 2),
)


def push_panel(**start):
    """Four answers to "which rotation is most?" for two rev rates; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house"))]
    return Panel("push_panel", draw, main, lines=3)


def draw(pattern, metric=False, hand="right") -> Drawn:
    """Three rows of curves for each bowler, their largest places marked; sentence and table."""
    told = best_rotation.answer(pattern, metric=metric, hand=hand)
    figure, columns = _moving()
    with rc_in_use():
        for axes, curves in zip(columns, told.curves.values(), strict=True):
            _column(*map(emptied, axes), curves)
    background = _background(tuple(row["bowler"] for row in told.rows))
    alt = (
        f"{told.sentence} Picture: for two bowlers, against axis rotation in degrees: the share of friction that pushes "
        "sideways, boards of hook on the same line, and the entry angle on the same line and re-aimed; each with its largest "
        "place marked, and thick where nobody would see a difference."
    )
    return Drawn(svg([background, layer(figure)], *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=2)
def _background(bowlers):
    """Frames, axes and headings."""
    figure = new_figure(*SIZE)
    with rc_in_use():
        for left, bowler in zip(_LEFTS, bowlers, strict=True):
            for bottom, (title, top, step) in zip(_BOTTOMS, _CHARTS, strict=True):
                axes = new_axes(figure, left, bottom, *_BOX)
                axes.grid(color="#e4e4e4", linewidth=0.6)
                axes.set_axisbelow(True)
                _frame(axes, top)
                axes.set_xticks(range(0, 91, 15))
                axes.set_yticks(range(0, top + 1, step))
                axes.set_title(title, loc="left", fontsize=style.TEXT_PT)
                if bottom == _BOTTOMS[0]:
                    axes.text(0, 1.24, bowler, transform=axes.transAxes, fontweight="bold")
            axes.set_xlabel("axis rotation, degrees")
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    """The figure of the moving layer, with three bare axes for each bowler."""
    figure = new_figure(*SIZE)
    columns = [[new_axes(figure, left, bottom, *_BOX, bare=True) for bottom in _BOTTOMS] for left in _LEFTS]
    for column in columns:
        for axes, (_, top, _) in zip(column, _CHARTS, strict=True):
            _frame(axes, top)
    return figure, columns


def _frame(axes, top):
    axes.set_xlim(0, 92)
    axes.set_ylim(0, top)


def _column(push, hook, angle, curves):
    _line(push, 100 * curves.push_share, 100 * best_rotation.SEEN_SHARE, style.BLACK)
    _line(hook, curves.hook_boards, best_rotation.SEEN_BOARDS, style.BLUE)
    _line(angle, curves.angle_deg, best_rotation.SEEN_DEG, style.VERMILLION)
    above = np.nanmax(curves.re_aimed_deg, initial=0) > np.nanmax(curves.angle_deg, initial=0)
    lift = 6 if above else -15
    _line(angle, curves.re_aimed_deg, best_rotation.SEEN_DEG, style.GREEN, dash=(0, (4, 2)), lift=lift)


def _line(axes, values, step, color, dash="-", lift=6):
    """A curve, thick where nobody would see a difference from its largest, which is marked."""
    axes.plot(ROTATIONS, values, color=color, linestyle=dash, linewidth=1.6)
    if not np.isfinite(values).any():
        return
    at, most = best_rotation.peak(values), float(np.nanmax(values))
    low, high = best_rotation.as_good(values, step)
    top = (ROTATIONS >= low) & (ROTATIONS <= high)
    axes.plot(
        ROTATIONS[top], np.asarray(values)[top], color=color, linewidth=4.5, alpha=0.45, solid_capstyle="butt"
    )
    axes.plot([at], [most], marker="D", color=color, markersize=6, clip_on=False, zorder=3)
    axes.annotate(f"{at:.0f}°", (at, most), (0, lift), textcoords="offset points", ha="center", color=color,
                  fontweight="bold")  # fmt: skip
