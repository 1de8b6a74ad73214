"""Worksheets as pages: the student's, and the coach's copy with every answer, drawn and in numbers."""

from html import escape

from bowlcore.coaching.paper import LARGE_PT, MARGIN_MM, page, paper_mm
from bowlcore.coaching.sheet import LEVEL_WORDS, Ask, Balls, Blank, Lane, Pins, Sheet, Table, without_answers
from bowlcore.coaching.sheet_lessons import make_sheets
from bowlcore.display.sheet_drawings import LaneDrawing, ball_above, rack

COACH = "Coach's copy"
NO_BREAK = "\N{NO-BREAK SPACE}"
CSS = """
.bm-sheet header { border-bottom: 0.5mm solid #000; margin-bottom: 1.5mm; }
.bm-sheet header p { margin: 0 0 1mm; display: flex; justify-content: space-between; gap: 4mm; }
.bm-sheet .write { height: 1.6em; }
.bm-sheet .line { display: inline-block; border-bottom: 0.3mm solid #000; min-width: 52mm; height: 1.1em; }
.bm-sheet .given th { font-weight: 400; font-size: 0.84em; line-height: 1.1; }
.bm-sheet .given td { font-weight: 700; }
.bm-sheet .given { table-layout: fixed; }
.bm-sheet .fill td { height: 1.35em; }
.bm-sheet caption { font-weight: 400; }
.bm-sheet .tick { display: inline-block; width: 0.95em; height: 0.95em; border: 0.35mm solid #000; margin: 0 1mm 0 4mm;
  vertical-align: text-bottom; text-align: center; line-height: 0.9em; font-weight: 700; }
.bm-sheet .part { margin: 1.6mm 0; }
.bm-sheet .part > p { margin: 0.5mm 0; }
.bm-sheet .side { display: flex; align-items: center; gap: 6mm; }
.bm-sheet .side svg { flex: none; }
.bm-sheet .balls { display: flex; gap: 10mm; }
.bm-sheet .balls figure { margin: 0; text-align: center; }
.bm-sheet .choice { display: inline-block; }
.bm-sheet .drill { border: 0.3mm solid #000; padding: 1mm 2mm; margin-top: 2mm; }
.bm-sheet .drill p { margin: 0.5mm 0; }
.bm-sheet .computed { font-size: 10pt; line-height: 1.2; }
.bm-sheet .legend { font-size: 0.84em; margin: 0.8mm 0; }
"""
_LOWEST, _TALLEST = 1.9, 4.5  # lanes, points a board
_LINE_PT, _ALWAYS, _WIDE = 15.2, 11.4, 88  # a line, lines beside a sheet's own text, letters in a line
_PT_MM = 72 / 25.4


def students_page(sheets, names=(), *, size="A4", large=False) -> str:
    """All sheets as one document to print, one after the other, without any answer.

    Parameters
    ----------
    sheets : list of Sheet
    names : sequence of str
        Printed on the sheets in this order, escaped; kept nowhere.
    size, large : as for `paper.page`
    """
    written = [*names, *[""] * len(sheets)]
    body = "".join(student(sheet, name, size, large) for sheet, name in zip(sheets, written, strict=False))
    return page(sheets[0].title, f"<style>{CSS}</style>{body}", size=size, large=large)


def coachs_page(sheets, names=(), *, size="A4", large=False) -> str:
    """The same sheets with their answers."""
    written = [*names, *[""] * len(sheets)]
    body = "".join(coach(sheet, name, size, large) for sheet, name in zip(sheets, written, strict=False))
    return page(f"{sheets[0].title}. {COACH}", f"<style>{CSS}</style>{body}", size=size, large=large)


def sheets(
    lesson, people, level, seed=1, *, hand="right", names=(), size="A4", large=False
) -> tuple[str, str]:
    """The students' document and the coach's copy, as HTML that fetches nothing.

    Raises
    ------
    ValueError
        In one sentence: a lesson, level, number or paper that does not exist.
    """
    made = make_sheets(lesson, people, level, seed, hand)
    return tuple(maker(made, names, size=size, large=large) for maker in (students_page, coachs_page))


def student(sheet: Sheet, name="", size="A4", large=False) -> str:
    """One sheet as a section; nothing of it comes from an answer."""
    return _section(
        sheet._replace(computed=""), name, size, large, [without_answers(part) for part in sheet.parts], False
    )


def coach(sheet: Sheet, name="", size="A4", large=False) -> str:
    """The coach's copy of one sheet as a section."""
    return _section(sheet, name, size, large, sheet.parts, True)


def _section(sheet, name, size, large, parts, key):
    board_pt = _board_pt(sheet, size, large)
    who = escape(name) if name else '<span class="line"></span>'
    intro = f"<p>{escape(sheet.intro)}</p>" if sheet.intro else ""
    told = "".join(
        f'<div class="part keep">{_part(part, number, sheet.hand, board_pt, large, key)}</div>'
        for number, part in enumerate(parts, 1)
    )
    if key:
        end = f'<p class="computed"><b>Computed with.</b> {escape(sheet.computed)}</p>'
    else:
        end = (
            f'<div class="drill keep"><p><b>At the lanes.</b> {escape(sheet.drill)}</p>'
            f"<p><b>Safety.</b> {escape(sheet.safety)}</p></div>"
        )
    return (
        f'<section class="sheet bm-sheet"><header><h1>{escape(sheet.title)}{f" &ndash; {COACH}" if key else ""}</h1>'
        f"<p><span>Name {who}</span><span>{escape(LEVEL_WORDS[sheet.level])}; {escape(sheet.mark)}</span></p></header>"
        f"{intro}{_given(sheet.given)}{_legend(parts)}{told}{end}</section>\n"
    )


