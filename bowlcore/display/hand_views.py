"""The ball from behind and from above: outline, axis with its tape, track ring, a second strip of tape."""

import numpy as np

from bowlcore.display import style
from bowlcore.display.picture import in_lines, new_axes

_REACH = 1.62  # radii shown either way
_CLOCK = ((12, "12"), (1.5, ""), (3, "3"), (4.5, ""), (6, "6"), (7.5, ""), (9, "9"), (10.5, ""))


def frame(axes):
    """Same scale both ways, room for words round the ball."""
    axes.set_xlim(-_REACH, _REACH)
    axes.set_ylim(-_REACH, _REACH)
    axes.set_aspect("equal")


def empty_ball(figure, place, title, clock=False, note=""):
    """The background: the ball's outline; seen from above also the hours of a clock round it."""
    axes = new_axes(figure, *place, bare=True)
    frame(axes)
    around = np.linspace(0.0, 2.0 * np.pi, 181)
    axes.fill(np.cos(around), np.sin(around), color="#eef1f6", zorder=0)
    axes.plot(np.cos(around), np.sin(around), color=style.GREY, linewidth=1.2)
    axes.set_title(title, fontsize=style.TEXT_PT + 0.5, loc="center", fontweight="bold")
    if clock:
        for hour, name in _CLOCK:
            at = np.radians(90.0 - 30.0 * hour)
            axes.plot(
                *([1.05 * f(at), 1.12 * f(at)] for f in (np.cos, np.sin)), color=style.GREY, linewidth=0.9
            )
            axes.text(1.23 * np.cos(at), 1.23 * np.sin(at), name, ha="center", va="center", color=style.GREY)
        axes.annotate("", (0, 1.6), (0, 1.32), arrowprops={"arrowstyle": "->", "color": style.GREY})
        axes.text(0.1, 1.46, "to the pins", color=style.GREY, va="center", fontsize=style.TEXT_PT - 0.5)
    else:
        axes.plot([-1.55, 1.55], [-1.0, -1.0], color="#85765e", linewidth=2.0, zorder=0)
        small = {"color": "#404040", "fontsize": style.TEXT_PT - 0.5}
        axes.text(-1.55, -1.2, "lane", **small)
        if note:
            axes.text(0, -1.4, in_lines(note, axes, 1.2), ha="center", va="top", **small)
    return axes


class BallView:
    """The moving part of one view."""

    def __init__(self, figure, place, words=True):
        axes = new_axes(figure, *place, bare=True)
        frame(axes)

        def line(**look):
            return axes.plot([], [], **look)[0]

        self.ring_far = line(color=style.BLUE, linewidth=1.0, linestyle=(0, (2, 2)))
        self.ring = line(color=style.BLUE, linewidth=2.4)
        self.axis_far = line(color=style.VERMILLION, linewidth=1.2, linestyle=(0, (2, 2)))
        self.axis = line(color=style.VERMILLION, linewidth=2.6)
        self.point = line(
            color=style.VERMILLION, marker="s", markersize=7, linewidth=0, markeredgecolor="white"
        )
        self.trail = line(color=style.BLACK, marker=".", markersize=4, linewidth=0)
        self.trail_far = line(
            color=style.GREY, marker="o", markersize=3.2, linewidth=0, markerfacecolor="none"
        )
        self.tape = line(color=style.BLACK, marker="D", markersize=7, linewidth=0, markeredgecolor="white")
        self.tape_far = line(color=style.BLACK, marker="D", markersize=6, linewidth=0, markerfacecolor="none")
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.6}
        self.names = {
            name: axes.text(
                0, 0, "", color=color, ha="center", va="center", fontsize=style.TEXT_PT - 0.5, bbox=halo
            )
            for name, color in (("axis", style.VERMILLION), ("ring", style.BLUE), ("tape", style.BLACK))
            if words
        }

    def show(self, seen):
        """Move everything to a `Seen`."""
        far, near = seen.axis
        stub = near[:2] * 1.28  # the axis sticks out of the ball
        front = near[2] >= 0
        self.axis.set_data([near[0], stub[0]], [near[1], stub[1]])
        self.axis_far.set_data([-stub[0], near[0]], [-stub[1], near[1]])
        self.point.set_data([near[0]], [near[1]])
        self.point.set_markerfacecolor(style.VERMILLION if front else "white")
        self.point.set_markeredgecolor("white" if front else style.VERMILLION)
        _split(self.ring, self.ring_far, seen.ring, dots=False)
        _split(self.trail, self.trail_far, seen.trail[1:], dots=True)
        _split(self.tape, self.tape_far, seen.tape, dots=True)
        if self.names:
            self._name("axis", stub * 1.05, "axis, with tape")
            ring = seen.ring[np.argmax(seen.ring[:, 2])]
            self._name("ring", ring[:2] * 0.82, "track ring")

    def _name(self, name, place, text):
        away = np.hypot(*place)
        place = place if away > 0.15 else np.array([0.0, 0.2])
        self.names[name].set_text(text)
        self.names[name].set_position(
            (np.clip(place[0], -1.15, 1.15), place[1] + (0.14 if place[1] >= 0 else -0.14))
        )


def _split(near, far, points, dots):
    """Near side and far side of some points, as two artists."""
    for artist, keep in ((near, points[:, 2] >= -1e-9), (far, points[:, 2] < -1e-9)):
        if dots:
            artist.set_data(points[keep, 0], points[keep, 1])
        else:
            artist.set_data(np.where(keep, points[:, 0], np.nan), np.where(keep, points[:, 1], np.nan))
