"""The tally sheet: one page of paper for twenty turns, written at the lanes and copied in afterwards."""

from html import escape

from bowlcore.coaching.paper import SIZES, page
from bowlcore.coaching.tally import HIT_KEYS

PAPERS = tuple(SIZES)
ROWS = 20
_COLUMNS = (
    "", "lane<br>&lt; or &gt;", "over<br>board", "hit<br>(letter)", "pins left<br>(x: none)", "second<br>(/ or –)", "own words"
)  # fmt: skip
_CSS = """
.bm-tally { font-family: Arial, Helvetica, sans-serif; line-height: 1.25; color: #000; max-width: 190mm; }
.bm-tally h1 { font-size: 1.25em; margin: 0 0 2mm; }
.bm-tally p { margin: 1.5mm 0; }
.bm-tally .fill { display: inline-block; border-bottom: 0.3mm solid #000; height: 5mm; }
.bm-tally table { border-collapse: collapse; width: 100%; table-layout: fixed; }
.bm-tally th, .bm-tally td { border: 0.3mm solid #000; text-align: center !important; padding: 0.5mm; }
.bm-tally tr { background: #fff !important; }
.bm-tally th { font-size: 0.84em; font-weight: 600; }
.bm-tally td { height: 7.2mm; }
.bm-tally tr { break-inside: avoid; }
.bm-tally .small { font-size: 0.84em; }
"""


def tally_html(bowler="", paper="A4", large=False) -> str:
    """The sheet as a page of its own, ready to print on A4 or Letter.

    Raises
    ------
    ValueError
        For another paper.
    """
    return page("Practice tally", f"<style>{_CSS}</style>{_sheet(bowler)}", size=paper, large=large)


def _sheet(bowler):
    widths = (7, 11, 12, 12, 17, 15, 26)
    columns = "".join(f'<col style="width: {width}%">' for width in widths)
    head = "".join(f'<th scope="col">{title}</th>' for title in _COLUMNS)
    body = "".join(
        f"<tr><td>{row}</td>{'<td></td>' * (len(_COLUMNS) - 1)}</tr>" for row in range(1, ROWS + 1)
    )
    keys = ", ".join(f"<b>{key}</b> {escape(word or 'not seen')}" for key, word in HIT_KEYS.items())
    return (
        '<div class="bm-tally"><h1>10 Practice tally</h1>'
        f"<p>Initials <span class='fill' style='width: 18mm'>{escape(bowler)}</span> "
        f"{_line('Day', 28)} {_line('Lanes', 22)} {_line('Game (0: practice)', 12)}</p>"
        f"<p>{_line('Line meant: slide on', 14)} {_line('over', 14)} {_line('Trying', 66)}</p>"
        f"<table><colgroup>{columns}</colgroup><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
        f"<p class='small'>One row a turn. Lane: &lt; left, &gt; right. Hit: {keys}; <b>f</b> is the pocket. "
        "Pins left: their numbers, 0 for the 10-pin, g for all ten. Second ball: / made, – none, or how many it took.</p>"
        "<p class='small'>Initials only. One bowler on the approach, never over the foul line, lift with two hands. "
        "Stop at pain, numbness or tingling. The centre's rules come first.</p></div>"
    )


def _line(label, width_mm):
    return f"{label} <span class='fill' style='width: {width_mm}mm'></span>"


class _Shown:
    def __init__(self, bowler):
        self._bowler = bowler

    def _repr_mimebundle_(self, **kwargs):
        return {
            "text/html": f"<style>{_CSS}</style>{_sheet(self._bowler)}",
            "text/plain": "A tally sheet: one row a turn: lane, board at the arrows, hit, pins left, second ball, own words.",
        }


def tally_sheet(bowler=""):
    """The sheet in the lesson, as it will be printed."""
    return _Shown(bowler)
