"""Numbers as a coach says them: half a board, half a degree, ten rpm, whole feet; trade or metric.

Nothing finer than an eye can see goes on a screen; signs become "out" and "in", "light" and "high".
"""

from math import isfinite

from bowlcore.motion.units import FOOT_M, KMH_PER_MPH
from bowlcore.rack.pins import BOARD_IN, CENTRE_BOARD, TOUCH_DISTANCE_IN

POCKET_BOARD = 17.5  # at 60 ft; USBC study of 2008, known second-hand
POCKET_REACH = 1.5  # boards either side that this course calls the pocket
IN_TIME_FT = 50.0  # a ball that rolls from here on rolls in time: our choice
_REACH = TOUCH_DISTANCE_IN / BOARD_IN  # boards either side of the head pin within which a ball meets it


def to_half(value: float) -> float:
    """The nearest half: the finest step a coach can see."""
    return round(2.0 * value) / 2.0 + 0.0  # no minus zero


def halves(value: float) -> str:
    """To the nearest half, without a needless decimal: 17, 17.5."""
    rounded = to_half(value)
    return f"{rounded:.0f}" if rounded == int(rounded) else f"{rounded:.1f}"


def count(value: float, noun: str) -> str:
    """ "1 board", "2.5 boards"."""
    text = halves(value)
    return f"{text} {noun}{'' if text == '1' else 's'}"


def times(number: int) -> str:
    """ "once", "twice", "3 times"."""
    return {1: "once", 2: "twice"}.get(number, f"{number} times")


def board(value: float) -> str:
    return f"board {halves(value)}"


def degrees(value: float) -> str:
    return count(value, "degree")


def distance(feet: float, metric: bool = False) -> str:
    return f"{feet * FOOT_M:.1f} m" if metric else f"{feet:.0f} ft"


def speed(mph: float, metric: bool = False) -> str:
    return f"{mph * KMH_PER_MPH:.0f} km/h" if metric else f"{halves(mph)} mph"


def step_of_speed(mph: float, metric: bool = False) -> str:
    """A change of speed, which may be finer than a speed is shown: "0.5 mph", "1.5 km/h"."""
    return f"{halves(mph * KMH_PER_MPH)} km/h" if metric else f"{mph:g} mph"


def revs(rpm: float) -> str:
    return f"{round(rpm / 10.0) * 10:.0f} rpm"


def line(release) -> str:
    """Where it is laid down and aimed, for a title: "laid down on 17, over 13"."""
    return f"laid down on {halves(release.laydown_board)}, over {halves(release.target_board)}"


def launch(heading_deg: float) -> str:
    """Launch direction: "1.8 degrees out" (towards the own gutter) or "in"."""
    size = f"{abs(heading_deg):.1f}"
    return "straight" if size == "0.0" else f"{size} degrees {'out' if heading_deg < 0 else 'in'}"


def hit(entry_board: float) -> str:
    """Where it meets the pins, against board 17.5."""
    off = to_half(entry_board) - POCKET_BOARD
    if abs(off) <= POCKET_REACH:
        return "in the pocket"
    boards = count(abs(off), "board")
    if abs(entry_board - CENTRE_BOARD) > _REACH:
        return "past the head pin on the far side" if off > 0 else "past the head pin on the near side"
    return f"{boards} high" if off > 0 else f"{boards} light"


def rolling(roll_start_ft: float, metric: bool = False) -> str:
    """When it rolls: in time, too early, or not before the pins."""
    if not isfinite(roll_start_ft):
        return "is still skidding at the pins"
    where, foot = distance(roll_start_ft, metric), round(roll_start_ft)  # judged as it is shown
    if foot > 59:
        return f"rolls from {where} (just before the pins)"
    return f"rolls from {where} ({'in time' if foot >= IN_TIME_FT else 'too early'})"


def percent(share: float) -> str:
    """A share as a whole percentage."""
    return f"{100.0 * share:.0f} %"


def share_between(low: float, high: float) -> str:
    """An interval first: "between 52 and 76 in 100"."""
    return f"between {between(low, high)} in 100"


def between(low: float, high: float) -> str:
    """Two shares in hundredths: "52 and 76"."""
    return f"{100.0 * low:.0f} and {100.0 * high:.0f}"
