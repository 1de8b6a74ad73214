"""What the project claims, gathered from its tests: a page to look a number up, `tests/claims.md`.

A test that checks a claim against something is marked
`@pytest.mark.claim("what is claimed", against="source", kind="published")` and tells the figures it reaches through
the fixture `figure`. `python -m pytest --claims-to FILE` writes the page of the tests that it ran.
"""

import re
from decimal import Decimal
from pathlib import Path
from typing import NamedTuple

KINDS = {  # kind: heading of its part of the page, and what its rows are worth
    "published": (
        "Checked against something published",
        "No source could be read in full. *Second-hand* is an opening, an abstract or somebody else's quote; *from memory* "
        "was not opened for this course. Each row says which. The bounds asked are ours.",
    ),
    "independent": (
        "Checked against an independent calculation or library",
        "Another way to the same number: another program, a library, games or lanes drawn by lot. Where the other way "
        "is our own too, the row says so.",
    ),
    "exact": (
        "Checked against an exact answer or a law of mechanics",
        "Mechanics, true of any ball with even weight whatever we chose; geometry, arithmetic and statistics. *Rounding* is "
        "what a computer's last digits do.",
    ),
    "practice": (
        "Checked against common practice",
        "What coaches expect, with no source unless the row names one. Lanes, oil and friction are invented and were "
        "chosen so that many of these come true: they are no proof, but they are kept.",
    ),
    "own": (
        "Our own choice or measurement",
        "Nobody outside says what is right here: we measured what the course does, or hold it to what it promises.",
    ),
    "disagrees": (
        "Where the model disagrees with common practice or with something published",
        "The test keeps the disagreement, so that a change of the model which ends it is noticed. The lessons tell it; "
        "lesson 12 tells of the sayings. *Not so in this model* does not mean *not true*.",
    ),
}
ABOUT = {  # folder of the test: what it is about
    "motion": "The ball on the lane",
    "rack": "The pins",
    "coaching": "Advice, reading, measuring, logs and sheets",
    "display": "What is on the screen",
    "browser": "What is on the screen",
    "workbooks": "The lessons",
    "": "Installing and starting",
}


class Claim(NamedTuple):
    """One claim and where it is checked."""

    text: str
    against: str
    kind: str
    test: str  # file::function


class Figure(NamedTuple):
    """One figure reached; of several cases the largest, or the smallest if `least`."""

    what: str
    value: float
    unit: str
    asked: str
    least: bool


def claim_of(item):
    """The claim of a test, or None."""
    mark = item.get_closest_marker("claim")
    if mark is None:
        return None
    (text,), about = mark.args, mark.kwargs
    if about["kind"] not in KINDS:
        raise ValueError(f"kind of claim must be one of {', '.join(KINDS)}, got {about['kind']!r}")
    return Claim(text, about["against"], about["kind"], item.nodeid.partition("[")[0])


def worst(figures) -> list[str]:
    """Of all cases of a test: each figure in words."""
    found = {}
    for figure in map(Figure._make, figures):
        before = found.get(figure.what)
        if before is None or (figure.value < before.value) == figure.least:
            found[figure.what] = figure
    return [
        f"{one.what} {plain(one.value)} {one.unit}".strip() + (f" (asked: {one.asked})" if one.asked else "")
        for one in found.values()
    ]


def plain(value) -> str:
    """Three digits of a number, without an exponent; what lies below a hundred-millionth is told as that."""
    if 0 < abs(value) < 1e-8:
        return "less than 0.00000001"
    return format(Decimal(f"{value:.3g}"), "f")


def page(found) -> str:
    """The page; `found` maps a Claim to its figures."""
    lines = ["# Every claim and its check", "", _HEAD, ""]
    for kind, (heading, _) in KINDS.items():
        link = re.sub(r"[^a-z ]", "", heading.lower()).replace(" ", "-")
        lines.append(f"* [{heading}](#{link}): {sum(claim.kind == kind for claim in found)}")
    for kind, (heading, worth) in KINDS.items():
        lines += ["", f"## {heading}", "", worth]
        of_kind = sorted((claim for claim in found if claim.kind == kind), key=_place)
        for about in dict.fromkeys(map(_about, of_kind)):
            lines += [
                "",
                f"### {about}",
                "",
                "| claim | reached | checked against | check |",
                "|---|---|---|---|",
            ]
            lines += [_row(claim, found[claim]) for claim in of_kind if _about(claim) == about]
    return "\n".join(lines) + "\n"


def _row(claim, figures):
    reached = "; ".join(worst(figures)) or "true in every case tried"
    cells = [claim.text, reached, claim.against, f"`{claim.test}`"]
    return "| " + " | ".join(re.sub(r"\s+", " ", cell).replace("|", "/") for cell in cells) + " |"


def _about(claim):
    inside = Path(claim.test.partition("::")[0]).parts[1:-1]
    return ABOUT[inside[0] if inside else ""]


def _place(claim):
    return list(ABOUT.values()).index(_about(claim)), claim.test


_HEAD = """Left the claim, then the figure that came out, the worst of all cases; *asked* is the bound that the test holds it to,
and a test that misses it fails. To see one check at work and have its figures printed, type
`.venv/bin/python -m pytest -n0 -m "" --claims` and after it what stands in the last column of its row.
What the words for a source mean, and how to add a row, stands in
[README.md](README.md).

The page is written by the tests themselves, with the extras `test` and `rack` installed:
`python -m pytest -m "not browser and not setup" --claims-to tests/claims.md`."""
