"""Who comes to a clinic: initials, age band, how they bowl, ball weight, experience. No names, no birthdays.

Typed one person a line: "AK, 9-11, right, 8 lb, new". Ball weight in pounds [lb], as it stands on the ball.
"""

import re
from dataclasses import dataclass

from bowlcore.coaching.log_entries import initials, one_of
from bowlcore.motion.checks import number_in

ADULT = "adult"
AGE_BANDS = ("under 9", "9-11", "12-14", "15-17", ADULT)  # from the youngest
HANDS = ("right", "left", "both", "ramp")  # both: two-handed; ramp: pushed from a ramp, standing or seated
EXPERIENCE = ("new", "some", "league")
LIGHTEST_LB, HEAVIEST_LB = (
    4,
    16,
)  # 16: the rules of play, known second-hand; 4: the lightest house balls, from memory
MOST_PEOPLE = 48
EXAMPLE = "AK, 9-11, right, 8 lb, new"
INVENTED = """\
AK, under 9, right, 6 lb, new
BN, under 9, ramp, 6 lb, new
CM, 9-11, left, 6 lb, new
DR, 9-11, right, 8 lb, new
EL, 9-11, both, 8 lb, some
FT, 12-14, right, 10 lb, some
GH, 12-14, right, , new
HS, 15-17, both, 12 lb, league
JP, adult, right, 12 lb, new
KV, adult, left, 13 lb, some
LW, adult, right, 15 lb, league
MZ, adult, right, , new"""  # belongs to nobody


@dataclass(frozen=True)
class Person:
    """One bowler of the evening.

    Parameters
    ----------
    initials : str
        One to three letters or digits, a letter first.
    age_band : one of AGE_BANDS
    hand : "right", "left", "both" (two-handed) or "ramp"
    ball_lb : float, optional
        4 to 16 lb; None while nobody knows it.
    experience : "new", "some" or "league"

    Raises
    ------
    ValueError
        Naming the field, the value and what is allowed.
    """

    initials: str
    age_band: str
    hand: str = "right"
    ball_lb: float | None = None
    experience: str = "new"

    def __post_init__(self):
        object.__setattr__(self, "initials", initials(self.initials))
        one_of("age band", self.age_band, AGE_BANDS)
        one_of("hand", self.hand, HANDS)
        one_of("experience", self.experience, EXPERIENCE)
        if self.ball_lb is not None:
            weight = number_in("ball weight", self.ball_lb, LIGHTEST_LB, HEAVIEST_LB, "lb")
            object.__setattr__(self, "ball_lb", weight)

    @property
    def child(self) -> bool:
        """Under eighteen."""
        return self.age_band != ADULT


def read_people(text) -> tuple[Person, ...]:
    """People from lines of text, empty lines aside.

    Parameters
    ----------
    text : str
        A line a person: initials, age band, hand, ball weight, experience, with commas between them. From the right
        anything may be left out, or left empty.

    Raises
    ------
    ValueError
        One sentence that names the line and the value.
    """
    people = []
    for number, line in enumerate(text.splitlines(), start=1):
        if line.strip():
            try:
                people.append(_read_line(line))
            except ValueError as problem:
                raise ValueError(f"Line {number}: {problem}") from None
    return checked(people)


def checked(people) -> tuple[Person, ...]:
    """The people as a tuple, if there is somebody, not too many, and nobody stands there twice."""
    people = tuple(people)
    if not 1 <= len(people) <= MOST_PEOPLE:
        raise ValueError(f"people must be 1 to {MOST_PEOPLE}, got {len(people)}")
    seen = set()
    for person in people:
        if person.initials in seen:
            raise ValueError(
                f"{person.initials} stands there twice; give one of them a number, such as {person.initials[:2]}2"
            )
        seen.add(person.initials)
    return people


def _read_line(line):
    parts = [part.strip() for part in line.split(",")]
    if len(parts) > 5:
        raise ValueError(
            f"a line has five parts, such as {EXAMPLE}; a sixth was found: {parts[5][:20]!r} (write 8.5, not 8,5)"
        )
    who, band, hand, weight, experience = parts + [""] * (5 - len(parts))
    if not band:
        raise ValueError(
            f"after the initials {who[:20]!r} comes an age band: one of {', '.join(AGE_BANDS)}, such as {EXAMPLE}"
        )
    return Person(who, band.lower(), hand.lower() or "right", _pounds(weight), experience.lower() or "new")


def _pounds(text):
    if text in ("", "?", "-"):
        return None
    found = re.fullmatch(r"(\d{1,3}(?:\.\d{1,3})?)\s*(?:lbs?)?", text, flags=re.ASCII | re.IGNORECASE)
    if not found:
        raise ValueError(f"ball weight must be pounds, such as 8 lb, or empty, got {text[:20]!r}")
    return float(found[1])
