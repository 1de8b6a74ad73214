"""The table of published spares beside this model's bounds."""

from bowlcore.coaching import published_spares
from bowlcore.display.panel import Drawn, Panel


def published_spares_panel():
    """Published spare counts beside the model's bounds."""
    return Panel("published_spares_panel", draw, [], open_table=True)


def draw(metric=False, hand="right") -> Drawn:
    """No picture: the table is the point."""
    sentence, rows = published_spares.answer()
    return Drawn("", sentence, rows)
