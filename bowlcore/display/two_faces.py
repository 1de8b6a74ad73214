"""Two late balls on one lane, alike at 50 ft: one still skids, one has rolled; slip beneath, remedies beside."""

import numpy as np

from bowlcore.coaching import two_faces, words
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.lane_figure import X_LIMITS, LanePaths, distance_axis, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.motion.units import KMH_PER_MPH, MPH_MPS

SIZE = (11.5, 4.8)
_LANE, _SLIP, _BARS = (0.05, 0.44, 0.60, 0.48), (0.05, 0.105, 0.60, 0.19), (0.85, 0.105, 0.14, 0.76)
_COLORS, _DASHES = (style.BLACK, style.VERMILLION), (0, (4, 2))
_BOWLERS = ("league one-hander", "high-rev two-hander", "left-hander")
_MOST_SLIP, _MOST_GAIN = 7.0, 70
_KEY = "upper: skids; lower: rolled; shaded: a tie"


def two_faces_panel(**start):
    """Late: still skidding, or rolled too early? A live panel; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("tighter_percent", "First lane tighter", "%", 0, 60, 1, at("tighter_percent", 32)),
            Number("looser_percent", "Second lane looser", "%", 0, 100, 1, at("looser_percent", 30)),
            Number(
                "less_rotation_deg",
                "Rotation lost",
                "degrees",
                0,
                30,
                1,
                at("less_rotation_deg", 17),
            ),
            Number("fewer_revs_rpm", "Revs lost", "rpm", 0, 100, 10, at("fewer_revs_rpm", 40)),
        ]
        folds = {"Bowler": [Choice("bowler", "Bowler (invented)", _BOWLERS, at("bowler", _BOWLERS[0]))]}
    return Panel("two_faces_panel", draw, main, folds, lines=4)


def draw(metric=False, hand="right", **values) -> Drawn:
    """Both paths, their slip, what each remedy does to both; sentence and table."""
    told = two_faces.answer(hand=hand, metric=metric, **values)
    picture = _moving()
    picture.show(told, metric)
    alt = (
        f"{told.sentence} Picture: both paths on one lane, distance from the foul line against board; beneath, how fast each "
        "ball slips; beside, for each remedy, how many balls of 100 more or fewer find the pocket, for both."
    )
    layers = [
        lanes_background(SIZE, (_LANE,), "house", metric, hand),
        _background(metric),
        layer(picture.figure),
    ]
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=2)
def _background(metric):
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_SLIP)
    _slip_frame(axes)
    distance_axis(axes, metric)
    speeds, unit_mps = ([0, 10, 20], MPH_MPS / KMH_PER_MPH) if metric else ([0, 5, 10], MPH_MPS)
    axes.set_yticks([speed * unit_mps for speed in speeds], [str(speed) for speed in speeds])
    axes.set_ylabel(f"slip, {'km/h' if metric else 'mph'}")
    axes.set_xlabel(f"distance from the foul line, {'m' if metric else 'ft'}", x=0.44)
    axes.axvline(two_faces.ALIKE_FT, color=style.GREY, linewidth=0.8, linestyle=":")
    bars = new_axes(figure, *_BARS)
    _bars_frame(bars)
    bars.set_yticks(
        range(len(two_faces.REMEDIES)),
        [two_faces.remedy_words(name, metric) for name in two_faces.REMEDIES],
    )
    bars.tick_params(axis="y", length=0)
    bars.set_xticks([-50, 0, 50], ["50", "0", "50"])
    bars.set_xlabel("← fewer of 100 | more →", fontsize=style.TEXT_PT - 1)
    bars.axvline(0, color=style.GREY, linewidth=0.8)
    bars.axvspan(-10, 10, color="#ececec", linewidth=0, zorder=0)
    for y, told, weight in ((0.955, "What each remedy does to both", "bold"), (0.905, _KEY, "normal")):
        figure.text(0.705, y, told, fontweight=weight, fontsize=style.TEXT_PT, va="center")
    return layer(figure)


def _slip_frame(axes):
    axes.set_xlim(*X_LIMITS)
    axes.set_ylim(0, _MOST_SLIP)


def _bars_frame(axes):
    axes.set_xlim(-_MOST_GAIN, _MOST_GAIN)
    axes.set_ylim(len(two_faces.REMEDIES) - 0.5, -0.6)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: two paths, two lines of slip, two bars a remedy."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lanes = [LanePaths(self.figure, _LANE, color) for color in _COLORS]
        for lane, place in zip(self.lanes, (10.5, 3.0), strict=True):
            lane.entry.set_position((61.0, place))
        for line in (self.lanes[1].skid, self.lanes[1].hook):
            line.set_linestyle(_DASHES)
        top = self.lanes[0].axes
        top.plot([two_faces.ALIKE_FT] * 2, [0.5, 39.5], color=style.GREY, linewidth=0.8, linestyle=":")
        self.alike = top.text(two_faces.ALIKE_FT - 0.6, 37.0, "", ha="right", va="center", color=style.GREY)
        slip = new_axes(self.figure, *_SLIP, bare=True)
        _slip_frame(slip)
        self.slips = [
            slip.plot([], [], color=color, linewidth=2.0, linestyle=dash)[0]
            for color, dash in zip(_COLORS, ("-", _DASHES), strict=True)
        ]
        self.said = [
            slip.text(61.0, y, "", color=c, va="center") for c, y in zip(_COLORS, (4.5, 1.5), strict=True)
        ]
        bars = new_axes(self.figure, *_BARS, bare=True)
        _bars_frame(bars)
        self.bars = [
            [
                bars.plot([], [], color=color, linewidth=6, solid_capstyle="butt")[0]
                for _ in two_faces.REMEDIES
            ]
            for color in _COLORS
        ]

    def show(self, told, metric):
        """Move everything to an answer."""
        faces = (told.skids, told.rolled)
        headings = (
            "Black: too much oil for it.  Red, dashes: friction came early, less turn of the hand",
            "",
        )
        each = zip(self.lanes, headings, faces, self.slips, self.said, strict=True)
        for lane, heading, face, slip, said in each:
            lane.show(heading, face.path, metric)
            for label in ("hook", "break", "roll"):
                lane.labels[label].set_text("")
            slip.set_data(face.path.distance_ft, face.path.slip_mps)
            rolls = face.path.roll_start_ft
            said.set_text(f"rolls from\n{words.distance(rolls, metric)}" if rolls == rolls else "still slips")
        self.alike.set_text(f"{words.distance(two_faces.ALIKE_FT, metric)}: who can tell them apart?")
        for which, lift in ((0, -0.17), (1, 0.17)):
            for i, (bar, gain) in enumerate(zip(self.bars[which], told.helped.values(), strict=True)):
                bar.set_data([0, 100 * float(np.clip(gain[which], -0.7, 0.7))], [i + lift] * 2)


def only_the_lane_panel():
    """If only the lane changes: does the ball that rolls earlier end further in? A table."""
    return Panel("only_the_lane_panel", _table, [], open_table=True)


def _table(metric=False, hand="right") -> Drawn:
    return Drawn("", *two_faces.only_the_lane())
