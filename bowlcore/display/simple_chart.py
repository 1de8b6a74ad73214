"""One chart that is drawn anew at each change: for pictures without a lane."""

from bowlcore.display import style
from bowlcore.display.picture import layer, new_axes, new_figure, svg

SIZE = (11.5, 3.6)


def chart(alt, paint, place=(0.07, 0.16, 0.60, 0.74)) -> str:
    """SVG of axes that `paint(axes)` has filled."""
    from matplotlib import rc_context

    figure = new_figure(*SIZE)
    axes = new_axes(figure, *place)
    with rc_context(style.RC):
        axes.grid(color="#e4e4e4", linewidth=0.6)
        axes.set_axisbelow(True)
        paint(axes)
    return svg([layer(figure)], *SIZE, alt)
