"""Five curves against one number, how much of its job friction has done, and where two lanes reach it."""

import numpy as np

from bowlcore.coaching import one_number
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, layer, moving_axis, new_axes, new_figure, rc_in_use, svg
from bowlcore.motion.release import Release
from bowlcore.motion.units import FOOT_M, KMH_PER_MPH

SIZE = (11.5, 4.6)
_LEFTS, _BOTTOMS, _BOX = (0.05, 0.385, 0.72), (0.60, 0.115), (0.255, 0.31)
_PLACES = [(left, bottom, *_BOX) for bottom in _BOTTOMS for left in _LEFTS]
_LOOKS = ({"color": style.BLUE, "marker": "o"}, {"color": style.VERMILLION, "marker": "s", "mfc": "white"})
_DASHES = ("-", (0, (4, 2)))


def one_number_panel(**start):
    """The one number of a release as a live panel; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
            Number("axis_rotation_deg", "Axis rotation", "degrees", 0, 90, 1, at("axis_rotation_deg", 45)),
            Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
        ]
        folds = {
            "Two lanes and the line": [
                Choice("first", "First lane", pattern_options(), at("first", "house")),
                Choice("second", "Second lane", pattern_options(), at("second", "dried_out")),
                Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
                target_number(at),
            ]
        }
    return Panel("one_number_panel", draw, main, folds, lines=4)


def draw(first, second, metric=False, hand="right", **v) -> Drawn:
    """Where each lane reaches the number, and five curves against it; sentence and table."""
    told = one_number.answer(Release(**v, hand=hand), (first, second), metric=metric)
    factor, fast = (KMH_PER_MPH, "km/h") if metric else (1.0, "mph")
    f = told.family
    curves = (
        (f"ball speed, {fast}", f.speed_mph * factor),
        ("turned so far, degrees", f.turned_deg),
        ("axis rotation left, degrees", f.rotation_deg),
        ("axis tilt, degrees", f.tilt_deg),
        ("rev rate, rpm", f.rev_rate_rpm),
    )
    moving = _moving()
    moving.show(told, [values for _, values in curves])
    background = _background(
        tuple(title for title, _ in curves), tuple(lane.title for lane in told.lanes), metric
    )
    alt = (
        f"{told.sentence} Picture: the share of friction's job done, 0 to 1, against the distance from the foul line on two "
        "lanes; and ball speed, turn, axis rotation, axis tilt and rev rate against that number, one curve "
        "each, with marks of both lanes on it."
    )
    return Drawn(svg([background, layer(moving.figure)], *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=16)
def _background(titles, lanes, metric):
    """All that stands still: frames, the axes across, the lanes' names."""
    figure = new_figure(*SIZE)
    with rc_in_use():
        for place, title in zip(_PLACES, ("friction's job done, along two lanes", *titles), strict=True):
            axes = new_axes(figure, *place)
            _frame(axes, place)
            axes.grid(color="#e4e4e4", linewidth=0.6)
            axes.set_axisbelow(True)
            axes.set_title(title, loc="left", fontsize=style.TEXT_PT, fontweight="bold")
            if place != _PLACES[0]:
                axes.set_yticks([])
                axes.set_xlabel("friction's job done, 0 to 1" if place[1] == _BOTTOMS[-1] else "")
        axes = figure.axes[0]
        for name, look, dash in zip(lanes, _LOOKS, _DASHES, strict=False):
            axes.plot([], [], linestyle=dash, markersize=4.5, label=name, **look)
        ticks = [0, 3, 6, 9, 12, 15, 18] if metric else [0, 10, 20, 30, 40, 50, 60]
        axes.set_xticks([t / FOOT_M for t in ticks] if metric else ticks, [str(t) for t in ticks])
        axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'}")
        axes.legend(loc="upper left", frameon=False, fontsize=style.TEXT_PT - 0.5)
    return layer(figure)


def _frame(axes, place):
    where = place == _PLACES[0]
    axes.set_xlim((0, 60) if where else (-0.02, 1.02))
    axes.set_ylim(0, 1.04)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The curves with their axes upwards, and the marks of both lanes on them."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.where = new_axes(self.figure, *_PLACES[0], bare=True)
        self.curves = [moving_axis(new_axes(self.figure, *place), "y") for place in _PLACES[1:]]
        for axes, place in zip((self.where, *self.curves), _PLACES, strict=True):
            _frame(axes, place)
        self.lanes = [
            self.where.plot([], [], color=look["color"], linestyle=dash, linewidth=1.8)[0]
            for look, dash in zip(_LOOKS, _DASHES, strict=True)
        ]
        self.lines = [axes.plot([], [], color=style.BLACK, linewidth=1.6)[0] for axes in self.curves]
        self.marks = [
            [axes.plot([], [], linewidth=0, markersize=4.5, clip_on=False, **look)[0] for look in _LOOKS]
            for axes in (self.where, *self.curves)
        ]

    def show(self, told, curves):
        """Move everything to an answer; `curves`: values over the shares, one for each axes."""
        share = told.family.share
        for line in (*self.lanes, *(mark for marks in self.marks for mark in marks)):
            line.set_data([], [])
        for i, lane in enumerate(told.lanes):
            self.lanes[i].set_data(lane.path.distance_ft, lane.share)
            feet = np.array(one_number.MARKS_FT)
            there = np.array([one_number.share_at(lane, at) for at in feet])
            feet, there = feet[np.isfinite(there)], there[np.isfinite(there)]
            self.marks[0][i].set_data(feet, there)
            for marks, values in zip(self.marks[1:], curves, strict=True):
                marks[i].set_data(there, np.interp(there, share, values))
        for axes, line, values in zip(self.curves, self.lines, curves, strict=True):
            line.set_data(share, values)
            low, high = min(values.min(), 0.0), max(values.max(), 1.0)
            axes.set_ylim(low, high + 0.08 * (high - low))
