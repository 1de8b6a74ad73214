"""The path lab: two lanes, same line and re-aimed, and the entry angle of every line to the pocket."""

from dataclasses import replace
from functools import lru_cache

import numpy as np

from bowlcore.coaching import path_lab, words
from bowlcore.coaching.own_lanes import own_names
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.lane_figure import LanePaths, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, in_lines, layer, new_axes, new_figure, svg
from bowlcore.motion.ball import load_balls
from bowlcore.motion.oil import load_pattern, pattern_names
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 4.5)
_TWO = ((0.05, 0.555, 0.60, 0.375), (0.05, 0.10, 0.60, 0.375))
_ONE = ((0.05, 0.10, 0.60, 0.80),)
_CHART = (0.715, 0.13, 0.275, 0.74)
_FEET_LIMITS, _ANGLE_LIMITS = (3, 34), (0, 10)
_NAMES_FIT = (7.5, 29.5)  # of the middle of a name within these limits


def path_lab_panel(**start):
    """The main lab as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    return Panel(
        "path_lab_panel",
        draw,
        *_controls(start),
        buttons={"Keep this shot": _keep, "Let it go": _let_go},
        lines=6,
    )


def pattern_options():
    """Titles and names of the shipped shapes, the house first, and of lanes of one's own."""
    return [*_shapes(), *((name, name) for name in own_names())]


@lru_cache(maxsize=1)
def _shapes():
    names = sorted(pattern_names(), key=lambda name: name != "house")
    return [(load_pattern(name).title.split(":")[0].lower(), name) for name in names]


def _controls(start):
    mph = ("km/h", KMH_PER_MPH, 0.2)
    balls = list(load_balls())
    with starting(start) as at:
        main = [
            Number("axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)),
            Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
            Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
        ]
        folds = {
            "Lane, ball and line": [
                Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
                Choice("ball", "Ball", balls, at("ball", "benchmark")),
                Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
                target_number(at),
                Number("house_percent", "Lane friction change", "%", -30, 30, 5, at("house_percent", 0)),
                Choice("show", "Show", list(path_lab.SHOWS), at("show", "both"), buttons=True),
            ],
            "As a hand does it": [
                Number("hand_steps", "Behind - round +", "steps", -3, 3, 1, at("hand_steps", 0)),
                Number(
                    "rotation_a_step_deg",
                    "Rotation a step",
                    "degrees",
                    0,
                    20,
                    1,
                    at("rotation_a_step_deg", 10),
                ),
                Number("tilt_a_step_deg", "Tilt a step", "degrees", 0, 10, 1, at("tilt_a_step_deg", 3)),
                Number("revs_a_step_rpm", "Revs a step", "rpm", -60, 60, 10, at("revs_a_step_rpm", -20)),
            ],
        }
    return main, folds


def _shot(v, hand):
    """The release on screen, its lane and its ball."""
    release = Release(
        v["speed_mph"], v["rev_rate_rpm"], v["axis_rotation_deg"], v["axis_tilt_deg"], v["laydown_board"],
        v["target_board"], hand=hand,
    )  # fmt: skip
    moved = path_lab.as_a_hand_does_it(
        release, v["hand_steps"], v["rotation_a_step_deg"], v["tilt_a_step_deg"], v["revs_a_step_rpm"]
    )
    return moved, path_lab.lane_of(v["pattern"], v["house_percent"]), path_lab.ball_of(v["ball"])


def _keep(panel):
    """Keep the present shot, grey and dashed, to compare with."""
    release, lane, ball = _shot(panel.values, panel.settings.hand)
    show = panel.values["show"]
    now = path_lab.answer(release, lane, ball, show=show)
    kept = now.aimed if show == "re-aimed" and now.aimed else now.same
    panel.memory["kept"] = replace(kept, name="kept")


def _let_go(panel):
    panel.memory.pop("kept", None)


def draw(metric=False, hand="right", kept=None, **v) -> Drawn:
    """Picture, sentence and table of the lab at these values."""
    release, lane, ball = _shot(v, hand)
    told = path_lab.answer(
        release, lane, ball, show=v["show"], metric=metric, kept=kept, hand_steps=v["hand_steps"]
    )
    two = v["show"] == "both"
    moving = _moving(two)
    kept_path = kept.path if kept else None
    shots = {"same line": ("Same line", told.same), "re-aimed": ("Re-aimed to the pocket", told.aimed)}
    for lane_paths, (title, shot) in zip(
        moving.lanes, shots.values() if two else [shots[v["show"]]], strict=True
    ):
        if two and shot is not told.same:
            kept_path = None  # with both lanes shown, the kept shot is one of the same line
        if shot is None:
            lane_paths.show(f"{title}: no line reaches it", None, metric, kept_path)
        else:
            where = f"{words.line(shot.release)}, {words.launch(shot.release.launch_heading_deg)}"
            lane_paths.show(f"{title}: {where}", shot.path, metric, kept_path)
    moving.chart(told, v["show"])
    layers = [
        lanes_background(SIZE, _TWO if two else _ONE, v["pattern"], metric, hand),
        _chart_background(),
        layer(moving.figure),
    ]
    alt = (
        f"{told.sentence} Picture: the lane on its side with the ball's path over the oil, distance from the foul line "
        "against board; beside it the entry angle in degrees against the laydown board for every line into the pocket."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows, told.lead)


@drawn_once(maxsize=1)
def _chart_background():
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_CHART)
    axes.set_xlim(*_FEET_LIMITS)
    axes.set_ylim(*_ANGLE_LIMITS)
    axes.set_xlabel("laydown board: feet further in →")
    axes.set_ylabel("entry angle, degrees")
    title = in_lines("Lines of this release into the pocket", axes)
    axes.set_title(title, fontsize=style.TEXT_PT, loc="left", fontweight="bold")
    axes.grid(color="#e4e4e4", linewidth=0.6)
    axes.set_axisbelow(True)
    _dots(axes)
    axes.legend(loc="upper left", frameon=False, fontsize=style.TEXT_PT - 0.5, handletextpad=0.3)
    return layer(figure)


