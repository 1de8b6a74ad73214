"""The table of best rotations: one number does not answer four questions."""

from bowlcore.coaching import best_rotation
from bowlcore.display.panel import Drawn, Panel


def best_rotation_panel():
    """Best rotation in four senses for three bowlers; follows the units and the hand."""
    return Panel("best_rotation_panel", draw, [], open_table=True)


def draw(metric=False, hand="right") -> Drawn:
    """No picture: the table is the point."""
    sentence = "Four questions about rotation, and often four different answers, on the house shape."
    return Drawn("", sentence, best_rotation.rows(metric, hand))
