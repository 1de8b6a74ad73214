"""Two overlapping bands: what two small groups of balls could really be."""

from bowlcore.display import style
from bowlcore.display.simple_chart import chart

_SHARED, _LOOKS = "#e4e4e4", ((style.BLACK, "o"), (style.BLUE, "D"))
_LETTERS = 26  # that have room beside a band


def _label(name):
    """Own words, which may be long, as far as they have room."""
    name = " ".join(name.split())
    return name if len(name) <= _LETTERS else f"{name[: _LETTERS - 1]}…"


def two_bands(helped, alt, axis, factor=1.0, top=None) -> str:
    """SVG of both groups of a `Helped`; values and bands times `factor`, the shared part in grey."""
    from matplotlib.ticker import MaxNLocator

    groups = helped.before, helped.after
    low = max(group.low for group in groups) * factor
    high = min(group.high for group in groups) * factor

    def paint(axes):
        if high > low:
            axes.axvspan(low, high, color=_SHARED, zorder=0)
            axes.text((low + high) / 2, -0.78, "could be the same", ha="center", va="center")
        for place, (group, (color, mark)) in enumerate(zip(groups, _LOOKS, strict=True)):
            edges = [group.low * factor, group.high * factor]
            axes.plot(edges, [place, place], color=color, linewidth=9, alpha=0.35, solid_capstyle="butt")
            axes.plot(edges, [place, place], color=color, linewidth=0, marker="|", markersize=16)
            if group.balls:
                axes.plot([group.value * factor], [place], color=color, marker=mark, markersize=8)
        axes.set_yticks(range(2), [f"{_label(group.name)}\n{group.balls} balls" for group in groups])
        axes.set_ylim(1.6, -1.1)
        axes.xaxis.set_major_locator(MaxNLocator(6, steps=[1, 2, 5, 10]))
        axes.set_xlim(0, top or 1.15 * max(group.high for group in groups) * factor)
        axes.set_xlabel(f"{axis} (mark: as seen; band: nine chances in ten)")

    return chart(alt, paint, place=(0.17, 0.17, 0.78, 0.78))
