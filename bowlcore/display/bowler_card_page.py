"""The card of a bowler on paper: one sheet printed on one side and folded twice to A6, or flat in large print.

Upper half: back and front. Lower half, upside down: the inside, a column for each lane. Fold the lower half back, then the
left half back: all four pages stand upright.
"""

from html import escape

from bowlcore.coaching import words
from bowlcore.coaching.feet import line_words
from bowlcore.coaching.paper import MARGIN_MM, page, paper_mm
from bowlcore.coaching.sheet_numbers import speed

CSS = """
.bm-card { position: relative; }
.bm-card .half { display: grid; grid-template-columns: 1fr 1fr; }
.bm-card .under { transform: rotate(180deg); }
.bm-card .quarter { box-sizing: border-box; overflow: hidden; padding: 5mm 6mm 2mm 0; line-height: 1.2; }
.bm-card .quarter + .quarter { padding: 5mm 0 2mm 6mm; border-left: 0.2mm dotted #555; }
.bm-card .under .quarter { border-bottom: 0.2mm dotted #555; padding-top: 1mm; }
.bm-card p { margin: 0.5mm 0; }
.bm-card .seen { margin-top: 1.6mm; font-weight: 700; }
.bm-card .line { font-weight: 700; font-size: 1.15em; }
.bm-card .big { font-weight: 700; font-size: 1.7em; line-height: 1.15; }
.bm-card .note { font-size: 0.84em; }
.bm-preview .bm-card { flex-basis: 640px; }
.bm-preview .bm-card .flat { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm 8mm; }
.bm-preview .bm-card .flat .quarter:nth-child(2), .bm-preview .bm-card .flat .quarter:nth-child(3) { order: 1; }
.bm-card .flat .quarter, .bm-card .flat .quarter + .quarter { padding: 0 0 4mm; border: 0; }
"""
SAFETY = "Stop at pain, numbness or tingling. Never over the foul line. Two hands to lift. The centre's rules come first."
_SAME = ", same target"  # at 15 ft: at the arrows, where the card counts, the line has moved with the feet
_USUAL_HAND = "The usual hand again, it gave less turn. If not: "


def card_page(card, name="", about="", *, size="A4", large=False) -> str:
    """A card as a document to print.

    Parameters
    ----------
    card : bowler_card.Card
    name : str
        Printed on the front, escaped; kept nowhere.
    about : str
        What the lanes are believed to be.
    size : "A4" or "Letter"
    large : bool
        16 pt and flat, not to be folded.
    """
    return page(
        "Card for a bowler",
        f"<style>{CSS}</style>{card_section(card, name, about, size, large)}",
        size=size,
        large=large,
    )


def card_section(card, name="", about="", size="A4", large=False) -> str:
    """The card as a section of a document."""
    height = (paper_mm(size)[1] - 2 * MARGIN_MM) / 2 - 0.5
    front, back = _front(card, name, about), _back(card, not large)
    inside = [_column(column, card.bowler) for column in card.columns]
    if len(inside) == 1:
        inside.append(_own_notes())
    if large:
        quarters = "".join(f'<div class="quarter keep">{part}</div>' for part in (front, *inside, back))
        return f'<section class="sheet bm-card"><div class="flat">{quarters}</div></section>'
    look = f'style="height: {height:.1f}mm"'
    upper, under = (
        "".join(f'<div class="quarter" {look}>{part}</div>' for part in two)
        for two in ((back, front), inside)
    )
    return f'<section class="sheet bm-card"><div class="half">{upper}</div><div class="half under">{under}</div></section>'


def _front(card, name, about):
    bowler = card.bowler
    lanes = "".join(
        f"<p>{escape(_lane(column))}</p><p class='big'>{escape(line_words(column.bowler.release, bowler.feet))}</p>"
        f"<p>{escape(_expected(column))}</p>"
        for column in card.columns
    )
    return (
        f"<p class='big'>{escape(name or bowler.name or 'My card')}</p>"
        f"<p>{escape(_who(bowler))}</p>{f'<p>{escape(about)}</p>' if about else ''}{lanes}"
    )


def _who(bowler):
    name, weight = bowler.ball.name or "own ball", f"{words.halves(bowler.ball.mass_lb)} lb"
    ball = name if name.endswith(weight) else f"{name}, {weight}"
    hand = "Right" if bowler.release.hand == "right" else "Left"
    return f"{hand}-hander, {speed(bowler.release.speed_mph)}; {ball}"  # paper is for both units


def _lane(column):
    return f"{column.lane} lane" if column.lane else "The lane"


def _expected(column):
    return f"about {words.percent(column.pocket).removesuffix(' %')} of 100 in the pocket"


def _column(column, bowler):
    parts = [f"<p><b>{escape(_lane(column).upper())}</b></p>", _line(column.bowler.release, bowler)]
    for line in column.lines:
        what, _, told = (
            line.change.words.rstrip(".").replace(" of the approach", "").replace(_SAME, "").rpartition(": ")
        )
        first = _USUAL_HAND if line.weak_hand else ""
        parts.append(
            f"<p class='seen'>If {escape(line.seen)}:</p><p>{escape(first)}{escape(what)}:</p><p class='line'>{escape(told)}</p>"
        )
    corner = column.corner
    parts.append(f"<p class='seen'>{corner.pin}-pin, from here:</p>")
    if corner.line is None:
        return "".join(parts) + "<p>no line with this hand</p>"
    often = f"plain spare ball; {100 * corner.chance:.0f} of 100 hit it well"
    return f"{''.join(parts)}{_line(corner.line, bowler)}<p>{escape(often)}</p>"


def _line(release, bowler):
    return f"<p class='line'>{escape(line_words(release, bowler.feet))}</p>"


def _own_notes():
    lines = "<p>&nbsp;</p><hr>" * 8
    return f"<p><b>MY OWN NOTES</b></p>{lines}"


def _back(card, folded):
    head = "".join(f"<th scope='col'>{escape(_lane(column))}</th>" for column in card.columns)
    rows = "".join(
        f"<tr><th scope='row'>{later[0].games}</th>"
        + "".join(
            f"<td>{escape(line_words(one.line, card.bowler.feet))}; {one.pocket * 100:.0f} of 100 in the pocket</td>"
            for one in later
        )
        + "</tr>"
        for later in zip(*(column.later for column in card.columns), strict=True)
    )
    fold = " Fold the lower half back, then the left half back." if folded else ""
    people = "one bowler" if card.on_the_pair == 1 else f"{card.on_the_pair} bowlers"
    return (
        f"<p><b>LATER: {escape(people)} on the pair</b></p><table><thead><tr><th scope='col'>games</th>{head}</tr></thead>"
        f"<tbody>{rows}</tbody></table>"
        "<p>One ball is no reason to move. Two balls over the target that do the same are.</p>"
        f"<p class='note'>Computed for this bowler and ball, on lanes as they were believed to be. "
        f"How much oil a ball takes up is invented. "
        f"Watch your ball. {escape(SAFETY)}{fold}</p>"
    )
