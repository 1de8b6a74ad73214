"""Maps over axis rotation and tilt: where the ball comes in and how steeply, same line and re-aimed."""

import numpy as np

from bowlcore.coaching import response_map, words
from bowlcore.coaching.response_map import FEW_ROTATIONS, FEW_TILTS, ROTATIONS, SCATTER, TILTS
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, emptied, layer, new_axes, new_figure, rc_in_use, svg
from bowlcore.motion.ball import load_balls
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 4.2)
_PLACES = [(left, 0.125, 0.265, 0.70) for left in (0.055, 0.385, 0.715)]
_TITLES = (
    "Same line: comes in on board",
    "Same line: entry angle, degrees",
    "Re-aimed: entry angle, degrees",
)
_STEP_BOARD, _STEP_DEG = 2, 1  # between two contours


def response_map_panel(**start):
    """Board and angle over rotation and tilt as a live panel; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("axis_rotation_deg", "Axis rotation", "degrees", 0, 90, 1, at("axis_rotation_deg", 45)),
            Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 45, 1, at("axis_tilt_deg", 13)),
            Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
        ]
        folds = {
            "Lane, ball and line": [
                Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
                Choice("ball", "Ball", list(load_balls()), at("ball", "benchmark")),
                Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
                target_number(at),
            ]
        }
    return Panel("response_map_panel", draw, main, folds, lines=4)


def draw(pattern, ball, metric=False, hand="right", **v) -> Drawn:
    """Three maps with the bowler's own place on them, sentence and table."""
    release = Release(**v, hand=hand)
    told = response_map.answer(release, pattern, ball)
    alt = (
        f"{told.sentence} Picture: three maps, axis rotation in degrees across and axis tilt up, with lines of equal entry board "
        "on the same line, equal entry angle on the same line, and equal entry angle re-aimed; your own hand is a diamond, with "
        "the scatter of an ordinary hand about it."
    )
    layers = [_maps(response_map.family_of(release), pattern, ball), _axes(), _spots(told, release)]
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=8)
def _maps(around, pattern, ball):
    """The three maps as pictures with lines of equal value; redrawn when speed, revs, line, lane or ball change."""
    board, angle = response_map.same_line(around, pattern, ball)
    steep = response_map.re_aimed(around, pattern, ball)
    figure = new_figure(*SIZE)
    with rc_in_use():
        for place, values, step in zip(
            _PLACES, (board, angle, steep), (_STEP_BOARD, _STEP_DEG, _STEP_DEG), strict=True
        ):
            few = values.shape == steep.shape
            axes = _frame(new_axes(figure, *place, bare=True))
            _map(axes, FEW_ROTATIONS if few else ROTATIONS, FEW_TILTS if few else TILTS, values, step)
    return layer(figure)


@drawn_once(maxsize=1)
def _axes():
    """What stands round the maps."""
    figure = new_figure(*SIZE)
    with rc_in_use():
        for place, title in zip(_PLACES, _TITLES, strict=True):
            axes = _frame(new_axes(figure, *place))
            axes.set_xticks(range(0, 91, 15))
            axes.set_yticks(range(0, 46, 15))
            axes.set_title(title, loc="left", fontsize=style.TEXT_PT, fontweight="bold")
            axes.set_xlabel("axis rotation, degrees")
            if place == _PLACES[0]:
                axes.set_ylabel("axis tilt, degrees")
    return layer(figure)


def _map(axes, rotations, tilts, values, step):
    axes.fill(
        [0, 90, 90, 0],
        [0, 0, 45, 45],
        facecolor="white",
        edgecolor=style.GREY,
        hatch="///",
        linewidth=0,
        zorder=-2,
    )
    there = values[np.isfinite(values)]
    if not there.size:
        axes.text(45, 22, "none", ha="center", va="center")
        return
    half = [(grid[1] - grid[0]) / 2 for grid in (rotations, tilts)]  # a cell is centred on its hand
    extent = (rotations[0] - half[0], rotations[-1] + half[0], tilts[0] - half[1], tilts[-1] + half[1])
    low, high = there.min(), max(there.max(), there.min() + 4 * step)
    axes.imshow(values, extent=extent, origin="lower", aspect="auto", cmap="Greys", vmin=low - 0.1 * (high - low),
                vmax=low + 3.4 * (high - low), interpolation="nearest", zorder=-1)  # fmt: skip
    levels = np.arange(np.floor(low / step) * step, high + step, step)
    lines = axes.contour(rotations, tilts, np.ma.masked_invalid(values), levels=levels, colors=[style.BLUE], linewidths=1.1,
                         linestyles="-")  # fmt: skip
    axes.clabel(lines, fontsize=style.TEXT_PT, fmt="%g", inline_spacing=2, colors=[style.BLACK])


def _frame(axes):
    axes.set_xlim(0, 90)
    axes.set_ylim(0, 45)
    return axes


@drawn_once(maxsize=1)
def _moving():
    """The figure of the moving layer, with bare axes for each map."""
    figure = new_figure(*SIZE)
    return figure, [_frame(new_axes(figure, *place, bare=True)) for place in _PLACES]


def _spots(told, release):
    """The bowler's own hand on each map, with an ordinary hand's scatter, and its value in words."""
    from matplotlib.patches import Ellipse

    figure, maps = _moving()
    board, angle, steep = told.here
    said = (
        "gutter" if board != board else words.board(board),
        "" if angle != angle else words.degrees(angle),
        "no line in reach" if steep != steep else words.degrees(steep),
    )
    x, y = release.axis_rotation_deg, release.axis_tilt_deg
    halo = {"facecolor": "white", "alpha": 0.85, "edgecolor": "none", "pad": 1.2}
    for axes, text in zip(map(emptied, maps), said, strict=True):
        size = 4 * SCATTER.axis_rotation_deg, 4 * SCATTER.axis_tilt_deg  # two deviations each way
        axes.add_patch(Ellipse((x, y), *size, fill=False, edgecolor=style.VERMILLION, linewidth=1.4))
        axes.plot([x], [y], marker="D", markersize=6, color=style.VERMILLION, linewidth=0)
        above = y < 34
        axes.text(min(max(x, 12), 78), y + 5 if above else y - 5, text, ha="center", va="bottom" if above else "top",
                  color=style.VERMILLION, fontweight="bold", bbox=halo)  # fmt: skip
    return layer(figure)
