"""Writes the page of words, formulas and questions that lies beside the lessons: python tests/studies/make_words_page.py

Words come from `coaching/glossary`, formulas and questions from the lessons; nothing is written twice.
"""

import re
from pathlib import Path

import nbformat
from formulas_of_lessons import OF_LESSONS

from bowlcore.coaching.glossary import GLOSSARY, PAGE
from bowlcore.coaching.questions import QUESTIONS
from bowlcore.locate import workbooks_folder

_DISPLAYED = re.compile(r"\$\$(.+?)\$\$", re.S)


def page(folder: Path) -> str:
    """The whole page as Markdown, from the lessons in `folder`."""
    lessons = [(path, nbformat.read(path, 4)) for path in sorted(folder.glob("*.ipynb"))]
    return "\n".join([*_words(), *_formulas(lessons), *_questions(lessons)])


def formulas(notebook) -> list[str]:
    """What a lesson displays as formulas, in order."""
    text = "\n".join(cell.source for cell in notebook.cells if cell.cell_type == "markdown")
    return [" ".join(found.split()) for found in _DISPLAYED.findall(text)]


def _words():
    yield "# Words, formulas and questions\n"
    yield "Part 1: the words of the lessons. Part 2: every formula. Part 3: where your question is treated.\n"
    yield "## Words\n"
    yield (
        "Common practice, no source, unless it says *for us*: then it is our choice. "
        "These are meanings in this course; elsewhere a word may be used otherwise.\n"
    )
    for word in sorted(GLOSSARY, key=lambda word: word.name.lower()):
        yield f"### {word.name}\n\n{word.meaning}\n"


def _formulas(lessons):
    yield "## Formulas\n"
    yield "The lesson says where each comes from. The examples are computed by the same core as the panels.\n"
    for path, notebook in lessons:
        displayed = iter(formulas(notebook))
        for formula in OF_LESSONS[path.stem[:2]]:
            yield f"### {formula.name}\n"
            yield f"In {_link(path, notebook)}.\n"
            yield f"$${formula.tex or next(displayed)}$$\n"
            yield "| symbol | meaning | unit |\n|---|---|---|"
            yield from (
                f"| {_symbol(name)} | {meaning} | {unit} |" for name, meaning, unit in formula.symbols
            )
            yield f"\nExample: {formula.example}\n"


def _questions(lessons):
    yield "## Questions\n"
    for path, notebook in lessons:
        yield f"### {path.stem[:2]} {_title(notebook)}\n"
        yield f"[Open the lesson]({path.name})\n"
        yield from (f"* {question}" for question in _asked(notebook))
        yield ""


def _asked(notebook) -> list[str]:
    """The question of the lesson, those of its headings, and those it asks the reader."""
    found = []
    for cell in notebook.cells:
        if cell.cell_type == "markdown":
            for heading in re.findall(r"^#+ (.+\?)$", cell.source, flags=re.M):
                question = heading.partition(": ")[2] or heading
                found.append(question[0].upper() + question[1:])
        else:
            found += [QUESTIONS[name].text for name in re.findall(r'bowlcore\.check\("([^"]+)"', cell.source)]
    return list(dict.fromkeys(found))


def _title(notebook) -> str:
    return re.match(r"# ([^:\n]+)", notebook.cells[0].source)[1]


def _link(path, notebook) -> str:
    return f"[{_title(notebook)}]({path.name})"


def _symbol(name: str) -> str:
    return f"${name}$" if name.startswith("\\") or len(name) == 1 else name


if __name__ == "__main__":
    (workbooks_folder() / PAGE).write_text(page(workbooks_folder()) + "\n", encoding="utf-8")
