"""Rev rate, axis rotation and axis tilt from clicked marks, all frames together, with 90 % intervals.

The ball turns about one axis that swings a little (friction turns it); the camera sees it from afar. Rotation
and tilt hold for the middle of the clicked frames.
"""

from dataclasses import dataclass

import numpy as np

from bowlcore.coaching import words
from bowlcore.coaching.clip_marks import ClickedClip
from bowlcore.coaching.least_squares import bounds, smallest
from bowlcore.coaching.measuring import Measured, measured
from bowlcore.coaching.spin_axis import steady_spin, view
from bowlcore.motion.units import RPM_RADS

FEWEST = 6  # clicked frames
_CLICK_PX = 1.5  # the size of a click's error, only used to weigh what is known of the swing
_SWING, _SWING_ERROR = np.radians([-8.0, 10.0])  # the axis on oil [rad/s]; from this model's own lanes
_WIDEST = {
    "axis_rotation_deg": 15.0,
    "axis_tilt_deg": 15.0,
    "rev_rate_rpm": 0.12,
}  # half an interval; revs: share
_STARTS = 10
_ROUND_AXIS = 12.0  # degrees: a mark nearer to the axis hardly moves
_HARDLY = 0.1  # radii: a tape that stays within this stretch does not move
_ALIKE = 60.0  # degrees: all marks within this stretch of one turn show one phase only
_CLOSER = (
    "click more frames, some with the tape near the middle of the ball",
    "click some frames close together",
)
_UNSURE = 5.0  # so many standard errors: an answer that fits nearly as well counts as a second one


class CannotTell(ValueError):
    """The frames do not fix the spin; the sentence says why and what to do."""


@dataclass(frozen=True)
class Interval:
    """A number with its 90 % interval, in the unit of its name."""

    name: str
    value: float
    low: float
    high: float

    @property
    def as_measured(self) -> Measured:
        """The same with one standard deviation."""
        return measured(self.name, self.value, (self.high - self.low) / (2 * 1.645))


@dataclass(frozen=True)
class Fitted:
    """What the clicked frames say.

    turns_seen : between the first and the last clicked frame
    middle_frame : rotation and tilt hold here
    misfit_px : of a click, root mean square
    """

    rev_rate: Interval
    rotation: Interval
    tilt: Interval
    turns_seen: float
    middle_frame: float
    misfit_px: float
    sentence: str

    @property
    def by_name(self):
        """The three intervals by the names that `Release` has for them."""
        return {one.name: one for one in (self.rotation, self.tilt, self.rev_rate)}


def fit_clip(clip: ClickedClip) -> Fitted:
    """Fit the spin to the clicks.

    Returns
    -------
    Fitted
        Intervals by profile likelihood with the click error estimated from the clicks themselves.

    Raises
    ------
    CannotTell
        Too few frames, less than half a turn, one phase only, the mark on the axis or out of view, two
        answers that fit alike, or an interval too wide to be of use.
    """
    if len(clip.clicks) < FEWEST:
        raise CannotTell(f"{len(clip.clicks)} frames are clicked; click at least {FEWEST} that show the tape")
    apart = clip.offset_px / clip.radius_px[:, None]
    if np.ptp(apart, axis=0).max() < _HARDLY:
        raise CannotTell(
            "the tape stands nearly the same in every clicked frame; click frames between them, or, if it never moves, "
            "put the tape a hand's breadth away from the axis"
        )
    problem = _Problem(clip)
    spare = 2 * len(clip.clicks) - 5  # two for a click and one for the swing, less six numbers
    answers = sorted(
        (smallest(problem.misfit, start, spare) for start in problem.starts()), key=lambda a: a.total
    )
    answers = [answer for answer in answers if problem.sensible(answer.at)]
    if not answers:
        raise CannotTell(
            "no forward roll fits these clicks; is the camera's place right, and each frame's number?"
        )
    best = answers[0]
    _refuse_what_cannot_be_told(problem, best, answers)
    found = {}
    for i, name in enumerate(("axis_rotation_deg", "axis_tilt_deg", "rev_rate_rpm")):
        low, high = bounds(problem.misfit, best, i)
        low, value, high = (problem.public(i, x) for x in (low, best.at[i], high))
        found[name] = Interval(name, value, low, high)
        half = (high - low) / 2.0 / (value if name == "rev_rate_rpm" else 1.0)
        if not half <= _WIDEST[name]:
            raise CannotTell(
                f"these frames leave the {name.rsplit('_', 1)[0].replace('_', ' ')} open; click more frames, "
                "spread over more than a turn, with the tape well away from the rim"
            )
    turns = problem.turned(best.at) / (2 * np.pi)
    sentence = _told(found, turns)
    return Fitted(
        found["rev_rate_rpm"], found["axis_rotation_deg"], found["axis_tilt_deg"],
        turns, problem.middle_frame, problem.misfit_px(best.at), sentence,
    )  # fmt: skip


