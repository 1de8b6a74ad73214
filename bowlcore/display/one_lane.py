"""One lane with one path: the picture that several panels share."""

from bowlcore.coaching import words
from bowlcore.display import style
from bowlcore.display.lane_figure import LanePaths, lanes_background
from bowlcore.display.picture import drawn_once, layer, new_figure, svg

SIZE = (11.5, 3.1)
PLACE = (0.05, 0.155, 0.93, 0.735)


def one_lane(release, path, sentence, background, metric, hand) -> str:
    """SVG of a path over a lane; `background` is a pattern's name, or the end of two zones [ft]."""
    figure, lane = _moving()
    title = f"{words.line(release)} at the arrows, {words.launch(release.launch_heading_deg)}"
    lane.show(title, path, metric)
    alt = f"{sentence} Picture: the lane on its side with the ball's path, distance from the foul line against board."
    return svg([lanes_background(SIZE, (PLACE,), background, metric, hand), layer(figure)], *SIZE, alt)


@drawn_once(maxsize=1)
def _moving():
    figure = new_figure(*SIZE)
    return figure, LanePaths(figure, PLACE, style.BLACK)
