"""One chart: for pictures without a lane. What stands still in it is drawn once, the rest anew at each change."""

from bowlcore.display import style
from bowlcore.display.picture import (
    drawn_once,
    emptied,
    layer,
    moving_axis,
    new_axes,
    new_figure,
    rc_in_use,
    svg,
)

SIZE = (11.5, 3.6)
# of what a picture shows; with a place of its own, or each tick is asked whether it is in the way
TITLE = {"loc": "left", "fontsize": style.TEXT_PT, "fontweight": "bold", "y": 1.0}


def chart(alt, paint, place=(0.07, 0.16, 0.60, 0.74), size=SIZE, still=None, moves=None) -> str:
    """SVG of axes that `paint(axes)` has filled.

    `still`: (function, arguments ...); function(axes, ...) makes limits, ticks and words that stay while these
    arguments do. `moves`: "y" when the ends of that axis are set by `paint` all the same.
    """
    if still is None:
        figure, axes = _figure(place, size)
        layers = []
    else:
        figure, axes = _moving(place, size, still, moves)
        layers = [_background(place, size, still, moves)]
    with rc_in_use():
        paint(emptied(axes))
    return svg([*layers, layer(figure)], *size, alt)


def _figure(place, size, still=None):
    figure = new_figure(*size)
    axes = new_axes(figure, *place)
    with rc_in_use():
        axes.grid(color="#e4e4e4", linewidth=0.6)
        axes.set_axisbelow(True)
        if still:
            still[0](axes, *still[1:])
    return figure, axes


@drawn_once(maxsize=32)
def _background(place, size, still, moves):
    figure, axes = _figure(place, size, still)
    if moves:
        axes.yaxis.set_visible(False)
    return layer(figure)


@drawn_once(maxsize=32)
def _moving(place, size, still, moves):
    figure, axes = _figure(place, size, still)
    axes.set_title("", loc="left")
    if moves:
        moving_axis(axes, moves)
    else:
        axes.set_axis_off()
    return figure, axes
