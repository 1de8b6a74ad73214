"""A reading told: the likeliest cause in one sentence with the next step, and every cause with its evidence.

Believed and possible paths are those of the bowler's usual ball. Sources and choices: `reading`.
"""

from dataclasses import dataclass, replace

from bowlcore.coaching import words
from bowlcore.coaching.hypotheses import ROLLS
from bowlcore.coaching.next_look import FIRST
from bowlcore.coaching.reading import CANNOT_TELL, Cause, read_reaction
from bowlcore.coaching.seen import Seen
from bowlcore.coaching.telling import tell
from bowlcore.motion.path import BallPath, simulate
from bowlcore.rack.leave import Leave

LESS_HAND = {"axis_rotation_deg": -15.0, "rev_rate_rpm": -40.0}  # a hand that gives less turn: chosen
_TARGET = {True: "target hit", False: "target missed"}


@dataclass(frozen=True)
class Reading:
    """What the balls on one lane say.

    lane : "left", "right", or None where no lane was named
    bowler : as the balls were thrown if the likeliest named cause is true
    supposed : that bowler's centre ball on the lane of that cause
    """

    lane: str | None
    seen: list[Seen]
    causes: list[Cause]
    bowler: object
    supposed: BallPath

    @property
    def named(self) -> Cause:
        """The likeliest cause that has a name."""
        return next(cause for cause in self.causes if cause.name != CANNOT_TELL)

    @property
    def open(self) -> bool:
        """True while it cannot be told: then nothing should be changed."""
        return self.causes[0].name == CANNOT_TELL


@dataclass(frozen=True)
class ReactionAnswer:
    """Everything a picture of a reading needs: a reading for each lane, and the usual ball as believed.

    next_ball : what to do now; the sentence begins with it
    """

    readings: list[Reading]
    believed: BallPath
    next_ball: str
    sentence: str
    rows: list


def answer(bowler, surface, seen, *, metric=False) -> ReactionAnswer:
    """What was seen, read; two lanes of a pair are read apart.

    Parameters
    ----------
    bowler : Bowler
    surface : the lane as believed
    seen : list of Seen
    metric : bool

    Raises
    ------
    ValueError
        From `read_reaction`, in words.
    """
    readings = readings_of(bowler, surface, seen)
    believed = simulate(bowler.release, surface, bowler.ball)
    rows = [_row(cause, reading.lane) for reading in readings for cause in reading.causes]
    rows += [_ball_row(i, item) for i, item in enumerate(_noted(seen), 1)]
    if not readings:
        told = f"No ball is noted yet. As the lane is believed, the usual ball {tell(believed, metric)}."
        rows = [{"what": "nothing seen", "how likely": "", "why": FIRST}]
        next_ball = _next_ball(FIRST)
    else:
        told = " ".join(map(likeliest_words, readings))
        next_ball = " ".join(_next_ball(reading.causes[0].next_step, reading.lane) for reading in readings)
    return ReactionAnswer(readings, believed, next_ball, f"{next_ball} {told}", rows)


def _next_ball(step, lane=None):
    """The line that a coach reads from two metres."""
    return f"Next ball{f', {lane} lane' if lane else ''}: {step[0].lower()}{step[1:]}"


def readings_of(bowler, surface, seen) -> list[Reading]:
    """A reading for each lane on which something was seen."""
    told = _noted(seen)
    lanes = sorted({item.lane for item in told}, key=str)
    if None in lanes and len(lanes) > 1:
        read_reaction(told, bowler, surface)  # says what is wrong
    return [_read(bowler, surface, [item for item in told if item.lane == lane], lane) for lane in lanes]


def _noted(seen):
    return [item for item in seen if set(item.told) - {"lane"}]


def _read(bowler, surface, told, lane):
    causes = read_reaction(told, bowler, surface)
    named = next(cause for cause in causes if cause.name != CANNOT_TELL)
    thrown = as_thrown(bowler, named.name, told)
    return Reading(lane, told, causes, thrown, simulate(thrown.release, named.surface, thrown.ball))


def as_thrown(bowler, cause: str, seen):
    """The bowler as the balls were thrown if this cause is true.

    In this model no lane makes the usual ball come in light and rolled too early on its usual line; so for
    light balls that cause includes a hand that gave less turn (`LESS_HAND`).
    """
    if cause != ROLLS or not any(item.hit == "light" for item in seen):
        return bowler
    return replace(bowler, release=with_less_hand(bowler.release))


def with_less_hand(release, rotation_deg=LESS_HAND["axis_rotation_deg"], revs_rpm=LESS_HAND["rev_rate_rpm"]):
    """The same line and speed with so much less turn (both amounts negative)."""
    return replace(
        release,
        axis_rotation_deg=max(release.axis_rotation_deg + rotation_deg, min(release.axis_rotation_deg, 0.0)),
        rev_rate_rpm=max(release.rev_rate_rpm + revs_rpm, 0.0),
    )


def weight_words(weight: float) -> str:
    """A weight as people say it: "about 6 in 10"."""
    if weight < 0.05:
        return "less than 1 in 20"
    if weight > 0.95:
        return "more than 19 in 20"
    return f"about {max(round(10 * weight), 1)} in 10" if weight < 0.9 else "about 9 in 10"


def seen_words(seen: Seen) -> str:
    """One delivery in words: "light, still skidding, target hit, left standing: 10"."""
    parts = [seen.hit, seen.finish]
    parts.append(None if seen.target_hit is None else _TARGET[seen.target_hit])
    parts.append(None if seen.arrow_board is None else f"over {words.halves(seen.arrow_board)}")
    parts.append(None if seen.breakpoint_board is None else f"out to {words.halves(seen.breakpoint_board)}")
    parts.append(None if seen.exit is None else f"off the deck {seen.exit}")
    parts.append(None if seen.leave is None else leave_words(seen.leave))
    if seen.lane is not None:
        parts.append(f"{seen.lane} lane")
    return ", ".join(filter(None, parts)) or "nothing seen"


def leave_words(leave) -> str:
    if not leave:
        return "strike"
    return f"{Leave.of(*leave)} {'stands' if len(leave) == 1 else 'stand'}"


def reading_words(reading) -> str:
    """Likeliest cause with its weight, or that it cannot be told; and the next step."""
    return f"{likeliest_words(reading)} {reading.causes[0].next_step}"


def likeliest_words(reading) -> str:
    """The same without the next step."""
    count = len(reading.seen)
    balls = f"from {count} ball{'s' if count > 1 else ''}"
    balls = f"{reading.lane.capitalize()} lane, {balls}" if reading.lane else balls.capitalize()
    first, named = reading.causes[0], reading.named
    if reading.open:
        return (
            f"{balls}: it cannot be told yet; the likeliest cause, '{named.name}', has {weight_words(named.weight)}. "
            "Change nothing."
        )
    return f"{balls}, likeliest in this model: '{first.name}', {weight_words(first.weight)}."


def _row(cause, lane):
    on = f", {lane} lane" if lane else ""
    return {"what": cause.name + on, "how likely": weight_words(cause.weight), "why": cause.evidence}


def _ball_row(number, seen):
    return {"what": f"ball {number}, as noted", "how likely": "", "why": seen_words(seen)}
