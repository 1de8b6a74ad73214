"""The table of workbook 00: what is true of any ball, and what was chosen."""

from bowlcore.coaching import trust
from bowlcore.display.panel import Drawn, Panel


def trust_panel():
    """The two columns, side by side; follows the units and the hand."""
    return Panel("trust_panel", draw, [], open_table=True)


def draw(metric=False, hand="right") -> Drawn:
    """No picture: the table is the point."""
    sentence = "Left: the laws of motion. Right: our choices, and your lane may differ."
    return Drawn("", sentence, trust.rows(metric, hand))
