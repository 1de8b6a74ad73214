"""Units and hand: one object that every panel watches, and the small panel that sets it."""

from contextlib import contextmanager

import ipywidgets as widgets
from traitlets import Bool, Enum, HasTraits

from bowlcore.display.style import CSS

# Gives each slider's handle the name that its label has, and says its value without floating noise:
# ipywidgets does neither for a screen reader.
_NAME_HANDLES = """
if (!window.ballMotionNames) {
  window.ballMotionNames = true;
  const name = () => document.querySelectorAll('.bm-slider').forEach(row => {
    const label = row.querySelector('.widget-label');
    row.querySelectorAll('.noUi-handle').forEach(handle => {
      const value = handle.getAttribute('aria-valuetext');
      const said = String(Math.round(Number(value) * 1e6) / 1e6);
      if (value !== said) handle.setAttribute('aria-valuetext', said);
      if (label && handle.getAttribute('aria-label') !== label.textContent)
        handle.setAttribute('aria-label', label.textContent);
    });
  });
  new MutationObserver(name).observe(document.body, {
    childList: true, subtree: true, characterData: true, attributes: true, attributeFilter: ['aria-valuetext']
  });
  name();
}
"""


class Settings(HasTraits):
    """What all panels of a kernel share.

    Attributes
    ----------
    metric : bool
        Metres and km/h on screens instead of feet and mph; boards, rpm, degrees and the pounds of a ball stay.
    hand : "right" or "left"
        Boards are counted from this side; a left-hander's picture is the mirror.
    """

    metric = Bool(False)
    hand = Enum(["right", "left"], default_value="right")


SETTINGS = Settings()


@contextmanager
def shown_in(metric, hand):
    """Panels made within are in these units and for this hand; afterwards the settings are as before."""
    before = SETTINGS.metric, SETTINGS.hand
    SETTINGS.metric, SETTINGS.hand = metric, hand
    try:
        yield
    finally:
        SETTINGS.metric, SETTINGS.hand = before


class _SettingsPanel(widgets.HBox):
    """Two switches; showing it also names the slider handles of the whole page."""

    def _ipython_display_(self):
        from IPython.display import Javascript, display

        display(Javascript(_NAME_HANDLES))
        display(super()._repr_mimebundle_(), raw=True)


def settings_panel(settings: Settings = SETTINGS):
    """Units and hand for every panel on the page."""
    units = widgets.ToggleButtons(
        options=[("feet and mph", False), ("metres and km/h", True)],
        value=settings.metric,
        description="Units",
    )
    hand = widgets.ToggleButtons(
        options=[("right hand", "right"), ("left hand", "left")], value=settings.hand, description="Bowler"
    )
    units.style.button_width = hand.style.button_width = "170px"
    units.observe(lambda change: setattr(settings, "metric", change.new), "value")
    hand.observe(lambda change: setattr(settings, "hand", change.new), "value")
    settings.observe(lambda change: setattr(units, "value", change.new), "metric")
    settings.observe(lambda change: setattr(hand, "value", change.new), "hand")
    return _SettingsPanel([widgets.HTML(CSS), units, hand], layout=widgets.Layout(flex_flow="row wrap"))
