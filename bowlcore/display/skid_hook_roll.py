"""A path on the lane and, on the same distance axis, its slip shrinking to nothing: why it stops turning."""

import numpy as np

from bowlcore.coaching import skid_hook_roll, words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.lane_figure import X_LIMITS, LanePaths, distance_axis, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, in_lines, layer, new_axes, new_figure, svg
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 4.8)
_LANE, _SLIP = (0.05, 0.47, 0.93, 0.46), (0.05, 0.105, 0.93, 0.285)
_TOPS_MPH = (16, 24, 32)  # the slip axis: the first that is high enough
_FILL = "#f7efe9"
_SHORT_FT = 8.0  # a shorter part has its name one line higher than its neighbours


def skid_hook_roll_panel(**start):
    """One shot and its slip as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
            Number("axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)),
            Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
        ]
        folds = {
            "Line, tilt and friction": [
                Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
                Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
                target_number(at),
                Number("house_percent", "Lane friction change", "%", -30, 30, 5, at("house_percent", 0)),
            ]
        }
    buttons = {"Keep this shot": _keep, "Let it go": lambda panel: panel.memory.pop("kept", None)}
    return Panel("skid_hook_roll_panel", draw, main, folds, buttons=buttons, lines=4)


def _told(v, metric, hand):
    release = Release(**{name: v[name] for name in v if name not in ("pattern", "house_percent")}, hand=hand)
    return skid_hook_roll.answer(release, lane_of(v["pattern"], v["house_percent"]), metric=metric)


def _keep(panel):
    """Keep the present shot, grey and dashed, to compare with."""
    panel.memory["kept"] = _told(panel.values, False, panel.settings.hand).path


def draw(metric=False, hand="right", kept=None, **v) -> Drawn:
    """The lane with the path, the slip beneath it, sentence and table."""
    told = _told(v, metric, hand)
    factor = KMH_PER_MPH if metric else 1.0
    most = np.nanmax(told.slip) / factor
    top = next((limit for limit in _TOPS_MPH if limit > 1.08 * most), _TOPS_MPH[-1])
    moving = _moving()
    moving.show(told, metric, kept, top * factor)
    layers = [
        lanes_background(SIZE, (_LANE,), v["pattern"], metric, hand, labelled=False),
        _slip_background(metric, top * factor),
        layer(moving.figure),
    ]
    alt = (
        f"{told.sentence} Picture: the lane on its side with the ball's path, distance from the foul line against board; "
        "beneath, on the same distance axis, how fast the bottom of the ball slips, with the parts skids, hooks and rolls."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=8)
def _slip_background(metric, top):
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_SLIP)
    distance_axis(axes, metric)
    axes.set_ylim(0, top)
    axes.set_ylabel(f"slip, {'km/h' if metric else 'mph'}")
    axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'} (width stretched)", x=0.44)
    title = in_lines("Slip: how fast the bottom of the ball runs over the lane", axes)
    axes.set_title(title, loc="left", x=0.0145, fontsize=style.TEXT_PT, fontweight="bold")
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: the lane's path, and beneath it the slip in the same three looks."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lane = LanePaths(self.figure, _LANE, style.BLACK)
        self.axes = new_axes(self.figure, *_SLIP, bare=True)
        self.axes.set_xlim(*X_LIMITS)
        self.fill = self.axes.fill([0, 0, 0], [0, 0, 0], color=_FILL, linewidth=0, zorder=0)[0]
        self.kept = self.axes.plot([], [], color=style.GREY, linewidth=1.4, linestyle=(0, (4, 3)))[0]
        looks = ({"linewidth": 1.3}, {"linewidth": 3.2}, {"linewidth": 2.2, "linestyle": (0, (1, 1.2))})
        self.parts = [self.axes.plot([], [], color=style.BLACK, **look)[0] for look in looks]
        self.names = [
            self.axes.text(0, 0, "", ha="center", va="bottom", color=style.VERMILLION, fontweight="bold")
            for _ in looks
        ]
        self.limits = [
            axes.plot([], [], color=style.VERMILLION, linewidth=0.9, linestyle=":")[0]
            for axes in (self.lane.axes, self.axes)
        ]
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        self.end = self.axes.text(61.0, 0, "", va="bottom", fontweight="bold")
        self.start = self.axes.text(0.6, 0, "", va="top", bbox=halo)

    def show(self, told, metric, kept, top):
        """Move everything to a shot; `top` is the end of the slip axis in the screen's unit."""
        r, path = told.release, told.path
        title = f"{words.line(r)} at the arrows, {words.launch(r.launch_heading_deg)}"
        self.lane.show(title, path, metric, kept)
        self.axes.set_ylim(0, top)
        x, slip = skid_hook_roll.slip_line(path, metric)
        self.fill.set_xy(np.c_[np.r_[0.0, x, x[-1]], np.r_[0.0, slip, 0.0]])
        self.kept.set_data(*([], []) if kept is None else skid_hook_roll.slip_line(kept, metric))
        parts = skid_hook_roll.parts(path)
        looks = {skid_hook_roll.SKIDS: 0, skid_hook_roll.ROLLS: 2}
        for line, name in zip(self.parts, self.names, strict=True):
            line.set_data([], [])
            name.set_text("")
        for what, low, high in parts:
            inside = (x > low) & (x < high)
            feet = np.r_[low, x[inside], high]
            at = looks.get(what, 1)
            self.parts[at].set_data(feet, np.interp(feet, x, slip))
            if high - low > 3.0:
                self.names[at].set_text(what)
                height = 0.18 if high - low < _SHORT_FT else 0.06
                self.names[at].set_position(((low + high) / 2, height * top))
        edges = [low for _, low, _ in parts[1:]]
        for line, (low, high) in zip(self.limits, ((-3.0, 43.0), (0.0, top)), strict=True):
            line.set_data(
                np.ravel([[edge, edge, np.nan] for edge in edges]), np.tile([low, high, np.nan], len(edges))
            )
        unit = "km/h" if metric else "mph"
        self.start.set_text(f"{words.halves(slip[0])} {unit}")
        self.start.set_position((0.6, slip[0] - 0.05 * top))
        self.end.set_text(_at_the_pins(path, slip[-1], unit))
        self.end.set_position((61.0, slip[-1] + 0.02 * top))


def _at_the_pins(path, slip, unit):
    if path.gutter_ft == path.gutter_ft:
        return ""
    return "no slip left" if path.roll_start_ft == path.roll_start_ft else f"{words.halves(slip)} {unit} left"
