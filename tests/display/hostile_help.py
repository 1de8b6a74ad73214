"""Texts that want to be run, and every way by which a text comes into the course and out on a page.

Each way is `way(text, folder) -> HTML`; it may refuse the text by a ValueError or OSError.
"""

import csv
import io
import json
import sqlite3
from contextlib import closing, suppress
from datetime import date
from functools import cache
from pathlib import Path

import nbformat.v4
from jinja2 import Environment, FileSystemLoader

from bowlcore import bowler_card, load_bowlers, show
from bowlcore.__main__ import main
from bowlcore.coaching import log_files, own_lanes
from bowlcore.coaching.clip_folder import FOLDER, clip_names, clip_path
from bowlcore.coaching.clip_places import Places, kept
from bowlcore.coaching.log_csv import COLUMNS
from bowlcore.coaching.log_source import own_file, people
from bowlcore.coaching.paper import page
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.tally_desk import Desk
from bowlcore.coaching.typed_names import read_names
from bowlcore.display import path_lab
from bowlcore.display.bowler_card_page import card_page
from bowlcore.display.clinic import clinic_panel
from bowlcore.display.controls import Choice, Number, Words
from bowlcore.display.did_it_help import did_it_help_panel
from bowlcore.display.handouts import before_league_page, parents_page
from bowlcore.display.log_entry import log_panel
from bowlcore.display.my_lane import my_lane_panel
from bowlcore.display.panel import Drawn, Panel, _sentence, table
from bowlcore.display.phone_page import phone_page
from bowlcore.display.picture import svg
from bowlcore.display.reaction import reaction_panel
from bowlcore.display.sheet_pages import sheets
from bowlcore.display.sheets_panel import sheets_panel
from bowlcore.display.tally_sheet import tally_html
from bowlcore.lesson_on_paper import LessonOnPaper
from bowlcore.motion.oil import load_pattern
from bowlcore.motion.surface import FrictionLaw

# thirty letters at most, so that a name on paper may be one of them; whatever runs sets `bad`
TEXTS = {
    "script": "<script>bad=1</script>",
    "attribute": '"onmouseover="bad=1"autofocus="',
    "single quote": "'><img src=x onerror=bad=1>",
    "end of a style": "</style><script>bad=1</script>",
    "end of data": "]]><script>bad=1</script>",
    "comment": "--><script>bad=1</script><!--",
    "template": "${bad=1}{{bad=1}}{%bad%}",
    "formula =": "=1+1",
    "formula +": "+49",
    "formula -": "-2",
    "formula @": "@SUM(A1)",
    "formula after a tab": "\t=1+1",
    "formula after a return": "\r=1+1",
    "mathematics": r"$\undefined{$ $x^$",
    "way up": "../../x",
    "way down": "/etc/passwd",
    "null": "a\0b",
    "right to left": "\u200fabc",
    "turned round": "a\u202egpj.4pm",
    "half a sign": "a\ud83d",
    "long": "<b>" + "x" * 1_000_000,
    "long line of blanks": "f 1" + " " * 1_000_000 + "!",
    "many lines": "f x\n" * 250_000,
}


@cache
def _panel(make):
    return make()


def _typed(make, name):
    """A text typed into a box of a panel: what the panel then shows, its message included."""

    def way(text, folder):
        panel = _panel(make)
        control = panel.controls[name]
        control.widget.value = text
        taken = panel.still() + panel._line.value if control.value == text else ""
        shown = panel.message.value + taken
        control.put(control.start)
        return shown

    return way


def _name_on_sheets(text, folder):
    return "".join(sheets("05", 1, "8-9", 3, names=read_names(text)))


def _name_on_a_card(text, folder):
    return card_page(_card(), "".join(read_names(text)), "a lane")


@cache
def _card():
    return bowler_card(load_bowlers()["low-rev senior"], lane_of("house"))


def _name_before_league(text, folder):
    return before_league_page(load_bowlers()["low-rev senior"], {}, "".join(read_names(text)))


def _name_for_parents(text, folder):
    return parents_page("05", 2, read_names(text))


def _names_on_the_command_line(text, folder):
    if main(["sheets", "tally", f"--names={text}", "--out", str(folder / "tally.html")]):
        raise ValueError("said on the command line")
    return (folder / "tally.html").read_text(encoding="utf-8")


