"""A panel as one file for a phone: a grid of its settings, each drawn by the panel itself, and a script that looks up.

The file asks for nothing outside itself and computes nothing. Without scripts the table of all settings is there.
"""

import base64
import hashlib
import json
from html import escape
from itertools import product
from math import prod
from pathlib import Path
from typing import NamedTuple

from bowlcore.coaching.change_words import SAFE_HAND
from bowlcore.coaching.paper import POLICY, document
from bowlcore.coaching.printed import put_beside, put_html_as
from bowlcore.display.controls import Choice, Number
from bowlcore.display.panel import Drawn, table
from bowlcore.display.phone_pictures import layers_of, pack
from bowlcore.display.picture import LAYER, narrow
from bowlcore.display.pieces import in_trade_words
from bowlcore.display.printing import PAPER

FOLDER = "phone"
MOST_SETTINGS, MOST_BYTES = 400, 2_000_000
WIDTH_IN = 5.0
HOW_TO_GIVE = "Send it to a phone and open it in the browser there; it needs no internet."
_STEPS = 11
_OF_THE_HAND = {"axis_rotation_deg", "axis_tilt_deg", "rev_rate_rpm", "hand_steps", "technique"}
_LEAST_PX_PT, _MOST_PX_PT = (
    1.1,
    1.8,
)  # of the screen for a point of the picture: 10 px for its letters at least
_FRAME_PX = 20  # what the page keeps beside the picture
_LETTERS_A_LINE = 40  # on a screen of 360 pixels
_MADE = (
    "Made with the Ball Motion Workbook. Oil patterns, friction and bowlers are invented for teaching; no lane was "
    "measured: trust differences more than numbers. This page holds {count} settings as the course computed them; it "
    "looks them up, sends nothing and fetches nothing."
)
_HERE = Path(__file__)
_SCRIPT = _HERE.with_suffix(".js").read_text(encoding="utf-8")
_CSS = _HERE.with_suffix(".css").read_text(encoding="utf-8")
_ONLY_OURS = f"'sha256-{base64.b64encode(hashlib.sha256(_SCRIPT.encode()).digest()).decode()}'"


class _Moved(NamedTuple):
    """A control of the page: its steps in trade units, the same in words, and at which of them it begins."""

    control: object
    steps: list
    told: list
    start: int


def phone_page(panel, controls=None, *, title=None, about="", cautions=(), width_in=WIDTH_IN) -> str:
    """A panel at each setting of a grid, as an HTML document.

    Parameters
    ----------
    panel : Panel
        The page begins where the panel stands now, and its other controls stay there.
    controls : dict, optional
        Name of a control: its steps, in trade units; the first two of the panel if left out.
    title, about : str
        Heading; one sentence that says what is shown.
    cautions : sequence of str
        Safety lines of the lesson. Where the hand is changed, that of the hand is added.
    width_in : float
        Widest figure [in]: letters keep their size, so that a narrower one has larger letters on a phone.

    Raises
    ------
    ValueError
        In one sentence: a control or a step that the panel does not have, too many settings, too large a file.
    """
    title = title or panel.name.removesuffix("_panel").replace("_", " ").capitalize()
    moved = _moved(panel, controls)
    names = [one.control.name for one in moved]
    with narrow(width_in):
        drawn = [_drawn(panel, names, values) for values in product(*(one.steps for one in moved))]
    packed = pack(drawn) | {"steps": [one.told for one in moved]}
    first = _number(moved)
    if _OF_THE_HAND & set(names) and not any("wrist" in caution for caution in cautions):
        cautions = [*cautions, SAFE_HAND]
    body = (
        f'<main><h1>{escape(title)}</h1><p>{escape(about)}</p><div id="controls" hidden>'
        + "".join(map(_control, range(len(moved)), moved))
        + '</div><p id="off">Scripts are off here, so nothing can be moved: the table below has every setting.</p>'
        + _said(drawn[first])
        + _picture(packed, first, drawn[first].sentence)
        + _what_stays(panel, names)
        + "".join(f"<p><b>Safety.</b> {escape(line)}</p>" for line in cautions)
        + f'<details id="all" open><summary>Every setting as a table</summary>{_table(moved, drawn)}</details>'
        f"<p><small>{_MADE.format(count=len(drawn))}</small></p></main>"
        f'<script type="application/json" id="drawn">{_data(packed)}</script><script>{_SCRIPT}</script>'
    )
    longest = max(len(one.sentence) for one in drawn)
    style = _CSS + _room_for_words(longest) + _width_of_picture(packed)
    page = document(title, style, body, f"{POLICY}; script-src {_ONLY_OURS}")
    size = len(page.encode())
    if size > MOST_BYTES:
        raise ValueError(
            f"a page for phones has at most {MOST_BYTES / 1e6:g} MB, got {size / 1e6:.1f}: give fewer steps"
        )
    return page


def put_phone_page(name, page, path=None) -> str:
    """Write a page and say where it lies.

    Parameters
    ----------
    name, page : str
        Name without ending; the document.
    path : Path, optional
        A file ending in .html; the folder `phone` in the folder that the lesson runs in if left out.

    Raises
    ------
    ValueError, OSError
        In one sentence.
    """
    if path is None:
        [file] = put_beside({name: page}, Path.cwd() / FOLDER)
        return f"In the folder {FOLDER} of your lessons: {file.name}. {HOW_TO_GIVE}"
    path = Path(path).expanduser()
    if path.suffix.lower() != ".html":
        raise ValueError(f"a page for phones ends in .html, got {path.name!r}")
    [file] = put_html_as({path: page})
    return f"{file.name}. {HOW_TO_GIVE}"


