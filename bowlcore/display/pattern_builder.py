"""Build an oil pattern from what a centre tells, see its oil along and across, and throw a release on it."""

import numpy as np

from bowlcore.coaching import pattern_builder, words
from bowlcore.coaching.pattern_builder import OUTSIDE_BOARD, TRACK_BOARD, units_of_oil
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting, target_number
from bowlcore.display.lane_figure import X_LIMITS, LanePaths, distance_axis, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, emptied, layer, new_axes, new_figure, svg
from bowlcore.motion.oil import RATIO_FT
from bowlcore.motion.release import Release
from bowlcore.motion.units import FOOT_M, KMH_PER_MPH, MIDDLE_BOARD

SIZE = (11.5, 4.8)
_LANE, _ALONG, _ACROSS = (0.05, 0.48, 0.66, 0.45), (0.05, 0.105, 0.66, 0.29), (0.76, 0.105, 0.23, 0.76)
_TOPS = (8, 15, 30, 45, 60, 90, 120, 200, 300)  # units; the first that is high enough
_BOARDS = ((MIDDLE_BOARD, "middle", style.BLUE, "-"), (TRACK_BOARD, "track", style.BLACK, (0, (4, 2))),
           (OUTSIDE_BOARD, "outside", style.VERMILLION, (0, (1, 1))))  # fmt: skip
_BUILT = ("length_ft", "volume_ml", "side_ratio", "taper_percent", "end_ramp_ft", "line")


