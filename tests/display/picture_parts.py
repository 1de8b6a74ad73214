"""A panel's picture taken apart: its words, its axes with their ticks, its long curves."""

import re
from collections import Counter
from typing import NamedTuple
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
_LONG = 12  # corners: more than any frame, tick, arrow or letter box has


class Axis(NamedTuple):
    label: str
    places: list  # of the ticks, in points along the axis
    ticks: list  # their texts


class Parts(NamedTuple):
    alt: str
    words: list
    axes: list
    curves: list  # arrays of corners [points], long ones only


def picture_parts(svg) -> Parts:
    """Parts of an SVG as `picture.svg` makes it; nothing of one that is made in another way."""
    if not svg.startswith("<svg"):
        return Parts("", [svg] if svg else [], [], [])
    root = ElementTree.fromstring(svg)
    parent = {inner: outer for outer in root.iter() for inner in outer}
    ticks = {text: _tick(parent[text], parent) for text in root.iter(SVG + "text")}
    several = Counter(parent[tick] for tick in ticks.values() if tick is not None)
    words, axes = {}, {}
    for text, tick in ticks.items():
        said = "".join(text.itertext()).strip()
        if tick is not None and several[parent[tick]] > 1:
            axes.setdefault(parent[tick], []).append((_place(text), said))
        else:
            words.setdefault(parent[text], []).append(said)
    labels = {}
    for group, said in words.items():  # an axis's own words are its label
        labels.setdefault(next((up for up in _above(group, parent) if up in axes), None), []).append(
            " ".join(said)
        )
    curves = [_NUMBER.findall(path.get("d", "")) for path in root.iter(SVG + "path")]
    return Parts(
        root.get("aria-label"),
        ["\n".join(said) for said in words.values()],
        [_axis(" ".join(labels.get(group, [])), marks) for group, marks in axes.items()],
        [[float(number) for number in curve] for curve in curves if len(curve) >= 2 * _LONG],
    )


def _tick(group, parent):
    """The group of a tick mark and its text, if this text is one's."""
    for inner in (group, parent[group]):
        *marks, last = parent[inner]
        found = {node.tag for mark in marks for node in mark.iter()}
        if last is inner and len(marks) <= 3 and SVG + "use" in found and SVG + "text" not in found:
            return parent[inner]
    return None


def _above(group, parent):
    while group in parent:
        yield (group := parent[group])


def _place(text):
    if text.get("x"):
        return float(text.get("x")), float(text.get("y"))
    x, y = _NUMBER.findall(text.get("transform"))[:2]
    return float(x), float(y)


def _axis(label, ticks):
    (xs, ys), texts = zip(*(place for place, _ in ticks), strict=True), [text for _, text in ticks]
    return Axis(label, list(xs if max(xs) - min(xs) > max(ys) - min(ys) else ys), texts)
