"""An open clip: step through its frames, click on the picture, undo, and what the clicks say."""

from html import escape

import ipywidgets as widgets

from bowlcore.coaching.clip_places import RIM, TAPE
from bowlcore.coaching.spin_axis import CAMERAS
from bowlcore.display.clip_picture import ClipPicture
from bowlcore.display.clip_view import ClipView
from bowlcore.display.controls import Choice, Number
from bowlcore.display.panel import _fold, _sentence, table
from bowlcore.display.pieces import Soon, button, group, in_words, read_out

KEYS = (
    "By keyboard: Tab to the picture; arrows move the cross, with Shift further; Enter clicks there; Page Up and Page "
    "Down step; Backspace undoes."
)
_STEPS = {"Ten back": -10, "Step back": -1, "Step on": 1, "Ten on": 10}
_REDRAW_S, _ANSWER_S = 0.004, 0.4  # pictures follow at once, the fit when the hand rests


class OpenClip(widgets.VBox):
    """Controls, picture and answer of one clip.

    Parameters
    ----------
    desk : ClipDesk
    tell, complain : callable
        tell(sentence) says what to do next; complain(sentence) what is wrong, "" that all is well.

    Attributes
    ----------
    answer : str
        What the clicks say.
    """

    def __init__(self, desk, tell, complain):
        self.desk, self.answer, self._tell, self._complain = desk, "", tell, complain
        self.view, self._shown = ClipView(desk.clip.size_px), None
        self.picture = ClipPicture(self.heard)
        self._show_soon, self._answer_soon = Soon(self._show, _REDRAW_S), Soon(self._say_answer, _ANSWER_S)
        last, places = desk.last_frame, desk.places
        self.rate = Number("frames_per_s", "Clip", "frames a second", 20, 1000, 1, places.frames_per_s)
        self.frame = Number("frame", "Frame", "counted from 0", 0, last, 1, 0)
        self.camera = Choice("camera", "Camera", list(CAMERAS), places.camera)
        self.hand = Choice("hand", "Bowler's hand", ["right", "left"], places.hand)
        for control in (self.rate, self.camera, self.hand):
            control.on_change(lambda control=control: self.do(self._filmed, control), complain)
        self.frame.on_change(self._show_soon, complain)
        self.next_is = widgets.ToggleButtons(
            options=[("edge of the ball", RIM), ("middle of the tape", TAPE)],
            description="Click on",
            style={"description_width": "initial", "button_width": "175px"},
            layout=widgets.Layout(width="max-content", max_width="100%"),
        )
        self.buttons = {label: button(label, lambda by=by: self._step(by)) for label, by in _STEPS.items()}
        self.buttons |= {
            "Closer": button("Closer", lambda: self._zoom(True)),
            "Farther": button("Farther", lambda: self._zoom(False)),
            "Undo the last click": button("Undo the last click", lambda: self.do(self._undo)),
        }
        self._answered, self._numbers, self._truth = read_out(), widgets.HTML(), widgets.HTML()
        folds = {"Camera and hand": group(self.camera.widget, self.hand.widget)}
        folds["The clicks as numbers"] = self._numbers
        if desk.is_demo:
            folds["What is true"] = self._truth
        super().__init__(
            [
                group(self.rate.widget, self.frame.widget),
                self.next_is,
                group(*self.buttons.values()),
                self.picture,
                widgets.HTML(f'<p class="bm-clip-keys">{escape(KEYS)}</p>'),
                self._answered,
                group(*map(_fold, folds, folds.values())),
                *folds.values(),
            ]
        )
        self._show()
        self._say_answer()
        tell(f"{desk.opened} {desk.to_do(0)}")

    def put_away(self):
        """Let go of the clip; what is still under way is forgotten."""
        self._show_soon.forget()
        self._answer_soon.forget()
        self.desk.close()
        self.desk = None

    def do(self, action, *given):
        """One step; what is wrong with it is said, and nothing is lost."""
        self._complain("")
        try:
            action(*given)
        except (ValueError, OSError) as problem:
            self._complain(in_words(problem))

    def heard(self, what, message):
        """What the page says of the picture; see `ClipPicture`."""
        if not self.desk:
            return
        if what == "click":
            self.do(self._click, message["frame"], message["x"], message["y"])
        elif what == "cross":
            self.view.cross = (int(message["x"]), int(message["y"]))
        elif what == "step":
            self._step(message["by"])
        elif what == "undo":
            self.do(self._undo)

    def _click(self, frame, x, y):
        self.view.cross = (round(x), round(y))
        said = self.desk.click(frame, self.next_is.value, x, y)
        self._after()
        self._tell(said)

    def _undo(self):
        frame, said = self.desk.undo()
        self.frame.put(frame)
        self._after()
        self._tell(said)

    def _after(self):
        """The clicks have changed: draw them, and say what they mean when the hand rests."""
        if self._shown == self.frame.value:
            self.picture.show(None, self._told(self._shown))
            self._offer(self._shown)
        else:
            self._show()
        self._answer_soon()

    def _offer(self, frame):
        """Set the next click to what is missing in a frame."""
        self.next_is.value = self.desk.places.missing(frame) or TAPE

    def _filmed(self, control):
        self.desk.filmed(**{control.name: control.value})
        self._answer_soon()

    def _step(self, by):
        self.frame.put(min(max(self.frame.value + by, 0), self.desk.last_frame))
        self._show()

    def _zoom(self, closer):
        self.view.go(closer)
        self._shown = None
        self._show()

    def _show(self):
        """The picture of the present frame."""
        number = int(self.frame.value)
        if number == self._shown:
            return
        try:
            picture = self.desk.clip.frame(number)
        except ValueError as problem:
            self._complain(str(problem))
            return
        self._complain("")
        self._shown = number
        self.view.frame_on_cross()
        self.picture.show(self.view.cut(picture), self._told(number))
        self._offer(number)
        self._tell(self.desk.to_do(number))

    def _told(self, frame):
        return self.view.told(
            frame, self.desk.places, f"Picture of the clip. {self.desk.to_do(frame)} {KEYS}"
        )

    def _say_answer(self):
        """What the clicks say, and the tables behind it."""
        self.answer = self.desk.answer()
        self._answered.value = _sentence(self.answer) if self.answer else ""
        self._numbers.value = table(self.desk.rows()) or "<p>No click yet.</p>"
        self._truth.value = (
            table(self.desk.truth_rows()) or "<p>It is shown once the clicks have an answer.</p>"
        )
