"""The table of moves: what each is worth on a worn lane, for four bowlers."""

from bowlcore.coaching import which_move
from bowlcore.display.panel import Drawn, Panel


def which_move_panel():
    """Balls in the pocket after each of the usual moves; the same for either hand."""
    return Panel("which_move_panel", draw, [], open_table=True)


def draw(metric=False, hand="right") -> Drawn:
    """No picture: the table is the point."""
    sentence = (
        "Balls in the pocket after each move, on the left lane after three games in which nobody moved."
    )
    return Drawn("", sentence, which_move.rows())
