"""A panel: controls, one sentence, a picture, the table behind it. It computes nothing.

A change marks the panel dirty and one task redraws, so the last value wins and nothing queues; where
no loop runs (tests, plain scripts) it redraws at once.
"""

import asyncio
from html import escape
from time import perf_counter
from typing import NamedTuple

import ipywidgets as widgets

from bowlcore.display.pieces import in_trade_words, read_out
from bowlcore.display.settings import SETTINGS

_PAUSE_S = 0.004  # lets slider messages that have already arrived be taken in first
_SLOW_S = 0.3  # who waits longer wants to see that something is being made


class Drawn(NamedTuple):
    """What a panel's draw function returns."""

    svg: str
    sentence: str
    rows: list  # of dicts with the same keys: the table behind the picture
    lead: str = ""  # the beginning of the sentence that is read from two metres: bold, on a line of its own


class Panel:
    """Controls around a pure draw function.

    Parameters
    ----------
    name : str
        The call that makes this panel, for the settings line.
    draw : callable
        draw(metric=..., hand=..., **values) -> Drawn; a ValueError becomes the message.
    main, folds : list of controls, dict title -> list of controls
    buttons : dict label -> callable(panel)
        Their effect is kept in `panel.memory`, which draw receives as well.
    lines : int
        Lines of text to keep free for the sentence, so that the picture stays where it is.
    open_table : bool
        The table is the point and stands open.
    """

    strict = False  # tests set this: an unexpected error is raised instead of shown

    def __init__(
        self, name, draw, main, folds=None, buttons=None, settings=SETTINGS, open_table=False, lines=3
    ):
        self.name, self._draw, self.settings = name, draw, settings
        self.memory, self._stale, self._task, self._typed_wrong = {}, False, None, {}
        self._lines, self._took_s = 0 if open_table else lines, 0.0
        folds = folds or {}
        every = [*main, *(control for group in folds.values() for control in group)]
        self.controls = {control.name: control for control in every}
        self.picture, self.result, self.message = widgets.HTML(), read_out(), widgets.HTML()
        self._table, self._line = widgets.HTML(), widgets.HTML()
        self.picture.add_class("bm-picture")
        for control in every:
            control.use_units(settings.metric)
            control.on_change(self._mark, lambda text, name=control.name: self._typed(name, text))
        self._on_screen = False
        if open_table:
            rows = [self.message, self.result, self._table]
        else:
            inside = {title: _grid(group) for title, group in folds.items()}
            inside["The numbers behind the picture"] = widgets.VBox([self._table, self._line])
            actions = {**(buttons or {}), "Back to the start": Panel.reset}
            row = widgets.HBox([*map(_fold, inside, inside.values()), *self._action_buttons(actions)])
            row.layout.flex_flow = "row wrap"
            rows = [_grid(main), self.message, self.result, self.picture, row, *inside.values()]
        self.widget = widgets.VBox(rows)
        self.widget.add_class("bm-table-panel" if open_table else "bm-panel")
        self.redraw()

    @property
    def values(self) -> dict:
        """The controls' values, in the trade's units."""
        return {name: control.value for name, control in self.controls.items()}

    @property
    def sentence(self) -> str:
        """The result in words."""
        self._catch_up()
        return self._drawn.sentence

    def control(self, name):
        """A control by its name; ValueError, in one sentence, for another name."""
        if name not in self.controls:
            raise ValueError(f"this panel has no control {name!r}; it has {', '.join(self.controls)}")
        return self.controls[name]

    def set(self, **values):
        """Move controls (trade units) and redraw at once; returns the panel."""
        for name, value in values.items():
            self.control(name).put(value)
        self.redraw()
        return self

    def drawn_at(self, **values) -> Drawn:
        """What this panel shows with some controls elsewhere (trade units); the panel itself stays as it is.

        Raises ValueError, in one sentence, where it shows that sentence.
        """
        asked = {**self.values, **values, **self.memory}
        return self._draw(metric=self.settings.metric, hand=self.settings.hand, **asked)

    def phone_page(self, path=None, controls=None, **how) -> str:
        """Write this panel as one file for phones, and say where it lies.

        Parameters
        ----------
        path : Path, optional
            A file ending in .html; the folder `phone` beside the lessons if left out.
        controls : dict, optional
            Name of a control: its steps, in trade units; the first two of the panel if left out.
        how : title, about, cautions, width_in
            As for `bowlcore.display.phone_page.phone_page`.

        Raises
        ------
        ValueError, OSError
            In one sentence.
        """
        from bowlcore.display.phone_page import phone_page, put_phone_page

        self._catch_up()
        return put_phone_page(self.name.removesuffix("_panel"), phone_page(self, controls, **how), path)

    def reset(self):
        """All controls back to where the panel began."""
        self.memory.clear()
        self.set(**{name: control.start for name, control in self.controls.items()})

    def redraw(self):
        """Draw now."""
        self._stale, self._drawn_for = False, self._settings()
        try:
            drawn = self.drawn_at()
        except ValueError as problem:
            told = in_trade_words(str(problem))
            self._complain(told)
            self._drawn = Drawn("", told, [])
            self.picture.value = self.result.value = ""
            return
        except Exception as problem:
            if Panel.strict:
                raise
            self._complain(f"This setting cannot be drawn ({type(problem).__name__}); the others still work.")
            return
        self._drawn = drawn
        self._complain("")
        self.picture.value = drawn.svg
        self.result.value = _sentence(drawn.sentence, self._lines, drawn.lead)
        self._table.value = table(drawn.rows)
        self._line.value = f'<p>To come back to this: <code class="bm-line">{escape(self._call())}</code></p>'

    def _call(self):
        moved = {n: c.value for n, c in self.controls.items() if c.value != c.start}
        return f"bowlcore.{self.name}({', '.join(f'{n}={_short(v)}' for n, v in moved.items())})"

    def _action_buttons(self, actions):
        made = []
        for label, action in actions.items():
            button = widgets.Button(description=label, layout=widgets.Layout(width="auto"))
            button.on_click(lambda _, action=action: (action(self), self.redraw()))
            made.append(button)
        return made

    def _mark(self):
        self._stale = True
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self.redraw()
            return
        if self._task is None or self._task.done():
            self._task = loop.create_task(self._settle())

    async def _settle(self):
        while self._stale:
            await asyncio.sleep(_PAUSE_S)
            begun, slow = perf_counter(), self._took_s > _SLOW_S
            if slow:
                self.widget.add_class("bm-busy")  # the old picture goes pale: it is being made anew
            self.redraw()
            if slow:
                self.widget.remove_class("bm-busy")
            self._took_s = perf_counter() - begun

    def _settings(self):
        return self.settings.metric, self.settings.hand

    def _settings_changed(self, change=None):
        self._use_units()
        self._mark()

    def _use_units(self):
        for control in self.controls.values():
            control.use_units(self.settings.metric)

    def _catch_up(self):
        """Only a panel on the screen follows the settings at once; any other when it is asked."""
        if not self._on_screen and self._drawn_for != self._settings():
            self._use_units()
            self.redraw()

    def shown(self):
        """It is on the screen: from now on it follows the settings at once."""
        self._catch_up()
        if not self._on_screen:
            self._on_screen = True
            self.settings.observe(self._settings_changed, ["metric", "hand"])

    def _typed(self, name, text):
        """Keep what is wrong with a typed number until that number is put right."""
        self._typed_wrong[name] = text
        self._complain("")

    def _complain(self, text):
        every = " ".join(filter(None, [text, *self._typed_wrong.values()]))
        self.message.value = f'<p class="bm-message" role="alert">{escape(every)}</p>' if every else ""

    def still(self) -> str:
        """Sentence, picture and table as plain HTML, for exports and paper."""
        self._catch_up()
        said = _sentence(self._drawn.sentence, lead=self._drawn.lead)
        return f"<div>{said}{self._drawn.svg}{table(self._drawn.rows)}</div>"

    def _repr_mimebundle_(self, **kwargs):
        """The live panel, and the same as plain HTML and text for exports."""
        self.shown()
        bundle = self.widget._repr_mimebundle_(**kwargs)
        data = bundle[0] if isinstance(bundle, tuple) else bundle
        return {**data, "text/plain": self.sentence, "text/html": self.still()}


