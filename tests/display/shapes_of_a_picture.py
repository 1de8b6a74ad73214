"""What a picture shows, shape by shape in the order it is painted: lines, marks, areas, images and words with their colours."""

import re
from base64 import b64decode
from io import BytesIO
from typing import NamedTuple
from xml.etree import ElementTree

import numpy as np

SVG, LINK = "{http://www.w3.org/2000/svg}", "{http://www.w3.org/1999/xlink}href"
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
_NAMES = {"black": "#000000", "white": "#ffffff"}


class Shape(NamedTuple):
    kind: str  # "line", "mark", "area", "image" or "words"
    color: str  # of the stroke or the letters; "" without one
    fill: str
    look: tuple  # dash and width of a line or edge, or a mark's shape
    points: np.ndarray  # (n, 2) corners
    place: tuple | None  # the axes it belongs to, as the corners of its clip; None for frames and words
    alpha: float
    grid: bool  # a grid line
    text: str = ""

    @property
    def box(self):
        return *self.points.min(axis=0), *self.points.max(axis=0)


def shapes(svg) -> list[Shape]:
    """All that is painted in an SVG that matplotlib made."""
    root = ElementTree.fromstring(svg)
    parent = {inner: outer for outer in root.iter() for inner in outer}
    hidden = {
        inner for outer in (*root.iter(SVG + "defs"), *root.iter(SVG + "clipPath")) for inner in outer.iter()
    }
    named = {node.get("id"): node for node in root.iter() if node.get("id")}
    found = []
    for node in root.iter():
        kind = node.tag.removeprefix(SVG)
        if node in hidden or kind not in ("path", "use", "text", "image"):
            continue
        style = _style(node)
        clip = node.get("clip-path") or parent[node].get("clip-path")
        place = clip and tuple(
            map(float, _NUMBER.findall(_first(named[clip[5:-1]], "d", "x", "y", "width", "height")))
        )
        stroke, fill = (
            _color(style.get(name, default)) for name, default in (("stroke", "none"), ("fill", "#000000"))
        )
        alpha = float(style.get("opacity", 1)) * float(style.get("fill-opacity", 1))
        look = style.get("stroke-dasharray", "none"), float(style.get("stroke-width", "1").removesuffix("px"))
        if kind == "path":
            points = _pairs(node.get("d"))
            if len(points) < 2 or alpha == 0 or not (fill or stroke):
                continue
            grid = (
                not fill and any(True for _ in parent[parent[node]].iter(SVG + "text")) and len(points) == 2
            )
            hatched = "url(" in style.get("fill", "")
            which, inside = "area" if fill or hatched else "line", "" if hatched else fill
            found.append(Shape(which, stroke, inside, (*look, hatched), points, place, alpha, grid))
        elif kind == "use":
            mark = named[node.get(LINK)[1:]].get("d")
            points = np.array([[float(node.get("x", 0)), float(node.get("y", 0))]])
            found.append(
                Shape(
                    "mark",
                    stroke or fill,
                    fill,
                    (_turns(mark), fill == "#ffffff"),
                    points,
                    place,
                    alpha,
                    False,
                )
            )
        elif kind == "text":
            text = "".join(node.itertext()).strip()
            found.append(Shape("words", fill, "", (), _anchor(node), None, alpha, False, text))
        else:
            corners = _corners(node)
            found.append(Shape("image", "", _darkest(node.get(LINK)), (), corners, None, 1.0, False))
    return found


def _style(node):
    style = {name: node.get(name) for name in ("fill", "stroke", "stroke-width", "opacity") if node.get(name)}
    pairs = (part.split(":", 1) for part in node.get("style", "").split(";") if ":" in part)
    return style | {name.strip(): value.strip() for name, value in pairs}


def _color(text):
    text = _NAMES.get(text, text)
    return text.lower() if text.startswith("#") else ""


def _first(node, *names):
    inner = node[0]
    return " ".join(inner.get(name, "") for name in names)


def _pairs(path):
    numbers = np.array(_NUMBER.findall(path or ""), float)
    return numbers[: len(numbers) // 2 * 2].reshape(-1, 2)


def _turns(mark):
    """A mark's shape without its size."""
    points = _pairs(mark)
    size = np.abs(points).max() or 1.0
    return len(points), tuple(np.round(points / size, 1).ravel().tolist())


def _anchor(text):
    if text.get("x"):
        return np.array([[float(text.get("x")), float(text.get("y"))]])
    moved = _NUMBER.findall(text.get("transform", "0 0"))
    return np.array([[float(moved[0]), float(moved[1])]])


def _corners(image):
    """Two opposite corners of an image, which matplotlib turns upside down in one of two ways."""
    x, y, wide, high = (float(image.get(name, 0)) for name in ("x", "y", "width", "height"))
    turned = image.get("transform", "")
    if turned.startswith("matrix"):
        across, _, _, down, x, y = map(float, _NUMBER.findall(turned))
        return np.array([[x, y], [x + across * wide, y + down * high]])
    return np.array(
        [[x, -y], [x + wide, high - y]]
        if turned.startswith("scale(1 -1)")
        else [[x, y], [x + wide, y + high]]
    )


def _darkest(link):
    """The darkest pixel of an image."""
    from matplotlib.image import imread

    pixels = imread(BytesIO(b64decode(link.split(",", 1)[1])), format="png")
    alpha = pixels[..., 3:] if pixels.shape[-1] == 4 else 1.0
    flat = (pixels[..., :3] * alpha + 1.0 - alpha).reshape(-1, 3)  # over white
    red, green, blue = (round(255 * float(part)) for part in flat[flat.sum(axis=1).argmin()])
    return f"#{red:02x}{green:02x}{blue:02x}"
