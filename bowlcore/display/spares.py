"""One line at one leave: the chosen ball, the other ball on the same line, and the window at the pins."""

from dataclasses import replace

import numpy as np

from bowlcore.coaching import feet, spares, words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.spare_windows import board_at, spare_leave
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.lane_figure import LanePaths, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.motion.units import FOOT_M, LANE_FT
from bowlcore.rack.leave import MIRROR, Leave
from bowlcore.rack.pins import BALL_DIAMETER_IN, BOARD_IN, PIN_DIAMETER_IN, pin_board, pin_distance_ft

SIZE = (11.5, 3.7)
LANE, DECK = (0.05, 0.135, 0.625, 0.765), (0.745, 0.135, 0.245, 0.765)
X_LIMITS, Y_LIMITS = (58.6, 63.6), (-1.0, 41.0)


def spares_panel(**start):
    """Where to stand for a pin, as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("leave", "What stands", leave_options(), at("leave", "10")),
            Choice("ball", "Ball", list(spares.BALLS), at("ball", spares.PLAIN_BALL)),
            Number("slide_board", "Slide foot on", "board", 9, 39, 0.5, at("slide_board", 31)),
            Number("over_board", "Over the arrows", "board", 5, 35, 0.5, at("over_board", 16.5)),
        ]
        folds = {
            "Bowler and lane": [
                Choice(
                    "bowler", "Bowler (invented)", list(load_bowlers()), at("bowler", "league one-hander")
                ),
                Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
                Number("house_percent", "Lane friction change", "%", -30, 30, 5, at("house_percent", 0)),
            ]
        }
    return Panel("spares_panel", draw, main, folds, lines=4)


def leave_options():
    """Titles and right-hander's names of the leaves: "10 (left-hander: 7)"."""
    pairs = [(text, Leave.from_text(text).mirror.text) for text in spares.COMMON]
    return [(text if text == other else f"{text} (left-hander: {other})", text) for text, other in pairs]


def bowler_of(name, hand):
    """A demo bowler with the hand of the settings."""
    bowler = load_bowlers()[name]
    return replace(bowler, release=replace(bowler.release, hand=hand))


