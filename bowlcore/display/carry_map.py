"""Strikes over board and angle through a scatter: the map, and one slice with its doubt."""

import numpy as np

from bowlcore.coaching import carry_map, words
from bowlcore.coaching.bowler_told import PUBLISHED_BOX
from bowlcore.display import style
from bowlcore.display.controls import Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, emptied, layer, new_axes, new_figure, rc_in_use, svg
from bowlcore.display.simple_chart import TITLE
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 3.8)
_SLICE, _MAP = (0.06, 0.15, 0.50, 0.74), (0.64, 0.15, 0.34, 0.74)
_PINS = {"facecolor": "#e4e4e4", "edgecolor": style.GREY, "linewidth": 0.9, "linestyle": "--"}
_COUNTS = {"facecolor": "#a9c9df", "edgecolor": style.BLUE, "linewidth": 0.7}


def carry_map_panel(**start):
    """Where strikes lie for a scatter, as a live panel.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("scatter_boards", "Scatter of hits", "boards", 0.5, 4, 0.5, at("scatter_boards", 1.5)),
            Number("entry_angle_deg", "Entry angle", "degrees", 0, 8, 0.5, at("entry_angle_deg", 4.5)),
            Number("ball_lb", "Ball weight", "lb", 6, 16, 1, at("ball_lb", 15)),
            Number("speed_at_pins_mph", "Speed at the pins", "mph", 5, 17, 0.5, at("speed_at_pins_mph", 14),
                   ("km/h", KMH_PER_MPH, 0.5)),
        ]  # fmt: skip
    return Panel("carry_map_panel", draw, main, lines=3)


def draw(metric=False, hand="right", **v) -> Drawn:
    """The slice with its interval, the map, the sentence and the table."""
    told = carry_map.answer(**v, metric=metric)
    figure, (along, over) = _moving()
    angle = v["entry_angle_deg"]
    with rc_in_use():
        _slice(emptied(along), told, angle)
        emptied(over).axhline(angle, color=style.VERMILLION, linewidth=1.2, linestyle="--")
    strikes = _map(v["scatter_boards"], v["speed_at_pins_mph"], v["ball_lb"])
    layers = [strikes, layer(figure), _background(hand)]
    alt = (
        f"{told.sentence} Picture: strikes in a hundred against the entry board with the interval as a band; beside it "
        "a map over board and entry angle in degrees, darker where more strike."
    )
    return Drawn(svg(layers, *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=2)
def _background(hand):
    """What stands round both charts, and the published best."""
    figure = new_figure(*SIZE)
    with rc_in_use():
        along, over = (_frame(new_axes(figure, *place), place) for place in (_SLICE, _MAP))
        along.fill([], [], **_PINS, label="and the doubt about the pin model")
        along.fill([], [], **_COUNTS, label="95 % from the counts of racks")
        along.set_ylabel("strikes in 100 balls")
        handles, labels = along.get_legend_handles_labels()
        small = {"frameon": False, "fontsize": style.TEXT_PT - 0.5}
        along.legend(handles[::-1], labels[::-1], loc="upper right", **small)
        low, high, flat, steep = PUBLISHED_BOX
        box = [low, high, high, low, low], [flat, flat, steep, steep, flat]
        over.plot(*box, color=style.BLACK, linewidth=1.6)
        over.text(low - 0.1, steep + 0.1, "published best", va="bottom", fontsize=style.TEXT_PT - 0.5,
                  bbox={"facecolor": "white", "alpha": 0.7, "edgecolor": "none", "pad": 1})  # fmt: skip
        over.set_ylabel("entry angle, degrees")
        over.set_title("Strikes in 100", **TITLE)
        for axes in (along, over):
            axes.set_xlabel(f"comes in on board, from the {hand}")
    return layer(figure)


@drawn_once(maxsize=1)
def _moving():
    """The figure of the moving layer, with bare axes for both charts."""
    figure = new_figure(*SIZE)
    return figure, [_frame(new_axes(figure, *place, bare=True), place) for place in (_SLICE, _MAP)]


def _frame(axes, place):
    boards, angles = carry_map.BOARDS, carry_map.ANGLES
    axes.set_xlim(*((14, 21) if place == _SLICE else (boards[0], boards[-1])))
    axes.set_ylim(*((0, 100) if place == _SLICE else (angles[0], angles[-1])))
    return axes


def _slice(axes, told, angle):
    boards = carry_map.BOARDS
    axes.axvspan(*told.tie, color="#d9ece4", zorder=0)
    axes.text(
        sum(told.tie) / 2, 2, "a tie", ha="center", va="bottom", color=style.GREEN, fontsize=style.TEXT_PT
    )
    wide_low, wide_high = told.low - told.spread, told.high + told.spread
    wide = 100 * np.clip(wide_low, 0, 1), 100 * np.clip(wide_high, 0, 1)
    axes.fill_between(boards, *wide, **_PINS)
    axes.fill_between(boards, 100 * told.low, 100 * told.high, **_COUNTS)
    axes.plot(boards, 100 * told.row, color=style.BLUE, linewidth=1.8)
    axes.set_title(f"At {words.degrees(angle)}", **TITLE)


@drawn_once(maxsize=16)
def _map(scatter_boards, speed_at_pins_mph, ball_lb):
    """Strikes as greys and lines."""
    boards, angles = carry_map.BOARDS, carry_map.ANGLES
    strikes = 100 * carry_map.strike_map(float(scatter_boards), float(speed_at_pins_mph), float(ball_lb))
    figure = new_figure(*SIZE)
    with rc_in_use():
        axes = _frame(new_axes(figure, *_MAP, bare=True), _MAP)
        axes.imshow(strikes, extent=(boards[0], boards[-1], angles[0], angles[-1]), origin="lower",
                    aspect="auto", cmap="Greys", vmin=0, vmax=240, interpolation="none")  # fmt: skip
        levels = [10, 20, 30, 40, 50, 60, 70, 80]
        lines = axes.contour(boards, angles, strikes, levels=levels, colors=[style.BLUE], linewidths=0.9)
        axes.clabel(lines, fontsize=style.TEXT_PT - 1, fmt="%g", colors=[style.BLACK])
    return layer(figure)