def _told(found, turns):
    parts = []
    for name, one in found.items():
        show = words.revs if name == "rev_rate_rpm" else words.degrees
        low, high = show(one.low), show(one.high)
        limits = f" ({low.split(' ')[0]} to {high})" if low != high else ""
        parts.append(f"{name.rsplit('_', 1)[0].replace('_', ' ')} {show(one.value)}{limits}")
    return (
        f"In the middle of the clicked frames: {'; '.join(parts)}. Nine times of ten the truth lies within these "
        f"limits, if the clicks are careful; {turns:.1f} turns were seen."
    )


def _refuse_what_cannot_be_told(problem, best, answers):
    if problem.turned(best.at) < np.pi:
        raise CannotTell("fewer than half a turn is seen; click frames further apart, or film for longer")
    spread = np.degrees(problem.phases_apart(best.at))
    if spread < _ALIKE:
        raise CannotTell("the tape stands nearly the same in every clicked frame; click frames between them")
    if problem.mark_from_axis_deg(best.at) < _ROUND_AXIS:
        raise CannotTell(
            "the tape sits on the axis and hardly moves; put it a hand's breadth away from there"
        )
    for other in answers[1:]:
        same_spin = abs(other.at[2] / best.at[2] - 1.0) < 0.05
        same_axis = np.abs(other.at[:2] - best.at[:2]).max() < np.radians(8.0)
        if (same_spin and same_axis) or other.total > best.total * (1.0 + _UNSURE**2 / best.spare):
            continue
        i, say = (0, words.degrees) if same_spin else (2, words.revs)
        one, two = (say(problem.public(i, answer.at[i])) for answer in (best, other))
        if one == two:
            i, (one, two) = 1, (words.degrees(problem.public(1, answer.at[1])) for answer in (best, other))
        name = ("axis rotation", "axis tilt", "rev rate")[i]
        raise CannotTell(f"two answers for the {name} fit alike ({one} and {two}); {_CLOSER[i == 2]}")


