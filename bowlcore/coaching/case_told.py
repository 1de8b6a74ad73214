"""A made-up case told: what was noted, the reader's own reading and change, test balls, and then the truth.

Odds of a choice and of the advisor's first suggestion are those on the hidden lane, with the hand as it
really was.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from bowlcore.coaching import changes_told
from bowlcore.coaching.cases import ANSWERS, BELIEVED, CASES, Case, moved
from bowlcore.coaching.odds import bowler_odds
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.reaction_told import Reading, readings_of, seen_words, weight_words
from bowlcore.coaching.seen import Seen
from bowlcore.coaching.watched import watch
from bowlcore.motion.path import BallPath, simulate
from bowlcore.motion.release import FIELD_NAMES

NO_GUESS, STAY = "not yet", "nothing, the same line again"
CHOICES = {
    STAY: {},
    "feet and target 2 in": {"laydown_board": 2.0, "target_board": 2.0},
    "feet and target 2 out": {"laydown_board": -2.0, "target_board": -2.0},
    "feet 2 in, target 1 in": {"laydown_board": 2.0, "target_board": 1.0},
    "feet 2 out, target 1 out": {"laydown_board": -2.0, "target_board": -1.0},
    "feet 2 out, same target": {"laydown_board": -2.0},
    "same feet, look 1.5 out": {"target_board": -1.5},
    "half a mile an hour (0.8 km/h) faster": {"speed_mph": 0.5},
    "half a mile an hour (0.8 km/h) slower": {"speed_mph": -0.5},
}
_LOOKS = ("hit", "finish", "target_hit", "leave")
_MOVED = [name for name in FIELD_NAMES if name != "hand"]


@dataclass(frozen=True)
class CaseAnswer:
    """Everything a picture of a case needs.

    test_balls : as noted, one for each lane at a throw
    readings : empty until the truth is shown
    true_paths : lane -> the usual release as it really came out, on the true lane
    """

    case: Case
    believed: BallPath
    test_balls: list[Seen]
    readings: list[Reading]
    true_paths: dict
    sentence: str
    rows: list


def answer(number, guess=NO_GUESS, change=STAY, *, thrown=(), shown=False, metric=False) -> CaseAnswer:
    """A case with what the reader has chosen so far.

    Parameters
    ----------
    number : 1 to 8
    guess : one of `cases.ANSWERS`, or NO_GUESS
    change : one of CHOICES
    thrown : sequence of names in CHOICES
        The change with which each test ball was thrown.
    shown : bool
        The truth as well.
    metric : bool
        Metres and km/h in the words.

    Raises
    ------
    ValueError
        Naming the value and what is allowed.
    """
    for name, value, allowed in (
        ("number", number, CASES), ("guess", guess, (NO_GUESS, *ANSWERS)), ("change", change, CHOICES),
    ):  # fmt: skip
        if value not in allowed:
            raise ValueError(f"{name} must be one of {', '.join(map(str, allowed))}, got {str(value)[:40]!r}")
    case = CASES[number]
    believed = lane_of(BELIEVED)
    usual = simulate(case.known.release, believed, case.known.ball)
    tests = [ball for k, name in enumerate(thrown) for ball in _test_balls(number, name, k)]
    told = [
        f"Case {number}, '{case.title}': the {case.bowler} bowls.",
        f"Your reading: {guess if guess == NO_GUESS else repr(guess)}. Your change: {change}.",
    ]
    rows = _ball_rows(case.seen, "ball") + _ball_rows(tests, "test ball")
    if not shown:
        told.append(_thrown_words(tests))
        return CaseAnswer(case, usual, tests, [], {}, " ".join(filter(None, told)), rows)
    readings = readings_of(case.known, believed, case.seen)
    result, truth_rows = _truth(case, change, metric)
    today = case.as_thrown(case.known)
    paths = {name: simulate(today.release, lane, today.ball) for name, lane in case.lanes.items()}
    told += [f"The truth: {case.told}", _how_sure(case, readings, guess), result]
    return CaseAnswer(case, usual, tests, readings, paths, " ".join(told), truth_rows + rows)


@lru_cache(maxsize=256)
def _test_balls(number, change, place):
    """What is noted of a ball thrown with a change: one on each lane."""
    case = CASES[number]
    known = moved(case.known, CHOICES[change])
    balls = []
    for i, (name, lane) in enumerate(case.lanes.items()):
        seed = 10 * case.seed + 2 * place + i
        ball = watch(known, case.as_thrown(known), lane_of(BELIEVED), lane, seed, 1, _LOOKS)[0]
        balls.append(replace(ball, lane=name))
    return balls


def _thrown_words(tests):
    if not tests:
        return ""
    return f"Test balls: {'; '.join(seen_words(ball) for ball in tests)}."


def _how_sure(case, readings, guess):
    sure = []
    for reading in readings:
        where = f"on the {reading.lane} lane " if reading.lane else ""
        first = reading.causes[0]
        sure.append(f"{where}'{first.name}', {weight_words(first.weight)}")
    own = (
        "" if guess == NO_GUESS else " You read it too." if guess == case.truth else " You read it otherwise."
    )
    return f"The reading said {'; '.join(sure)}.{own}"


def _truth(case, change, metric):
    """What helps on the true lanes, in words and rows."""
    advised = _advice(case.number, metric)
    rows, parts = [], []
    for name, lane in case.lanes.items():
        today = case.as_thrown(case.known)
        advice = next(one for one in advised if one.reading.lane == name)
        tried = {"as it was": today, f"your change: {change}": moved(today, CHOICES[change])}
        if advice.changes:
            first = advice.changes[0]
            tried[f"advised: {_lower(first.words).removesuffix('.')}"] = _as_advised(
                today, advice.bowler, first
            )
        if case.hand:
            tried["with the usual hand and aim again"] = case.known
        odds = {what: bowler_odds(bowler, lane) for what, bowler in tried.items()}
        shares = [changes_told.of_hundred(one.pocket) for one in odds.values()]
        where = f"On the {name} lane " if name else ""
        said = f"{where}{shares[0]} of 100 balls found the pocket, {shares[1]} do after your change"
        said += f", {shares[2]} after the first one advised" if advice.changes else "; no change was advised"
        if case.hand:
            said += f", {shares[-1]} with the usual hand and aim again"
        parts.append(f"{said[0].upper()}{said[1:]}.")
        rows += [_odds_row(what, name, one) for what, one in odds.items()]
    return " ".join(parts), rows


@lru_cache(maxsize=2 * len(CASES))
def _advice(number, metric):
    """The first suggestion for each lane, from what was seen alone."""
    case = CASES[number]
    return changes_told.answer(case.known, lane_of(BELIEVED), case.seen, count=1, metric=metric).lanes


def _as_advised(today, advised_for, change):
    """Today's bowler after the same change: the steps count, not the numbers they lead to."""
    then = change.bowler.release
    steps = {name: getattr(then, name) - getattr(advised_for.release, name) for name in _MOVED}
    return replace(moved(today, steps), ball=change.bowler.ball)


def _odds_row(what, lane, odds):
    return {
        "what": f"{lane} lane, {what}" if lane else what,
        "what was noted": "",
        "in the pocket, of 100": changes_told.of_hundred(odds.pocket),
        "pins a game": changes_told.about_pins(odds),
    }


def _ball_rows(balls, name):
    return [
        {
            "what": f"{name} {i}",
            "what was noted": seen_words(ball),
            "in the pocket, of 100": "",
            "pins a game": "",
        }
        for i, ball in enumerate(balls, 1)
    ]


def _lower(text):
    return text[0].lower() + text[1:]
