"""How a real lane plays, from a few watched shots: friction in the oil, friction of the dry, end of the oil.

Weighted least squares. What was seen has the coach's errors; the release is not known exactly either, so its
numbers are fitted along, held by how well they were measured and how much the bowler scatters. The shape of
the oil is taken from a pattern: another shape than this one is not looked for.
"""

from dataclasses import dataclass, replace

import numpy as np

from bowlcore.coaching.bowler import SCATTERED
from bowlcore.coaching.feet import mark_board_of
from bowlcore.coaching.own_lanes import shift_oil
from bowlcore.motion.checks import number_in
from bowlcore.motion.friction_table import FrictionTable
from bowlcore.motion.many import sweep_together
from bowlcore.motion.path import simulate
from bowlcore.motion.release import RANGES
from bowlcore.motion.surface import MU_HIGH, MU_LOW, FrictionLaw, OiledLane

FEWEST, MOST = 3, 40  # watched shots
# the coach's eye, one standard deviation: common practice, no source, as in `perception`
EYE = {
    "laydown_board": 0.5, "arrow_board": 1.0, "breakpoint_board": 2.0, "breakpoint_ft": 4.0, "hit_board": 0.75,
    "time_s": 0.1,
}  # fmt: skip
# how well the bowler's usual numbers are known: three balls measured by eye
KNOWN = {"speed_mph": 0.7, "rev_rate_rpm": 20.0, "axis_rotation_deg": 4.0, "axis_tilt_deg": 3.0}
# what a lane may be before anything was seen, one standard deviation about the believed one (chosen): friction
# in the oil and of the dry as logarithms, end of the oil in feet
BEFORE = np.array([0.4, 0.2, 4.0])
SURE = 1.645  # standard deviations of a 90 % interval
# the lane bends within the doubt: ranges as if it did not held the truth in 85 of 100 made-up cases, not in 90
_BEND = 1.12
_STEP = np.array([0.01, 0.01, 0.1])  # of a derivative, lane
_STEPS = np.array([0.05, 1.0, 0.5, 0.5, 0.05, 0.05])  # of a derivative, release in the order of SCATTERED
_LIMITS = {
    "laydown_board": (1, 39), "arrow_board": (1, 39), "breakpoint_board": (0.5, 39.5), "breakpoint_ft": (0, 60),
    "hit_board": (1, 39), "time_s": (1.3, 6),
}  # fmt: skip
_BOARDS, _FEET = FrictionTable.nodes()


@dataclass(frozen=True)
class Watched:
    """One shot as somebody watched it; None: not seen. Boards from the bowler's own side.

    Parameters
    ----------
    laydown_board, arrow_board : float
        Where the ball was laid down and which board it crossed at the arrows, 1 to 39.
    breakpoint_board, breakpoint_ft : float
        How far out it went, and roughly where down the lane, 0 to 60 ft.
    hit_board : float
        Where it came in, 1 to 39.
    time_s : float
        Foul line to head pin, 1.3 to 6 s.
    lane : "left" or "right"
        Of a pair.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """

    laydown_board: float
    arrow_board: float
    breakpoint_board: float | None = None
    breakpoint_ft: float | None = None
    hit_board: float | None = None
    time_s: float | None = None
    lane: str | None = None

    def __post_init__(self):
        for name, (low, high) in _LIMITS.items():
            value = getattr(self, name)
            if value is not None or name in ("laydown_board", "arrow_board"):
                number_in(name, value, low, high)
        if self.lane not in (None, "left", "right"):
            raise ValueError(f"lane must be left, right or nothing, got {self.lane!r}")


@dataclass(frozen=True)
class LaneFit:
    """What the shots say of one lane.

    surface : the fitted lane, as any panel takes it; longer_ft : how much further its oil reaches
    oil, dry : factors on the two frictions; ends_ft : end of the oil; each (low, middle, high), 90 %
    boards : how many boards higher (+) the bowler's usual ball comes in than on the believed lane, (low,
        middle, high)
    correlations : (3, 3) of oil, dry and end
    learnt : share of the doubt before that is gone, for the three (0: the shots say nothing)
    odd : {number of a shot, from 1: how many standard errors off}, those above 3
    shots : how many were used
    """

    surface: OiledLane
    longer_ft: float
    oil: tuple
    dry: tuple
    ends_ft: tuple
    boards: tuple
    correlations: np.ndarray
    learnt: tuple
    odd: dict
    shots: int