def _sentence(text, lines=0, lead=""):
    room = f' style="min-height: {1.45 * lines:.2f}em"' if lines else ""
    first = f'<strong class="bm-lead">{escape(lead)}</strong>' if lead else ""
    said = first + escape(text.removeprefix(lead))
    return f'<p class="bm-sentence"{room}>{said}</p>'


def table(rows) -> str:
    """Rows as an HTML table, escaped."""
    if not rows:
        return ""
    head = "".join(f'<th scope="col">{escape(str(title))}</th>' for title in rows[0])
    body = "".join(
        "<tr>" + "".join(f"<td>{escape(str(cell))}</td>" for cell in row.values()) + "</tr>" for row in rows
    )
    return f'<table class="bm-table"><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>'


def _short(value):
    return f"{value:g}" if isinstance(value, float) else repr(value)


def _grid(controls):
    return widgets.HBox(
        [c.widget for c in controls], layout=widgets.Layout(flex_flow="row wrap", width="100%")
    )


def _fold(title, inside):
    """A button that shows and hides a part of the panel."""
    inside.layout.display = "none"
    button = widgets.ToggleButton(description=f"{title} …", value=False, layout=widgets.Layout(width="auto"))

    def turn(change):
        inside.layout.display = "" if change.new else "none"

    button.observe(turn, "value")
    return button
