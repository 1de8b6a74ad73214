"""What the path lab answers: one release on the same line and re-aimed, and every line to the pocket."""

from dataclasses import dataclass, replace
from functools import lru_cache

from bowlcore.coaching import own_lanes, telling, words
from bowlcore.coaching.lines import Lines, line_within_reach, lines_to_pocket
from bowlcore.coaching.scattered import Scattered, scattered, strikes_and_leave
from bowlcore.motion.ball import Ball, load_balls
from bowlcore.motion.oil import load_pattern
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import RANGES, Release
from bowlcore.motion.surface import OiledLane

_ON = {"same line": "on this line", "re-aimed": "re-aimed"}
SHOWS = ("same line", "re-aimed", "both")


@dataclass(frozen=True)
class Shot:
    """A release with its path, a name, and what it does with an ordinary scatter."""

    name: str
    release: Release
    path: BallPath
    odds: Scattered


@dataclass(frozen=True)
class LabAnswer:
    """Everything a picture of the lab needs."""

    same: Shot
    aimed: Shot | None
    lines: Lines
    lead: str
    sentence: str
    rows: list


def lane_of(pattern: str, house_percent: float = 0.0) -> OiledLane:
    """A shipped pattern, or a lane of one's own, that plays looser (+) or tighter (-) by so many percent."""
    lane = own_lanes.own_lane(pattern) if pattern.startswith(own_lanes.MARK) else _shipped(pattern)
    return _scaled(lane, house_percent) if house_percent else lane


@lru_cache(maxsize=32)
def _shipped(pattern):
    return OiledLane(load_pattern(pattern))


@lru_cache(maxsize=32)
def _scaled(lane, house_percent):
    return replace(lane, law=lane.law.scaled(1.0 + house_percent / 100.0))


@lru_cache(maxsize=32)
def ball_of(name: str) -> Ball:
    """A demo ball by name."""
    return load_balls()[name]


def as_a_hand_does_it(release: Release, steps: float, rotation_deg: float, tilt_deg: float, revs_rpm: float):
    """Coming round the ball by so many steps (negative: staying behind it): three numbers move together.

    The amounts a step are the person's own; what a real hand does was not measured here.
    """

    def moved(name, by):
        low, high, _ = RANGES[name]
        return min(max(getattr(release, name) + steps * by, low), high)

    return replace(
        release,
        axis_rotation_deg=moved("axis_rotation_deg", rotation_deg),
        axis_tilt_deg=moved("axis_tilt_deg", tilt_deg),
        rev_rate_rpm=moved("rev_rate_rpm", revs_rpm),
    )


def _shots(releases, surface, ball):
    """Named releases followed on a surface, alone and with an ordinary scatter."""
    odds = scattered(releases.values(), surface, ball)
    return [
        Shot(name, release, simulate(release, surface, ball), found)
        for (name, release), found in zip(releases.items(), odds, strict=True)
    ]


def answer(
    release, surface, ball, *, show="both", metric=False, kept: Shot | None = None, hand_steps=0
) -> LabAnswer:
    """The lab's picture in numbers and words.

    Parameters
    ----------
    release, surface, ball : as for `simulate`
    show : "same line", "re-aimed" or "both"
    metric : bool
        Metres and km/h in the words.
    kept : Shot
        An earlier shot to compare with.
    hand_steps : float
        Not 0 when the release was moved as a hand moves it: the words then give the numbers.

    Raises
    ------
    ValueError
        From `simulate`, in words.
    """
    lines = lines_to_pocket(release, surface, ball)
    line = line_within_reach(release, lines, surface, ball)
    both = {"same line": release} | ({} if line is None else {"re-aimed": line})
    same, aimed = [*_shots(both, surface, ball), None][:2]
    parts = []
    if hand_steps:
        parts.append(
            f"With this hand: rotation {words.degrees(release.axis_rotation_deg)}, "
            f"tilt {words.degrees(release.axis_tilt_deg)}, {words.revs(release.rev_rate_rpm)}."
        )
    if show == "re-aimed":
        lead = _aimed_lead(aimed)
    elif same.path.gutter_ft == same.path.gutter_ft:
        lead = f"On the same line the ball {telling.lost(same.path, metric)}."
    else:
        at = f"{words.board(same.path.entry_board)} at {telling.entry(same.path)}"
        lead = f"On the same line: {at}, {words.hit(same.path.entry_board)}."
        parts.append(f"It {telling.tell_way(same.path, metric)}.")
    if show != "same line":
        if show == "both":
            parts.append(_aimed_lead(aimed))
        if aimed is not None:
            roll = f"That ball {words.rolling(aimed.path.roll_start_ft, metric)}."
            parts.append(roll if show == "both" else f"It {telling.tell_way(aimed.path, metric)}.")
            i = int(lines.entry_angle_deg.argmax())
            if words.to_half(lines.entry_angle_deg[i]) > words.to_half(aimed.path.entry_angle_deg):
                parts.append(
                    f"The steepest of all lines tried starts from {words.board(lines.laydown_board[i])}: "
                    f"{words.degrees(lines.entry_angle_deg[i])}."
                )
    if kept is not None:
        parts.append(_against(kept, same if show != "re-aimed" or aimed is None else aimed))
    shown = [shot for shot, hidden in ((same, "re-aimed"), (aimed, "same line")) if shot and show != hidden]
    parts.append(_odds_words(shown))
    rows = [_row(shot, metric) for shot in [*shown, kept] if shot]
    return LabAnswer(same, aimed, lines, lead, " ".join([lead, *parts]), rows)


def _odds_words(shown):
    told = [f"{_ON[shot.name]} {strikes_and_leave(shot.odds)}" for shot in shown]
    return f"With an ordinary scatter, in this pin model: {'; '.join(told)}."


def _row(shot, metric):
    leave = shot.odds.leave
    return telling.row(shot.name, shot.release, shot.path, metric) | {
        "strikes in 100, this pin model": words.between(*shot.odds.odds.interval),
        "left most often": f"{leave.text} ({words.percent(shot.odds.leave_share)})" if leave else "",
    }


def _aimed_lead(aimed):
    if aimed is None:
        return "Re-aimed: of the lines tried, from board 4 to 32, none brings this release to the pocket."
    line = f"laid down on {words.board(aimed.release.laydown_board)}, over {words.board(aimed.release.target_board)}"
    return f"Re-aimed to the pocket ({line}): {telling.entry(aimed.path)}."


def _against(kept, now):
    """One comparison with the kept shot, in what a coach can see."""
    a, b = kept.path, now.path
    if a.gutter_ft == a.gutter_ft or b.gutter_ft == b.gutter_ft:
        return "Against the kept shot, nothing can be compared: one of the two is in the gutter."
    boards = words.to_half(b.entry_board - a.entry_board)
    angle = words.to_half(b.entry_angle_deg - a.entry_angle_deg)
    higher = f"{words.count(abs(boards), 'board')} {'higher' if boards > 0 else 'lower'}"
    steeper = f"{words.degrees(abs(angle))} {'steeper' if angle > 0 else 'flatter'}"
    seen = [text for text, size in ((higher, abs(boards)), (steeper, abs(angle))) if size]
    line = "On the same line, against" if now.name == "same line" else "Against"
    return f"{line} the kept shot: {' and '.join(seen) or 'no difference that an eye could see'}."
