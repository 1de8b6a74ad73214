"""The controls of a panel: a slider with a number box, a list, a row of choices.

A control's `value` is in the trade's units whatever the screen shows. Each has `name`, `widget`,
`value`, `ends` (the values at both ends, for tests), `put(value)` and `on_change(callback)`; and for
pages on which it cannot be moved `title`, `told(value)` and `check(value)`.
"""

from contextlib import contextmanager
from math import ceil, floor, isfinite
from numbers import Real

import ipywidgets as widgets

from bowlcore.coaching.words import distance
from bowlcore.motion.units import TARGET_FT

_LABEL = "190px"


@contextmanager
def starting(given):
    """Reads starting values by name; at the end, a name that no control asked for is refused."""
    asked = []

    def at(name, default):
        asked.append(name)
        return given.get(name, default)

    yield at
    for name in given:
        if name not in asked:
            raise ValueError(f"this panel has no control {name!r}; it has {', '.join(asked)}")


class Number:
    """A slider and a labelled number box that move together.

    Parameters
    ----------
    name, label : str
    unit : str
        "" where the label says already what is counted.
    low, high, step, start : float
        In the trade's unit.
    metric : (unit, factor, step), optional
        What the screen shows when the settings say metric: value x factor.
    metric_label : str, optional
        The label then, if it names a distance.
    """

    def __init__(self, name, label, unit, low, high, step, start, metric=None, metric_label=None):
        self.name, self.start = name, start
        self._labels = {False: label, True: metric_label or label}
        self.low, self.high, self.step = low, high, step
        self._shown = {False: (unit, 1.0, step), True: metric or (unit, 1.0, step)}
        self._metric, self._busy, self._listeners, self._errors = False, False, [], []
        self.check(start)
        self.value = float(start)
        # whole numbers where all is whole: a float slider sends 26.000000000000004 after one key press
        self._whole = metric is None and all(float(number).is_integer() for number in (low, high, step))
        self.slider = widgets.IntSlider() if self._whole else widgets.FloatSlider()
        self.box = widgets.FloatText()
        self.slider.layout.width = "206px"
        self.slider.readout = False
        self.slider.add_class("bm-slider")
        self.box.layout.width, self.box.style.description_width = "284px", _LABEL
        self.widget = widgets.HBox([self.box, self.slider], layout=widgets.Layout(width="500px"))
        self.use_units(False)
        self.slider.observe(self._slid, "value")
        self.box.observe(self._typed, "value")

    @property
    def ends(self):
        return self.low, self.high

    @property
    def label(self):
        """Without the unit, as the screen has it now."""
        return self._labels[self._metric]

    @property
    def title(self):
        """Label and unit, as the screen has them now."""
        return ", ".join(filter(None, (self.label, self._shown[self._metric][0])))

    def told(self, value) -> str:
        """A value [trade unit] as the screen shows it."""
        return f"{self._on_screen(value):g}"

    def shown(self, value) -> float:
        """The value [trade unit] nearest to this one that the screen can show without rounding."""
        factor = self._shown[self._metric][1]
        return value if factor == 1.0 else self._taken(self._on_screen(value), factor)

    def check(self, value):
        """Raise ValueError, in one sentence, for a value [trade unit] out of range."""
        if not isinstance(value, Real) or not self.low <= value <= self.high:
            allowed = f"{self.low:g} and {self.high:g} {self._shown[False][0]}".rstrip()
            got = f"{value:g}" if isinstance(value, Real) else repr(value)
            raise ValueError(f"{self.name} must be between {allowed}, got {got}")

    def on_change(self, callback, on_error=lambda text: None):
        self._listeners.append(callback)
        self._errors.append(on_error)

    def use_units(self, metric):
        """Show trade or metric units; the value itself stays as it is."""
        self._metric = metric
        _, factor, step = self._shown[metric]
        low, high = (
            ceil(self.low * factor / step - 1e-9) * step,
            floor(self.high * factor / step + 1e-9) * step,
        )
        if self._whole:
            low, high, step = int(low), int(high), int(step)
        self._busy = True
        # One message for all of it: a narrower range alone would push the value to its end. And while the
        # slider follows every step, the browser takes the parts of that message in any order and sends back a
        # value pushed to the end of the old range.
        self.slider.continuous_update = False
        with self.slider.hold_sync(), self.box.hold_sync():
            self.slider.min, self.slider.max = min(self.slider.min, low), max(self.slider.max, high)
            self.slider.step = self.box.step = step
            self.slider.description = self.box.description = self.title
            self._show()
            self.slider.min, self.slider.max = low, high
        self.slider.continuous_update = True
        self._busy = False
        self._say_right()

    def put(self, value):
        """Set the value [trade unit] without telling anyone."""
        self.value = float(value)
        self._busy = True
        self._show()
        self._busy = False
        self._say_right()

    def _say_right(self):
        for tell in self._errors:
            tell("")

    def _show(self):
        shown = self._on_screen(self.value)
        self._move_slider(shown)
        self.box.value = shown

    def _on_screen(self, value):
        _, factor, step = self._shown[self._metric]
        return _tidy(value * factor, step if factor != 1.0 else None)

    def _move_slider(self, shown):
        self.slider.value = round(shown) if self._whole else shown

    def _slid(self, change):
        if self._busy:
            return
        _, factor, step = self._shown[self._metric]
        shown = _tidy(change.new, step)
        self._busy = True
        self.box.value = shown  # the slider is left alone: a held key may already be further on
        self._busy = False
        self._accept(shown, factor)

    def _typed(self, change):
        if self._busy:
            return
        unit, factor, step = self._shown[self._metric]
        low, high = self.slider.min, self.slider.max
        if not isfinite(change.new) or not low <= change.new <= high:
            for tell in self._errors:
                tell(
                    f"{self.label} must be between {f'{low:g} and {high:g} {unit}'.rstrip()}, got {change.new:.10g}; "
                    f"the picture still shows {_tidy(self.value * factor, step):g}."
                )
            return
        self._busy = True
        self._move_slider(change.new)
        self._busy = False
        self._accept(change.new, factor)

    def _accept(self, shown, factor):
        """Take a shown number as the value and tell the panel."""
        self.value = self._taken(shown, factor)
        self._say_right()
        for callback in self._listeners:
            callback()

    def _taken(self, shown, factor):
        return min(max(_tidy(shown / factor), self.low), self.high)


