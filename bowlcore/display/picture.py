"""Two layers, one picture: a background drawn once and a small moving layer, as inline SVG.

Text stays text. matplotlib is loaded when the first picture is drawn; pyplot never is.
"""

import re
from html import escape
from io import StringIO
from itertools import count

from bowlcore.display.style import RC

_number = count()
_IDS = re.compile(
    r' id="(?:figure|axes|patch|line2d|text|matplotlib\.axis|xtick|ytick|PathCollection|LineCollection)_\d+"'
)


def new_figure(width_in, height_in):
    """A bare matplotlib Figure with this course's look."""
    from matplotlib import rc_context
    from matplotlib.figure import Figure

    with rc_context(RC):
        figure = Figure(figsize=(width_in, height_in))
    figure.patch.set_alpha(0.0)
    return figure


def new_axes(figure, left, bottom, width, height, bare=False):
    """Axes at a place given as shares of the figure; bare ones carry moving things only."""
    from matplotlib import rc_context

    with rc_context(RC):
        axes = figure.add_axes([left, bottom, width, height])
    axes.patch.set_alpha(0.0)
    if bare:
        axes.set_axis_off()
    return axes


def layer(figure) -> str:
    """The inside of the figure's SVG, its names made unique so that pictures do not disturb each other."""
    from matplotlib import rc_context

    buffer = StringIO()
    with rc_context(RC):
        figure.savefig(buffer, format="svg", transparent=True, metadata={"Date": None, "Creator": None})
    svg = buffer.getvalue()
    inside = svg[svg.index(">", svg.index("<svg")) + 1 : svg.rindex("</svg>")]
    inside = re.sub(r"<metadata>.*?</metadata>", "", inside, flags=re.S)
    inside = _IDS.sub("", inside)
    mark = f"b{next(_number)}-"
    inside = re.sub(r' id="([^"]+)"', rf' id="{mark}\1"', inside)
    inside = re.sub(r'href="#([^"]+)"', rf'href="#{mark}\1"', inside)
    return re.sub(r"url\(#([^)]+)\)", rf"url(#{mark}\1)", inside)


def svg(layers, width_in, height_in, alt) -> str:
    """One inline picture from its layers, with its point in words for those who cannot see it."""
    width, height = width_in * 72.0, height_in * 72.0
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" role="img" '
        f'aria-label="{escape(alt, quote=True)}" viewBox="0 0 {width:g} {height:g}" '
        f'width="{width:g}pt" height="{height:g}pt">' + "".join(layers) + "</svg>"
    )
