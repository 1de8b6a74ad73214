"""Three balls measured by eye: dots with error bars for each number, and what the doubt does at the pins."""

import numpy as np

from bowlcore.coaching import release_doubt
from bowlcore.coaching.measuring import NAMES, shown
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import (
    drawn_once,
    emptied,
    in_lines,
    layer,
    moving_axis,
    new_axes,
    new_figure,
    rc_in_use,
    svg,
)
from bowlcore.display.simple_chart import TITLE
from bowlcore.motion.units import INCH_M, KMH_PER_MPH

SIZE = (11.5, 4.3)
_STRIPS = [(0.105, 0.755 - 0.225 * i, 0.385, 0.155) for i in range(4)]
_PINS = (0.665, 0.12, 0.315, 0.76)
_ROWS = np.arange(len(NAMES) + 1.0)[::-1]
_COLORS = (style.BLACK, style.BLUE, style.VERMILLION)
_UNITS = {
    "speed_mph": "mph",
    "rev_rate_rpm": "rpm",
    "axis_rotation_deg": "degrees",
    "axis_tilt_deg": "degrees",
}
# made up: three balls of one invented bowler
_START = {
    "time_s": (2.50, 2.54, 2.47),
    "frames": (72, 70, 75),
    "tape_hours": (1.5, 1.25, 1.75),
    "width_in": (11.5, 11.75, 11.375),
}
_CM = ("cm", INCH_M * 100.0, 0.1)


