"""What panels that print share: paper and size of letters, the look on the screen, writing and the sentence about it."""

from bowlcore.coaching.paper import LARGE_PT, SIZES, TEXT_PT
from bowlcore.coaching.printed import put
from bowlcore.display.controls import Choice

_LETTERS = ((f"{TEXT_PT} point", False), (f"{LARGE_PT} point, large", True))
PAPER = {"size": "A4", "large": False}  # names of the controls, and where they begin
SCREEN = """
.bm-preview { display: flex; flex-wrap: wrap; gap: 12px; color: #000; background: #fff; line-height: 1.26; }
.bm-preview > * { flex: 1 0 460px; max-width: 190mm; border: 1px solid #767676; padding: 10px 14px; box-sizing: border-box; }
.bm-preview h1 { font-size: 1.3em; margin: 0 0 0.3em; color: #000; }
.bm-preview table { border-collapse: collapse; width: 100%; margin: 4px 0; }
.bm-preview th, .bm-preview td { border: 1px solid #000; padding: 2px 5px; text-align: left !important;
  vertical-align: top !important; white-space: normal !important; font-size: inherit; }
.bm-preview tr { background: #fff !important; }
.bm-panel .bm-picture .bm-preview svg { width: auto; max-width: 100%; height: auto; }
"""


def paper_controls(at) -> list:
    """Paper and size of letters."""
    return [
        Choice("size", "Paper", list(SIZES), at("size", PAPER["size"]), buttons=True),
        Choice("large", "Letters", list(_LETTERS), at("large", PAPER["large"]), buttons=True),
    ]


def paper_of(values) -> dict:
    """The paper among a panel's values, as the pages take it."""
    return {name: values[name] for name in PAPER}


def paper_words(size, large) -> str:
    """ "A4, 12 point"."""
    return f"{size}, {dict((flag, told) for told, flag in _LETTERS)[large]}"


def write_pages(panel, make):
    """Write what a panel stands at: make(values, hand) -> dict name: page. The panel then says where it lies."""
    values, hand = dict(panel.values), panel.settings.hand
    try:
        said = put(make(values, hand))
    except (OSError, ValueError) as problem:
        said = f"Nothing could be written: {getattr(problem, 'strerror', None) or problem}."
    panel.memory["written"] = (said, values, hand)


def with_written(sentence, written, values, hand) -> str:
    """The sentence, and what was written if the panel still stands there."""
    return f"{sentence} {written[0]}" if written and written[1:] == (values, hand) else sentence