def fit_lane(watched, bowler, believed) -> LaneFit:
    """The lane that makes the model's shots like those watched.

    Parameters
    ----------
    watched : list of Watched
        3 to 40 of one bowler on one lane, each with a breakpoint or a hit.
    bowler : Bowler
        Usual numbers, scatter and ball of the one who threw them.
    believed : OiledLane
        Gives the shape of the oil, and what is expected before.

    Raises
    ------
    ValueError
        In words, for too few or too many shots, or a lane that is no oiled one.
    """
    from scipy.optimize import least_squares

    if not isinstance(believed, OiledLane):
        raise ValueError("the believed lane must be a lane with an oil pattern")
    shots = [one for one in watched if one.hit_board is not None or one.breakpoint_board is not None]
    if not FEWEST <= len(shots) <= MOST:
        raise ValueError(
            f"a lane needs {FEWEST} to {MOST} shots with a hit or a breakpoint board, got {len(shots)}"
        )
    problem = _Problem(shots, bowler, believed)
    found = least_squares(
        problem.apart,
        np.zeros(problem.count),
        jac=problem.slope,
        x_scale="jac",
        max_nfev=30,
        xtol=1e-4,
        ftol=1e-4,
    )
    spread = np.linalg.inv(found.jac.T @ found.jac)[:3, :3] * np.outer(BEFORE, BEFORE) * _BEND**2
    return problem.told(found.x[:3] * BEFORE, spread, found.fun)


def fit_lanes(watched, bowler, believed) -> dict:
    """A fit for each lane of a pair, never their mean: {"left": LaneFit, "right": LaneFit}.

    Raises
    ------
    ValueError
        As `fit_lane`, naming the lane; or when a shot does not say its lane.
    """
    if any(one.lane is None for one in watched):
        raise ValueError("each shot on a pair must say its lane, left or right; one says none")
    found = {}
    for lane in ("left", "right"):
        mine = [one for one in watched if one.lane == lane]
        if mine:
            try:
                found[lane] = fit_lane(mine, bowler, believed)
            except ValueError as problem:
                raise ValueError(f"{lane} lane: {problem}") from None
    return found


def changed(believed, at) -> OiledLane:
    """The believed lane with other frictions and all its oil further down: at = logarithms of two factors, feet."""
    law = believed.law
    dry = float(np.clip(law.dry * np.exp(at[1]), MU_LOW, MU_HIGH))
    oil = float(np.clip(law.oil * np.exp(at[0]), MU_LOW, dry))
    longer_ft = float(np.clip(at[2], -12.0, 12.0))
    return OiledLane(shift_oil(believed.pattern, longer_ft), FrictionLaw(oil, dry, law.scale_um))


