"""Many pictures of one panel, packed for a script that only puts together what lies there.

Whatever two pictures share is stored once: a whole layer, such as the lane with its oil, or a single tag.
"""

import re
from html import unescape

from bowlcore.display.picture import LAYER

_HEAD = re.compile(r'<svg [^>]*aria-label="([^"]*)" viewBox="([^"]*)"[^>]*>')
_NAME = re.compile(r'(id="|#)b\d+-')  # the running number of a layer, in its names
_TAG, _LONG_NUMBER = re.compile(r"<[^>]*>"), re.compile(r"-?\d+\.\d{3,}")
_BETWEEN_TAGS, _NEW_LINE = re.compile(r"(?<=>)\s*\n\s*"), re.compile(r"\s*\n\s*")
_ABOUT = 3  # view box, alt text, lead: then the layers


def pack(pictures) -> dict:
    """Pictures with everything that they share stored once.

    Parameters
    ----------
    pictures : iterable of Drawn

    Returns
    -------
    dict
        pieces, words : lists of str; layers : lists of places in pieces; pictures : for each of them a list: where in
        words its view box lies ("" without a picture), what its alt text has behind the sentence, and the sentence's
        lead; then its places in layers.
    """
    pieces, layers, words, packed = {}, {}, {}, []
    for drawn in pictures:
        alt, box, inside = _parts(drawn.svg)
        places = [tuple(_place(pieces, tag) for tag in _tags(layer, i)) for i, layer in enumerate(inside)]
        about = (box, alt.removeprefix(drawn.sentence), drawn.lead)
        packed.append([_place(words, text) for text in about] + [_place(layers, layer) for layer in places])
    return {
        "pieces": list(pieces), "layers": [list(layer) for layer in layers], "words": list(words), "pictures": packed
    }  # fmt: skip


def layers_of(packed, number) -> list[str]:
    """The layers of one picture, put together again."""
    return [
        "".join(packed["pieces"][p] for p in packed["layers"][i]) for i in packed["pictures"][number][_ABOUT:]
    ]


def _place(store, thing):
    """Where a thing lies in a store; it is put there if it is new."""
    return store.setdefault(thing, len(store))


def _parts(picture):
    """Words for those who cannot see it, view box, layers."""
    if not picture:
        return "", "", []
    head = _HEAD.match(picture)
    inside = picture[head.end() :].removesuffix("</svg>").split(LAYER)[1:]
    return unescape(head[1]), head[2], [layer.removesuffix("</g>") for layer in inside]


def _tags(layer, number):
    """A layer cut after its tags; numbers to a hundredth of a point, names as they were in any other picture."""
    named = _NAME.sub(rf"\g<1>p{number}-", layer)
    short = _TAG.sub(lambda tag: _LONG_NUMBER.sub(_rounded, _NEW_LINE.sub(" ", tag[0])), named)
    return [tag for tag in _BETWEEN_TAGS.split(short) if tag.strip()]


def _rounded(number):
    return f"{round(float(number[0]), 2) + 0.0:g}"