def _title_of_a_page(text, folder):
    return page(text[:1000], f"<p>{tally_html(text[:1000])}</p>")


def _title_of_a_printed_lesson(text, folder):
    book = nbformat.v4.new_notebook(metadata={"title": text[:1000]})
    return "".join(LessonOnPaper().preprocess(book, {})[1]["on_paper"])


def _title_of_a_shown_lesson(text, folder):
    for number in range(3):
        about = {"bowlcore": {"run_on_open": True}, "title": text[:1000]}
        (folder / f"0{number}.ipynb").write_text(json.dumps({"cells": [], "metadata": about}))
    config = {"extensionConfig": {"lessons": show.lessons(folder), "words": ""}}
    templates = FileSystemLoader(
        Path(show.__file__).with_name("lab") / "share" / "voila" / "templates" / "show"
    )
    given = {"page_config": config, "base_url": "/", "include_css": lambda path: ""}
    contents = Environment(loader=templates, autoescape=True).get_template("tree-lab.html").render(given)
    here = {"metadata": {"name": "01"}, "base_url": "/"}
    steps = Environment(
        loader=templates
    ).from_string(  # as nbconvert makes a lesson: nothing is escaped by itself
        "{%- from 'steps.html.j2' import steps with context -%}{{ steps('Lessons') }}"
    )
    return contents + steps.render(given, resources=here)


def _row_of_a_tally(text, folder):
    panel = log_panel()
    panel.rows.value = f"AK: f x, {text}\n"
    return _of_log(panel)


def _bowler_of_a_tally(text, folder):
    panel = log_panel()
    panel.rows.value = f"{text}\n{text}: f x\n"
    return _of_log(panel)


def _what_was_tried(text, folder):
    panel = log_panel()
    for trying in ("as always", text):
        panel._stays["trying"].value = trying
        panel.rows.value += "AK: f x\n"
    return _of_log(panel) + _picture_of_log()


def _place_and_note(text, folder):
    panel = log_panel()
    panel.desk.move_to(place=text, note=text)
    panel.rows.value = "AK: f x\n"
    return _of_log(panel)


_TODAY = {name: str(getattr(date.today(), name)) for name in ("year", "month", "day")}


def _cell(column):
    """A text in one column of every row of a CSV file that is read into a log."""

    def way(text, folder):
        rows = [dict.fromkeys(COLUMNS, "") for _ in range(2)]
        rows[0] |= {"kind": "session", "key": "s1", **_TODAY}
        rows[1] |= {"kind": "shot", "key": "k1", "session": "s1", "bowler": "AK", "trying": "as always"}
        rows[column in ("hand", *list(COLUMNS)[12:])][column] = text
        out = io.StringIO(newline="")
        writer = csv.DictWriter(out, COLUMNS, quoting=csv.QUOTE_ALL)
        writer.writeheader()
        writer.writerows(rows)
        (folder / "in.csv").write_bytes(out.getvalue().encode("utf-8", "surrogatepass"))
        said = log_files.read_csv_file("in.csv")
        return _sentence(said) + _rows()

    return way


def _field_of_a_log(table_name, column):
    """A text that another program has written into the file of a log."""

    def way(text, folder):
        Desk().enter("AK: f x")
        with closing(sqlite3.connect(own_file())) as log:
            coded = text.encode("utf-8", "surrogatepass")
            log.execute(f"UPDATE {table_name} SET {column} = CAST(? AS TEXT)", (coded,))
            log.commit()
        return _rows()

    return way


def _of_log(panel):
    """The page that copies in."""
    return panel._said.value + panel._message.value + panel._tables.value


def _rows():
    """Who is in the log, and the rows of this day."""
    return _sentence(", ".join(people())) + table(Desk().rows())


def _picture_of_log():
    view = did_it_help_panel(log="my own log", bowler="everybody")
    return view.message.value + view.still()


def _clicks(field):
    """A text in the file of clicks beside a clip."""

    def way(text, folder):
        (folder / FOLDER).mkdir(exist_ok=True)
        told = {"version": 1, "frames_per_s": 120, "camera": "behind", "hand": "right", "places": []} | {
            field: text
        }
        (folder / FOLDER / "a.mp4.clicks.json").write_text(json.dumps(told))
        return _sentence(kept("a.mp4", Places(120.0), 60)[1])

    return way


