"""Copying a paper tally into one's own log: a row, Enter, the next row. Every row is kept at once.

The box is never changed while somebody types in it: what is typed is only read, so that no key is lost however fast
it comes or however busy the computer is.
"""

from html import escape

import ipywidgets as widgets

from bowlcore.coaching import log_files
from bowlcore.coaching.log_entries import RELEASE_MEANT
from bowlcore.coaching.printed import put
from bowlcore.coaching.tally import EXAMPLE
from bowlcore.coaching.tally_desk import LANE_MODES, Desk
from bowlcore.display.panel import _fold, table
from bowlcore.display.pieces import button, group, in_words, read_out
from bowlcore.display.style import CSS
from bowlcore.display.tally_sheet import PAPERS, tally_html

_LABEL, _WIDE = "190px", "490px"
READY = "Type the first row, with the initials in front, and press Enter. Nothing is kept before that."
_FAULTS_SHOWN = 4
_ROWS_AT_ONCE = 200  # an evening of a group; each is on the disk before the next is read


def log_panel():
    """A panel that copies a paper tally into the log of this folder; the log is made with the first row."""
    return LogPanel()


class LogPanel(widgets.VBox):
    """A box for rows, what stays the same, the last rows kept, and what can be done with the file.

    Attributes
    ----------
    rows : widgets.Textarea
        A row is kept when Enter ends it; what is above is left alone.
    sentence : str
        What the last step did.
    """

    def __init__(self, desk=None):
        self.desk, self.sentence, self._done, self._faults = desk or Desk(), READY, 0, []
        self.rows = widgets.Textarea(
            description="Rows of the tally",
            placeholder=f"AK: {EXAMPLE}",
            rows=6,
            style=_style(),
            layout=widgets.Layout(width="min(100%, 700px)"),
        )
        self.rows.add_class("bm-tally-rows")
        self.rows.observe(self._typed, "value")
        self._said, self._tables, self._message = read_out(), widgets.HTML(), widgets.HTML()
        self._stays = self._make_stays()
        self._filled = self._usual_typed()
        folds = {
            "Day and place": self._day_and_place(),
            "A score added up by hand": self._totals(),
            "Print a tally sheet": self._paper(),
            "CSV out and in": self._csv(),
            "Delete a bowler": self._delete(),
        }
        actions = [
            button("Take back the last row", lambda: self._do(self.desk.take_back)),
            button("Empty the box", self._empty),
        ]
        super().__init__(
            [
                widgets.HTML(CSS),
                group(*self._stays.values()),
                self.rows,
                self._message,
                self._said,
                group(*actions, *map(_fold, folds, folds.values())),
                *folds.values(),
                self._tables,
            ]
        )
        self.add_class("bm-panel")
        self._tell(READY)

    def enter(self, text):
        """Keep one row, as if it had been typed; the sentence that follows."""
        self.rows.value += f"{text}\n"
        return self.sentence

    def _typed(self, change):
        """Keep the rows that Enter has ended since the last look."""
        rows = change.new.split("\n")[:-1]
        new, self._done = rows[self._done :], len(rows)
        if len(new) > _ROWS_AT_ONCE:
            self._faults.append(f"Not kept: {len(new)} rows at once, and at most {_ROWS_AT_ONCE} are taken.")
            self._tell("Paste these rows again, some at a time.")
            return
        for row in filter(str.strip, new):
            try:
                self.desk.lane_mode = self._stays["lane"].value
                self.sentence = self.desk.enter(row, self._changed())
                self._show_usual()
            except (ValueError, OSError) as problem:
                self.sentence = in_words(problem)
                self._faults.append(f"Not kept: {row[:40]!r}. {self.sentence}")
        if new:
            self._tell(self.sentence if not self._faults else self._last_kept())

    def _last_kept(self):
        return (
            self.sentence
            if self.sentence.startswith(("Kept", "Now"))
            else "Type that row again on a new line."
        )

    def _empty(self):
        """A fresh box; the log stays as it is."""
        self._faults, self._done, self.rows.value = [], 0, ""
        self._tell("The box is empty; what was kept is kept.")

    def _do(self, action):
        """One step: its sentence, or what is wrong with it."""
        try:
            self._tell(action())
        except (ValueError, OSError) as problem:
            self.sentence = in_words(problem)
            self._complain([*self._faults, self.sentence])

    def _complain(self, faults):
        said = "<br>".join(map(escape, faults[-_FAULTS_SHOWN:]))
        self._message.value = f'<p class="bm-message" role="alert">{said}</p>' if faults else ""

    def _tell(self, sentence):
        self._said.value = f'<p class="bm-sentence">{escape(sentence)}</p>'
        self.sentence = sentence
        self._complain(self._faults)
        try:
            rows, scores = self.desk.rows(), self.desk.score_rows()
        except ValueError as problem:
            rows, scores = [], [{"the present game": str(problem)}]
        last = f"<p><b>Last rows of this day</b></p>{table(rows)}" if rows else ""
        game = f"<p><b>{escape(self.desk.bowler or '')}, this game</b></p>{table(scores)}" if scores else ""
        self._tables.value = last + game

    # what stays from row to row

    def _make_stays(self):
        return {
            "game": widgets.BoundedIntText(
                0, min=0, max=30, description="Game (0: practice)", style=_style(), layout=_box()
            ),
            "lane": widgets.Dropdown(options=LANE_MODES, description="Lane", style=_style(), layout=_box()),
            "line": _text("Line meant: slide, over", "", "22 13"),
            "trying": _text("Trying", "", "eyes on the arrow"),
            "release": _text("Release meant", "", "mph rpm rotation tilt, such as 17 300 45 13"),
        }

    def _changed(self):
        """What was changed in these boxes since they were last filled: it holds from the next row on."""
        now = self._usual_typed()
        return {name: value for name, value in now.items() if value != self._filled.get(name)}

    def _usual_typed(self):
        slide, over = _numbers(self._stays["line"].value, "22 13")
        meant = dict(zip(RELEASE_MEANT, _numbers(self._stays["release"].value, "17 300 45 13"), strict=True))
        game, trying = self._stays["game"].value or None, self._stays["trying"].value.strip()
        return {"game": game, "slide_board": slide, "over_board": over, "trying": trying} | meant

    def _show_usual(self):
        """What stays for the bowler whose row was just kept."""
        usual = self.desk.usual
        self._stays["game"].value = usual["game"] or 0
        self._stays["line"].value = _shown(usual["slide_board"], usual["over_board"])
        self._stays["release"].value = _shown(*(usual[name] for name in RELEASE_MEANT))
        self._stays["trying"].value = usual["trying"]
        self._filled = self._usual_typed()

    # behind the buttons

    def _day_and_place(self):
        now = self.desk.session
        day, place = _text("Day", f"{now.day}", "2026-03-05"), _text("Place", now.place, "our centre")
        lanes = " ".join(str(lane) for lane in (now.left_lane, now.right_lane) if lane)
        lanes, note = _text("Lanes of the pair", lanes, "7 8"), _text("Note", now.note, "new oil")

        def take():
            left, right = _numbers(lanes.value, "7 8")
            self.desk.move_to(
                day=day.value, place=place.value, left_lane=left, right_lane=right, note=note.value
            )
            return f"From here on rows belong to {self.desk.session.day:%d %B %Y}."

        return _titled("Day and place", day, place, lanes, note, button("Take these", lambda: self._do(take)))

    def _totals(self):
        who, game = _text("Initials", "", "AK"), _text("Game", "1", "1")
        total = _text("Score", "", "134")

        def take():
            return self.desk.add_total(who.value, _whole("game", game.value), _whole("score", total.value))

        return _titled(
            "A score added up by hand", who, game, total, button("Keep this score", lambda: self._do(take))
        )

    def _paper(self):
        paper = widgets.Dropdown(options=PAPERS, description="Paper", style=_style(), layout=_box())

        def write():
            return put({"tally_sheet": tally_html(paper=paper.value)})

        return _titled("Print a tally sheet", paper, button("Write the sheet", lambda: self._do(write)))

    def _csv(self):
        commas = widgets.Dropdown(
            options=[("17.5", False), ("17,5", True)],
            description="Your spreadsheet writes",
            style=_style(),
            layout=_box(),
        )
        name = _text("File to read", "", "practice_log.csv")
        return _titled(
            "CSV out and in",
            commas, button("Write a CSV file", lambda: self._do(lambda: log_files.write_csv(commas.value))),
            name, button("Read this file", lambda: self._do(lambda: log_files.read_csv_file(name.value))),
        )  # fmt: skip

    def _delete(self):
        who = _text("Initials to delete", "", "AK")
        delete = button("Delete for good", lambda: self._do(lambda: self.desk.delete_bowler(who.value)))
        title = "Delete a bowler: all rows go from the file, and this cannot be taken back"
        return _titled(title, who, delete)

    def _repr_mimebundle_(self, **kwargs):
        bundle = super()._repr_mimebundle_(**kwargs)
        data = bundle[0] if isinstance(bundle, tuple) else bundle
        return {
            **data,
            "text/plain": self.sentence,
            "text/html": f"<p>{escape(self.sentence)}</p>{self._tables.value}",
        }


def _text(label, value, example):
    return widgets.Text(value=value, description=label, placeholder=example, style=_style(), layout=_box())


def _numbers(text, example):
    """As many numbers from one box as the example has, some of them missing from the right."""
    words, most = text.replace(",", ".").split(), len(example.split())
    try:
        numbers = [int(word) if word.isdecimal() else float(word) for word in words]
    except ValueError:
        numbers = [None] * (most + 1)
    if len(numbers) > most:
        count = {2: "two", 4: "four"}[most]
        raise ValueError(
            f"{count} numbers with a space between them belong here, such as {example}, got {text[:30]!r}"
        )
    return (*numbers, *[None] * most)[:most]


def _shown(*numbers):
    """Numbers for such a box."""
    return " ".join(f"{number:g}" for number in numbers if number is not None)


def _whole(name, text):
    if not text.strip().isdecimal() or len(text.strip()) > 9:
        raise ValueError(f"{name} must be a whole number, got {text[:20]!r}")
    return int(text)


def _titled(title, *inside):
    return widgets.VBox([widgets.HTML(f"<b>{escape(title)}</b>"), group(*inside)])


def _style():
    return {"description_width": _LABEL}


def _box():
    return widgets.Layout(width=_WIDE)
