"""An evening on a pair of lanes: several bowlers, alternate lanes, each lane wearing by itself.

Each bowler keeps a line for each lane. After every five frames everyone looks at both lanes as they are
now, moves on one only where that puts clearly more balls into the pocket, and stays otherwise. First balls
only: spare balls take oil too, mostly elsewhere, and are left out.
"""

from dataclasses import dataclass
from functools import cached_property

from bowlcore.coaching.moves import STAY, best_line, best_moves, moved
from bowlcore.coaching.odds import RANKING, Odds, odds_together
from bowlcore.coaching.transition import CARRIED, TAKEN_UP, check_lane, play_one
from bowlcore.motion.ball import Ball
from bowlcore.motion.checks import number_in
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import FIELD_NAMES, Release
from bowlcore.motion.surface import OiledLane

LANES = ("left", "right")
FRAMES = 10
LOOK_EVERY = 5  # frames: about two or three balls of each bowler on each lane
FALL = 0.10  # share of balls lost from the pocket that counts as "begins to fall": under ten points is a tie
_ACCIDENTS = 256
_MOST_BOWLERS = 12


@dataclass(frozen=True, eq=False)
class Look:
    """One bowler on one lane at one moment.

    games : bowled on the pair so far
    surface, ball : the lane now, and what is thrown on it
    line : the release from here on; odds : of this line now
    first_line, first : the same for the line of the first ball of the evening
    feet, target : boards moved just now, positive in
    """

    games: float
    surface: OiledLane
    ball: Ball
    line: Release
    odds: Odds
    first_line: Release
    first: Odds
    feet: float
    target: float

    @cached_property
    def path(self) -> BallPath:
        """The centre ball of this line on the lane now."""
        return (
            self.first_path if self.line == self.first_line else simulate(self.line, self.surface, self.ball)
        )

    @cached_property
    def first_path(self) -> BallPath:
        """The centre ball of the first line on the lane now."""
        return simulate(self.first_line, self.surface, self.ball)


@dataclass(frozen=True, eq=False)
class Evening:
    """What happened.

    bowlers : tuple of Bowler, on the lines they came with
    lanes : dict lane -> tuple of OiledLane, one a look, the first untouched
    looks : dict (number of the bowler, lane) -> tuple of Look
    balls : dict lane -> first balls bowled on it
    moved_ml : dict lane -> (mL taken up, mL laid down again)
    """

    bowlers: tuple
    lanes: dict
    looks: dict
    balls: dict
    moved_ml: dict

    def falls_after(self, number, lane):
        """Games after which the first line has lost ten balls in a hundred from the pocket; None if never."""
        looks = self.looks[number, lane]
        fresh = looks[0].first.pocket
        return next((look.games for look in looks if look.first.pocket <= fresh - FALL + 1e-9), None)


def evening(bowlers, lanes, games=3, *, taken_up=TAKEN_UP, carried=CARRIED, moving=True) -> Evening:
    """Bowl so many games and look after every five frames.

    Parameters
    ----------
    bowlers : sequence of Bowler, 1 to 12
        In bowling order; half of them begin on each lane, and all change lanes after each frame. On a
        strange lane each begins on the best line within reach (found with warm-up balls that take no oil).
    lanes : dict {"left": OiledLane, "right": OiledLane}
        Two lanes, never averaged.
    games : int, 1 to 6
    taken_up, carried : float
        As for `play_shots`, invented.
    moving : bool
        False: nobody ever moves.

    Returns
    -------
    Evening
        The same numbers at every run: the accidents are quasi-random and fixed.

    Raises
    ------
    ValueError
        Naming the field, the value and the range.
    """
    bowlers = tuple(bowlers)
    if not 1 <= len(bowlers) <= _MOST_BOWLERS:
        raise ValueError(f"an evening needs 1 to {_MOST_BOWLERS} bowlers, got {len(bowlers)}")
    if not isinstance(lanes, dict) or set(lanes) != set(LANES):
        raise ValueError('lanes must name two lanes, {"left": ..., "right": ...}')
    for lane in lanes.values():
        check_lane(lane)
    number_in("games", games, 1, 6)
    number_in("taken_up", taken_up, 0, 1)
    number_in("carried", carried, 0, 1)
    night = _Night(bowlers, dict(lanes), taken_up, carried, moving)
    night.look(0.0)
    for frame in range(1, FRAMES * int(games) + 1):
        night.bowl(frame)
        if frame % LOOK_EVERY == 0:
            night.look(frame / FRAMES)
    return Evening(
        bowlers,
        {lane: tuple(kept) for lane, kept in night.kept.items()},
        {key: tuple(looks) for key, looks in night.looks.items()},
        dict(night.balls),
        {lane: tuple(both) for lane, both in night.moved_ml.items()},
    )


