"""Push sideways, hook and entry angle against axis rotation, for a low and a high rev rate."""

import numpy as np

from bowlcore.coaching import best_rotation
from bowlcore.coaching.best_rotation import ROTATIONS
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import layer, new_axes, new_figure, svg

SIZE = (11.5, 5.2)
_LEFTS, _BOTTOMS, _BOX = (0.045, 0.55), (0.70, 0.40, 0.09), (0.43, 0.19)


def push_panel(**start):
    """Four answers to "which rotation is most?" for two rev rates; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house"))]
    return Panel("push_panel", draw, main, lines=3)


def draw(pattern, metric=False, hand="right") -> Drawn:
    """Three rows of curves for each bowler, their largest places marked; sentence and table."""
    from matplotlib import rc_context

    told = best_rotation.answer(pattern, metric=metric, hand=hand)
    figure = new_figure(*SIZE)
    with rc_context(style.RC):
        for left, row, curves in zip(_LEFTS, told.rows, told.curves.values(), strict=True):
            axes = [new_axes(figure, left, bottom, *_BOX) for bottom in _BOTTOMS]
            _column(axes, row["bowler"], curves)
    alt = (
        f"{told.sentence} Picture: for two bowlers, against axis rotation in degrees: the share of friction that pushes "
        "sideways, boards of hook on the same line, and the entry angle on the same line and re-aimed; each with its largest "
        "place marked, and thick where nobody would see a difference."
    )
    return Drawn(svg([layer(figure)], *SIZE, alt), told.sentence, told.rows)


def _column(axes, bowler, curves):
    push, hook, angle = axes
    for place, title, top, step in (
        (push, "push sideways while it skids, % of friction", 100, 25),
        (hook, "hook on the same line, boards", 30, 10),
        (angle, "entry angle, degrees: same line (full), re-aimed (dashes)", 10, 2),
    ):
        place.grid(color="#e4e4e4", linewidth=0.6)
        place.set_axisbelow(True)
        place.set_xlim(0, 92)
        place.set_ylim(0, top)
        place.set_xticks(range(0, 91, 15))
        place.set_yticks(range(0, top + 1, step))
        place.set_title(title, loc="left", fontsize=style.TEXT_PT)
    push.text(0, 1.24, bowler, transform=push.transAxes, fontweight="bold")
    angle.set_xlabel("axis rotation, degrees")
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
