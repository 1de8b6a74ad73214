"""An evening in one picture: the oil after each game with the track in it, and the feet as steps beneath."""

import numpy as np

from bowlcore.coaching import evening_told, words
from bowlcore.coaching.evening import LANES
from bowlcore.coaching.moves import move_words
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.motion.units import FOOT_M

SIZE = (11.5, 5.2)
_LEFT, _WIDTH, _GAP = 0.05, 0.94, 0.008
_LANE_Y, _LANE_HEIGHT = 0.47, 0.385
_STEPS = (_LEFT, 0.095, _WIDTH, 0.235)
_COLUMN = _WIDTH / evening_told.GAMES
_EXTENT = (0, 60, 0.5, 39.5)
_GONE = "#dba05a"  # an area's colour only: black and vermillion lines keep a contrast of 3 to 1 on it


def a_lane_that_changes_panel(**start):
    """A club evening as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    people = [(evening_told.label_of(name), name) for name in evening_told.NAMES]
    moves = [("everyone moves", True), ("nobody moves", False)]
    with starting(start) as at:
        main = [
            Choice("bowler", "Bowler (invented)", people, at("bowler", "league one-hander")),
            Number("taken_percent", "Oil taken up a pass", "%", 0, 20, 1, at("taken_percent", 8)),
            Number("carried_percent", "Of that carried on", "%", 0, 30, 1, at("carried_percent", 3)),
            Number("games", "Played so far", "games", 1, 3, 1, at("games", 3)),
        ]
        folds = {
            "Lanes and company": [
                Choice("lane", "Lane of the pair", list(LANES), at("lane", "left"), buttons=True),
                Choice("pattern", "Oil pattern", pattern_options(), at("pattern", "house")),
                Number("right_percent", "Right lane's friction", "%", -20, 20, 5, at("right_percent", 0)),
                Number("bowlers", "On the pair", "bowlers", 1, 6, 1, at("bowlers", 6)),
                Choice("moving", "During the evening", moves, at("moving", True)),
            ],
        }
    return Panel("a_lane_that_changes_panel", draw, main, folds, lines=4)


def draw(metric=False, hand="right", **v) -> Drawn:
    """Picture, sentence and table of one bowler's evening on one lane."""
    told = evening_told.answer(**v, metric=metric)
    picture = _picture()
    picture.show(told, v["lane"])
    alt = (
        f"{told.sentence} Picture: the lane on its side after each game, oil shaded, with this bowler's track and, dashed, "
        "the first line as it would run now; distance from the foul line against board. Beneath: the slide board over the games."
    )
    own, mirrored = (
        told.bowler.release.hand,
        hand == "left",
    )  # then hands and lanes are all the other way round
    seen_from = "left" if (own == "left") != mirrored else "right"
    background = _background(told.start, tuple(told.oils), metric, own, seen_from)
    return Drawn(svg([background, layer(picture.figure)], *SIZE, alt), told.sentence, told.rows)


def _lane_place(game):
    return (_LEFT + game * _COLUMN + _GAP * bool(game), _LANE_Y, _COLUMN - _GAP * bool(game), _LANE_HEIGHT)


def _frame(axes):
    axes.set_xlim(-1, 67)
    axes.set_ylim(-2, 42)


@drawn_once(maxsize=24)
def _background(start, oils, metric, side, seen_from):
    """The lanes after each game, drawn once: an evening is kept, so its lanes are the same objects."""
    from matplotlib.colors import LinearSegmentedColormap

    quiet = LinearSegmentedColormap.from_list("oil", [style.LANE, style.OIL])
    figure = new_figure(*SIZE)
    boards, feet = np.linspace(0.5, 39.5, 79), np.linspace(0.0, 60.0, 121)
    read = boards if side == "right" else 40.0 - boards
    fresh = start.pattern.oil_um(read[:, None], feet[None, :])
    most = max(fresh.max(), 1e-9)
    for game, lane in enumerate(oils):
        axes = new_axes(figure, *_lane_place(game))
        _frame(axes)
        oil = lane.pattern.oil_um(read[:, None], feet[None, :])
        axes.imshow(
            np.sqrt(oil / most), extent=_EXTENT, origin="lower", aspect="auto", cmap=quiet,
            vmin=0, vmax=1, interpolation="none", zorder=0,
        )  # fmt: skip
        _gone(axes, oil, fresh)
        axes.plot(
            [0, 0, 62, np.nan, 0, 62], [39.5, 0.5, 0.5, np.nan, 39.5, 39.5], color=style.GREY, linewidth=0.8
        )
        low, high = words.POCKET_BOARD - words.POCKET_REACH, words.POCKET_BOARD + words.POCKET_REACH
        axes.plot([60, 60], [low, high], color=style.GREEN, linewidth=4, solid_capstyle="butt", zorder=2)
        ticks = [0, 6, 12, 18] if metric else [0, 20, 40, 60]
        axes.set_xticks([t / FOOT_M for t in ticks] if metric else ticks, [str(t) for t in ticks])
        axes.spines["bottom"].set_bounds(0, 60)
        axes.set_yticks([1, 10, 20, 30, 39] if game == 0 else [])
        axes.spines["left"].set_visible(game == 0)
        axes.spines["left"].set_bounds(1, 39)
        if game == 0:
            axes.set_ylabel(f"board from the {seen_from}")
            unit = "m" if metric else "ft"
            axes.set_xlabel(f"distance from the foul line, {unit} (width stretched)", x=0.46)
        elif game == 1:
            axes.set_xlabel("brown, darker: oil gone; green bar: pocket", x=0.46)
        else:
            axes.set_xlabel("dashes: the first line, thrown now", x=0.46, color=style.VERMILLION)
    return layer(figure)


