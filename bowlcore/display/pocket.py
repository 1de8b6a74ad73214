"""Was that a good hit? The deck from above for one entry."""

from bowlcore.coaching import pocket
from bowlcore.display.controls import Number, starting
from bowlcore.display.deck_figure import SIZE, DeckPicture, deck_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import drawn_once, layer, svg
from bowlcore.motion.units import KMH_PER_MPH


def pocket_panel(**start):
    """One entry into the rack as a live panel; keyword arguments are starting values of its controls.

    Raises ValueError when a name or a value does not belong to a control.
    """
    kmh = ("km/h", KMH_PER_MPH, 0.5)
    with starting(start) as at:
        main = [
            Number("entry_board", "Comes in on", "board", 10, 30, 0.5, at("entry_board", 17.5)),
            Number("entry_angle_deg", "Entry angle", "degrees", 0, 8, 0.5, at("entry_angle_deg", 4.5)),
            Number(
                "speed_at_pins_mph", "Speed at the pins", "mph", 5, 17, 0.5, at("speed_at_pins_mph", 14), kmh
            ),
            Number("ball_lb", "Ball weight", "lb", 6, 16, 1, at("ball_lb", 15)),
        ]
    return Panel("pocket_panel", draw, main)


def draw(metric=False, hand="right", **v) -> Drawn:
    """Picture, sentence and table of the entry."""
    told = pocket.answer(**v, metric=metric, hand=hand)
    picture = _picture()
    picture.show(told, hand)
    alt = (
        f"{told.sentence} Picture: the pin deck from above with the ball's way and, on each pin, how often it stands; "
        "beside it the commonest leaves as bars with their intervals."
    )
    return Drawn(
        svg([deck_background(metric, hand), layer(picture.figure)], *SIZE, alt), told.sentence, told.rows
    )


@drawn_once(maxsize=1)
def _picture():
    return DeckPicture()
