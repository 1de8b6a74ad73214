"""My lane: watched shots, and the model's lane made to play like the real one."""

from bowlcore.coaching import fit_told, own_lanes
from bowlcore.coaching.bowler import Bowler
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.display import style
from bowlcore.display.controls import Choice, Number, Words, starting
from bowlcore.display.lane_figure import LanePaths, lanes_background
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.path_lab import pattern_options
from bowlcore.display.picture import drawn_once, layer, new_figure, svg
from bowlcore.motion.ball import load_balls
from bowlcore.motion.path import simulate
from bowlcore.motion.release import Release
from bowlcore.motion.units import KMH_PER_MPH

SIZE = (11.5, 3.4)
_PLACE = (0.05, 0.14, 0.93, 0.74)
# six made-up shots on a made-up lane that is slicker and longer than the house shape
INVENTED = """17, 13, 9.5, 35, 18.5, 2.52
17.5, 14, 5.5, 37, 15.5, 2.43
17, 13, 7.5, 46, 16.5, 2.60
17.5, 12, 7, 41, 14, 2.49
17.5, 12, 9.5, 47, 13.5, 2.52
17.5, 12.5, 8, 38, 17.5, 2.62"""

_EXAMPLE = "17, 13, 8, 40, 17, 2.50\n17, 13.5, 9, 41, 18.5, 2.45\n17, 12, 7, -, 15, -"


def my_lane_panel(**start):
    """Watched shots as lines of text, and how the lane plays; keyword arguments are starting values.

    Raises ValueError when a name or a value does not belong to a control.
    """
    mph = ("km/h", KMH_PER_MPH, 0.2)
    with starting(start) as at:
        main = [
            Words(
                "shots",
                "Watched shots",
                fit_told.shots_of,
                _EXAMPLE,
                at("shots", INVENTED),
                rows=7,
            ),
            Words("keep_as", "Keep it as", own_lanes.checked_name, "Thursday left", at("keep_as", "")),
        ]
        folds = {
            "Who threw them": [
                Number("speed_mph", "Ball speed", "mph", 8, 24, 0.1, at("speed_mph", 17), mph),
                Number("rev_rate_rpm", "Rev rate", "rpm", 0, 600, 10, at("rev_rate_rpm", 300)),
                Number(
                    "axis_rotation_deg", "Axis rotation", "degrees", -30, 90, 1, at("axis_rotation_deg", 45)
                ),
                Number("axis_tilt_deg", "Axis tilt", "degrees", 0, 60, 1, at("axis_tilt_deg", 13)),
                Choice("ball", "Ball", list(load_balls()), at("ball", "benchmark")),
            ],
            "Shape of the oil": [
                Choice("pattern", "Taken from", pattern_options(), at("pattern", "house")),
            ],
        }
    return Panel("my_lane_panel", draw, main, folds, buttons={"Keep this lane": _keep}, lines=4)


def _keep(panel):
    """Write each fitted lane down under the name typed; the sentence says so."""
    name = panel.values["keep_as"]
    try:
        told = _answer(metric=False, hand=panel.settings.hand, **panel.values)
        kept = [
            own_lanes.keep(
                f"{name} {lane}" if lane else name, panel.values["pattern"], fit.surface.law, fit.longer_ft
            )
            for lane, fit in told.fits.items()
        ]
    except (ValueError, OSError) as problem:
        said = f"Not kept: {problem}."
    else:
        said = f"Kept as {' and '.join(kept)}: panels that are opened from now on have it among their oil patterns."
    panel.memory["kept"] = (panel.values, said)  # said as long as nothing else is changed


def _answer(shots, pattern, ball, metric, hand, keep_as="", **numbers):
    """The answer in `coaching`, for the usual release on the line of the first shot."""
    watched = fit_told.shots_of(shots)
    line = (watched[0].laydown_board, watched[0].arrow_board) if watched else (17.0, 13.0)
    bowler = Bowler(
        Release(**numbers, laydown_board=line[0], target_board=line[1], hand=hand), ball=ball_of(ball)
    )
    title = next(title for title, name in pattern_options() if name == pattern)
    return fit_told.answer(watched, bowler, lane_of(pattern), title, metric)


def draw(pattern, metric=False, hand="right", kept=(None, ""), **values) -> Drawn:
    """The watched shots as marks on the lane, the usual ball on the fitted lane and on the model's."""
    told = _answer(pattern=pattern, metric=metric, hand=hand, **values)
    name, fit = list(told.fits.items())[-1]
    figure, lane = _moving()
    title = f"the usual ball on the {name or 'fitted'} lane (dashes: on the model's; crosses: as watched)"
    lane.show(title, simulate(told.bowler.release, fit.surface, told.bowler.ball), metric)
    model = simulate(told.bowler.release, lane_of(pattern), told.bowler.ball)
    lane.kept.set_data(model.distance_ft, model.board)
    _crosses(lane.axes, [one for one in told.watched if one.lane == name])
    said = f"Press “Keep this lane” to keep it as {values['keep_as']}." if values["keep_as"].strip() else ""
    if kept[0] == {"pattern": pattern, **values}:
        said = kept[1]
    sentence = f"{told.sentence} {said}".strip()
    alt = f"{sentence} Picture: the lane on its side with the watched breakpoints and hits and the usual ball's path."
    drawn = svg([lanes_background(SIZE, (_PLACE,), pattern, metric, hand), layer(figure)], *SIZE, alt)
    return Drawn(drawn, sentence, told.rows)


def _crosses(axes, watched):
    """Breakpoints and hits as somebody saw them."""
    for artist in [one for one in axes.lines if one.get_gid() == "seen"]:
        artist.remove()
    seen = [(one.breakpoint_ft, one.breakpoint_board) for one in watched]
    seen += [(60.0, one.hit_board) for one in watched]
    seen = [(x, y) for x, y in seen if x is not None and y is not None]
    look = {"color": style.VERMILLION, "marker": "x", "markersize": 6, "markeredgewidth": 1.8, "linewidth": 0}
    axes.plot([x for x, _ in seen], [y for _, y in seen], gid="seen", **look)


@drawn_once(maxsize=1)
def _moving():
    figure = new_figure(*SIZE)
    return figure, LanePaths(figure, _PLACE, style.BLACK)
