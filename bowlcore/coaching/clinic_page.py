"""The page of a clinic as HTML: one sheet of paper, the same on the screen. All text is escaped; nothing is fetched."""

from html import escape

from bowlcore.coaching import clinic_words as words

CSS = """
.bm-plan { color: #000; background: #fff; max-width: 190mm; line-height: 1.15; }
.bm-plan h1, .bm-plan h2 { line-height: 1.15; }
.bm-plan p { margin: 1mm 0; break-inside: avoid; }
.bm-plan table { border-collapse: collapse; width: 100%; margin: 1mm 0; break-inside: avoid; }
.bm-plan caption { text-align: left; font-weight: 600; color: #000; padding: 0; }
.bm-plan th, .bm-plan td { border: 0.3mm solid #000; padding: 0.15mm 1.5mm; text-align: left !important;
  vertical-align: top !important; font-size: inherit; }
.bm-plan .bm-rubric { table-layout: fixed; }
.bm-plan .bm-rubric td { height: 10mm; }
.bm-plan th[scope="row"] { white-space: nowrap; }
.bm-plan tr { background: #fff !important; break-inside: avoid; }
"""
_LOADS_A_ROW = 10


def clinic_body(plan) -> str:
    """Title, timetable, groups, loads, safety and what to bring; a fragment of HTML."""
    tasks = " ".join(f"<b>{escape(part)}.</b> {escape(text)}" for part, text in words.tasks(plan))
    return (
        f"<p>{escape(words.sentence(plan))}</p>"
        + html_table(words.timetable(plan), row_heads=("time",))
        + html_table(words.groups(plan), "Who bowls where, in this order", row_heads=("group",))
        + _loads(plan)
        + safety(plan)
        + f"<p><b>Print and bring.</b> {escape('; '.join([words.to_print(plan), *words.bring(plan)]))}.</p>"
        + f"<p>{tasks}</p>"
    )


def safety(plan) -> str:
    """Safety at its minute, as one paragraph."""
    said = "; ".join(f"<b>{escape(when)}</b> {escape(text.rstrip('.'))}" for when, text in words.safety(plan))
    return f"<p><b>Safety, at its minute.</b> {said}. {escape(words.WEIGHT_RULE)} {escape(words.ALWAYS)}</p>"


def html_table(rows, caption="", row_heads=()) -> str:
    """Rows as a table with header cells; columns named in `row_heads` head their row."""
    if not rows:
        return ""
    head = "".join(f'<th scope="col">{escape(str(title))}</th>' for title in rows[0])
    body = "".join(
        "<tr>"
        + "".join(
            f'<th scope="row">{escape(str(cell))}</th>'
            if title in row_heads
            else f"<td>{escape(str(cell))}</td>"
            for title, cell in row.items()
        )
        + "</tr>"
        for row in rows
    )
    title = f"<caption>{escape(caption)}</caption>" if caption else ""
    return f"<table>{title}<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def _loads(plan):
    """Children side by side, a few to a table, since there are few lines and many children."""
    loads = words.loads(plan)
    tables = []
    for first in range(0, len(loads), _LOADS_A_ROW):
        part = loads[first : first + _LOADS_A_ROW]
        rows = [
            {"child": title, **{load["child"]: load[title] for load in part}} for title in words.LOAD_ROWS
        ]
        caption = "" if first else f"What each child lifts in {plan.balls_each} balls"
        tables.append(html_table(rows, caption, row_heads=("child",)))
    return "".join(tables)