def pattern_builder_panel(**start):
    """A pattern and a release on it as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    feet, mph = ("m", FOOT_M, 0.1), ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("volume_ml", "Volume", "mL", 3, 60, 1, at("volume_ml", 24)),
            Number("length_ft", "Length", "ft", 25, 55, 1, at("length_ft", 40), feet),
            Number("side_ratio", "Side ratio", "to 1", 1, 20, 0.5, at("side_ratio", 16)),
            Number("taper_percent", "Left at the far end", "%", 35, 100, 1, at("taper_percent", 66)),
        ]
        folds = {
            "End of the oil, and the ball": [
                Number("end_ramp_ft", "Oil runs out over", "ft", 1, 30, 1, at("end_ramp_ft", 17), feet),
                Choice(
                    "line", "Throw it", pattern_builder.LINES, at("line", pattern_builder.SAME), buttons=True
                ),
                Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), metric=mph),
                Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
                Number(
                    "axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)
                ),
                Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
                Number("laydown_board", "Laydown", "board", 1, 39, 0.5, at("laydown_board", 17)),
                target_number(at),
            ]
        }
    return Panel("pattern_builder_panel", draw, main, folds, lines=4)


def draw(metric=False, hand="right", **v) -> Drawn:
    """The built oil with the path, the oil along and across the lane; sentence and table."""
    built = {name: v.pop(name) for name in _BUILT}
    told = pattern_builder.answer(Release(**v, hand=hand), **built, metric=metric)
    moving = _moving()
    moving.show(told, metric)
    layers = [
        lanes_background(SIZE, (_LANE,), told.pattern, metric, hand, labelled=False),
        *_oil_layers(told.pattern, metric, hand),
        layer(moving.figure),
    ]
    alt = (
        f"{told.sentence} Picture: the lane on its side with the built oil and the ball's path, distance from the foul line "
        "against board; beneath, units of oil along three boards; beside, units of oil across the boards near the foul line."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


def _oil_layers(pattern, metric, hand):
    """Oil along three boards and across the lane, and the axes for it."""
    feet, boards = np.linspace(0, 60, 241), np.linspace(0.5, 39.5, 157)
    along = [units_of_oil(pattern, board, feet) for board, *_ in _BOARDS]
    across = units_of_oil(pattern, boards, RATIO_FT)
    top = next(limit for limit in _TOPS if limit > 1.05 * max(across.max(), *(oil.max() for oil in along)))
    figure, (first, second) = _curves()
    for axes in (first, second):
        emptied(axes).set_ylim(0, top)
    for (_, _, color, dash), oil in zip(_BOARDS, along, strict=True):
        first.plot(feet, oil, color=color, linestyle=dash, linewidth=1.8)
    second.fill_between(boards, across, color=style.OIL, linewidth=0)
    second.plot(boards, across, color=style.BLUE, linewidth=1.6)
    return [layer(figure), _oil_axes(top, metric, hand)]


@drawn_once(maxsize=1)
def _curves():
    """The figure of the curves, with bare axes for those along and for the one across."""
    figure = new_figure(*SIZE)
    along, across = (new_axes(figure, *place, bare=True) for place in (_ALONG, _ACROSS))
    along.set_xlim(*X_LIMITS)
    across.set_xlim(0.5, 39.5)
    return figure, (along, across)


@drawn_once(maxsize=16)
def _oil_axes(top, metric, hand):
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_ALONG)
    distance_axis(axes, metric)
    axes.set_ylim(0, top)
    axes.set_ylabel("oil, units")
    axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'} (width stretched)", x=0.44)
    axes.set_title("Oil along three boards", loc="left", x=0.0145, fontsize=style.TEXT_PT, fontweight="bold")
    for board, name, color, dash in _BOARDS:
        axes.plot([], [], color=color, linestyle=dash, linewidth=1.8, label=f"board {board:.0f}, {name}")
    axes.legend(loc="upper right", frameon=False, fontsize=style.TEXT_PT - 0.5, handlelength=2.6)
    axes = new_axes(figure, *_ACROSS)
    axes.axvline(TRACK_BOARD, color=style.BLACK, linewidth=0.9, linestyle=(0, (4, 2)))
    axes.axvline(OUTSIDE_BOARD, color=style.VERMILLION, linewidth=0.9, linestyle=(0, (1, 1)))
    axes.set_xlim(0.5, 39.5)
    axes.set_ylim(0, top)
    axes.set_xticks([1, 5, 10, 20, 30, 39])
    axes.set_xlabel(f"board from the {hand}")
    axes.set_title(f"Oil across, units, at {words.distance(RATIO_FT, metric)}", loc="left", fontsize=style.TEXT_PT,
                   fontweight="bold")  # fmt: skip
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: the path, the end of the oil, and the board that the rule of 31 gives there."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lane = LanePaths(self.figure, _LANE, style.BLACK)
        along = new_axes(self.figure, *_ALONG, bare=True)
        along.set_xlim(*X_LIMITS)
        along.set_ylim(0, 1)
        axes = self.lane.axes
        look = {"color": style.GREY, "linewidth": 1.0, "linestyle": ":"}
        self.ends = [(axes.plot([], [], **look)[0], (0.5, 39.5)), (along.plot([], [], **look)[0], (0, 1))]
        self.rule = axes.plot(
            [], [], marker="D", ms=7, mfc="white", mec=style.VERMILLION, mew=1.6, linewidth=0
        )[0]
        self.here = axes.plot([], [], marker="o", ms=5, color=style.VERMILLION, linewidth=0)[0]
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        self.said = axes.text(0, 36.5, "", color=style.VERMILLION, ha="right", va="center", bbox=halo)

    def show(self, told, metric):
        """Move everything to an answer."""
        r, end = told.release, told.pattern.length_ft
        self.lane.show(
            f"Built: {words.distance(end, metric)}, {told.pattern.volume_ml:.0f} mL, "
            f"{pattern_builder.ratio_words(told.pattern.side_ratio)}.  Laid down on {words.halves(r.laydown_board)}, over "
            f"{words.halves(r.target_board)}",
            told.path,
            metric,
        )
        for line, (low, high) in self.ends:
            line.set_data([end, end], [low, high])
        rule = told.rule_board >= 0.5
        self.rule.set_data(*([end], [told.rule_board]) if rule else ([], []))
        self.here.set_data([end], [told.exit_board])
        self.said.set_text("dot: this ball, diamond: rule of 31" if rule else "")
        self.said.set_position((end - 0.7, 36.5))