def measure_a_release_panel(**start):
    """Three balls as written down, with their errors; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("frames_per_s", "Clip", "frames a second", 30, 240, 30, at("frames_per_s", 120)),
            Number("turns", "Turns counted", "", 1, 5, 1, at("turns", 3)),
            Choice("timed", "Time taken from", list(release_doubt.TIMED), at("timed", "clip")),
            Choice("pattern", "Oil pattern of the model", pattern_options(), at("pattern", "house")),
        ]
        folds = {}
        for i in range(3):
            first = {name: at(f"{name}_{i + 1}", values[i]) for name, values in _START.items()}
            n = i + 1
            folds[f"Ball {n}"] = [
                Number(f"time_s_{n}", "Foul line to head pin", "s", 1.8, 5.0, 0.01, first["time_s"]),
                Number(f"frames_{n}", "Frames for these turns", "", 15, 400, 1, first["frames"]),
                Number(
                    f"tape_hours_{n}", "Tape round from the side", "hours", -0.5, 3, 0.25, first["tape_hours"]
                ),
                Number(f"width_in_{n}", "Ring width", "in", 6, 13.5, 0.125, first["width_in"], metric=_CM),
            ]
        folds["Line"] = [
            Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
            target_number(at),
        ]
    return Panel("measure_a_release_panel", draw, main, folds, lines=4)


def draw(
    frames_per_s, turns, timed, pattern, laydown_board, target_board, metric=False, hand="right", **balls
) -> Drawn:  # fmt: skip
    """Dots with error bars, bars of boards, sentence and table."""
    readings = [
        release_doubt.Reading(
            *(balls[f"{name}_{n}"] for name in ("time_s", "frames", "tape_hours", "width_in"))
        )
        for n in (1, 2, 3)
    ]
    told = release_doubt.answer(
        readings, frames_per_s=frames_per_s, turns=int(turns), timed=timed, pattern=pattern,
        laydown_board=laydown_board, target_board=target_board, hand=hand, metric=metric,
    )  # fmt: skip
    figure, strips, pins = _moving()
    with rc_in_use():
        for axes, name in zip(strips, NAMES, strict=True):
            _strip(emptied(axes), name, told, metric)
        _pins(emptied(pins), told)
    alt = (
        f"{told.sentence} Picture: for each of the four numbers three balls with error bars and their mean as a band; beside "
        "them how many boards the hit moves for the doubt of one reading and of the mean."
    )
    return Drawn(svg([_background(metric), layer(figure)], *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=2)
def _background(metric):
    """Names, headings and frames."""
    figure = new_figure(*SIZE)
    with rc_in_use():
        strips = [_strip_frame(new_axes(figure, *place, bare=True)) for place in _STRIPS]
        for axes, name in zip(strips, NAMES, strict=True):
            unit = "km/h" if metric and name == "speed_mph" else _UNITS[name]
            label = f"{NAMES[name]},\n{unit}"
            axes.text(-0.02, 0.5, label, transform=axes.transAxes, ha="right", va="center")
        title = "Three balls (dot, triangle, square) with the eye's error; band: the mean"
        strips[0].set_title(in_lines(title, strips[0], 1.3), x=-0.2, **TITLE)
        pins = _pins_frame(new_axes(figure, *_PINS))
        pins.set_yticks(_ROWS, [*NAMES.values(), "all four together"])
        pins.tick_params(axis="y", length=0)
        pins.set_xticks([])
        title = in_lines("Doubt at the pins (hatched: the eye, one ball; full: the mean)", pins, 1.3)
        pins.set_title(title, x=-0.27, **TITLE)
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    """The figure of the moving layer, with axes for each number and for the pins."""
    figure = new_figure(*SIZE)
    strips = [_strip_frame(moving_axis(new_axes(figure, *place), "x", grid=False)) for place in _STRIPS]
    pins = _pins_frame(moving_axis(new_axes(figure, *_PINS), "x", grid=False))
    pins.set_xlabel("boards that the hit moves, either way")
    return figure, strips, pins


def _strip_frame(axes):
    axes.set_ylim(-0.7, 2.7)
    axes.spines["left"].set_visible(False)
    return axes


def _pins_frame(axes):
    axes.set_ylim(-0.6, len(_ROWS) - 0.4)
    return axes


def _strip(axes, name, told, metric):
    """One number: three balls, bars of one standard deviation, the mean's band."""
    factor = KMH_PER_MPH if metric and name == "speed_mph" else 1.0
    several, found = told.several[name], told.balls[name]
    middle, half = several.value * factor, several.error * factor
    axes.axvspan(middle - half, middle + half, color="#cfe5da", linewidth=0)
    axes.axvline(middle, color=style.GREEN, linewidth=2.0)
    reach = 1.3 * max(half, *(abs(b.value - several.value) * factor + b.error * factor for b in found))
    reach = max(reach, {"speed_mph": 1.0 * factor, "rev_rate_rpm": 25.0}.get(name, 5.0))
    for i, (ball, color) in enumerate(zip(found, _COLORS, strict=True)):
        x, error = ball.value * factor, ball.error * factor
        axes.plot([x - error, x + error], [2 - i, 2 - i], color=color, linewidth=1.6)
        axes.plot([x], [2 - i], marker="o^s"[i], color=color, markersize=6, linewidth=0)
    axes.set_xlim(middle - reach, middle + reach)
    axes.locator_params(axis="x", nbins=7, integer=name != "speed_mph" or metric)
    axes.text(1.015, 0.5, f"mean\n{shown(name, several.value, metric)}", transform=axes.transAxes, ha="left", va="center",
              color=style.GREEN, fontweight="bold")  # fmt: skip


def _pins(axes, told):
    """How far the hit moves for one reading's error and for the mean's."""
    longest = 0.0
    for lift, boards, color, hatch in (
        (0.17, told.boards_one, "#b9cfe0", "///"),
        (-0.17, told.boards_all, style.BLUE, ""),
    ):
        for y, name in zip(_ROWS, NAMES, strict=False):
            size = boards[name]
            if size == size:
                axes.barh(
                    y + lift, size, height=0.3, color=color, edgecolor=style.BLUE, hatch=hatch, linewidth=0.8
                )
                longest = max(longest, size)
    if told.together == told.together:
        axes.barh(_ROWS[-1], told.together, height=0.36, color=style.BLACK)
        longest = max(longest, told.together)
    axes.set_xlim(0, max(2.0, 1.15 * longest))
    axes.locator_params(axis="x", nbins=6)
    axes.axvline(0.5, color=style.GREY, linewidth=0.8, linestyle=(0, (3, 2)))
    axes.text(0.52, -0.52, "half a board", color="#404040", fontsize=style.TEXT_PT - 1)
