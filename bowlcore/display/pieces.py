"""Small pieces of the panels that are no plain rows of controls: a button, a row, an error in words, something done soon."""

import asyncio
import re

import ipywidgets as widgets

_FIELDS = {
    "speed_mph": "ball speed", "rev_rate_rpm": "rev rate", "axis_rotation_deg": "axis rotation", "axis_tilt_deg": "axis tilt",
    "laydown_board": "laydown", "target_board": "target", "length_ft": "length", "entry_board": "entry",
    "entry_angle_deg": "entry angle", "speed_at_pins_mph": "speed at the pins", "ball_lb": "ball weight",
}  # fmt: skip
_FIELD = re.compile(rf"\b({'|'.join(_FIELDS)})\b")
_ROW = re.compile(r"^row \S+: ")  # of a batch that the reader did not make


def button(label, action):
    """A button that calls action()."""
    made = widgets.Button(description=label, layout=widgets.Layout(width="auto"))
    made.on_click(lambda _: action())
    return made


def group(*inside):
    """Things side by side, on as many rows as they need."""
    return widgets.HBox(inside, layout=widgets.Layout(flex_flow="row wrap", width="100%"))


def in_words(problem):
    """The sentence of an error; the system's own for a file that cannot be written."""
    return getattr(problem, "strerror", None) or str(problem)


def in_trade_words(text):
    """A sentence of the core for people: its fields under the names that the controls bear, no row of a batch."""
    return _FIELD.sub(lambda found: _FIELDS[found[0]], _ROW.sub("", text))


def read_out():
    """A box whose text is read out when it changes.

    The page's script makes it a live region once: one that comes anew with each text is passed over by screen readers.
    """
    box = widgets.HTML()
    box.add_class("bm-told")
    return box


class Soon:
    """Calls action() once no further call has come for `wait_s`; at once where no loop runs (tests, plain scripts)."""

    def __init__(self, action, wait_s):
        self._action, self._wait, self._pending = action, wait_s, None

    def __call__(self):
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self._action()
            return
        self.forget()
        self._pending = loop.call_later(self._wait, self._action)

    def forget(self):
        """Do not do it."""
        if self._pending:
            self._pending.cancel()
