"""Five curves against one number, how much of its job friction has done, and where two lanes reach it."""

import numpy as np

from bowlcore.coaching import one_number
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import layer, new_axes, new_figure, svg
from bowlcore.motion.release import Release
from bowlcore.motion.units import FOOT_M, KMH_PER_MPH

SIZE = (11.5, 4.6)
_LEFTS, _BOTTOMS, _BOX = (0.05, 0.385, 0.72), (0.60, 0.115), (0.255, 0.31)
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
                Number("target_board", "Target at 15 ft", "board", 1, 39, 0.5, at("target_board", 13)),
            ]
        }
    return Panel("one_number_panel", draw, main, folds, lines=4)


def draw(first, second, metric=False, hand="right", **v) -> Drawn:
    """Where each lane reaches the number, and five curves against it; sentence and table."""
    from matplotlib import rc_context

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
    figure = new_figure(*SIZE)
    places = [(left, bottom, *_BOX) for bottom in _BOTTOMS for left in _LEFTS]
    with rc_context(style.RC):
        _where(new_axes(figure, *places[0]), told.lanes, metric)
        for place, (title, values) in zip(places[1:], curves, strict=True):
            _curve(
                new_axes(figure, *place), title, f.share, values, told.lanes, last=place[1] == _BOTTOMS[-1]
            )
    alt = (
        f"{told.sentence} Picture: the share of friction's job done, 0 to 1, against the distance from the foul line on two "
        "lanes; and ball speed, turn, axis rotation, axis tilt and rev rate against that number, one curve "
        "each, with marks of both lanes on it."
    )
    return Drawn(svg([layer(figure)], *SIZE, alt), told.sentence, told.rows)


def _frame(axes, title):
    axes.grid(color="#e4e4e4", linewidth=0.6)
    axes.set_axisbelow(True)
    axes.set_title(title, loc="left", fontsize=style.TEXT_PT, fontweight="bold")


def _where(axes, lanes, metric):
    _frame(axes, "friction's job done, along two lanes")
    for lane, look, dash in zip(lanes, _LOOKS, _DASHES, strict=False):
        axes.plot(lane.path.distance_ft, lane.share, color=look["color"], linestyle=dash, linewidth=1.8)
        _marks(axes, lane, look, lambda feet: feet, lambda share: share)
        axes.plot([], [], linestyle=dash, markersize=4.5, label=lane.title, **look)
    axes.set_xlim(0, 60)
    axes.set_ylim(0, 1.04)
    ticks = [0, 3, 6, 9, 12, 15, 18] if metric else [0, 10, 20, 30, 40, 50, 60]
    axes.set_xticks([t / FOOT_M for t in ticks] if metric else ticks, [str(t) for t in ticks])
    axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'}")
    axes.legend(loc="upper left", frameon=False, fontsize=style.TEXT_PT - 0.5)


def _curve(axes, title, share, values, lanes, last):
    _frame(axes, title)
    axes.plot(share, values, color=style.BLACK, linewidth=1.6)
    for lane, look in zip(lanes, _LOOKS, strict=False):
        _marks(axes, lane, look, lambda feet, lane=lane: one_number.share_at(lane, feet),
               lambda at: np.interp(at, share, values))  # fmt: skip
    axes.set_xlim(-0.02, 1.02)
    low, high = min(values.min(), 0.0), max(values.max(), 1.0)
    axes.set_ylim(low, high + 0.08 * (high - low))
    axes.set_xlabel("friction's job done, 0 to 1" if last else "")


def _marks(axes, lane, look, across, up):
    """The same few places of a lane, on any of the curves."""
    for feet in one_number.MARKS_FT:
        share = one_number.share_at(lane, feet)
        if share == share:
            axes.plot([across(feet)], [up(share)], linewidth=0, markersize=4.5, clip_on=False, **look)
