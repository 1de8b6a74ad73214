"""From cases to a verdict: does a saying hold, for whom, and by how much?

A case is one bowler on one lane with one number; a saying is true of it by a criterion that was chosen
before any number was seen. Boards: change of the entry on the same line, positive higher. Pins and degrees:
change in pins a game and in entry angle once both are re-aimed, positive more and steeper.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from math import isfinite, nan
from typing import NamedTuple

import numpy as np

from bowlcore.coaching import words
from bowlcore.motion.units import FOOT_M

HOLDS, PARTLY, NOT, UNTESTED = "holds", "holds for", "not in this model", "cannot be tested here"
_SAY = {HOLDS: "yes", PARTLY: "to some", NOT: "no", UNTESTED: "not tested here"}
_RARELY = 0.25  # true of fewer cases than this: not in this model, with the exceptions named
_EXCEPTIONS = 3  # so few are named one by one


class Unit(NamedTuple):
    """What a number counts, and the words for more and for less of it: no signs on a screen."""

    noun: str
    more: str
    less: str
    step: float = 0.5
    none: str = "no change"
    what: str = ""
    factor: float = 1.0

    def shown(self, metric: bool) -> "Unit":
        """The same in metres where it counts feet and metres are asked for."""
        return self._replace(noun="m", step=0.1, factor=FOOT_M) if metric and self.noun == "ft" else self

    def of(self, value: float) -> str:
        """ "2.5 ft later", "no change"; a ball that is lost has no number."""
        if not isfinite(value):
            return "gutter"
        size, way = self._parts(value)
        return f"{self._counted(size)} {way} {self.what}".rstrip() if way else self.none

    def spread(self, values) -> str:
        """The middle one and the range: "2.5 ft later (1.5 to 4)", "no change (2 ft sooner to 1 later)"."""
        values = [value for value in values if isfinite(value)]
        if not values:
            return ""
        middle, ends = self.of(float(np.median(values))), [self._parts(min(values)), self._parts(max(values))]
        if ends[0] == ends[1]:
            return middle
        bare = middle == self.none  # then the range has to say what is counted
        if all(way for _, way in ends) and ends[0][1] != ends[1][1]:
            (low, less), (high, more) = ends
            return f"{middle} ({self._counted(low) if bare else low} {less} to {high} {more})"
        (low, _), (high, way) = sorted(ends, key=lambda end: float(end[0]))
        return f"{middle} ({low} to {f'{self._counted(high)} {way}' if bare else high})"

    def _counted(self, size):
        """A size with its noun."""
        return f"{size} {self.noun}" if self.noun in ("ft", "m") else words.count(float(size), self.noun)

    def _parts(self, value):
        """Size as text, and which way ("" for none)."""
        size = abs(self.step * round(value * self.factor / self.step))
        return f"{size:.3g}", (self.more if value > 0 else self.less) if size else ""


SAME_LINE = Unit("board", "higher", "lower")
RE_AIMED = Unit("pin", "more", "fewer", 5.0, what="a game")
ANGLE = Unit("degree", "steeper", "flatter")


@dataclass(frozen=True)
class Case:
    """One bowler at one place; true is None where the saying's condition is not met."""

    bowler: str
    where: str
    number: float = nan
    true: bool | None = None
    boards: float = nan
    pins: float = nan
    degrees: float = nan


@dataclass(frozen=True)
class Part:
    """One thing that a saying claims.

    claim : in a few words
    criterion : what counts as true, in words
    unit : of the number
    test : called without arguments, gives the list of cases; None where nothing can be tried
    low, high : the range of the number in which it is true
    tie : within so many points either way another number decides (re-aimed: the entry angle)
    """

    claim: str
    criterion: str
    unit: Unit
    test: Callable[[], list] | None
    low: float = nan
    high: float = nan
    tie: float = 0.0


@dataclass(frozen=True)
class Rule:
    """A saying in our own words, where it applies and what it claims.

    short : its name in a list, for a phone's width
    note : gives what else must be said, computed where it has numbers
    first : shown before the rest
    """

    number: int
    short: str
    saying: str
    when: str
    parts: tuple[Part, ...]
    source: str = "Common practice, no source."
    note: Callable[[], str] | None = None
    first: bool = False


