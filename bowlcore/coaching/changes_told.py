"""The changes for a reading told: grouped, before and after in pins a game, the customary remedy beside them.

While it cannot be told there is no advice but the next step; a cause may still be supposed, and says so.
"""

from dataclasses import dataclass

from bowlcore.coaching import words
from bowlcore.coaching.changes import Change, suggest_changes
from bowlcore.coaching.hypotheses import CAUSES, GOOD, TARGET
from bowlcore.coaching.odds import Odds
from bowlcore.coaching.reaction_told import Reading, as_thrown, reading_words, readings_of, weight_words
from bowlcore.motion.path import BallPath, simulate

LIKELIEST = "the likeliest cause"
SUPPOSED = (LIKELIEST, *CAUSES)
WHEN = ("next ball", "next game", "practice")
_WHEN_WORDS = {"next ball": "the next ball", "next game": "the next game", "practice": "practice"}
# likeliest causes after which nothing is moved
_LEAVE_IT = {
    TARGET: "the lane is not to blame. Change nothing: throw it over the target, at the usual speed.",
    GOOD: "a ball as it was meant. Change nothing.",
}


@dataclass(frozen=True)
class LaneChanges:
    """The changes for one lane; none while it cannot be told.

    bowler : as the balls were thrown if the cause is true; usual : as always
    """

    reading: Reading
    cause: str
    weight: float
    bowler: object
    usual: object
    surface: object
    changes: list[Change]
    again: Change | None  # with the usual hand again, where the balls were thrown with less

    @property
    def in_order(self) -> list[Change]:
        """As the table has them: next ball, next game, practice; first what holds once the usual hand is back."""
        again = [self.again] if self.again else []
        return again + [change for when in WHEN for change in self.changes if change.when == when]

    @property
    def path(self) -> BallPath:
        """The centre ball now, if the cause is true."""
        return simulate(self.bowler.release, self.surface, self.bowler.ball)

    @property
    def rotation_lost(self) -> float:
        """How much less the hand turned, if so [deg]."""
        return self.usual.release.axis_rotation_deg - self.bowler.release.axis_rotation_deg


@dataclass(frozen=True)
class ChangesAnswer:
    """What a picture of the changes needs."""

    lanes: list[LaneChanges]
    sentence: str
    rows: list


def answer(bowler, surface, seen, *, suppose=LIKELIEST, count=5, metric=False) -> ChangesAnswer:
    """What this bowler can change after what was seen.

    Parameters
    ----------
    bowler, surface, seen : as for `reaction_told.answer`
    suppose : the likeliest cause, or the name of one that is taken for true
    count : int, 1 to 20
        Changes for each lane.
    metric : bool
        Metres and km/h in the words.

    Raises
    ------
    ValueError
        From the reading, in words; or when there is no such cause.
    """
    if suppose not in SUPPOSED:
        raise ValueError(f"suppose must be one of {', '.join(SUPPOSED)}, got {str(suppose)[:40]!r}")
    readings = readings_of(bowler, surface, seen)
    if not readings:
        return ChangesAnswer([], "Note a ball first: without anything seen there is nothing to change.", [])
    lanes = [_changes(bowler, reading, suppose, count, metric) for reading in readings]
    rows, first = [], 1
    for lane in lanes:
        rows += _rows(lane, first)
        first += len(lane.in_order)
    return ChangesAnswer(lanes, " ".join(_sentence(lane, suppose) for lane in lanes), rows)


def _changes(bowler, reading, suppose, count, metric):
    cause = reading.named
    if suppose != LIKELIEST:
        cause = next(item for item in reading.causes if item.name == suppose)
    thrown = as_thrown(bowler, cause.name, reading.seen)
    left_alone = suppose == LIKELIEST and (reading.open or cause.name in _LEAVE_IT)
    found = [] if left_alone else suggest_changes(thrown, cause.surface, int(count), metric=metric)
    again = None
    if found and thrown is not bowler:
        again = suggest_changes(bowler, cause.surface, 1, metric=metric)[0]
    return LaneChanges(reading, cause.name, cause.weight, thrown, bowler, cause.surface, found, again)


def about_pins(odds: Odds) -> str:
    """Pins a game as near as they can be told: "about 185"."""
    return f"about {5 * round(odds.pins_per_game / 5):.0f}"


def of_hundred(share: float) -> str:
    return f"{100 * share:.0f}"


def _sentence(lane, suppose):
    where = f"{lane.reading.lane.capitalize()} lane: " if lane.reading.lane else ""
    if not lane.changes and lane.reading.open:
        return f"No change is advised while it cannot be told. {reading_words(lane.reading)}"
    if not lane.changes:
        likeliest = f"{where}likeliest: '{lane.cause}' ({weight_words(lane.weight)}); {_LEAVE_IT[lane.cause]}"
        return f"{likeliest[0].upper()}{likeliest[1:]}"
    first = lane.changes[0]
    if suppose == LIKELIEST:
        told = f"{where}taking '{lane.cause}' for true ({weight_words(lane.weight)}). "
    else:
        told = f"{where}supposing '{lane.cause}' (the reading gives it {weight_words(lane.weight)}). "
    told = told[0].upper() + told[1:]
    if lane.bowler is not lane.usual:
        told += f"{_lost_hand(lane)} "
    if first.kind == "stay":
        return f"{told}{first.words} {about_pins(first.before).capitalize()} pins a game."
    return (
        f"{told}For {_WHEN_WORDS[first.when]}: {first.words[0].lower()}{first.words[1:-1]}. "
        f"{about_pins(first.before).capitalize()} pins a game become {about_pins(first.after)}. {first.customary}"
    )


def _lost_hand(lane):
    """What the usual hand would do on the lane supposed, when the balls were thrown with less."""
    path = simulate(lane.usual.release, lane.surface, lane.usual.ball)
    hit = "in the gutter" if path.entry_board != path.entry_board else words.hit(path.entry_board)
    return (
        f"Light and rolled too early takes a hand that gave less turn, here {words.degrees(lane.rotation_lost)} less "
        f"rotation: first ask about the hand. The usual hand on that lane would be {hit}. "
        "If the hand stays as it was, these moves hold."
    )


def _rows(lane, first):
    """Rows of one lane; changes are numbered on from `first`."""
    on = f", {lane.reading.lane} lane" if lane.reading.lane else ""
    if not lane.changes:
        cause = lane.reading.causes[0]
        return [_columns(f"first{on}", cause.next_step, "", "", cause.evidence)]
    rows = []
    for number, change in enumerate(lane.in_order, first):
        when = "once the usual hand is back" if change is lane.again else change.when
        rows.append(_row(change, f"{number}. {when}{on}"))
    usual = lane.changes[0].customary.removeprefix("Customary: ")
    return [*rows, _columns(f"custom{on}", usual, "", "", "common practice, no source")]


def _row(change, when):
    before, after = change.before, change.after
    pins, pocket = about_pins(before), of_hundred(before.pocket)
    if change.kind != "stay":
        pins, pocket = (
            f"{pins}, then {about_pins(after).removeprefix('about ')}",
            f"{pocket}, then {of_hundred(after.pocket)}",
        )
    why = f"{change.why} {change.caution}".strip()
    return _columns(when, change.words, pins, pocket, why)


def _columns(when, what, pins, pocket, why):
    return {
        "when": when,
        "what to do": what,
        "pins a game": pins,
        "in the pocket, of 100": pocket,
        "why": why,
    }