def _board_pt(sheet, size, large):
    """Lanes as tall as the rest of the page lets them be [points a board]; in large print there are two pages."""
    lanes = sum(isinstance(part, Lane) for part in sheet.parts)
    if large:
        return _TALLEST if lanes < 2 else 0.75 * _TALLEST
    page_pt = (paper_mm(size)[1] - 2 * MARGIN_MM) * _PT_MM
    room = (page_pt - (_around(sheet) + sum(map(_lines, sheet.parts))) * _LINE_PT) / max(lanes, 1)
    return round(min(max(room / 39.0, _LOWEST), _TALLEST), 1)


def _around(sheet):
    """About how many lines stand above and below the parts."""
    column = 1.2 * _WIDE / len(sheet.given)
    given = max(len(label) // column for label, _ in sheet.given) + max(
        len(text) // (0.7 * column) for _, text in sheet.given
    )
    return _ALWAYS + bool(sheet.intro) + given + len(sheet.drill) / _WIDE + len(sheet.safety) / _WIDE


def _lines(part):
    """About how many lines of text a part takes; of a lane all but the lane itself."""
    if isinstance(part, Table):
        long_head = sum(map(len, part.columns)) + 4 * len(part.columns) > _WIDE
        given = [[len(cell) for cell in row if not isinstance(cell, Blank)] for row in part.rows]
        wrapped = sum(max(row, default=0) > 100 / len(part.columns) for row in given)
        head = 2.2 if long_head else 1.2
        return 1.6 + head + 1.5 * len(part.rows) + 1.2 * wrapped + len(part.caption) // 92
    if isinstance(part, Ask):
        return 1.4 + (len(part.text) + (0 if part.choices else 24)) // 88 + (sum(map(len, part.choices)) > 12)
    if isinstance(part, Lane):
        return 4.0 + len(part.task) // 92
    return 8.0 if isinstance(part, Pins) else 9.0


def _given(pairs):
    head = "".join(f'<th scope="col">{escape(label)}</th>' for label, _ in pairs)
    body = "".join(f"<td>{escape(text).replace(' km/h', NO_BREAK + 'km/h')}</td>" for _, text in pairs)
    return f'<table class="given keep"><thead><tr>{head}</tr></thead><tbody><tr>{body}</tr></tbody></table>'


def _legend(parts):
    """What stands for what on the lanes of a sheet."""
    lanes = [part for part in parts if isinstance(part, Lane)]
    if not lanes:
        return ""
    start, pins = "Dot: the start. Cross: the target. ", "Circles: pins."
    if any(lane.pin for lane in lanes):
        start, pins = "", "Circle: the pin."
    return f'<p class="legend">{start}Grey: oil, the darker the more. Small arrows: the arrows. {pins}</p>'


def _part(part, number, hand, board_pt, large, key):
    task = f"<p><b>{number}.</b> {escape(part[0])}</p>"
    if isinstance(part, Ask):
        return f"<p><b>{number}.</b> {escape(part.text)} {_answer(part, key)}</p>"
    if isinstance(part, Table):
        return task + _table(part)
    if isinstance(part, Lane):
        return task + _lane(part, hand, board_pt, large, key)
    if isinstance(part, Pins):
        return f'<div class="side">{rack(hand, part.ringed)}{task}</div>'
    assert isinstance(part, Balls)
    drawn = "".join(
        f"<figure>{ball_above(hand, rotation, tilt)}<figcaption>{escape(name)}</figcaption></figure>"
        for name, rotation, tilt in part.balls
    )
    return f'{task}<div class="balls">{drawn}</div>'


def _answer(ask, key):
    if not ask.choices:
        return f"<b>{escape(ask.answer)}</b>" if key else '<span class="line"></span>'
    told = " ".join(
        f'<span class="choice"><span class="tick">{"x" if key and choice == ask.answer else ""}</span>{escape(choice)}</span>'
        for choice in ask.choices
    )
    return told if sum(map(len, ask.choices)) < 12 else f"<br>{told}"


def _table(part):
    head = "".join(f'<th scope="col">{escape(title)}</th>' for title in part.columns)
    rows = "".join(f"<tr>{''.join(_cell(cell) for cell in row)}</tr>" for row in part.rows)
    return f'<table class="fill"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>'


def _cell(cell):
    return f"<td>{f'<b>{escape(cell)}</b>' if isinstance(cell, Blank) and cell else escape(cell)}</td>"


def _lane(part, hand, board_pt, large, key):
    drawing = LaneDrawing(part.pattern, hand, board_pt, LARGE_PT - 2 if large else 11)
    drawing.pins(part.pin)
    starts = {}
    for line in part.lines:
        release = line.shot.release
        starts.setdefault((release.laydown_board, release.target_board), []).append(line)
    for lines in starts.values():
        if key or not part.pin:  # else where to lay it down is what is asked
            drawing.start(lines[0].shot.release, ", ".join(filter(None, (line.name for line in lines))))
    if key:
        for i, line in enumerate(part.lines):
            first_of_two = i == 0 and len(part.lines) == 2
            drawing.path(line.shot.path, dashed=first_of_two)
            drawing.marks(line.shot.path, line.marks_ft)
            if not line.marks_ft and not part.pin:
                drawing.entry(line.shot.path)
                if not first_of_two:
                    drawing.landmarks(line.shot.path)
    told = (
        "A lane to draw on"
        if not key
        else f"The lane with {'both ways' if len(part.lines) == 2 else 'the way'} drawn"
    )
    return drawing.svg(f"{told}; oil is grey.")