def _dots(axes):
    """The lines by how they roll, none of them yet."""
    kinds = (
        ("slips", "still skids at the pins", {"marker": "o", "mfc": "white", "mec": style.BLACK, "ms": 5}),
        ("in time", "rolls in time", {"marker": "o", "color": style.BLACK, "ms": 5}),
        ("early", "rolls too early", {"marker": "x", "color": style.BLACK, "ms": 5}),
    )
    return {kind: axes.plot([], [], linewidth=0, label=label, **look)[0] for kind, label, look in kinds}


@drawn_once(maxsize=2)
def _moving(two):
    return _Moving(two)


class _Moving:
    """The moving layer of both lanes and the chart."""

    def __init__(self, two):
        self.figure = new_figure(*SIZE)
        colors = (style.BLACK, style.BLUE)
        self.lanes = [
            LanePaths(self.figure, place, color)
            for place, color in zip(_TWO if two else _ONE, colors, strict=False)
        ]
        self.axes = new_axes(self.figure, *_CHART, bare=True)
        self.axes.set_xlim(*_FEET_LIMITS)
        self.axes.set_ylim(*_ANGLE_LIMITS)
        self.marks = _dots(self.axes)
        self.here = self.axes.plot([], [], marker="D", ms=9, mfc="none", mec=style.BLUE, mew=2, linewidth=0)[
            0
        ]
        self.line = self.axes.plot(
            [], [], marker="s", ms=11, mfc="none", mec=style.BLACK, mew=1.4, linewidth=0
        )[0]
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        look = {"fontweight": "bold", "va": "center", "ha": "center", "bbox": halo}
        self.here_text = self.axes.text(0, 0, "re-aimed", color=style.BLUE, **look)
        self.line_text = self.axes.text(0, 0, "same line", color=style.BLACK, **look)

    def chart(self, told, show):
        feet, angle, roll = told.lines.laydown_board, told.lines.entry_angle_deg, told.lines.roll_start_ft
        slips, early = ~np.isfinite(roll), roll < words.IN_TIME_FT
        for kind, chosen in (("slips", slips), ("early", early), ("in time", ~slips & ~early)):
            self.marks[kind].set_data(feet[chosen], angle[chosen])
        same = told.same.release.laydown_board, told.same.path.entry_angle_deg
        aimed = told.aimed and (told.aimed.release.laydown_board, told.aimed.path.entry_angle_deg)
        line, here = None if show == "re-aimed" else same, None if show == "same line" else aimed
        higher = not (line and here and line[1] < here[1])  # its name stands above its mark
        self._mark(self.line, self.line_text, line, 0.8 if higher else -1.1)
        self._mark(self.here, self.here_text, here, -1.1 if higher else 0.8)

    def _mark(self, mark, name, place, above):
        """A shot of the picture among all lines, its name above or below it."""
        seen = bool(place) and bool(np.isfinite(place[1]))
        mark.set_data(*([[at] for at in place] if seen else ([], [])))
        name.set_visible(seen)
        if seen:
            name.set_position((np.clip(place[0], *_NAMES_FIT), place[1] + above))
