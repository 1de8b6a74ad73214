"""One release on five patterns: five paths, five ways of turning, one final direction."""

import numpy as np

from bowlcore.coaching import five_patterns, words
from bowlcore.coaching.five_patterns import PATTERNS
from bowlcore.display import style
from bowlcore.display.controls import Number, starting, target_number
from bowlcore.display.lane_figure import X_LIMITS, Y_LIMITS, distance_axis, lanes_background, paint_oil
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 5.2)
_LANE, _TURN = (0.05, 0.49, 0.66, 0.46), (0.05, 0.10, 0.66, 0.32)
_SMALL = [(0.755, 0.815 - 0.186 * i, 0.235, 0.125) for i in range(len(PATTERNS))]
_LOOKS = (
    {"color": style.BLUE, "linestyle": (0, (1, 1)), "linewidth": 2.2},
    {"color": style.VERMILLION, "linestyle": (0, (6, 2)), "linewidth": 1.8},
    {"color": style.BLACK, "linestyle": "-", "linewidth": 2.2},
    {"color": style.GREEN, "linestyle": (0, (6, 1.5, 1, 1.5)), "linewidth": 1.8},
    {"color": style.GREY, "linestyle": (0, (3, 1.5)), "linewidth": 2.2},
)
_RANGES_DEG = ((-4, 8), (-10, 16), (-30, 30))  # the first that holds all directions
_NAMES_FT, _APART = 66.0, 3.6  # where the names at the pins stand, and boards between two of them


def five_patterns_panel(**start):
    """One release on five shapes as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 16), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
            Number("axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)),
            target_number(at),
        ]
        folds = {
            "Tilt and laydown": [
                Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
                Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
            ]
        }
    return Panel("five_patterns_panel", draw, main, folds, lines=4)


def draw(metric=False, hand="right", **v) -> Drawn:
    """Five paths, their directions beneath, five small lanes beside; sentence and table."""
    told = five_patterns.answer(Release(**v, hand=hand), metric=metric)
    moving = _moving()
    moving.show(told)
    layers = [
        lanes_background(SIZE, (_LANE,), 0, metric, hand, labelled=False),
        _background(metric, hand, moving.directions),
        layer(moving.figure),
    ]
    alt = (
        f"{told.sentence} Picture: five paths on one lane, distance from the foul line against board; beneath, on the same "
        "distance axis, the direction of each in degrees, and the one direction they all come to; beside, each shape's oil with "
        "its path."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=12)
def _background(metric, hand, directions):
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_TURN)
    distance_axis(axes, metric)
    axes.set_ylim(*directions)
    axes.axhline(0, color=style.GREY, linewidth=0.8)
    axes.set_ylabel("direction, degrees")
    axes.set_yticks(
        [t for t in range(-40, 41, 4 if directions[1] < 10 else 10) if directions[0] <= t <= directions[1]]
    )
    axes.yaxis.set_major_formatter(lambda value, _: f"{abs(value):.0f}")
    axes.text(0.6, directions[1], "in", va="top", color=style.GREY)
    axes.text(0.6, directions[0], "out", va="bottom", color=style.GREY)
    axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'} (width stretched)", x=0.44)
    for name, place in zip(PATTERNS, _SMALL, strict=True):
        small = new_axes(figure, *place)
        small.set_xlim(0, 60)
        small.set_ylim(0.5, 39.5)
        paint_oil(small, name, hand)
        small.set_xticks([])
        small.set_yticks([])
        for side in small.spines.values():
            side.set_visible(True)
            side.set_color(style.GREY)
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: five paths, five directions, five small paths, and labels that keep apart."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        lane = new_axes(self.figure, *_LANE, bare=True)
        lane.set_xlim(*X_LIMITS)
        lane.set_ylim(*Y_LIMITS)
        lane.text(
            0, 44.4, "One release, five shapes: it bends in different places", fontweight="bold", va="bottom"
        )
        self.turn = new_axes(self.figure, *_TURN, bare=True)
        self.turn.set_xlim(*X_LIMITS)
        self.turn.text(0, 1.03, "... and turns until it runs in one direction", fontweight="bold",
                       transform=self.turn.get_xaxis_transform(), va="bottom")  # fmt: skip
        self.final = self.turn.plot([], [], color=style.BLACK, linewidth=0.9, linestyle=":")[0]
        self.final_text = self.turn.text(60.6, 0, "", va="center", fontweight="bold")
        self.paths = [lane.plot([], [], **look)[0] for look in _LOOKS]
        self.dots = [
            lane.plot(
                [], [], color=look["color"], marker="o", markersize=4.5, markeredgecolor="white", linewidth=0
            )[0]
            for look in _LOOKS
        ]
        self.turns = [self.turn.plot([], [], **look)[0] for look in _LOOKS]
        self.ends = [
            lane.text(_NAMES_FT, 0, "", color=look["color"], va="center", fontsize=style.TEXT_PT)
            for look in _LOOKS
        ]
        self.small, self.titles = [], []
        for place, look in zip(_SMALL, _LOOKS, strict=True):
            axes = new_axes(self.figure, *place, bare=True)
            axes.set_xlim(0, 60)
            axes.set_ylim(0.5, 39.5)
            self.small.append(axes.plot([], [], **look)[0])
            self.titles.append(axes.text(0, 41.5, "", va="bottom", color=look["color"], fontweight="bold"))

    def show(self, told):
        """Move everything to an answer."""
        paths = [shot.path for shot in told.shots]
        every = np.concatenate([path.heading_deg for path in paths] + [[told.final_deg]])
        low, high = np.nanmin(every), np.nanmax(every)
        self.directions = next((r for r in _RANGES_DEG if r[0] <= low and high <= r[1]), _RANGES_DEG[-1])
        self.turn.set_ylim(*self.directions)
        self.final.set_data([0, 60], [told.final_deg] * 2)
        self.final_text.set_text(
            f"final\n{words.halves(abs(told.final_deg))}° {'in' if told.final_deg > 0 else 'out'}"
        )
        self.final_text.set_position((60.6, told.final_deg))
        for i, (shot, path) in enumerate(zip(told.shots, paths, strict=True)):
            self.paths[i].set_data(path.distance_ft, path.board)
            self.small[i].set_data(path.distance_ft, path.board)
            self.turns[i].set_data(path.distance_ft, path.heading_deg)
            turned = 0 < path.breakpoint_ft < 60
            self.dots[i].set_data(*([path.breakpoint_ft], [path.breakpoint_board]) if turned else ([], []))
            gone = path.gutter_ft == path.gutter_ft
            end = (
                "gutter"
                if gone
                else f"{words.board(path.entry_board)}, {words.halves(path.entry_angle_deg)}°"
            )
            self.titles[i].set_text(f"{shot.title}: {end}")
        self._label(
            [
                ("" if p.gutter_ft == p.gutter_ft else s.title, p.entry_board)
                for s, p in zip(told.shots, paths, strict=True)
            ]
        )

    def _label(self, named):
        """Names at the pins, beside their boards, moved apart where they would touch."""
        there = sorted((board, i) for i, (name, board) in enumerate(named) if name)
        at = [board for board, _ in there]
        for _ in range(60):
            for k in range(len(at) - 1):
                short = _APART - (at[k + 1] - at[k])
                if short > 0:
                    at[k], at[k + 1] = at[k] - short / 2, at[k + 1] + short / 2
        for text, (name, _) in zip(self.ends, named, strict=True):
            text.set_text(name)
        for y, (_, i) in zip(at, there, strict=True):
            self.ends[i].set_position((_NAMES_FT, y))