class _Problem:
    """Residuals in standard deviations, and their derivatives.

    Unknowns, all in standard deviations of what is expected: three of the lane, four of the release that all
    shots share, and six for each shot.
    """

    def __init__(self, shots, bowler, believed):
        self.shots, self.bowler, self.believed = shots, bowler, believed
        release = bowler.release
        self.usual = np.array([getattr(release, name) for name in SCATTERED], float)
        factor = bowler.spread.factor()
        self.each = np.zeros((6, 6))  # of one shot, times its six unknowns
        self.each[:4, :4] = factor[:4, :4]
        self.each[4, 4], self.each[5, 5] = EYE["laydown_board"], 4.0 * EYE["arrow_board"]  # the eye decides
        self.shared = np.diag([KNOWN[name] for name in SCATTERED[:4]])
        self.laydown = np.array([one.laydown_board for one in shots], float)
        self.arrow = np.array([one.arrow_board for one in shots], float)
        self.count = 3 + 4 + 6 * len(shots)
        names = ("arrow_board", "breakpoint_board", "breakpoint_ft", "hit_board", "time_s")
        seen = np.array([[getattr(one, name) for name in names] for one in shots], float)
        self.seen, self.there = seen, np.isfinite(seen)
        self.error = np.array([EYE[name] for name in names])
        self.last = (None, None)

    def numbers(self, x):
        """Release of each shot: (shots, 6)."""
        own = x[7:].reshape(-1, 6) @ self.each.T
        numbers = np.tile(self.usual, (len(self.shots), 1))
        numbers[:, :4] += self.shared @ x[3:7]
        numbers[:, 4], numbers[:, 5] = self.laydown, self.arrow
        return numbers + own

    def lane(self, at):
        """Friction table for the bowler's ball; made here, not kept: a fit tries dozens."""
        lane, ball = changed(self.believed, at), self.bowler.ball
        oil_um = lane.pattern.oil_um(_BOARDS[None, :], _FEET[:, None])
        return FrictionTable(lane.law.friction(oil_um, ball.cover_in_oil, ball.cover_on_dry))

    def seen_on(self, jobs):
        """What would be seen of several (numbers, lane), in one batch: arrow, breakpoint board and distance, hit."""
        columns = [self._columns(numbers) for numbers, _ in jobs]
        lanes = [lane for _, lane in jobs]
        found = sweep_together(list(zip(columns, lanes, strict=True)), self.bowler.ball)
        return [self._as_seen(one, marks) for one, marks in zip(columns, found, strict=True)]

    def _as_seen(self, columns, marks):
        """Landmarks as the eye takes them (shots, 4)."""
        mark = mark_board_of(columns["laydown_board"], columns["target_board"])
        hit = np.nan_to_num(marks["entry_board"], nan=0.0)  # the gutter is board 0
        return np.column_stack([mark, marks["breakpoint_board"], marks["breakpoint_ft"], hit])

    def watched(self, x):
        """What would be seen, and the time: (shots, 5). The last ones are kept: their slope is asked for next."""
        if not np.array_equal(x, self.last[0]):
            columns, lane = self._columns(self.numbers(x)), self.lane(x[:3] * BEFORE)
            paths = [self._path(columns, i, lane) for i in range(len(self.shots))]
            names = ("entry_board", "breakpoint_board", "breakpoint_ft")
            marks = {name: np.array([getattr(path, name) for path in paths]) for name in names}
            times = [_time(path) for path in paths]
            self.last = x.copy(), np.column_stack([self._as_seen(columns, marks), times])
        return self.last[1]

    def apart(self, x):
        """Residuals: seen less expected, then the unknowns themselves."""
        gap = (self.watched(x) - self.seen) / self.error
        return np.concatenate([gap[self.there], x])

    def slope(self, x):
        """Derivatives of the residuals: the releases and the lanes moved a little, all in one batch."""
        numbers, at, shots = self.numbers(x), x[:3] * BEFORE, len(self.shots)
        moved = np.concatenate([numbers, *(numbers + step for step in np.diag(_STEPS))])
        steps = np.diag(np.where(at < 0, _STEP, -_STEP))  # towards the middle: never over a limit
        lanes = [self.lane(at + step) for step in steps]
        seen, *on_lanes = self.seen_on([(moved, self.lane(at)), *((numbers, lane) for lane in lanes)])
        seen = seen.reshape(7, shots, 4)
        by_release = np.zeros((shots, 5, 6))
        by_release[:, :4] = np.moveaxis((seen[1:] - seen[0]) / _STEPS[:, None, None], 0, -1)
        by_release[:, 4, 0] = -self.watched(x)[:, 4] / numbers[:, 0]
        by_lane = np.zeros((shots, 5, 3))
        for i, there in enumerate(on_lanes):
            by_lane[:, :4, i] = (there - seen[0]) / steps[i, i]
        whole = np.zeros((shots, 5, self.count))
        whole[:, :, :3] = by_lane * BEFORE
        whole[:, :, 3:7] = by_release[:, :, :4] @ self.shared
        for i in range(shots):
            whole[i, :, 7 + 6 * i : 13 + 6 * i] = by_release[i] @ self.each
        whole /= self.error[:, None]
        return np.vstack([whole[self.there], np.eye(self.count)])

    def told(self, at, spread, residuals) -> LaneFit:
        """The fit as ranges of 90 %."""
        wide = SURE * np.sqrt(np.diag(spread))
        low, high = at - wide, at + wide
        surface, size = changed(self.believed, at), np.sqrt(np.diag(spread))
        end = self.believed.pattern.length_ft
        gaps = np.zeros(self.there.shape)
        gaps[self.there] = residuals[: self.there.sum()]
        worst = np.abs(gaps).max(axis=1)
        return LaneFit(
            surface,
            float(np.clip(at[2], -12.0, 12.0)),
            *(tuple(np.exp([low[i], at[i], high[i]]).tolist()) for i in (0, 1)),
            tuple(end + value for value in (float(low[2]), float(at[2]), float(high[2]))),
            self._boards(at, spread),
            spread / np.outer(size, size),
            tuple((1.0 - size / (_BEND * BEFORE)).tolist()),
            {i + 1: float(worst[i]) for i in np.flatnonzero(worst > 3.0)},
            len(self.shots),
        )

    def _boards(self, at, spread):
        """How much higher the usual ball comes in than on the believed lane, with its 90 %."""

        def entry(to):
            return self.seen_on([(self.usual[None], self.lane(to))])[0][0, 3]

        here = entry(at)
        pull = np.array(
            [(entry(at + row) - entry(at - row)) / 2.0 for row in np.diag(np.sqrt(np.diag(spread)))]
        )
        unit = spread / np.outer(np.sqrt(np.diag(spread)), np.sqrt(np.diag(spread)))
        wide = SURE * float(np.sqrt(max(pull @ unit @ pull, 0.0)))
        middle = here - entry(np.zeros(3))
        return float(middle - wide), float(middle), float(middle + wide)

    def _columns(self, numbers):
        columns = {}
        for name, values in zip(SCATTERED, numbers.T, strict=True):
            low, high, _ = RANGES[name]
            columns[name] = np.clip(values, low, high)
        columns["axis_rotation_deg"] = np.clip(columns["axis_rotation_deg"], -90.0, 90.0)
        columns["loft_ft"] = np.full(len(numbers), self.bowler.release.loft_ft)
        columns["hand"] = np.full(len(numbers), self.bowler.release.hand, dtype=object)
        return columns

    def _path(self, columns, i, lane):
        one = {name: float(columns[name][i]) for name in SCATTERED}
        return simulate(replace(self.bowler.release, **one), lane, self.bowler.ball)


def _time(path):
    """Seconds from the foul line to the pins (a ball in the gutter: as on the lane to there)."""
    times = path.time_s[np.isfinite(path.time_s)]
    feet = path.distance_ft[: len(times)]
    return float(times[-1] * 60.0 / feet[-1])