class _Problem:
    """Clicks as residuals in pixels of a model with six numbers.

    Turn and tilt of the axis at the middle of the clip [rad], spin [rad/s], swing of the axis [rad/s], and
    where the mark then is: a vector, held to unit length by a residual of its own.
    """

    def __init__(self, clip):
        self.clip = clip
        times = clip.times_s
        self.middle_frame = float(times[0] + times[-1]) / 2.0 * clip.frames_per_s
        self.times = times - (times[0] + times[-1]) / 2.0
        self.radius, self.offset = clip.radius_px, clip.offset_px
        self.view = view(clip.camera, clip.hand)
        flat = self.offset / self.radius[:, None]
        size = np.hypot(*flat.T)
        flat = flat / np.maximum(size, 1.0)[:, None]
        deep = np.sqrt(np.maximum(1.0 - (flat**2).sum(axis=1), 0.0))
        self.lifted = np.column_stack([flat, deep]) @ self.view  # on the near side of the ball, lane frame

    def _turned(self, at):
        return steady_spin(at[:, 0], at[:, 1], at[:, 2], at[:, 3], self.times)

    def misfit(self, at):
        """(k, 7) numbers to (k, m) residuals in pixels: clicks, what is known of the swing, and bounds."""
        mark = at[:, 4:]
        size = np.sqrt((mark**2).sum(axis=1, keepdims=True))
        seen = (self._turned(at) @ (mark / size)[:, None, :, None])[..., 0] @ self.view.T
        apart = seen[..., :2] * self.radius[:, None] - self.offset
        behind = np.minimum(seen[..., 2], 0.0) * self.radius  # a mark that is clicked is on the near side
        swing = _CLICK_PX * (at[:, 3:4] - _SWING) / _SWING_ERROR
        return np.concatenate([apart.reshape(len(at), -1), swing, behind, size - 1.0], axis=1)

    def starts(self):
        """Starting points: the grid's best, well apart from each other."""
        span = self.times[-1] - self.times[0]
        spin = np.arange(60.0, 720.0, max(16.0 / span, 3.0)) * RPM_RADS
        turn, up = np.radians(np.arange(-75, 121, 15.0)), np.radians(np.arange(-20, 71, 15.0))
        grid = np.stack(np.meshgrid(turn, up, spin, indexing="ij"), axis=-1).reshape(-1, 3)
        back = np.concatenate([self._together(part) for part in np.array_split(grid, len(grid) // 2000 + 1)])
        order, taken = np.argsort(-np.linalg.norm(back, axis=1))[:400], []
        near = np.array([0.5, 0.5, 1.5 * (spin[1] - spin[0])])
        for i in order:
            if all(np.any(np.abs(grid[i] - grid[j]) > near) for j in taken):
                taken.append(i)
            if len(taken) == _STARTS:
                break
        return [np.array([*grid[i], _SWING, *(back[i] / np.linalg.norm(back[i]))]) for i in taken]

    def _together(self, axis):
        """Sum of the lifted marks turned back to the middle of the clip: long where they fall together."""
        at = np.column_stack([axis, np.full(len(axis), _SWING)])
        turned = steady_spin(at[:, 0], at[:, 1], at[:, 2], at[:, 3], self.times)
        return np.einsum("knij,ni->kj", turned, self.lifted)

    def sensible(self, at):
        return -np.pi / 2 <= at[0] <= 2.4 and abs(at[1]) < 1.5 and 30 * RPM_RADS < at[2] < 800 * RPM_RADS

    def public(self, i, value):
        """A number of the fit in the trade's unit."""
        if i == 2:
            return float(value / RPM_RADS)
        return float(np.degrees(value)) - (self.clip.heading_deg if i == 0 else 0.0)

    def turned(self, at):
        """Whole turn from the first to the last clicked frame [rad]."""
        return float(at[2] * (self.times[-1] - self.times[0]))

    def phases_apart(self, at):
        """The shortest stretch of one turn that holds all clicked phases [rad]."""
        phase = np.sort((at[2] * self.times) % (2 * np.pi))
        gaps = np.diff(np.r_[phase, phase[0] + 2 * np.pi])
        return float(2 * np.pi - gaps.max())

    def mark_from_axis_deg(self, at):
        """Distance of the mark from the nearer end of the axis."""
        axis = np.array([-np.cos(at[1]) * np.sin(at[0]), np.cos(at[1]) * np.cos(at[0]), np.sin(at[1])])
        return float(np.degrees(np.arccos(min(abs(at[4:] @ axis) / np.linalg.norm(at[4:]), 1.0))))

    def misfit_px(self, at):
        apart = self.misfit(at[None])[0][: 2 * len(self.times)]
        return float(np.sqrt(np.mean(apart**2)))
