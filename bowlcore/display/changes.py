"""The changes panel: what this bowler can do about a reading, before and after, on the lane supposed."""

from bowlcore.coaching import changes_told, words
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.seen import Seen
from bowlcore.display import style
from bowlcore.display.controls import Choice, starting
from bowlcore.display.lane_figure import LanePaths, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg
from bowlcore.display.reaction import balls_of, own_side
from bowlcore.display.spares import bowler_of

SIZE = (11.5, 3.5)
_LANE, _BARS = (0.05, 0.14, 0.60, 0.75), (0.745, 0.14, 0.245, 0.75)
_MOST = 9  # bars shown
_EXAMPLE = (Seen("light", "still skidding", target_hit=True),) * 2
_WAITING = "Note your balls above, then press 'What can I change?'."


def changes_panel(reading=None, *, noted=_EXAMPLE, bowler="league one-hander", pattern="house", **start):
    """Changes for a reading, with the table open under the picture.

    Parameters
    ----------
    reading : a reaction panel, optional
        Its balls, bowler and lane are taken over whenever the button is pressed.
    noted, bowler, pattern : list of Seen in a right-hander's words, names
        What to start from when there is no such panel.
    start
        Starting values of the controls.

    Raises
    ------
    ValueError
        When a name or a value does not belong to a control.
    """
    if bowler not in load_bowlers():
        raise ValueError(f"bowler must be one of {', '.join(load_bowlers())}, got {bowler!r}")
    with starting(start) as at:
        main = [
            Choice("suppose", "Take for true", changes_told.SUPPOSED, at("suppose", changes_told.LIKELIEST)),
            Choice("count", "At most", [(f"{n} changes", n) for n in (3, 5, 8)], at("count", 5)),
        ]
    asked = [None if reading else (tuple(noted), bowler, pattern)]

    def take_over(panel):
        values = reading.values
        noted = balls_of(values, reading.memory.get("noted", ()), "right")
        asked[0] = tuple(noted), values["bowler"], values["pattern"]

    def drawn(**values):
        return draw(asked[0], **values)

    buttons = {"What can I change?": take_over} if reading else None
    panel = Panel("changes_panel", drawn, main, buttons=buttons, lines=4)
    fold = next(b for b in panel.widget.children[4].children if b.description.startswith("The numbers"))
    fold.value = True  # the table carries the advice
    return panel


def draw(asked, suppose, count, metric=False, hand="right") -> Drawn:
    """The ball now and after the first change, the shares in the pocket, and the table of changes."""
    if asked is None:
        return Drawn(svg([], SIZE[0], 0.1, _WAITING), _WAITING, [])
    noted, bowler, pattern = asked
    balls = [own_side(ball, hand) for ball in noted]
    told = changes_told.answer(
        bowler_of(bowler, hand), lane_of(pattern), balls, suppose=suppose, count=count, metric=metric
    )
    picture = _moving()
    picture.show(told, metric)
    alt = (
        f"{told.sentence} Picture: the lane on its side with the ball now, and in dashes after the first change, distance "
        "from the foul line against board; beside it, for each change, balls in the pocket of 100 now and then."
    )
    layers = [lanes_background(SIZE, (_LANE,), pattern, metric, hand), _background(), layer(picture.figure)]
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=1)
def _background():
    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_BARS)
    _frame(axes)
    axes.set_yticks([])
    axes.set_xticks([0, 25, 50, 75, 100])
    axes.set_xlabel("in the pocket, of 100 balls")
    axes.set_title("Bar: after each change; ◆ now", fontsize=style.TEXT_PT, loc="left", fontweight="bold")
    axes.grid(axis="x", color="#e4e4e4", linewidth=0.6)
    axes.set_axisbelow(True)
    return layer(figure)


def _frame(axes):
    axes.set_xlim(0, 108)
    axes.set_ylim(_MOST + 0.6, 0.4)


@drawn_once(maxsize=1)
def _moving():
    return _Moving()


class _Moving:
    """The moving layer: the ball now and after, a bar for each change."""

    def __init__(self):
        self.figure = new_figure(*SIZE)
        self.lane = LanePaths(self.figure, _LANE, style.BLACK)
        self.after = self.lane.axes.plot([], [], color=style.BLUE, linewidth=2.0, linestyle=(0, (4, 3)))[0]
        self.end = self.lane.axes.text(61.0, 2.0, "", va="center", color=style.BLUE, fontweight="bold")
        axes = new_axes(self.figure, *_BARS, bare=True)
        _frame(axes)
        self.now = axes.plot(
            [], [], linewidth=0, marker="D", markersize=6, color=style.BLACK, mec="white", zorder=5
        )[0]
        self.bars = [
            axes.plot([], [], color=style.BLUE, linewidth=9, solid_capstyle="butt")[0] for _ in range(_MOST)
        ]
        self.names = [
            axes.text(0, i + 1, "", va="center", fontsize=style.TEXT_PT - 0.5) for i in range(_MOST)
        ]

    def show(self, told, metric):
        """Move everything to an answer; the lane is that of the first reading with a change."""
        lane = next((one for one in told.lanes if one.changes), None)
        changes = [change for one in told.lanes for change in one.in_order][:_MOST]
        if lane is None:
            self.lane.show("No change is advised", None, metric)
            self.after.set_data([], [])
            self.end.set_text("")
        else:
            on = f" ({lane.reading.lane} lane)" if lane.reading.lane else ""
            self.lane.show(
                f"Line: the ball now, if '{lane.cause}'{on}; dashes: after change 1", lane.path, metric
            )
            then = lane.in_order[0].path
            self.after.set_data(then.distance_ft, then.board)
            self.end.set_text(f"then {words.halves(then.entry_board)}")
        for i, (bar, name) in enumerate(zip(self.bars, self.names, strict=True)):
            change = changes[i] if i < len(changes) else None
            share = 100 * change.after.pocket if change else 0.0
            bar.set_data([0, share] if change else [], [i + 1] * 2 if change else [])
            name.set_text(f"{i + 1}: {share:.0f}" if change else "")
            name.set_position((share + 2, i + 1))
        self.now.set_data(
            [100 * change.before.pocket for change in changes], [i + 1 for i in range(len(changes))]
        )
