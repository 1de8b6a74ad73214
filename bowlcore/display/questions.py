"""A guess before the trial, and a check after it. Nothing about the reader is kept."""

from html import escape

import ipywidgets as widgets

from bowlcore.coaching.questions import QUESTIONS
from bowlcore.display.pieces import read_out


def predict(name):
    """Choose what will happen; the page repeats it and does not judge."""
    return _Asked(name, lambda question, picked: f"Your guess: {question.choices[picked]}. Now try it below.")


def check(name):
    """Choose what happens in this model; a first wrong try gets a hint, then the reason."""
    tries = []

    def reply(question, picked):
        tries.append(picked)
        if picked == question.right:
            return f"Yes: {question.choices[picked]}. {question.why}"
        if len(set(tries)) == 1:
            return f"Not in this model. A hint: {question.hint}"
        return f"Not in this model. It is: {question.choices[question.right]}. {question.why}"

    return _Asked(name, reply)


class _Asked:
    """A question with its choices, live and on paper."""

    def __init__(self, name, reply):
        if name not in QUESTIONS:
            raise ValueError(f"there is no question {name!r}; there are: {', '.join(QUESTIONS)}")
        self.question, self._reply = QUESTIONS[name], reply
        self.choice = widgets.RadioButtons(
            options=[(text, i) for i, text in enumerate(self.question.choices)],
            value=None,
            description="I think:",
            layout=widgets.Layout(width="auto"),
        )
        self.answer = read_out()
        self.choice.observe(self._chosen, "value")
        self.widget = widgets.VBox(
            [widgets.HTML(f"<p><b>{escape(self.question.text)}</b></p>"), self.choice, self.answer]
        )
        self.widget.add_class("bm-question")

    def _chosen(self, change):
        if change.new is not None:
            text = self._reply(self.question, change.new)
            self.answer.value = f'<p class="bm-answer">{escape(text)}</p>'

    def _repr_mimebundle_(self, **kwargs):
        bundle = self.widget._repr_mimebundle_(**kwargs)
        data = bundle[0] if isinstance(bundle, tuple) else bundle
        boxes = "".join(f"<li>☐ {escape(text)}</li>" for text in self.question.choices)
        still = f"<p><b>{escape(self.question.text)}</b></p><ul style='list-style:none'>{boxes}</ul>"
        return {**data, "text/html": still, "text/plain": self.question.text}
