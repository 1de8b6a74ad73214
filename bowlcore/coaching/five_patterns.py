"""One release on five patterns: it bends in different places, and once it rolls it goes in one direction."""

from dataclasses import dataclass
from math import isfinite

from bowlcore.coaching import telling, words
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.skid_hook_roll import whole_turn_deg
from bowlcore.motion.ball import Ball
from bowlcore.motion.path import BallPath, simulate

_SEEN_DEG = 0.25  # half of the finest step on a screen
PATTERNS = ("short", "wet_dry", "house", "flat", "long_heavy")


@dataclass(frozen=True)
class OnPattern:
    name: str
    title: str
    path: BallPath


@dataclass(frozen=True)
class FiveAnswer:
    """shots : one a pattern; final_deg : the direction once it rolls, by pencil, positive in."""

    shots: list[OnPattern]
    final_deg: float
    sentence: str
    rows: list


def answer(release, ball=None, *, metric=False) -> FiveAnswer:
    """A release on each of PATTERNS, all else the same.

    Raises ValueError from `simulate`, in words.
    """
    ball = Ball() if ball is None else ball
    shots = []
    for name in PATTERNS:
        lane = lane_of(name)
        title = (
            lane.pattern.title.split(":")[0].lower().removesuffix(" shape").replace("long and heavy", "long")
        )
        shots.append(OnPattern(name, title, simulate(release, lane, ball)))
    final = release.launch_heading_deg + whole_turn_deg(release, ball)
    rows = [telling.row(f"{shot.title} shape", release, shot.path, metric) for shot in shots]
    return FiveAnswer(shots, final, _sentence(shots, final, metric), rows)


def _sentence(shots, final, metric):
    lost = [shot for shot in shots if isfinite(shot.path.gutter_ft)]
    rolled = [shot for shot in shots if isfinite(shot.path.roll_start_ft)]
    skids = [shot for shot in shots if shot not in lost and shot not in rolled]
    parts = []
    if rolled:
        where = "On all five shapes" if len(rolled) == len(shots) else f"On the {_named(rolled)}"
        parts.append(
            f"{where} it rolls before the pins, and there it runs in {'this' if len(rolled) == 1 else 'the same'} direction: "
            f"{_direction(final)}."
        )
    nearly = [shot for shot in skids if abs(shot.path.entry_angle_deg - final) < _SEEN_DEG]
    skids = [shot for shot in skids if shot not in nearly]
    if nearly:
        parts.append(
            f"On the {_named(nearly)} it still skids at the pins, but has as good as come to {_direction(final)}."
        )
    if skids:
        so_far = [(shot.title, _direction(shot.path.entry_angle_deg)) for shot in skids]
        ends = (
            f"{so_far[0][1]} so far"
            if len(skids) == 1
            else ", ".join(f"{title} {way}" for title, way in so_far)
        )
        parts.append(
            f"On the {_named(skids)} it still skids at the pins, before it has come to its final {_direction(final)}: {ends}."
        )
    if lost:
        parts.append(f"On the {_named(lost)} it falls in the gutter.")
    parts += [told for told in (_bends(shots, metric), _boards(shots)) if told]
    return " ".join(parts)


def _bends(shots, metric):
    turned = sorted(
        (shot for shot in shots if telling.has_breakpoint(shot.path)),
        key=lambda shot: shot.path.breakpoint_ft,
    )
    if len(turned) < 2:
        return ""
    first, last = turned[0], turned[-1]
    return (
        f"It bends in different places: the breakpoint lies at {words.distance(first.path.breakpoint_ft, metric)} on the "
        f"{first.title} shape and at {words.distance(last.path.breakpoint_ft, metric)} on the {last.title} one."
    )


def _boards(shots):
    there = sorted(
        (shot for shot in shots if not isfinite(shot.path.gutter_ft)), key=lambda shot: shot.path.entry_board
    )
    if len(there) < 2:
        return ""
    low, high = there[0], there[-1]
    return (
        f"It comes in on {words.board(low.path.entry_board)} ({low.title}) to {words.board(high.path.entry_board)} "
        f"({high.title})."
    )


def _named(shots):
    titles = [shot.title for shot in shots]
    if len(titles) == 1:
        return f"{titles[0]} shape"
    return f"{', '.join(titles[:-1])} and {titles[-1]} shapes"


def _direction(deg):
    if abs(deg) < _SEEN_DEG:
        return "straight down the boards"
    return f"{words.degrees(abs(deg))} {'in' if deg > 0 else 'out'}"
