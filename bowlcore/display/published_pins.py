"""The table of published and computed counts."""

from bowlcore.coaching import published_pins
from bowlcore.display.panel import Drawn, Panel


def published_pins_panel():
    """Published counts of first balls beside the model's."""
    return Panel("published_pins_panel", draw, [], open_table=True)


def draw(metric=False, hand="right") -> Drawn:
    """No picture: the table is the point."""
    sentence = "Published counts of televised finals, right-handers' pins, beside this model's."
    return Drawn("", sentence, published_pins.rows())
