"""A path told in one sentence, and as a row of a table."""

from math import isfinite

import numpy as np

from bowlcore.coaching import words


def tell(path, metric=False) -> str:
    """What the ball does, foul line to pins, without a subject: "starts to hook at 40 ft, ..."."""
    if isfinite(path.gutter_ft):
        return lost(path, metric)
    return (
        f"{', '.join(_places(path, metric))} and comes in on {words.board(path.entry_board)} at {entry(path)}"
    )


def tell_way(path, metric=False) -> str:
    """The same of a ball that stays on the lane, without where it comes in."""
    *before, last = _places(path, metric)
    return f"{', '.join(before)} and {last}" if before else last


def lost(path, metric=False) -> str:
    """A gutter ball: which gutter, and where."""
    return f"goes into the {gutter(path)} at {words.distance(path.gutter_ft, metric)}"


def _places(path, metric):
    """Hook, breakpoint and roll, in the order in which they come."""
    places = []
    if isfinite(path.hook_start_ft):
        where = words.distance(path.hook_start_ft, metric)
        places.append((path.hook_start_ft, f"{first_sign(path)} at {where}"))
    if has_breakpoint(path):
        where = words.distance(path.breakpoint_ft, metric)
        places.append(
            (path.breakpoint_ft, f"has its breakpoint on {words.board(path.breakpoint_board)} at {where}")
        )
    return [text for _, text in sorted(places)] + [words.rolling(path.roll_start_ft, metric)]


def gutter(path) -> str:
    """Which gutter: the bowler's own, or the far one."""
    on_lane = path.board[np.isfinite(path.board)]
    return "gutter" if on_lane[-1] < words.CENTRE_BOARD else "far gutter"


def has_breakpoint(path) -> bool:
    """True if the ball goes out, turns on the lane, and comes back in so that an eye can see it."""
    return 0 < path.breakpoint_ft < 60 and path.entry_angle_deg >= 0.25


def first_sign(path) -> str:
    """What the first fifth of friction's work looks like: a hook, or hardly anything."""
    turned = np.nanmax(np.abs(path.heading_deg - path.heading_deg[0]))
    return "starts to hook" if turned >= 0.5 else "feels the lane"


def entry(path) -> str:
    """Entry angle in words; a ball that runs outwards at the pins says so."""
    if path.entry_angle_deg < -0.25:
        return f"{words.degrees(-path.entry_angle_deg)}, moving out"
    return words.degrees(abs(path.entry_angle_deg))


def row(name, release, path, metric=False) -> dict:
    """One shot as a row, column titles with units."""
    far = "m" if metric else "ft"

    def place(feet):
        return words.distance(feet, metric).rsplit(" ", 1)[0] if isfinite(feet) else "no"

    gone = isfinite(path.gutter_ft)
    return {
        "shot": name,
        "feet (laydown board)": words.halves(release.laydown_board),
        "target (board)": words.halves(release.target_board),
        "launch": words.launch(release.launch_heading_deg),
        f"starts to hook ({far})": place(path.hook_start_ft),
        "breakpoint (board)": words.halves(path.breakpoint_board),
        f"breakpoint ({far})": place(path.breakpoint_ft),
        f"rolls from ({far})": place(path.roll_start_ft),
        "entry (board)": "gutter" if gone else words.halves(path.entry_board),
        "entry angle (degrees)": "" if gone else words.halves(path.entry_angle_deg),
        f"speed at pins ({'km/h' if metric else 'mph'})": (
            "" if gone else words.speed(path.entry_speed_mph, metric).split(" ")[0]
        ),
    }