@dataclass(frozen=True)
class Verdict:
    """What came out: kind is one of the four, whom says for whom; by how much, on the same line, re-aimed."""

    kind: str
    whom: str = ""
    measured: str = ""
    same_line: str = ""
    re_aimed: str = ""
    cases: tuple = ()

    @property
    def words(self) -> str:
        """ "holds in this model (12 of 12)", "holds in this model for the spinner (3 of 12)", "not in this model (0 of 12)"."""
        if self.kind == UNTESTED:
            return self.kind
        counted = [case.true for case in self.cases if case.true is not None]
        told = (
            self.kind
            if self.kind == NOT
            else f"holds in this model{f' for {self.whom}' if self.kind == PARTLY else ''}"
        )
        only = f": only {self.whom}" if self.kind == NOT and any(counted) else ""
        return f"{told}{only} ({sum(counted)} of {len(counted)})"

    @property
    def say_it(self) -> str:
        """Is it safe to repeat, in this model? "yes", "to some", "no"."""
        return _SAY[self.kind]

    @property
    def to_whom(self) -> str:
        """ "everyone tried", "the spinner", "nobody"; "" where nothing was tried."""
        true = [case for case in self.cases if case.true]
        if self.kind == PARTLY:
            return _whom([case for case in self.cases if case.true is not None], true, counts=False)
        if self.kind == NOT:
            return f"nobody but {self.whom}" if true else "nobody"
        return "everyone tried" if self.kind == HOLDS else ""


def judge(part, metric=False) -> Verdict:
    """The verdict on one claim. No case in which the saying applies: it cannot be tested here."""
    cases = _cases(part.test) if part.test else ()
    counted = [case for case in cases if case.true is not None]
    true = [case for case in counted if case.true]
    if not counted:
        return Verdict(UNTESTED, cases=cases)
    if len(true) == len(counted):
        kind, whom = HOLDS, "all tried"
    elif len(true) < _RARELY * len(counted):
        kind, whom = NOT, _listed(true) if true else "nobody tried"
    else:
        kind, whom = PARTLY, _whom(counted, true)
    measured = part.unit.shown(metric).spread([case.number for case in counted])
    if angles := ANGLE.spread([case.degrees for case in counted]):
        measured += f"; entry angle: {angles}"
    if lost := sum(not isfinite(case.number) for case in counted):
        measured += f"; {lost} of {len(counted)} in the gutter"
    same_line = SAME_LINE.spread([case.boards for case in counted])
    re_aimed = RE_AIMED.spread([case.pins for case in counted])
    return Verdict(kind, whom, measured, same_line, re_aimed, cases)


@lru_cache(maxsize=128)
def _cases(test):
    return tuple(test())


def _whom(counted, true, counts=True):
    """The shortest honest description of who is meant; where it is only some, with or without the counts."""
    everyone, everywhere = ([getattr(case, key) for case in counted] for key in ("bowler", "where"))
    for key, order, said, article in (
        ("bowler", everyone, "", "the "),
        ("where", everywhere, "everyone on the ", ""),
    ):
        groups = {getattr(case, key) for case in true}
        if all(case.true for case in counted if getattr(case, key) in groups):
            return said + _and(sorted(groups, key=order.index), article)
    missing = [case for case in counted if not case.true]
    if len(missing) <= _EXCEPTIONS:
        return f"all but {_listed(missing)}"
    key = max(
        ("bowler", "where"), key=lambda one: np.std([np.mean(v) for v in _groups(counted, one).values()])
    )
    some = {name: f" {sum(v)} of {len(v)}" for name, v in _groups(counted, key).items() if any(v)}
    if counts:
        return f"some: {', '.join(name + of for name, of in some.items())}"
    return f"on some lanes {_and(some, 'the ')}" if key == "bowler" else f"some on the {_and(some)}"


def _groups(cases, key):
    """What is true, by bowler or by place."""
    groups = {}
    for case in cases:
        groups.setdefault(getattr(case, key), []).append(bool(case.true))
    return groups


def _listed(cases):
    """ "the spinner (flat shape)", "the left-hander and the spinner (flat shape)", "the spinner (flat shape; wet-dry)"."""
    by_where, by_bowler = {}, {}
    for case in cases:
        by_where.setdefault(case.where, []).append(case.bowler)
        by_bowler.setdefault(case.bowler, []).append(case.where)
    if len(by_where) < len(by_bowler):
        return _and([f"{_and(names, 'the ')} ({where})" for where, names in by_where.items()])
    return _and([f"the {name} ({'; '.join(places)})" for name, places in by_bowler.items()])


def _and(names, article=""):
    told = [f"{article}{name}" for name in names]
    return told[0] if len(told) == 1 else f"{', '.join(told[:-1])} and {told[-1]}"
