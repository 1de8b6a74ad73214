"""A saying told: verdicts in one paragraph, the table of cases, and the table of all sayings."""

from dataclasses import dataclass
from functools import lru_cache

from bowlcore.coaching.rule_bench import ANYONE
from bowlcore.coaching.rule_verdict import ANGLE, RE_AIMED, SAME_LINE, Rule, Verdict, judge
from bowlcore.coaching.rules import RULES

EVERYONE = "everyone tried"
BOWLERS = (EVERYONE, *ANYONE)
OUTCOME, TRIED = "what came out", "how it was tried"
TELLS = (OUTCOME, TRIED)


@dataclass(frozen=True)
class RuleAnswer:
    """One saying with a verdict for each of its claims, in words and as rows."""

    rule: Rule
    verdicts: list[Verdict]
    sentence: str
    rows: list


def answer(number, bowler=EVERYONE, tell=OUTCOME, *, metric=False) -> RuleAnswer:
    """The verdict on a saying.

    Parameters
    ----------
    number : int
        1 to 20.
    bowler : str
        One of `BOWLERS`; for one bowler the table and the last sentence are about that one.
    tell : str
        One of `TELLS`: the verdicts, or the conditions and what counts as true.
    metric : bool
        Metres where feet are measured.

    Raises
    ------
    ValueError
        For another number, bowler or tell.
    """
    found = [rule for rule in RULES if rule.number == number]
    if not found:
        raise ValueError(f"number must be a rule from 1 to {len(RULES)}, got {number!r}")
    for name, value, allowed in (("bowler", bowler, BOWLERS), ("tell", tell, TELLS)):
        if value not in allowed:
            raise ValueError(f"{name} must be one of {', '.join(allowed)}, got {value!r}")
    rule = found[0]
    verdicts = [judge(part, metric) for part in rule.parts]
    told = _came_out(rule, verdicts, bowler) if tell == OUTCOME else _how(rule)
    sentence = " ".join([f"{rule.number}. {rule.saying}", *told])
    return RuleAnswer(rule, verdicts, sentence, _rows(rule, verdicts, bowler, metric))


def _came_out(rule, verdicts, bowler):
    told = [_told(part, verdict) for part, verdict in zip(rule.parts, verdicts, strict=True)]
    if bowler != EVERYONE:
        told.append(_for_one(rule, verdicts, bowler))
    if rule.note:
        told.append(_note(rule.note))
    return told


@lru_cache(maxsize=len(RULES))
def _note(note):
    """A note is worked out once, as the cases are."""
    return note()


def _how(rule):
    counts = [
        f"{part.claim[0].upper()}{part.claim[1:]} counts as true if {part.criterion}."
        for part in rule.parts
        if part.test
    ]
    return [f"Tried like this: {rule.when}", *counts, f"Source: {rule.source}"]


def _told(part, verdict):
    by = f", {verdict.measured}" if verdict.measured else ""
    return f"{part.claim[0].upper()}{part.claim[1:]}: {verdict.words}{by}."


def mine(verdict, bowler) -> list:
    """The cases of one bowler; of all for everyone, or where the cases are no bowlers."""
    return [case for case in verdict.cases if bowler in (EVERYONE, case.bowler) or case.bowler not in ANYONE]


def _for_one(rule, verdicts, bowler):
    told = []
    for part, verdict in zip(rule.parts, verdicts, strict=True):
        counted = [case.true for case in verdict.cases if case.bowler == bowler and case.true is not None]
        if counted:
            told.append(f"{part.claim} {sum(counted)} of {len(counted)}")
    if told:
        return f"For the {bowler}: {'; '.join(told)}."
    if any(case.bowler == bowler for verdict in verdicts for case in verdict.cases):
        return f"For the {bowler} the saying's condition is never met on these lanes."
    return f"The {bowler} was not tried: hands are changed here only for adults who can do it on demand."


def _rows(rule, verdicts, bowler, metric):
    rows = []
    for part, verdict in zip(rule.parts, verdicts, strict=True):
        unit = part.unit.shown(metric)
        for case in mine(verdict, bowler):
            applies = case.true is not None
            rows.append(
                {
                    "claim": part.claim,
                    "bowler": case.bowler,
                    "where": case.where,
                    "measured": unit.of(case.number) if applies else "does not apply",
                    "same line: comes in": _of(SAME_LINE, case.boards, applies),
                    "re-aimed: entry": _of(ANGLE, case.degrees, applies),
                    "re-aimed: worth": _of(RE_AIMED, case.pins, applies),
                    "holds": ("yes" if case.true else "no") if applies else "",
                }
            )
    return rows


def _of(unit, value, applies):
    return unit.of(value) if applies and value == value else ""


def safe_to_say(first=True) -> list[dict]:
    """The short table of sayings, the first six or the others: is it safe to repeat, and to whom? One row a claim."""
    return [
        {
            "saying": _claimed(rule, part, place),
            "say it?": judge(part).say_it,
            "to whom": judge(part).to_whom,
        }
        for rule, part, place in _claims(first)
    ]


def overview(first=True, *, metric=False) -> list[dict]:
    """The numbers behind that table."""
    rows = []
    for rule, part, place in _claims(first):
        verdict = judge(part, metric)
        rows.append(
            {
                "saying": f"{rule.number}. {rule.saying}" if not place else "",
                "what was tried": part.claim,
                "true for whom": verdict.words,
                "by how much": verdict.measured,
                "same line: comes in": verdict.same_line,
                "re-aimed: worth": verdict.re_aimed,
            }
        )
    return rows


def _claims(first):
    """(rule, part, its place) of the first six sayings, or of the others."""
    return [(r, part, i) for r in RULES if r.first == first for i, part in enumerate(r.parts)]


def _claimed(rule, part, place):
    """A saying, and which of its claims where it makes several."""
    if len(rule.parts) == 1:
        return f"{rule.number}. {rule.saying}"
    return f"{rule.number}. … {part.claim}" if place else f"{rule.number}. {rule.saying[:-1]} ({part.claim})"