def _tidy(value, step=None):
    """A number without floating noise, on the step if one is given."""
    return round(round(value / step) * step if step else value, 6)


def target_number(at, low=1, high=39, start=13) -> Number:
    """The target, on the board it is read at (`at` as of `starting`)."""
    label, metric_label = (f"Target at {distance(TARGET_FT, metric)}" for metric in (False, True))
    start = at("target_board", start)
    return Number("target_board", label, "board", low, high, 0.5, start, metric_label=metric_label)


class Choice:
    """A list to pick from, or a row of buttons when there are few."""

    def __init__(self, name, label, options, start, buttons=False):
        self.name, self.label, self.title, self.start = name, label, label, start
        pairs = [option if isinstance(option, tuple) else (option, option) for option in options]
        self._titles = {value: str(told) for told, value in pairs}
        self.ends = tuple(self._titles)
        self.check(start)
        kind = widgets.ToggleButtons if buttons else widgets.Dropdown
        self.widget = kind(options=options, value=start, description=label)
        self.widget.style.description_width = _LABEL
        if buttons:
            self.widget.style.button_width = "auto"
        else:
            self.widget.layout.width = "490px"
        self._listeners, self._busy = [], False
        self.widget.observe(self._picked, "value")

    @property
    def value(self):
        return self.widget.value

    def told(self, value) -> str:
        """What the list says for a value."""
        return self._titles[value]

    def check(self, value):
        """Raise ValueError, in one sentence, for a value that is not in the list."""
        if value not in self.ends:
            raise ValueError(f"{self.name} must be one of {', '.join(map(str, self.ends))}, got {value!r}")

    def on_change(self, callback, on_error=None):
        self._listeners.append(callback)

    def use_units(self, metric):
        """Nothing here has a unit."""

    def put(self, value):
        self._busy = True
        self.widget.value = value
        self._busy = False

    def _picked(self, change):
        if not self._busy:
            for callback in self._listeners:
                callback()


class Words:
    """A box for what somebody said. Text that `check` refuses stays in the box and is not taken.

    Parameters
    ----------
    name, label : str
    check : callable
        check(text) raises ValueError, in words, for text that is not understood; "" is always taken.
    example : str
        Shown while the box is empty; with "" it is one of the two `ends`.
    start : str
    then : callable, optional
        then(text) is called with each text that is taken, before anyone else hears of it.
    rows : int
        More than one: a box of so many lines.
    """

    def __init__(self, name, label, check, example, start="", then=lambda text: None, rows=1):
        self.name, self.label, self.title, self.start = name, label, label, start
        self._check, self._then, self._listeners, self._errors, self._busy = check, then, [], [], False
        self.ends = "", example
        self.value = self._taken(start)
        # sent when Enter is pressed or the box is left, so that half a word is never looked up
        kind, more = (widgets.Text, {}) if rows == 1 else (widgets.Textarea, {"rows": rows})
        self.widget = kind(
            value=start, description=label, placeholder=f"such as: {example}", continuous_update=False, **more
        )
        self.widget.style.description_width, self.widget.layout.width = _LABEL, "490px"
        self.widget.observe(self._typed, "value")

    def on_change(self, callback, on_error=lambda text: None):
        self._listeners.append(callback)
        self._errors.append(on_error)

    def use_units(self, metric):
        """Nothing here has a unit."""

    def told(self, value) -> str:
        return value

    def check(self, value):
        """Raise ValueError, in one sentence, for text that is not understood."""
        self._taken(value)

    def put(self, value):
        """Set the text without telling anyone; ValueError when it is not understood."""
        self.value, self._busy = self._taken(value), True
        self.widget.value = value
        self._busy = False
        self._say("")
        self._then(value)

    def _taken(self, text):
        if not isinstance(text, str):
            raise ValueError(f"{self.name} must be text, got {type(text).__name__}")
        if text.strip():
            self._check(text)
        return text

    def _typed(self, change):
        if self._busy:
            return
        try:
            self.value = self._taken(change.new)
        except ValueError as problem:
            self._say(str(problem))
            return
        self._say("")
        self._then(self.value)
        for callback in self._listeners:
            callback()

    def _say(self, problem):
        for tell in self._errors:
            tell(problem)
