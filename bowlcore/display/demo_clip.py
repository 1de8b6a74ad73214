"""Six frames of the demo clip with the clicks on them, and what the fit says."""

import numpy as np

from bowlcore.coaching import demo_clip
from bowlcore.coaching.spin_axis import CAMERAS
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, starting
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, emptied, layer, new_axes, new_figure, svg

SIZE = (11.5, 1.95)
_SHOWN = 6


def demo_clip_panel(**start):
    """Clicked marks on a clip drawn by this course; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    with starting(start) as at:
        main = [
            Number("count", "Frames clicked", "", 4, 16, 1, at("count", 12)),
            Number("noise_px", "Click error", "pixels", 0.5, 8, 0.5, at("noise_px", 1.5)),
            Number("radius_px", "Ball's radius", "pixels", 20, 120, 10, at("radius_px", 80)),
            Number("frames_per_s", "Clip", "frames a second", 30, 240, 30, at("frames_per_s", 120)),
        ]
        fold = [Choice("camera", "Camera", list(CAMERAS), at("camera", "behind"))]
    return Panel("demo_clip_panel", draw, main, {"Camera": fold})


def draw(count, noise_px, radius_px, frames_per_s, camera, metric=False, hand="right") -> Drawn:
    """The frames with the clicked outline and tape, the sentence and the truth."""
    told = demo_clip.answer(count, noise_px, radius_px, frames_per_s, camera)
    clicks = told.clicks.clicks
    figure, places = _moving(min(_SHOWN, len(clicks)))
    chosen = np.linspace(0, len(clicks) - 1, len(places)).round().astype(int)
    for axes, k in zip(places, chosen, strict=True):
        _frame(emptied(axes), told.clip, clicks[k])
    alt = f"{told.sentence} Picture: six frames of a drawn clip; a circle on the ball's outline and a cross on the tape."
    return Drawn(svg([layer(figure)], *SIZE, alt), told.sentence, told.rows)


@drawn_once(maxsize=_SHOWN)
def _moving(shown):
    """The figure, with axes for so many frames."""
    figure = new_figure(*SIZE)
    return figure, [new_axes(figure, 0.003 + i / _SHOWN, 0.0, 0.16, 0.87, bare=True) for i in range(shown)]


def _frame(axes, clip, click):
    """One frame; what was clicked is drawn over it."""
    axes.imshow(clip.frame(click.frame), interpolation="nearest")
    around = np.linspace(0, 2 * np.pi, 60)
    (x, y), r = click.centre_px, click.radius_px
    axes.plot(
        x + r * np.cos(around), y + r * np.sin(around), color="white", linewidth=1.0, linestyle=(0, (3, 3))
    )
    axes.plot(*click.mark_px, marker="+", color=style.VERMILLION, markersize=11, markeredgewidth=1.8)
    axes.set_title(f"frame {click.frame}", fontsize=style.TEXT_PT, y=1.0)
