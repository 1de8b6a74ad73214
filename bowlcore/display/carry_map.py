"""Strikes over board and angle through a scatter: the map, and one slice with its doubt."""

import numpy as np

from bowlcore.coaching import carry_map, words
from bowlcore.coaching.bowler_told import PUBLISHED_BOX
from bowlcore.display import style
from bowlcore.display.controls import Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import layer, new_axes, new_figure, svg
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 3.8)
_SLICE, _MAP = (0.06, 0.15, 0.50, 0.74), (0.64, 0.15, 0.34, 0.74)


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
    from matplotlib import rc_context

    told = carry_map.answer(**v, metric=metric)
    figure = new_figure(*SIZE)
    with rc_context(style.RC):
        _slice(new_axes(figure, *_SLICE), told, v["entry_angle_deg"], hand)
        _map(new_axes(figure, *_MAP), told, v["entry_angle_deg"], hand)
    alt = (
        f"{told.sentence} Picture: strikes in a hundred against the entry board with the interval as a band; beside it "
        "a map over board and entry angle in degrees, darker where more strike."
    )
    return Drawn(svg([layer(figure)], *SIZE, alt), told.sentence, told.rows)


def _slice(axes, told, angle, hand):
    boards = carry_map.BOARDS
    axes.axvspan(*told.tie, color="#d9ece4", zorder=0)
    axes.text(
        sum(told.tie) / 2, 2, "a tie", ha="center", va="bottom", color=style.GREEN, fontsize=style.TEXT_PT
    )
    wide_low, wide_high = told.low - told.spread, told.high + told.spread
    axes.fill_between(boards, 100 * np.clip(wide_low, 0, 1), 100 * np.clip(wide_high, 0, 1), color="#c8c8c8",
                      linewidth=0, label="grey: and the doubt about the pin model")  # fmt: skip
    axes.fill_between(boards, 100 * told.low, 100 * told.high, color="#a9c9df", linewidth=0,
                      label="blue: 95 % from the counts of racks")  # fmt: skip
    axes.plot(boards, 100 * told.row, color=style.BLUE, linewidth=1.8)
    axes.set_xlim(14, 21)
    axes.set_ylim(0, 100)
    axes.set_xlabel(f"comes in on board, from the {hand}")
    axes.set_ylabel("strikes in 100 balls")
    axes.set_title(f"At {words.degrees(angle)}", loc="left", fontsize=style.TEXT_PT, fontweight="bold")
    handles, labels = axes.get_legend_handles_labels()
    axes.legend(handles[::-1], labels[::-1], loc="upper right", frameon=False, fontsize=style.TEXT_PT - 0.5)


def _map(axes, told, angle, hand):
    boards, angles = carry_map.BOARDS, carry_map.ANGLES
    axes.imshow(100 * told.strike, extent=(boards[0], boards[-1], angles[0], angles[-1]), origin="lower",
                aspect="auto", cmap="Greys", vmin=0, vmax=140, interpolation="bilinear")  # fmt: skip
    lines = axes.contour(boards, angles, 100 * told.strike, levels=[10, 20, 30, 40, 50, 60, 70, 80], colors=[style.BLUE],
                         linewidths=0.9)  # fmt: skip
    axes.clabel(lines, fontsize=style.TEXT_PT - 1, fmt="%g")
    low, high, flat, steep = PUBLISHED_BOX
    axes.plot([low, high, high, low, low], [flat, flat, steep, steep, flat], color=style.BLACK, linewidth=1.6)
    axes.text(low - 0.1, steep + 0.1, "published best", va="bottom", fontsize=style.TEXT_PT - 0.5,
              bbox={"facecolor": "white", "alpha": 0.7, "edgecolor": "none", "pad": 1})  # fmt: skip
    axes.axhline(angle, color=style.VERMILLION, linewidth=1.2, linestyle="--")
    axes.set_xlabel(f"comes in on board, from the {hand}")
    axes.set_ylabel("entry angle, degrees")
    axes.set_title("Strikes in 100", loc="left", fontsize=style.TEXT_PT, fontweight="bold")