def _moved(panel, controls) -> list[_Moved]:
    """The controls of the page; where the panel stands now is one of the steps."""
    if controls is None:
        controls = {name: _some_steps(control) for name, control in list(panel.controls.items())[:2]}
    moved = [_one_moved(panel.control(name), steps) for name, steps in controls.items()]
    count = prod(len(one.steps) for one in moved)
    if not moved:
        raise ValueError("a page for phones needs a control to move, got none")
    if count > MOST_SETTINGS:
        raise ValueError(
            f"a page for phones has at most {MOST_SETTINGS} settings, got {count}: give fewer steps"
        )
    return moved


def _one_moved(control, steps):
    for step in steps:
        control.check(step)
    if isinstance(control, Number):
        now = control.shown(control.value)
        steps = sorted({*map(control.shown, steps), now})
    else:
        now = control.value
        steps = list(dict.fromkeys([*steps, now]))
    return _Moved(control, steps, [control.told(step) for step in steps], steps.index(now))


def _some_steps(control):
    """About eleven steps of a number, all of a list, and of other controls only where they stand."""
    if isinstance(control, Choice):
        return control.ends
    if not isinstance(control, Number):
        return []
    stride = max(1, round((control.high - control.low) / control.step / (_STEPS - 1))) * control.step
    return [control.low + i * stride for i in range(int((control.high - control.low) / stride + 1e-9) + 1)]


def _drawn(panel, names, values):
    """What the panel shows there; where it shows a sentence only, so does the page."""
    try:
        return panel.drawn_at(**dict(zip(names, values, strict=True)))
    except ValueError as problem:
        return Drawn("", in_trade_words(str(problem)), [])


def _number(moved):
    """Which picture is the first to be seen: the last control runs fastest."""
    number = 0
    for one in moved:
        number = number * len(one.steps) + one.start
    return number


def _control(i, one):
    """A labelled slider over the steps of a number, or a list."""
    label = f'<label for="control{i}">{escape(one.control.title)}</label>'
    if isinstance(one.control, Number):
        now = escape(one.told[one.start], quote=True)
        return (
            f'<div>{label}<b id="now{i}" aria-hidden="true">{now}</b><input type="range" id="control{i}" min="0" '
            f'max="{len(one.told) - 1}" step="1" value="{one.start}" aria-valuetext="{now}" autocomplete="off"></div>'
        )
    options = "".join(
        f"<option{' selected' if at == one.start else ''}>{escape(told)}</option>"
        for at, told in enumerate(one.told)
    )
    return f'<div>{label}<select id="control{i}" autocomplete="off">{options}</select></div>'


def _picture(packed, first, sentence):
    """The first picture, with as many places for layers as any of them needs."""
    words, pictures = packed["words"], packed["pictures"]
    box, alt, *_ = pictures[first]
    layers = layers_of(packed, first) + [""] * (max(map(len, pictures)) - len(pictures[first]))
    return (
        f'<div id="picture" tabindex="0" role="group" aria-label="Picture"><svg role="img" viewBox="{words[box]}" '
        f'aria-label="{escape(sentence + words[alt], quote=True)}">'
        + "".join(f"{LAYER}{layer}</g>" for layer in layers)
        + '</svg></div><p id="swipe">Wider than a phone held upright: swipe the picture, or turn the phone.</p>'
    )


def _said(one):
    """The sentence as the panel shows it: its lead on a line of its own."""
    rest = one.sentence.removeprefix(one.lead)
    return (
        f'<p id="said" role="status" aria-live="polite"><b id="lead">{escape(one.lead)}</b>'
        f'<span id="rest">{escape(rest)}</span></p>'
    )


def _what_stays(panel, moved):
    others = (control for name, control in panel.controls.items() if name not in {*moved, *PAPER})
    stays = [f"{control.title}: {control.told(control.value)}" for control in others]
    return f"<p><b>What stays as it is.</b> {escape('; '.join(stays))}.</p>" if stays else ""


def _table(moved, drawn):
    """Every setting and its sentence; the script reads the sentences here."""
    titles = [one.control.title for one in moved]
    each = zip(product(*(one.told for one in moved)), drawn, strict=True)
    return table(
        [{**dict(zip(titles, told, strict=True)), "What happens": one.sentence} for told, one in each]
    )


def _data(packed):
    """JSON that no text in it can end."""
    return json.dumps(packed, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")


def _room_for_words(letters):
    """As CSS: on a narrow screen the picture stays where it is when the sentence above it changes."""
    return f"@media (max-width: 480px) {{ #said {{ min-height: {1.4 * -(-letters // _LETTERS_A_LINE):.1f}em; }} }}\n"


def _width_of_picture(packed):
    """As CSS: what keeps its letters readable at least; a word about swiping where that is wider than the screen."""
    boxes = {packed["words"][box] for box, *_ in packed["pictures"]}
    width = max((float(box.split()[2]) for box in boxes if box), default=0.0)
    least = round(width * _LEAST_PX_PT)
    return (
        f"#picture svg {{ min-width: {least}px; max-width: {width * _MOST_PX_PT:.0f}px; }}\n"
        f"@media (min-width: {least + _FRAME_PX}px) {{ #swipe {{ display: none; }} }}\n"
    )
