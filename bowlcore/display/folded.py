"""A panel that waits behind a button: it is made when first asked for, so a lesson opens as fast without it."""

import ipywidgets as widgets


class Folded(widgets.VBox):
    """A button that makes, shows and hides a panel; on paper only what has been made. May stand for a panel itself.

    Parameters
    ----------
    title : str
    make : callable without arguments that returns a Panel or a Folded
    first : Panel or Folded, optional
        One that stands above the button from the start.
    """

    def __init__(self, title, make, first=None):
        self.first, self.rest, self._make = first, None, make
        self._title = title
        button = widgets.ToggleButton(
            description=f"{title} …", layout=widgets.Layout(width="auto", align_self="flex-start")
        )
        button.observe(self._turn, "value")
        super().__init__([*([first.widget] if first else []), button])

    def _turn(self, change):
        if self.rest is None:
            self.rest = self._make()
            self.rest.shown()
            self.children = (*self.children, self.rest.widget)
        self.rest.widget.layout.display = "" if change.new else "none"

    @property
    def widget(self):
        return self

    @property
    def sentence(self) -> str:
        """That of the panel above the button, or what the button is for."""
        return self.first.sentence if self.first else f"{self._title} (press to open)"

    def shown(self):
        """It is on the screen, as `Panel.shown`."""
        for panel in self._made():
            panel.shown()

    def still(self) -> str:
        """What has been made as plain HTML, for exports and paper."""
        return "".join(panel.still() for panel in self._made()) or self.sentence

    def _made(self):
        return [panel for panel in (self.first, self.rest) if panel is not None]

    def _repr_mimebundle_(self, **kwargs):
        bundle = super()._repr_mimebundle_(**kwargs)
        data = bundle[0] if isinstance(bundle, tuple) else bundle
        self.shown()
        return {**data, "text/plain": self.sentence, "text/html": f"<div>{self.still()}</div>"}


def folded(title, make, **start) -> Folded:
    """The panel of `make(**start)` behind a button of this title."""
    return Folded(title, lambda: make(**start))