def _clip_by_that_name(text, folder):
    """A clip that lies there under the name, where the system takes it: offered, and asked for."""
    (folder / FOLDER).mkdir(exist_ok=True)
    if "/" not in text:
        with suppress(OSError, ValueError):
            (folder / FOLDER / f"{text}.mp4").write_bytes(b"no clip")
    return _sentence(f"{' '.join(clip_names())} {clip_path(f'{text}.mp4').name}")


def _csv_by_that_name(text, folder):
    return _sentence(log_files.read_csv_file(text))


def _lane_of_ones_own(text, folder):
    name = own_lanes.keep(text, "house", FrictionLaw(0.011, 0.2), 0.0)
    panel = path_lab.path_lab_panel(pattern=name)
    return panel.message.value + panel.still()


def _shape_of_a_kept_lane(text, folder):
    (folder / own_lanes.FOLDER).mkdir(exist_ok=True)
    told = {"version": 1, "shape": text, "longer_ft": 0, "oil": 0.01, "dry": 0.2, "scale_um": 0.3}
    (folder / own_lanes.FOLDER / "odd.json").write_text(json.dumps(told))
    panel = path_lab.path_lab_panel(pattern="my lane: odd")
    return panel.message.value + panel.still()


def _title_of_a_pattern(text, folder):
    """A pattern file whose title is the text, on a page that names its lane."""
    lines = load_pattern_text().replace("# title:", f"# title: {text}", 1)
    (folder / "odd.csv").write_bytes(lines.encode("utf-8", "surrogatepass"))
    return card_page(_card(), "AK", load_pattern(folder / "odd.csv").title)


def load_pattern_text():
    from bowlcore.locate import data_folder

    return (data_folder() / "patterns" / "flat.csv").read_text(encoding="utf-8")


def _page_for_phones(text, folder):
    def draw(number, one, name, metric, hand):
        return Drawn(svg(["<g/>"], 1, 1, f"{name} {number:g}"), f"{name} {number:g} {one}", [], lead=name)

    controls = [Number("number", "Number", "", 0, 10, 5, 5), Choice("one", text, ["a", text], "a")]
    controls += [Words("name", text, lambda text: None, "AK", text)]
    return phone_page(Panel("small_panel", draw, controls), title=text, about=text, cautions=[text])


def _name_of_a_pattern(text, folder):
    return _sentence(load_pattern(text).title)


WAYS = {
    "people of a clinic": _typed(clinic_panel, "people"),
    "equipment of a clinic": _typed(clinic_panel, "equipment"),
    "start of a clinic": _typed(clinic_panel, "start"),
    "phrase": _typed(reaction_panel, "phrase"),
    "watched shots": _typed(my_lane_panel, "shots"),
    "name of a fitted lane": _typed(my_lane_panel, "keep_as"),
    "names for sheets": _typed(sheets_panel, "names"),
    "name on sheets": _name_on_sheets,
    "name on a card": _name_on_a_card,
    "name before league": _name_before_league,
    "name for parents": _name_for_parents,
    "names on the command line": _names_on_the_command_line,
    "title of a page": _title_of_a_page,
    "title of a printed lesson": _title_of_a_printed_lesson,
    "title of a shown lesson": _title_of_a_shown_lesson,
    "row of a tally": _row_of_a_tally,
    "bowler of a tally": _bowler_of_a_tally,
    "what was tried": _what_was_tried,
    "place and note": _place_and_note,
    **{f"CSV, {name}": _cell(name) for name in ("key", "bowler", "standing", "trying", "words")},
    **{f"log, {name}": _field_of_a_log(*name.split()) for name in (
        "bowlers initials", "bowlers hand", "sessions day", "shots standing", "shots trying",
    )},
    **{f"clicks, {name}": _clicks(name) for name in ("version", "camera", "hand", "places")},
    "name of a clip": _clip_by_that_name,
    "name of a CSV": _csv_by_that_name,
    "lane of one's own": _lane_of_ones_own,
    "shape of a kept lane": _shape_of_a_kept_lane,
    "name of a pattern": _name_of_a_pattern,
    "title of a pattern": _title_of_a_pattern,
    "page for phones": _page_for_phones,
}  # fmt: skip