class _Night:
    """The evening while it goes on."""

    def __init__(self, bowlers, lanes, taken_up, carried, moving):
        self.lanes, self.shares, self.moving = lanes, (taken_up, carried), moving
        self.first = {
            (i, lane): best_line(bowler, lanes[lane]) for i, bowler in enumerate(bowlers) for lane in LANES
        }
        self.now = dict(self.first)
        self.accidents = {key: bowler.shots(_ACCIDENTS) for key, bowler in self.now.items()}
        self.looks = {key: [] for key in self.now}
        self.kept = {lane: [] for lane in LANES}
        self.balls = dict.fromkeys(LANES, 0)
        self.moved_ml = {lane: [0.0, 0.0] for lane in LANES}
        self.count = len(bowlers)

    def bowl(self, frame):
        """One frame: a first ball of everyone, half of them on each lane."""
        for i in range(self.count):
            lane = LANES[(i + frame + 1) % 2]
            row = (frame * self.count + i) % _ACCIDENTS
            thrown = self.accidents[i, lane]
            release = Release(**{name: _plain(thrown[name][row]) for name in FIELD_NAMES})
            played = play_one(self.lanes[lane], release, self.now[i, lane].ball, *self.shares)
            self.lanes[lane] = played.surface
            self.balls[lane] += 1
            self.moved_ml[lane][0] += played.taken_ml
            self.moved_ml[lane][1] += played.laid_down_ml

    def look(self, games):
        """Everyone looks at both lanes, and moves where it is worth it."""
        for lane, surface in self.lanes.items():
            self.kept[lane].append(surface)
        keys = list(self.now)
        odds = self._odds([(self.first[key], key) for key in keys] + [(self.now[key], key) for key in keys])
        stood, stands = dict(zip(keys, odds, strict=False)), dict(zip(keys, odds[len(keys) :], strict=True))
        restless = [key for key in keys if self.moving and self._fell(key, stands[key])]
        best = best_moves([(self.now[key], self.lanes[key[1]]) for key in restless])
        moves = {key: move[:2] for key, move in zip(restless, best, strict=True) if move[:2] != STAY}
        for key, move in moves.items():
            self.now[key] = moved(self.now[key], *move)
            self.accidents[key] = self.now[key].shots(_ACCIDENTS)
        stands |= zip(moves, self._odds([(self.now[key], key) for key in moves]), strict=True)
        for key in keys:
            first, now, surface = self.first[key], self.now[key], self.lanes[key[1]]
            feet, target = moves.get(key, STAY)
            self.looks[key].append(
                Look(
                    games,
                    surface,
                    now.ball,
                    now.release,
                    stands[key],
                    first.release,
                    stood[key],
                    feet,
                    target,
                )
            )

    def _fell(self, key, odds):
        """Who still hits it does not move."""
        best = max((look.odds.pocket for look in self.looks[key]), default=odds.pocket)
        return odds.pocket <= best - FALL + 1e-9

    def _odds(self, lines):
        """Odds of (bowler, (number, lane)), all in one batch."""
        return odds_of_lines([(bowler, self.lanes[lane]) for bowler, (_, lane) in lines])


def odds_of_lines(lines) -> list[Odds]:
    """Odds of several (bowler, surface) in one batch; those that are alike once."""
    keys = [(id(b.spread), b.ball, b.release, surface) for b, surface in lines]
    alike = dict(zip(keys, lines, strict=True))
    found = dict(zip(alike, odds_together(list(alike.values()), RANKING), strict=True))
    return [found[key] for key in keys]


def _plain(value):
    return value if isinstance(value, str) else float(value)
