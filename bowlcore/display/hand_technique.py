"""Where the hands are, in drawings of our own, and what the axis is said to do: common practice."""

import numpy as np

from bowlcore.coaching import hand_technique
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.hand_views import BallView, empty_ball, frame
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, layer, new_axes, new_figure, svg

SIZE = (11.5, 4.0)
_PLACES = ((0.0, 0.03, 0.33, 0.86), (0.335, 0.03, 0.33, 0.86), (0.67, 0.03, 0.33, 0.86))
_SKIN, _EDGE = "#e6c7a6", "#6b4a2b"


def hand_technique_panel(**start):
    """Four things a hand can do, one- and two-handed; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Choice("technique", "What the hand does", list(hand_technique.TECHNIQUES),
                   at("technique", "hand follows through round the side")),
            Choice("style", "Style", list(hand_technique.STYLES), at("style", "one-handed")),
            Number("amount_deg", "If it moves by", "degrees", 5, 30, 1, at("amount_deg", 15)),
        ]  # fmt: skip
    return Panel("hand_technique_panel", draw, main)


def draw(technique, style, amount_deg, metric=False, hand="right") -> Drawn:
    """Hands on the ball, the axis before and after, the sentence, all four techniques as a table."""
    told = hand_technique.answer(technique, style, amount_deg, hand=hand, metric=metric)
    figure, views = _moving()
    for view, seen in zip(views, (told.before, told.after), strict=True):
        view.show(seen.behind)
    layers = [_background(), _hands(told.technique, style, hand), layer(figure)]
    alt = (
        f"{told.sentence} Picture: the ball from behind with the hands on it, and beside it the ball with its axis and ring "
        "before and after."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=1)
def _background():
    figure = new_figure(*SIZE)
    for place, title in zip(
        _PLACES, ("the hands, from behind", "before", "after, if it does so"), strict=True
    ):
        empty_ball(figure, place, title)
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    """The figure of the moving layer and its two balls."""
    figure = new_figure(*SIZE)
    return figure, [BallView(figure, place) for place in _PLACES[1:]]


@drawn_once(maxsize=16)
def _hands(one, held, hand):
    """The bowling hand filled, where it goes as an outline with an arrow, the other hand dashed."""
    from bowlcore.display.style import BLACK, TEXT_PT

    figure = new_figure(*SIZE)
    axes = new_axes(figure, *_PLACES[0], bare=True)
    frame(axes)
    side = 1.0 if hand == "right" else -1.0
    flip = np.array([side, 1.0])
    start, end, other = (np.array(place) * flip for place in (one.hand, one.hand_after, one.support))
    _hand(axes, end, facecolor="none", edgecolor=_EDGE, linewidth=1.0, linestyle=(0, (1, 1.5)))
    _hand(axes, other, facecolor="#f6efe6", edgecolor=_EDGE, linewidth=1.2, linestyle=(0, (4, 2)))
    _hand(axes, start, facecolor=_SKIN, edgecolor=_EDGE, linewidth=1.2)
    bend = {
        "arrowstyle": "-|>",
        "color": BLACK,
        "linewidth": 1.8,
        "connectionstyle": f"arc3,rad={0.25 * side}",
    }
    axes.annotate("", end, start, arrowprops=bend)
    small = {"fontsize": TEXT_PT - 0.5, "ha": "center"}
    axes.text(0, -1.42, "bowling hand (filled), and where it goes", color=BLACK, **small)
    first = "support hand at the start" if held == "one-handed" else "support hand"
    axes.text(other[0] * 1.1, other[1] + 0.47 if other[1] < 0.5 else 1.2, first, color=_EDGE, **small)
    axes.text(1.5 * side, -0.9, "outer\nside", color="#404040", **small)
    axes.text(-1.5 * side, -0.9, "inner\nside", color="#404040", **small)
    return layer(figure)


def _hand(axes, place, **look):
    """A palm and four fingers, seen from the back of the hand."""
    from matplotlib.patches import Ellipse, FancyBboxPatch

    x, y = place
    for i, tall in enumerate((0.20, 0.26, 0.26, 0.19)):
        left = x - 0.2 + 0.105 * i
        box = FancyBboxPatch(
            (left, y + 0.08), 0.075, tall, boxstyle="round,pad=0,rounding_size=0.035", **look
        )
        axes.add_patch(box)
    axes.add_patch(Ellipse((x, y - 0.02), 0.46, 0.36, **look))
