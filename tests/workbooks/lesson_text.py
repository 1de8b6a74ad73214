"""Reads a lesson as a person does: its prose, without links' addresses, code and formulas."""

import re
from pathlib import Path

import nbformat

from bowlcore.coaching.glossary import PAGE
from bowlcore.locate import workbooks_folder

BOOKS = sorted(workbooks_folder().glob("*.ipynb"))


def cells(book: Path, kind: str) -> list:
    return [cell for cell in nbformat.read(book, 4).cells if cell.cell_type == kind]


def without_markup(source: str) -> str:
    """The words of a markdown cell; formulas and code become a blank."""
    text = re.sub(r"\$\$.*?\$\$|\$[^$]*\$|`[^`]*`|<[^>]+>", " ", source, flags=re.S)
    return re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", text)


def passages(source: str) -> list[str]:
    """Paragraphs and points of a list, each on one line, without headings and tables."""
    text = re.sub(r"^(#|\|).*$", "", without_markup(source), flags=re.M)
    parts = re.split(r"\n\s*\n|\n(?=\s*(?:[-*]|\d+\.) )", text)
    plain = [" ".join(re.sub(r"^\s*(?:[-*>]|\d+\.) +|[*_]+", "", part.strip()).split()) for part in parts]
    return [part for part in plain if part]


# What names a thing counts nothing: lessons, pins and what is left standing, moves of the trade, points of a list.
_PIN = r"(?:10|[1-9])"
_COUNTED = r"(?:%|(?:degrees?|boards?|feet|ft|in|mph|rpm|lb|balls?|frames?|points?|pins|times|games?|minutes?|years?)\b)"
_NAMES = rf"""
    ^\s*\|?\s*\d+\.\s                                           # a point of a list, a row that is numbered
    | \b(?:lessons?|lesson's)\s+\d\d(?:(?:,|\s+and|\s+to)\s+\d\d)*  # lessons
    | (?<![\w.,])0\d(?![\w%]|[.,]\d)                            # a lesson by its number alone
    | (?<![\w.,])1[0-2](?=(?:,[ ]1[0-2])?[ ]+[A-Z][a-z]+[ ]+[a-z])   # and with a title, its own or the next one's
    | (?<![\w.-]){_PIN}-pins?\b                                  # pins by their number
    | (?<![\w.-]){_PIN}(?:-{_PIN})+(?!\w|[.-]\d|[ ]{_COUNTED})        # what is left standing
    | (?<![\w.-])\d-and-\d(?:[ ]or[ ]\d)?(?![\w-])               # a move of feet and target
    | (?<![\w.:])\d:\d:\d(?![\w:])                               # a rule of start, foul line and pins
    | \b[Ss]ayings?\s+\d+                                        # sayings of lesson 12
    | \bBall\s+\d\b                                             # a control for one of three balls
    | (?<![\w.,])(?:19|20)\d\d(?![\w%]|[.,]\d|[ ](?!in\b){_COUNTED})  # years
"""


def numbers(source: str) -> list[str]:
    """The numbers of a markdown cell as written, in order; those that only name a thing are left out."""
    text = re.sub(_NAMES, " ", without_markup(source), flags=re.M | re.X)
    return re.findall(r"(?<![\w.])[-−]?\d+(?:[.,]\d+)*", text)


# Where a word is not read as prose: headings, tables, links, code, formulas.
_NO_PROSE = re.compile(r"^[#|][^\n]*|\[[^\]]*\]\([^)]*\)|`[^`]*`|\$\$.*?\$\$|\$[^$]*\$", re.M | re.S)


def first_use(word, source: str) -> re.Match | None:
    """Where a markdown cell first uses a word of the glossary in prose, not yet as a link."""
    prose = _NO_PROSE.sub(lambda found: " " * len(found[0]), source)
    forms = "|".join(re.escape(form) for form in (word.name, *word.forms))
    return re.search(rf"(?<![\w-])(?:{forms})(?![\w-])", prose, re.I)


def links_to(word, source: str) -> list[re.Match]:
    """The links of a markdown cell to this word on the page of words."""
    return list(re.finditer(rf"\[([^\]]+)\]\({re.escape(PAGE)}#{re.escape(word.anchor)}\)", source))
