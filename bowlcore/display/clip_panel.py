"""Clicking marks on a phone clip: consent first, then which clip, then the clip itself; and its end.

Everything stays in the folder of the lessons. Each click is on the disk before the next one can be made.
"""

from html import escape

import ipywidgets as widgets

from bowlcore.coaching import clip_file
from bowlcore.coaching.clip_desk import ClipDesk, clip_choices
from bowlcore.coaching.clip_folder import ENDINGS, FOLDER, Arrival, remove
from bowlcore.display.panel import _sentence
from bowlcore.display.pieces import button, group, in_words, read_out
from bowlcore.display.settings import SETTINGS
from bowlcore.display.style import CSS

CONSENT = (
    "A clip shows a person. It is taken and opened only with the bowler's consent, for a minor with a guardian's. It "
    f"stays in the folder “{FOLDER}” of your lessons on this computer, and nothing is sent anywhere. Delete it after the "
    "session; a button below does that."
)
AGREED = "The bowler agrees; for a minor, a guardian"
READY = "Choose a clip: the demo clip, which takes a few seconds to draw, or one of your own."
NONE = "choose …"
DELETE, SURE = "Delete clip and clicks", "Press again: gone for good"


def clip_panel():
    """A panel that clicks marks on a phone clip; nothing is opened, and no folder made, before the consent is ticked."""
    return ClipPanel()


class ClipPanel(widgets.VBox):
    """Consent, a clip, and the way to be rid of it.

    Attributes
    ----------
    clip : OpenClip or None
    sentence : str
        What to do next.
    """

    def __init__(self):
        self.clip, self.sentence, self._listing = None, "", False
        self.consent = widgets.Checkbox(
            description=AGREED, indent=False, layout=widgets.Layout(width="min(100%, 560px)")
        )
        self.consent.observe(self._agreed, "value")
        self._message, self._said, self._place = widgets.HTML(), read_out(), widgets.VBox()
        self.chooser = widgets.Dropdown(
            options=[NONE],
            description="Clip",
            style={"description_width": "190px"},
            layout=widgets.Layout(width="490px"),
        )
        self.chooser.observe(self._chosen, "value")
        self.again = button("Look into the folder again", lambda: self._list_clips(self.chooser.value))
        self.delete = button(DELETE, lambda: self._do(self._delete))
        self._inside = widgets.VBox()
        note = widgets.HTML(_sentence(CONSENT))
        super().__init__([widgets.HTML(CSS), note, self.consent, self._message, self._inside])
        self.add_class("bm-panel")

    def _agreed(self, change):
        """Only now is anything looked for; without consent all is put away again."""
        self._complain("")
        self._put_away()
        self._inside.children = ()
        if change.new:
            self._do(self._begin)

    def _begin(self):
        clip_file.decoder()
        try:
            from bowlcore.display.clip_picture import ClipPicker
        except ImportError:
            raise ValueError(clip_file.NEEDS) from None
        self.picker = ClipPicker("Bring in a clip:", ENDINGS, Arrival, self._arrived, self._refused)
        self._list_clips(NONE)
        self._inside.children = (group(self.chooser, self.again, self.picker), self._said, self._place)
        self._tell(READY)

    def _list_clips(self, choose):
        """Fill the list afresh; no clip is opened by that."""
        self._listing = True
        self.chooser.options = [NONE, *clip_choices()]
        self.chooser.value = choose if choose in self.chooser.options else NONE
        self._listing = False

    def _chosen(self, change):
        if not self._listing:
            self._do(self._open, change.new)

    def _arrived(self, name):
        self._list_clips(NONE)
        self.chooser.value = name

    def _refused(self, problem):
        self._complain(in_words(problem))

    def _open(self, name):
        from bowlcore.display.open_clip import OpenClip

        self._put_away()
        if name == NONE:
            self._tell(READY)
            return
        self._tell(f"{name} is being opened …")
        self._place.children = (group(self.delete),)
        try:
            desk = ClipDesk(name, SETTINGS.hand)
        except (ValueError, OSError):
            self._tell("No clip is open.")
            raise
        self.clip = OpenClip(desk, self._tell, self._of_clip)
        self._place.children = (self.clip, group(self.delete))

    def _put_away(self):
        if self.clip:
            self.clip.put_away()
        self.clip, self._place.children = None, ()
        self.delete.description = DELETE

    def _delete(self):
        """Ask, and at the second press do it; a clip that cannot be opened goes in the same way."""
        name = self.chooser.value
        if self.delete.description == DELETE:
            self._tell(f"Press once more, and {name} and all clicks on it are deleted for good.")
            self.delete.description = SURE
            return
        self._put_away()  # some systems delete no open file
        said = remove(name)
        self._list_clips(NONE)
        self._tell(said)

    def _of_clip(self, problem):
        """What is wrong inside the clip, or that all is well; the delete button asks again."""
        self.delete.description = DELETE
        self._complain(problem)

    def _do(self, action, *given):
        """One step; what is wrong with it stands in the message."""
        self._complain("")
        try:
            action(*given)
        except (ValueError, OSError) as problem:
            self._complain(in_words(problem))

    def _tell(self, sentence):
        """Say what to do next; the delete button asks again."""
        self.sentence, self.delete.description = sentence, DELETE
        self._said.value = _sentence(sentence, lines=2)

    def _complain(self, text):
        self._message.value = f'<p class="bm-message" role="alert">{escape(text)}</p>' if text else ""

    def _repr_mimebundle_(self, **kwargs):
        bundle = super()._repr_mimebundle_(**kwargs)
        data = bundle[0] if isinstance(bundle, tuple) else bundle
        said = " ".join(filter(None, [CONSENT, self.sentence, self.clip.answer if self.clip else ""]))
        return {**data, "text/plain": said, "text/html": f"<p>{escape(said)}</p>"}
