"""The lane on its side: foul line left, pins right, own gutter below. Width is stretched.

A background (oil, edges, arrows, axes) drawn once for each lane, and the moving layer: path, landmarks
and words, whose artists are kept and moved.
"""

import numpy as np

from bowlcore.coaching import telling, words
from bowlcore.coaching.feet import mark_distance_ft
from bowlcore.coaching.path_lab import lane_of
from bowlcore.display import style
from bowlcore.display.picture import drawn_once, in_lines, layer, new_axes, new_figure
from bowlcore.motion.oil import OilPattern
from bowlcore.motion.units import FOOT_M

X_LIMITS, Y_LIMITS = (-1.0, 69.0), (-3.0, 43.0)
_ARROWS = [(board, float(mark_distance_ft(board))) for board in range(5, 40, 5)]


def _frame(axes):
    axes.set_xlim(*X_LIMITS)
    axes.set_ylim(*Y_LIMITS)


def lanes_background(size, places, oil, metric, hand, labelled=True):
    """SVG of empty lanes: `places` are axes rectangles in a figure of `size` inches.

    `oil` is the name of a shipped pattern or of an own lane, an OilPattern, or the distance [ft] where a zone of
    full oil ends. Not `labelled`: a chart beneath carries the distance for both.
    """
    return _oil_layer(size, places, oil, hand) + _lane_layer(size, places, metric, hand, labelled)


@drawn_once(maxsize=64)
def _oil_layer(size, places, oil, hand):
    figure = new_figure(*size)
    for place in places:
        axes = new_axes(figure, *place, bare=True)
        paint_oil(axes, oil, hand)
        _frame(axes)
        axes.images[0].set_clip_on(False)  # it ends at the lane's edges anyway; no second clip of one name
    return layer(figure)


@drawn_once(maxsize=32)
def _lane_layer(size, places, metric, hand, labelled):
    figure = new_figure(*size)
    for place in places:
        bare_lane(new_axes(figure, *place), metric, hand, last=labelled and place == places[-1])
    return layer(figure)


def paint_oil(axes, oil, hand):
    """Oil as one quiet hue, darker where there is more; boards from the bowler's own side."""
    from matplotlib.colors import LinearSegmentedColormap

    boards, feet = np.linspace(0.5, 39.5, 79), np.linspace(0.0, 60.0, 121)
    pattern = lane_of(oil).pattern if isinstance(oil, str) else oil
    if isinstance(pattern, OilPattern):
        read = boards if hand == "right" else 40.0 - boards
        shade = 1.0 - np.exp(-pattern.oil_um(read[:, None], feet[None, :]) / 0.8)
    else:
        shade = np.broadcast_to(feet < oil, (79, 121)).astype(float)
    quiet = LinearSegmentedColormap.from_list("oil", [style.LANE, style.OIL])
    axes.imshow(
        shade, extent=(0, 60, 0.5, 39.5), origin="lower", aspect="auto", cmap=quiet,
        vmin=0, vmax=1, interpolation="none", zorder=0,
    )  # fmt: skip


def distance_axis(axes, metric, labels=True):
    """The distance from the foul line beneath a lane or a chart that shares its axis."""
    ticks = [0, 3, 6, 9, 12, 15, 18] if metric else [0, 10, 20, 30, 40, 50, 60]
    axes.set_xlim(*X_LIMITS)
    axes.set_xticks(
        [t / FOOT_M for t in ticks] if metric else ticks, [str(t) for t in ticks] if labels else []
    )
    axes.spines["bottom"].set_bounds(0, 60)


def empty_lane(axes, oil, metric, hand, last):
    """A lane with its oil, in one figure."""
    paint_oil(axes, oil, hand)
    bare_lane(axes, metric, hand, last)


def bare_lane(axes, metric, hand, last):
    """All of a lane but its oil."""
    _frame(axes)
    for low, high in ((-2.6, 0.5), (39.5, 42.6)):
        axes.fill_between([0, 62.9], low, high, color=style.GUTTER, linewidth=0, zorder=0)
    axes.plot([0, 0], [0.5, 39.5], color=style.BLACK, linewidth=1.6)
    axes.plot([0, 62.9, np.nan, 0, 62.9], [0.5, 0.5, np.nan, 39.5, 39.5], color=style.GREY, linewidth=0.8)
    for board, at in _ARROWS:
        axes.plot(
            [at - 0.7, at, at - 0.7], [board - 0.55, board, board + 0.55], color=style.GREY, linewidth=0.9
        )
    axes.plot([60, 60], [words.POCKET_BOARD - words.POCKET_REACH, words.POCKET_BOARD + words.POCKET_REACH],
              color=style.GREEN, linewidth=4, solid_capstyle="butt", zorder=2)  # fmt: skip
    for board, name, color in ((22.5, "head pin", style.GREY), (16.5, "pocket", style.GREEN)):
        axes.text(60.8, board, name, color=color, fontsize=style.TEXT_PT - 1, va="center")
    axes.plot([60], [20], marker="o", markersize=4.2, color="white", markeredgecolor=style.BLACK, zorder=2)
    axes.text(0.4, -1.1, "own gutter", color="#404040", fontsize=style.TEXT_PT - 1.5, va="center")
    side = "right" if hand == "right" else "left"
    axes.set_ylabel(f"board from the {side}")
    axes.set_yticks([1, 10, 20, 30, 39])
    distance_axis(axes, metric, labels=last)
    axes.spines["left"].set_bounds(1, 39)
    if last:
        axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'} (width stretched)", x=0.44)


