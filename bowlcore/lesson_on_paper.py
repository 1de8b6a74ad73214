"""What the lab prints (File, Print) and exports as HTML: the lesson as a person sees it, on paper, nothing fetched.

No code; formulas as pictures; each panel as its last sentence and picture; the words of the lesson at the end.
"""

import re

from nbconvert.preprocessors import Preprocessor
from nbformat.v4 import new_markdown_cell

from bowlcore.coaching import paper
from bowlcore.coaching.glossary import GLOSSARY, PAGE
from bowlcore.formula_pictures import with_pictures

_LINK = re.compile(r"\[([^\]]+)\]\(([^)]+)\)")


class LessonOnPaper(Preprocessor):
    """Makes a notebook ready for the template `lesson_on_paper`."""

    def preprocess(self, nb, resources):
        words = {target for cell in _prose(nb) for _, target in _LINK.findall(cell.source)}
        for cell in _prose(nb):
            cell.source = _LINK.sub(r"\1", with_pictures(cell.source))
        for cell in nb.cells:
            cell.outputs = [output for output in cell.get("outputs", []) if _on_paper(output)]
        nb.cells = [cell for cell in nb.cells if not cell.source.startswith("## Run me first")]
        told = [f"* **{word.name}**: {word.meaning}" for word in GLOSSARY if f"{PAGE}#{word.anchor}" in words]
        if told:
            nb.cells.append(new_markdown_cell("\n".join(["## Words of this lesson", "", *told])))
        name = nb.metadata.get("title", "") or resources.get("metadata", {}).get("name", "Lesson")
        resources["on_paper"] = paper.page(str(name).replace("\0", ""), "\0").split("\0")
        return nb, resources


def _prose(nb):
    return [cell for cell in nb.cells if cell.cell_type == "markdown"]


def _on_paper(output) -> bool:
    """False for what is alive only, such as a script."""
    data = output.get("data", {"text/plain": ""})
    return any(kind in data for kind in ("text/html", "image/png", "image/svg+xml")) or (
        "text/plain" in data and not any("widget-view" in kind or "javascript" in kind for kind in data)
    )
