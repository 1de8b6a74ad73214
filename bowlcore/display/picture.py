"""Two layers, one picture: a background drawn once and a small moving layer, as inline SVG.

Text stays text. matplotlib is loaded when the first picture is drawn; pyplot never is.
"""

import re
from contextlib import contextmanager
from functools import lru_cache, wraps
from html import escape
from io import StringIO
from itertools import count
from math import inf
from textwrap import fill

from bowlcore.display.style import RC

LAYER = '<g class="bm-layer">'  # each layer lies in one
# left, right and above a narrow picture, for words that its figure has no room for
_ROOM_PT = (20.0, 40.0, 12.0)
_LETTERS_AN_IN = 13  # of a heading
_widest_in = inf
_number = count()
_IDS = re.compile(
    r' id="(?:figure|axes|patch|line2d|text|matplotlib\.axis|xtick|ytick|PathCollection|LineCollection)_\d+"| id="image\w+"'
)
# A map goes into the picture as small as it is (interpolation="none") and the page smooths it: ten times as fast.
_UNSMOOTHED = ' style="image-rendering:crisp-edges;image-rendering:pixelated"'
_SIZE = re.compile(r"font-size: ([\d.]+px)")
_WIDER = r"font-size: calc(\1*var(--bm-letters,1))"  # style.CSS makes letters larger on a narrow page


@contextmanager
def narrow(width_in):
    """Figures drawn within are at most this wide [in], their letters as large as ever: for a phone."""
    global _widest_in
    before, _widest_in = _widest_in, width_in
    try:
        yield
    finally:
        _widest_in = before


def drawn_once(maxsize):
    """lru_cache for what is drawn: drawn in another width it is another thing."""

    def once(make):
        @lru_cache(maxsize)
        def made(widest_in, *args, **named):
            return make(*args, **named)

        return wraps(make)(lambda *args, **named: made(_widest_in, *args, **named))

    return once


def rc_in_use():
    """A context: what is drawn within has this course's look."""
    from matplotlib import rc_context

    return rc_context(RC)


def new_figure(width_in, height_in):
    """A bare matplotlib Figure with this course's look."""
    from matplotlib.figure import Figure

    with rc_in_use():
        figure = Figure(figsize=(min(width_in, _widest_in), height_in))
    figure.patch.set_alpha(0.0)
    return figure


def new_axes(figure, left, bottom, width, height, bare=False):
    """Axes at a place given as shares of the figure; bare ones carry moving things only."""
    with rc_in_use():
        axes = figure.add_axes([left, bottom, width, height])
    axes.patch.set_alpha(0.0)
    if bare:
        axes.set_axis_off()
    return axes


def moving_axis(axes, which, grid=True):
    """Of a moving layer: only one axis, "x" or "y", whose ends may change; the rest stands behind it."""
    with rc_in_use():
        if grid:
            axes.grid(axis=which, color="#e4e4e4", linewidth=0.6)
        axes.set_axisbelow(True)
    getattr(axes, "yaxis" if which == "x" else "xaxis").set_visible(False)
    return axes


def emptied(axes):
    """Axes of a moving layer without what was drawn in them; ticks and frame stay."""
    for artist in (*axes.lines, *axes.patches, *axes.texts, *axes.collections, *axes.images):
        artist.remove()
    if axes.get_legend():
        axes.get_legend().remove()
    axes.relim()
    return axes


def in_lines(heading, axes, share=1.0) -> str:
    """A heading broken into lines as wide as its axes, or a share of them."""
    width_in = share * axes.get_position().width * axes.figure.get_figwidth()
    return fill(heading, round(_LETTERS_AN_IN * width_in))


def layer(figure) -> str:
    """The inside of the figure's SVG, its names made unique so that pictures do not disturb each other."""
    buffer = StringIO()
    with rc_in_use():
        figure.savefig(buffer, format="svg", transparent=True, metadata={"Date": None, "Creator": None})
    svg = buffer.getvalue()
    inside = svg[svg.index(">", svg.index("<svg")) + 1 : svg.rindex("</svg>")]
    inside = re.sub(r"<metadata>.*?</metadata>", "", inside, flags=re.S)
    inside = _IDS.sub("", inside).replace(_UNSMOOTHED, "")
    inside = _SIZE.sub(_WIDER, inside)
    mark = f"b{next(_number)}-"
    inside = re.sub(r' id="([^"]+)"', rf' id="{mark}\1"', inside)
    inside = re.sub(r'href="#([^"]+)"', rf'href="#{mark}\1"', inside)
    return re.sub(r"url\(#([^)]+)\)", rf"url(#{mark}\1)", inside)


def svg(layers, width_in, height_in, alt) -> str:
    """One inline picture from its layers, with its point in words for those who cannot see it."""
    width, height = min(width_in, _widest_in) * 72.0, height_in * 72.0
    left, right, above = _ROOM_PT if width_in > _widest_in else (0.0, 0.0, 0.0)
    wide, high = left + width + right, above + height
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" role="img" '
        f'aria-label="{escape(alt, quote=True)}" viewBox="{-left:g} {-above:g} {wide:g} {high:g}" '
        f'width="{wide:g}pt" height="{high:g}pt">'
        + "".join(f"{LAYER}{inside}</g>" for inside in layers)
        + "</svg>"
    )