class LanePaths:
    """The moving part of one lane: a heading, a kept path, the path and its landmarks in words."""

    def __init__(self, figure, place, color):
        self.axes = new_axes(figure, *place, bare=True)
        _frame(self.axes)

        def line(**look):
            return self.axes.plot([], [], solid_capstyle="round", **look)[0]

        self.kept = line(color=style.GREY, linewidth=1.4, linestyle=(0, (4, 3)))
        self.skid = line(color=color, linewidth=1.3)
        self.hook = line(color=color, linewidth=3.2)
        self.roll = line(color=color, linewidth=2.2, linestyle=(0, (1, 1.2)))
        self.dots = line(color=color, linewidth=0, marker="o", markersize=4.5, markeredgecolor="white")
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        self.title = self.axes.text(0, 44.4, "", fontweight="bold", color=color, va="bottom")
        self.labels = {
            name: self.axes.text(0, 0, "", ha=ha, va=va, bbox=halo, fontsize=style.TEXT_PT)
            for name, ha, va in (
                ("hook", "right", "bottom"),
                ("break", "center", "top"),
                ("roll", "right", "bottom"),
                ("gutter", "left", "bottom"),
            )
        }
        self.entry = self.axes.text(61.0, 7.5, "", va="center", fontweight="bold", color=color)

    def show(self, title, path, metric, kept=None):
        """Move everything to a path; None empties the lane."""
        self.title.set_text(in_lines(title + ("   (dashes: kept)" if kept is not None else ""), self.axes))
        for artist in (self.kept, self.skid, self.hook, self.roll, self.dots):
            artist.set_data([], [])
        for label in (*self.labels.values(), self.entry):
            label.set_text("")
        if kept is not None:
            self.kept.set_data(kept.distance_ft, kept.board)
        if path is None:
            return
        x, board = path.distance_ft, path.board
        hook, roll = (at if at == at else np.inf for at in (path.hook_start_ft, path.roll_start_ft))
        for artist, low, high in ((self.skid, 0, hook), (self.hook, hook, roll), (self.roll, roll, 60.0)):
            artist.set_data(*_piece(x, board, low, min(high, 60.0)))
        marks = []
        if hook < np.inf:
            marks.append((hook, np.interp(hook, x, board)))
            self._say(
                "hook",
                *marks[-1],
                2.5,
                f"{telling.first_sign(path)} {words.distance(hook, metric)}",
                shift=-0.5,
            )
        if telling.has_breakpoint(path):
            marks.append((path.breakpoint_ft, path.breakpoint_board))
            text = f"breakpoint {words.board(path.breakpoint_board)}, {words.distance(path.breakpoint_ft, metric)}"
            if path.breakpoint_board > 6:
                self._say("break", *marks[-1], -2.2, text)
            else:  # no room below it, nor over the words beside the pins
                self.labels["break"].set_text(text)
                self.labels["break"].set_position((min(path.breakpoint_ft + 1.0, 51.0), 18.5))
        if roll < np.inf:
            marks.append((roll, np.interp(roll, x, board)))
            self._say("roll", *marks[-1], 4.0, f"rolls from {words.distance(roll, metric)}", shift=0.5)
        if path.gutter_ft == path.gutter_ft:
            low = telling.gutter(path) == "gutter"
            marks.append((path.gutter_ft, 0.5 if low else 39.5))
            text = f"{telling.gutter(path)} at {words.distance(path.gutter_ft, metric)}"
            self._say("gutter", *marks[-1], 2.5 if low else -6.0, text, shift=1.0)
        else:
            self.entry.set_text(f"{words.board(path.entry_board)}\n{words.halves(path.entry_angle_deg)}°")
        self.dots.set_data([m[0] for m in marks], [m[1] for m in marks])

    def _say(self, name, x, board, lift, text, shift=0.0):
        label = self.labels[name]
        label.set_text(text)
        if name == "hook":  # near the foul line there is no room to its left
            label.set_horizontalalignment("left" if x < 15 else "right")
        label.set_position((min(max(x + shift, 1.0), 59.0), min(max(board + lift, 2.0), 37.0)))


def _piece(x, y, low, high):
    """The part of a line between two distances."""
    if not high > low:
        return [], []
    inside = (x > low) & (x < high)
    ends = np.interp([low, high], x, y)
    return np.r_[low, x[inside], high], np.r_[ends[0], y[inside], ends[1]]
