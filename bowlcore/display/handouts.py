"""Handouts on paper: ten minutes before league, one's own numbers for each pin, and the note for parents."""

from html import escape

from bowlcore.coaching.before_league import READ, WRITE, warm_up
from bowlcore.coaching.paper import page
from bowlcore.coaching.parents_note import parents_note

_CSS = """
.bm-out table { table-layout: fixed; }
.bm-out td { height: 1.5em; }
.bm-out th, .bm-out td { padding: 0.4mm 1mm; line-height: 1.15; }
.bm-out ul { margin: 1mm 0; }
.bm-out .fill { display: inline-block; border-bottom: 0.3mm solid #000; width: 45mm; height: 1.1em; }
.bm-note { break-inside: avoid; padding-bottom: 5mm; margin-bottom: 5mm; border-bottom: 0.3mm dashed #000; }
.bm-note:nth-of-type(2n) { break-after: page; border-bottom: 0; }
"""
_COLUMNS = ("", "throw", "line", "should come in", "over", "hit", "end")
_WIDTHS, _NUMBERS_WIDTHS = (4, 27, 27, 18, 8, 8, 8), (8, 13, 28, 17, 15, 19)  # percent
_SAFE = (
    "One bowler on the approach; a test slide first. Warm up arms, wrists and legs. Never over the foul line. Stop at pain, "
    "numbness or tingling."
)


def before_league_page(bowler, lanes, name="", *, size="A4", large=False) -> str:
    """Eight balls on each lane as a document to print.

    Parameters
    ----------
    bowler : Bowler
    lanes : dict
        Name of a lane: the lane as believed.
    name : str
        Printed, escaped, kept nowhere.
    size, large : as for `paper.page`
    """
    tables = "".join(_balls(lane_name, warm_up(bowler, lane)) for lane_name, lane in lanes.items())
    read = "".join(f"<li>{escape(text)}</li>" for text in READ)
    who = escape(name) if name else '<span class="fill"></span>'
    body = (
        f'<section class="sheet bm-out"><h1>Ten minutes before league</h1><p>Name {who} Day <span class="fill"></span></p>'
        f"<p>Eight balls on each lane, one question a ball. No score. {escape(WRITE)}</p>{tables}"
        f'<div class="keep"><p><b>Then read it.</b></p><ul>{read}</ul><p><b>Safety.</b> {escape(_SAFE)}</p></div></section>'
    )
    return page("Ten minutes before league", f"<style>{_CSS}</style>{body}", size=size, large=large)


def _balls(lane_name, balls):
    head = "".join(f'<th scope="col">{title}</th>' for title in _COLUMNS)
    rows = "".join(
        f"<tr><td>{number}</td><td>{escape(ball.what)}</td><td>{escape(ball.line)}</td><td>{escape(ball.expected)}</td>"
        "<td></td><td></td><td></td></tr>"
        for number, ball in enumerate(balls, 1)
    )
    title = f"{lane_name} lane" if lane_name else "The lane"
    return (
        f'<table class="keep"><caption>{escape(title.capitalize())}</caption>{_widths(_WIDTHS)}'
        f"<thead><tr>{head}</tr></thead>"
        f"<tbody>{rows}</tbody></table>"
    )


def _widths(percents):
    columns = "".join(f'<col style="width: {width}%">' for width in percents)
    return f"<colgroup>{columns}</colgroup>"


def own_numbers_page(told, what, *, size="A4", large=False) -> str:
    """The feet for each pin, with room for what was found on a real lane, as a document to print.

    Parameters
    ----------
    told : `own_numbers.OwnNumbers`
    what : str
        Who throws which ball over which target, and on which shape of oil.
    size, large : as for `paper.page`
    """
    columns = (*told.rows[0], "found on the lane")
    head = "".join(f'<th scope="col">{escape(title)}</th>' for title in columns)
    rows = "".join(
        "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row.values()) + "<td></td></tr>"
        for row in told.rows
    )
    body = (
        f'<section class="sheet bm-out"><h1>Own numbers</h1><p>Name <span class="fill"></span> Day <span class="fill"></span></p>'
        f"<p>{escape(what)}</p><p>{escape(told.sentence)}</p>"
        f'<table class="keep">{_widths(_NUMBERS_WIDTHS)}<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'
        f"<p>Computed for an invented bowler on an invented lane. Throw three balls at each pin, move until the middle one "
        f"hits, and write down where the foot stopped.</p><p><b>Safety.</b> {escape(_SAFE)}</p></section>"
    )
    return page("Own numbers", f"<style>{_CSS}</style>{body}", size=size, large=large)


def parents_page(lesson, people=1, names=(), *, size="A4", large=False) -> str:
    """Notes for the parents of a group, two on a page, as a document to print.

    Raises
    ------
    ValueError
        For a lesson without worksheets.
    """
    note = parents_note(lesson)
    safety = "".join(f"<li>{escape(text)}</li>" for text in note.safety)
    written = [*names, *[""] * people][:people]
    notes = "".join(
        f'<section class="bm-note bm-out"><h1>{escape(lesson)} {escape(note.title)}</h1>'
        f'<p>For the parents of {escape(name) if name else "<span class=fill></span>"} Day <span class="fill"></span></p>'
        f"<p><b>What was done.</b> {escape(note.done)}</p><p><b>To practise at home.</b> {escape(note.practise)}</p>"
        f"<p><b>Safety.</b></p><ul>{safety}</ul></section>"
        for name in written
    )
    return page("Note for parents", f"<style>{_CSS}</style>{notes}", size=size, large=large)
