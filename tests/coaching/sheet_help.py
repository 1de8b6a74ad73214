"""Reading a printed worksheet as a person would: numbers, tables, crosses, from the page alone."""

import re
from html.parser import HTMLParser
from math import nan

from bowlcore import OiledLane, Release, load_balls, load_pattern


class Page(HTMLParser):
    """Tables as rows of (text, is an answer), crosses as (question, ticked choices), and the whole text."""

    def __init__(self, html):
        super().__init__()
        self.tables, self.text, self.open, self.ticks, self.last = [], [], [], [], ""
        self.feed(re.sub(r"<style>.*?</style>", "", html, flags=re.S))
        self.text = " ".join(" ".join(self.text).split())

    def handle_starttag(self, tag, attrs):
        self.open.append((tag, dict(attrs).get("class", "")))
        if tag == "table":
            self.tables.append([])
        elif tag == "tr":
            self.tables[-1].append([])
        elif tag in ("td", "th"):
            self.tables[-1][-1].append(["", False])
        if tag in ("circle", "path", "rect", "polyline", "br", "meta", "col"):
            self.open.pop()

    def handle_endtag(self, tag):
        while self.open and self.open.pop()[0] != tag:
            pass

    def handle_data(self, data):
        self.text.append(data)
        tags = [tag for tag, _ in self.open]
        if "td" in tags or "th" in tags:
            cell = self.tables[-1][-1][-1]
            cell[0] += data
            cell[1] |= "b" in tags
        if self.open and self.open[-1][1] == "tick":
            self.last = data
        elif self.open and self.open[-1][1] == "choice" and self.last == "x":
            self.ticks.append(data.strip())
            self.last = ""

    def given(self) -> dict:
        """The numbers of the sheet."""
        head, values = self.tables[0]
        return {name[0]: value[0] for name, value in zip(head, values, strict=True)}

    def rows(self, table) -> list[list[str]]:
        """Texts of a table, its head left out."""
        return [[cell[0] for cell in row] for row in self.tables[table][1:]]

    def computed(self) -> list[str]:
        """What the coach's copy says the answers were computed with, one text a ball."""
        said = self.text.partition("Computed with.")[2]
        return [part for part in re.split(r"(?=ball speed)", said) if part.startswith("ball speed")]


def number(text) -> float:
    found = re.search(r"-?\d+(?:\.\d+)?", text)
    return float(found[0]) if found else nan


def release_of(said, hand) -> Release:
    """A release from printed text such as "ball speed 17 mph ...; rev rate 300 rpm; ..."."""

    def after(label):
        return number(said.partition(label)[2])

    labels = (
        "ball speed",
        "rev rate",
        "axis rotation",
        "axis tilt",
        "laid down on board",
        "rolled over board (at 15 ft)",
    )
    return Release(*map(after, labels), hand=hand)


def lane_named(said):
    return OiledLane(load_pattern(re.search(r"oil: (\w+)", said)[1]))


def ball_named(said):
    return load_balls()[re.search(r"ball: ([^;]+);", said)[1]]


def half(value) -> str:
    """A number to the nearest half, as it is printed."""
    return f"{round(2 * value) / 2:g}"
