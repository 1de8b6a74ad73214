"""How much area do I have? One release on two lanes: three targets, the boards that hit, and what else may be off."""

from functools import lru_cache

import numpy as np

from bowlcore.coaching import area, words
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.lane_figure import X_LIMITS, Y_LIMITS, empty_lane
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.motion.ball import load_balls
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH, TARGET_FT

SIZE = (11.5, 4.5)
_LANES = ((0.05, 0.555, 0.60, 0.375), (0.05, 0.10, 0.60, 0.375))
_CHART = (0.725, 0.13, 0.262, 0.74)
_COLORS = (style.BLACK, style.BLUE)
_WIDEST = 6.0  # scatters shown either way
_NUMBERS = {"target_board": "target", "laydown_board": "laydown", "speed_mph": "speed",
            "rev_rate_rpm": "revs", "axis_rotation_deg": "rotation"}  # fmt: skip


def miss_room_panel(**start):
    """The area of one release on two lanes as a live panel; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
            Number("axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)),
            Number("missed_boards", "Target missed by", "boards", 0, 4, 0.5, at("missed_boards", 1)),
        ]
        options = pattern_options()
        fold = [
            Choice("upper", "Upper lane", options, at("upper", "house")),
            Choice("lower", "Lower lane", options, at("lower", "flat")),
            Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
            target_number(at),
            Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
            Choice("ball", "Ball", list(load_balls()), at("ball", "benchmark")),
            Choice("line", "Aim at", list(area.LINES), at("line", area.LINES[0])),
        ]
    return Panel("miss_room_panel", draw, main, {"Lanes, ball and line": fold}, lines=4)


def draw(
    missed_boards, speed_mph, rev_rate_rpm, axis_rotation_deg, upper, lower, laydown_board, target_board,
    axis_tilt_deg, ball, line, metric=False, hand="right",
) -> Drawn:  # fmt: skip
    """Both lanes with their three paths and the band that hits; the rooms; sentence and table."""
    release = Release(
        speed_mph, rev_rate_rpm, axis_rotation_deg, axis_tilt_deg, laydown_board, target_board, hand=hand
    )
    lanes = [(_titles()[name], lane_of(name)) for name in (upper, lower)]
    told = area.answer(release, lanes, ball_of(ball), missed_boards=missed_boards, line=line, metric=metric)
    moving = _moving()
    for lane, rooms, fan in zip(moving.lanes, moving.rooms, told.fans, strict=True):
        lane.show(fan, missed_boards)
        rooms.show(fan)
    layers = [
        _lanes_background(upper, lower, metric, hand),
        _chart_background(),
        layer(moving.figure),
    ]
    alt = (
        f"{told.sentence} Picture: two lanes on their sides with the paths of the target hit, missed out and missed in, "
        "distance from the foul line against board, and the boards at the target that hit the pocket as a bar; beside "
        "them the room of each number both ways, counted in an ordinary bowler's scatter."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@lru_cache(maxsize=1)
def _titles():
    return {name: title for title, name in pattern_options()}


@drawn_once(maxsize=64)
def _lanes_background(upper, lower, metric, hand):
    figure = new_figure(*SIZE)
    for place, oil in zip(_LANES, (upper, lower), strict=True):
        empty_lane(new_axes(figure, *place), oil, metric, hand, last=place == _LANES[-1])
    return layer(figure)


@drawn_once(maxsize=1)
def _chart_background():
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_CHART)
    _frame(axes)
    axes.axvspan(-2, 2, color="#ececec", linewidth=0, zorder=0)
    axes.axvline(0, color=style.GREY, linewidth=0.8)
    axes.set_yticks(range(len(_NUMBERS)), list(_NUMBERS.values()))
    axes.set_xticks([-6, -4, -2, 0, 2, 4, 6], ["6", "4", "2", "0", "2", "4", "6"])
    axes.tick_params(axis="y", length=0)
    axes.set_xlabel("times an ordinary bowler's scatter")
    axes.set_title("Room both ways, upper lane on top", fontsize=style.TEXT_PT, loc="left", fontweight="bold")
    small = {"va": "center", "fontsize": style.TEXT_PT - 0.5}
    axes.text(-_WIDEST, -1.2, "← out, slower, less", **small)
    axes.text(_WIDEST, -1.2, "in, faster, more →", ha="right", **small)
    axes.text(0, -0.65, "19 balls of 20", ha="center", color="#404040",
              bbox={"facecolor": "#ececec", "edgecolor": "none", "pad": 0.8}, **small)  # fmt: skip
    return layer(figure)


def _frame(axes):
    axes.set_xlim(-_WIDEST, _WIDEST)
    axes.set_ylim(len(_NUMBERS) - 0.4, -1.5)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: two lanes and the rooms of both."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lanes = [
            _FanPicture(self.figure, place, color) for place, color in zip(_LANES, _COLORS, strict=True)
        ]
        axes = new_axes(self.figure, *_CHART, bare=True)
        _frame(axes)
        self.rooms = [
            _RoomBars(axes, lift, color) for lift, color in zip((-0.17, 0.17), _COLORS, strict=True)
        ]


class _FanPicture:
    """The moving part of one lane: heading, three paths, the bar of targets that hit, words at the pins."""

    def __init__(self, figure, place, color):
        self.axes = new_axes(figure, *place, bare=True)
        self.axes.set_xlim(*X_LIMITS)
        self.axes.set_ylim(*Y_LIMITS)

        def line(**look):
            return self.axes.plot([], [], color=color, **look)[0]

        self.aimed = line(linewidth=2.4)
        self.missed = [
            line(linewidth=1.4, linestyle=(0, (5, 2))),
            line(linewidth=1.4, linestyle=(0, (1.5, 1.5))),
        ]
        self.bar = self.axes.plot([], [], color=style.GREEN, linewidth=6, solid_capstyle="butt", zorder=3)[0]
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        self.bar_text = self.axes.text(0, 0, "", color=style.GREEN, fontweight="bold", va="bottom", bbox=halo)
        self.title = self.axes.text(0, 44.4, "", fontweight="bold", color=color, va="bottom")
        self.ends = [
            self.axes.text(61.0, board, "", va="center", color=color, fontweight=weight)
            for board, weight in ((11.0, "normal"), (6.5, "bold"), (2.0, "normal"))
        ]

    def show(self, fan, missed_boards):
        """Move everything to a fan; without a line the lane is empty."""
        for artist in (self.aimed, *self.missed, self.bar):
            artist.set_data([], [])
        for text in (self.bar_text, *self.ends):
            text.set_text("")
        name = fan.name[0].upper() + fan.name[1:]
        if fan.release is None:
            self.title.set_text(f"{name}: no target hits")
            return
        lines = "   (dashes: missed out, dots: missed in)" if missed_boards else ""
        self.title.set_text(f"{name}: {words.line(fan.release)}{lines}")
        self.aimed.set_data(fan.room.path.distance_ft, fan.room.path.board)
        self.ends[1].set_text(_end("aimed", fan.room.path))
        if missed_boards:
            for artist, text, path, way in zip(
                self.missed,
                (self.ends[2], self.ends[0]),
                (fan.missed_out, fan.missed_in),
                ("out", "in"),
                strict=True,
            ):
                if path is not None:
                    artist.set_data(path.distance_ft, path.board)
                    text.set_text(_end(way, path))
        room = fan.room.target_board
        if fan.room.hits:
            target = fan.release.target_board
            low, high = target - room.down, target + room.up
            self.bar.set_data([TARGET_FT, TARGET_FT], [low, high])
            self.bar_text.set_text(f"over {words.halves(low)} to {words.halves(high)} hits")
            self.bar_text.set_position((TARGET_FT - 0.8, min(high + 1.0, 35.0)))


def _end(name, path):
    return (
        f"{name} gutter" if path.gutter_ft == path.gutter_ft else f"{name} {words.halves(path.entry_board)}"
    )


class _RoomBars:
    """Bars of one lane: each number's room both ways in an ordinary scatter; an arrow where it goes on."""

    def __init__(self, axes, lift, color):
        self.at = np.arange(len(_NUMBERS)) + lift
        self.bars = [axes.plot([], [], color=color, linewidth=5, solid_capstyle="butt")[0] for _ in self.at]
        self.more = [
            axes.plot([], [], color=color, linewidth=0, marker=marker, markersize=7)[0]
            for marker in ("<", ">")
        ]

    def show(self, fan):
        beyond = ([], [])
        for name, y, bar in zip(_NUMBERS, self.at, self.bars, strict=True):
            if fan.release is None or not fan.room.hits:
                bar.set_data([], [])
                continue
            room, scatter = getattr(fan.room, name), getattr(area.ORDINARY, name)
            down, up = room.down / scatter, room.up / scatter
            bar.set_data([-min(down, _WIDEST), min(up, _WIDEST)], [y, y])
            for places, size in zip(beyond, (down, up), strict=True):
                if size > _WIDEST:
                    places.append(y)
        for artist, places, side in zip(self.more, beyond, (-1, 1), strict=True):
            artist.set_data([side * (_WIDEST - 0.15)] * len(places), places)