def draw(
    leave, ball, slide_board, over_board, bowler, pattern, house_percent, metric=False, hand="right"
) -> Drawn:
    """Picture, sentence and table of the line."""
    who = bowler_of(bowler, hand)
    who = replace(who, release=feet.on_line(who.release, who.feet, slide_board, over_board))
    here = spare_leave(leave) if hand == "right" else spare_leave(leave).mirror
    told = spares.answer(who, lane_of(pattern, house_percent), here, ball)
    picture = _moving()
    picture.show(told, here, ball, feet.line_words(who.release, who.feet), metric, hand)
    alt = (
        f"{told.sentence} Picture: the lane on its side with the ball's path, distance from the foul line against board, "
        "the other ball on the same line in dashes; beside it the pin deck with the standing pins and the window."
    )
    layers = [
        lanes_background(SIZE, (LANE,), pattern, metric, hand),
        _deck_background(metric),
        layer(picture.figure),
    ]
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=2)
def _deck_background(metric):
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *DECK)
    axes.set_xlim(*X_LIMITS)
    axes.set_ylim(*Y_LIMITS)
    for low, high in ((-1.0, 0.5), (39.5, 41.0)):
        axes.fill_between([X_LIMITS[0], 62.9], low, high, color=style.GUTTER, linewidth=0)
    axes.plot(
        [58.6, 62.9, np.nan, 58.6, 62.9], [0.5, 0.5, np.nan, 39.5, 39.5], color=style.GREY, linewidth=0.8
    )
    axes.set_yticks([1, 10, 20, 30, 39])
    if metric:
        metres = [18.0, 18.5, 19.0]
        axes.set_xticks([m / FOOT_M for m in metres], [f"{m:g}" for m in metres])
    axes.set_xlabel(f"the pins: {'m' if metric else 'ft'} from the foul line (stretched)")
    axes.set_title("What stands", loc="left", fontsize=style.TEXT_PT, fontweight="bold")
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: path and landmarks on the lane; pins, window and both balls on the deck."""

    def __init__(self):
        from matplotlib.patches import Ellipse

        self.figure = new_figure(*SIZE)
        self.lane = LanePaths(self.figure, LANE, style.BLUE)
        self.gate = self.lane.axes.plot([], [], color=style.VERMILLION, linewidth=4, solid_capstyle="butt")[0]
        axes = new_axes(self.figure, *DECK, bare=True)
        axes.set_xlim(*X_LIMITS)
        axes.set_ylim(*Y_LIMITS)
        self.pins, self.names = [], []
        for pin in range(1, 11):
            place = float(pin_distance_ft(pin)), float(pin_board(pin))
            spot = Ellipse(place, PIN_DIAMETER_IN / 12, PIN_DIAMETER_IN / BOARD_IN, linewidth=1.0, zorder=3)
            self.pins.append(axes.add_patch(spot))
            self.names.append(
                axes.text(*place, "", ha="center", va="center", fontweight="bold", color="white", zorder=4)
            )
        self.window = axes.plot([], [], color=style.VERMILLION, linewidth=4, solid_capstyle="butt", zorder=5)[
            0
        ]
        self.window_name = axes.text(0, 0, "", color=style.VERMILLION, va="center", ha="center", zorder=5)
        self.ways = {
            "other": axes.plot([], [], color=style.GREY, linewidth=1.6, linestyle=(0, (4, 3)), zorder=5)[0],
            "mine": axes.plot([], [], color=style.BLUE, linewidth=2.2, zorder=6)[0],
        }
        self.ball = Ellipse((0, 0), BALL_DIAMETER_IN / 12, BALL_DIAMETER_IN / BOARD_IN, facecolor="none",
                            edgecolor=style.BLUE, linewidth=1.4, zorder=6)  # fmt: skip
        axes.add_patch(self.ball)

    def show(self, told, leave, ball, line, metric, hand):
        """Move everything to an answer."""
        other = next(name for name in spares.BALLS if name != ball)
        path = told.path
        title = f"{line[0].upper()}{line[1:]}: {ball}   (dashes: {other}, same line)"
        self.lane.show(title, path, metric)
        self.lane.kept.set_data(told.other.distance_ft, told.other.board)
        self._show_window(told, metric)
        self._show_pins(leave, hand)
        self._show_ways(path, told.other)

    def _show_ways(self, mine, other):
        """Both balls straight on through the deck; a ball that is lost before the pins has none."""
        for name, one in (("mine", mine), ("other", other)):
            lost = one.entry_board != one.entry_board
            x = np.array([X_LIMITS[0] + BALL_DIAMETER_IN / 24, 62.85])
            way = board_at(0.0 if lost else one.entry_board, 0.0 if lost else one.entry_angle_deg, x)
            self.ways[name].set_data(*([], []) if lost else (x, way))
            if name == "mine":
                self.ball.set_visible(not lost)
                self.ball.set_center((x[0], way[0]))

    def _show_window(self, told, metric):
        low, high = max(told.low, 0.5), min(told.high, 39.5)
        ends = ([60, 60], [low, high]) if low < high else ([], [])
        self.gate.set_data(*ends)
        self.window.set_data(*ends)
        self.window_name.set_text("window" if low < high else "")
        self.window_name.set_position((60, high + 1.8 if high < 36 else low - 1.8))
        board = told.path.entry_board
        if board == board:
            self.lane.entry.set_text(f"at {words.distance(LANE_FT, metric)}\n{words.board(board)}")
            # where the background names head pin and pocket there is no room
            self.lane.entry.set_position((63.2, 8.5 if 11 < board < 27 else min(max(board, 4.0), 36.0)))

    def _show_pins(self, leave, hand):
        for pin, (spot, name) in enumerate(zip(self.pins, self.names, strict=True), 1):
            number = pin if hand == "right" else MIRROR[pin]
            stands = number in leave.pins
            spot.set_facecolor(style.BLACK if stands else "white")
            spot.set_edgecolor(style.BLACK if stands else "#858585")
            name.set_text(str(number) if stands else "")