def _gone(axes, oil, fresh):
    """A warm tint where oil is gone, the stronger the larger its share."""
    left = np.where(fresh > 0.02 * fresh.max(), oil / np.maximum(fresh, 1e-9), 1.0)
    tint = np.empty((*oil.shape, 4))
    tint[..., :3] = [int(_GONE[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    tint[..., 3] = np.clip(1.0 - left, 0.0, 1.0)
    axes.imshow(tint, extent=_EXTENT, origin="lower", aspect="auto", interpolation="none", zorder=1)


@drawn_once(maxsize=1)
def _picture():
    return _Moving()


class _Moving:
    """The moving layer: a track in each lane, and the steps."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lanes = [_Track(self.figure, _lane_place(game)) for game in range(evening_told.GAMES)]
        self.axes = new_axes(self.figure, *_STEPS)
        self.axes.set_xlim(0, evening_told.GAMES + 0.01)  # a move after the last frame is seen too
        self.axes.set_xticks(np.arange(0, evening_told.GAMES + 0.1, 0.5))
        self.axes.set_xlabel("games bowled on the pair")
        self.axes.set_ylabel("slide board: in →")
        for game in range(1, evening_told.GAMES):
            self.axes.axvline(game, color="#e4e4e4", linewidth=0.8, zorder=0)
        self.other = self.axes.plot(
            [], [], color=style.BLUE, linewidth=1.5, linestyle=(0, (1, 1.2)), zorder=3
        )[0]
        self.steps = self.axes.plot([], [], color=style.BLACK, linewidth=2.2)[0]
        self.words = []

    def show(self, told, lane):
        other_lane = next(name for name in LANES if name != lane)
        for game, track in enumerate(self.lanes):
            track.show(told, game)
        feet = told.bowler.feet
        mine, others = (
            [feet.slide_board(look.line) for look in looks] for looks in (told.looks, told.other_looks)
        )
        at = [look.games for look in told.looks]
        self.steps.set_data(*_stairs(at, mine))
        self.other.set_data(*_stairs(at, others))
        low, high = min(*mine, *others), max(*mine, *others)
        top = int(max(high, low + 4) + 2.5)
        self.axes.set_ylim(low - 2.5, top)
        self.axes.set_yticks(range(int(np.ceil(low)), top, 2))
        for text in self.words:
            text.remove()
        self.words = [self._say(0.03, mine[0], f"{lane} lane", style.BLACK)]
        beside = 0.3 if abs(others[0] - mine[0]) < 1.5 else 0.03
        self.words.append(self._say(beside, others[0], f"dots: {other_lane} lane", style.BLUE))
        for k, look in enumerate(told.looks):
            if look.feet or look.target:
                self.words.append(self._say_move(look, mine[k - 1], mine[k]))

    def _say_move(self, look, before, after):
        told = move_words(look.feet, look.target)
        if look.games < evening_told.GAMES:
            return self._say(look.games + 0.02, after, told, style.BLACK)
        return self._say(look.games - 0.02, min(before, after) - 0.8, told, style.BLACK, "right", "top")

    def _say(self, x, y, text, color, side="left", lies="bottom"):
        halo = {"facecolor": "white", "alpha": 0.75, "edgecolor": "none", "pad": 0.8}
        return self.axes.text(x, y + 0.4, text, color=color, va=lies, ha=side, bbox=halo)


def _stairs(at, values):
    """Steps: each value holds until the next look."""
    x = np.repeat(at, 2)[1:]
    return x, np.repeat(values, 2)[:-1]


class _Track:
    """One lane: title, the present line, and dashed the first line as it would run now."""

    def __init__(self, figure, place):
        self.axes = new_axes(figure, *place, bare=True)
        _frame(self.axes)
        self.stayed = self.axes.plot([], [], color=style.VERMILLION, linewidth=1.5, linestyle=(0, (4, 3)))[0]
        self.track = self.axes.plot([], [], color=style.BLACK, linewidth=2.2, solid_capstyle="round")[0]
        self.title = self.axes.text(0, 48.2, "", fontweight="bold", va="bottom")
        self.first = self.axes.text(0, 43.6, "", color=style.VERMILLION, va="bottom")
        self.now = self.axes.text(34, 43.6, "", va="bottom")

    def show(self, told, game):
        played = game < len(told.oils)
        self.title.set_text(f"Game {game + 1}" + ("" if played else ": not yet bowled"))
        for artist in (self.stayed, self.track):
            artist.set_data([], [])
        self.first.set_text("")
        self.now.set_text("")
        if not played:
            return
        look, state = told.looks[2 * game + 2], told.states[game]
        volume = told.oils[game].pattern.volume_ml
        self.title.set_text(f"After game {game + 1}: {state.name}, {volume:.1f} mL left")
        self.first.set_text(f"first line: {100 * look.first.pocket:.0f} in 100")
        self.now.set_text(f"line now: {100 * look.odds.pocket:.0f} in 100")
        self.stayed.set_data(look.first_path.distance_ft, look.first_path.board)
        self.track.set_data(look.path.distance_ft, look.path.board)
