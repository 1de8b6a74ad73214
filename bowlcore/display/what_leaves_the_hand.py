"""Four numbers of a hand: the ball from behind and from above, and spin against speed on a bar."""

from bowlcore.coaching import hand_numbers
from bowlcore.display import style
from bowlcore.display.controls import Number, starting
from bowlcore.display.hand_views import BallView, empty_ball
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 4.4)
_VIEWS = ((0.0, 0.03, 0.36, 0.86), (0.33, 0.03, 0.36, 0.86))
_BAR = (0.75, 0.13, 0.115, 0.75)
_MOST = 1.0


def what_leaves_the_hand_panel(**start):
    """Speed, rev rate, rotation and tilt as things to see; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Number("axis_rotation_deg", "Axis rotation", "degrees", -30, 100, 1, at("axis_rotation_deg", 45)),
            Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
            Number("speed_mph", "Ball speed", "mph", 6, 24, 0.1, at("speed_mph", 17), metric=mph),
            Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
        ]
        fold = [Number("turned_deg", "Turned so far", "degrees", 0, 360, 15, at("turned_deg", 0))]
    return Panel("what_leaves_the_hand_panel", draw, main, {"Turn the ball": fold})


def draw(
    axis_rotation_deg, axis_tilt_deg, speed_mph, rev_rate_rpm, turned_deg, metric=False, hand="right"
) -> Drawn:
    """Both views, the bar, the sentence; the table holds the demo bowlers."""
    release = Release(speed_mph, rev_rate_rpm, axis_rotation_deg, axis_tilt_deg, 17, 13, hand=hand)
    told = hand_numbers.answer(release, turned_deg, metric=metric)
    moving = _moving()
    moving.show(told, hand)
    alt = (
        f"{told.sentence} Picture: the ball from behind and from above, with its axis, its track ring and a strip of tape "
        "that turns; beside them a bar of spin speed over ball speed with the demo bowlers."
    )
    turned = f" The second strip has turned by {turned_deg:.0f} degrees." if turned_deg else ""
    return Drawn(svg([_background(), layer(moving.figure)], *SIZE, alt), told.sentence + turned, told.rows)


@drawn_once(maxsize=1)
def _background():
    figure = new_figure(*SIZE)
    empty_ball(
        figure, _VIEWS[0], "from behind", note="diamond: a second strip of tape; dots: its way in one turn"
    )
    empty_ball(figure, _VIEWS[1], "from above", clock=True)
    axes = new_axes(figure, *_BAR)
    _bar_frame(axes)
    axes.set_xticks([])
    axes.spines["bottom"].set_visible(False)
    axes.set_yticks([0, 0.25, 0.5, 0.75, 1.0])
    axes.set_ylabel("spin speed over ball speed")
    low, high = hand_numbers.MATCHED
    for bottom, top, shade, name in (
        (0, low, "#f2ead9", hand_numbers.KINDS[0]), (low, high, "#e0efe6", hand_numbers.KINDS[1]),
        (high, _MOST, "#e3eaf5", hand_numbers.KINDS[2]),
    ):  # fmt: skip
        axes.fill_between([0, 1], bottom, top, color=shade, linewidth=0, zorder=0)
        at = bottom + 0.02 if name == hand_numbers.KINDS[0] else top - 0.045
        axes.text(0.58, at, name, ha="center", color="#303030", fontsize=style.TEXT_PT - 0.5)
    axes.plot([0, 1], [low, low], color=style.GREY, linewidth=0.7)
    axes.plot([0, 1], [high, high], color=style.GREY, linewidth=0.7)
    last = -1.0
    for name, ratio in hand_numbers.demo_ratios():
        last = max(ratio, last + 0.042)
        axes.plot([0.93, 1.0], [ratio, ratio], color=style.BLACK, linewidth=1.2, clip_on=False)
        axes.text(1.06, last, name, va="center", fontsize=style.TEXT_PT - 1, color="#404040", clip_on=False)
    axes.set_title("spin against speed", fontsize=style.TEXT_PT + 0.5, fontweight="bold", loc="left")
    return layer(figure)


def _bar_frame(axes):
    axes.set_xlim(0, 1)
    axes.set_ylim(0, _MOST)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: two views and the mark on the bar."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.views = BallView(self.figure, _VIEWS[0]), BallView(self.figure, _VIEWS[1], words=False)
        axes = new_axes(self.figure, *_BAR, bare=True)
        _bar_frame(axes)
        self.column = axes.plot([], [], color=style.VERMILLION, linewidth=5, solid_capstyle="butt")[0]
        self.mark = axes.plot(
            [], [], color=style.VERMILLION, marker="<", markersize=9, linewidth=0, clip_on=False
        )[0]
        self.text = axes.text(0.42, 0, "", va="bottom", fontweight="bold", color=style.VERMILLION)

    def show(self, told, hand):
        for view, seen in zip(self.views, (told.behind, told.above), strict=True):
            view.show(seen)
        ratio = min(told.ratio, _MOST)
        self.column.set_data([0.1, 0.1], [0, ratio])
        self.mark.set_data([0.22], [ratio])
        self.text.set_text(f"{told.ratio:.2f}")
        self.text.set_position((0.32, min(ratio - 0.015, _MOST - 0.05)))
