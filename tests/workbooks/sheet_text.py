"""The words of a printed worksheet, answers included, each task, cell and caption by itself."""

from bowlcore.coaching.sheet import LEVEL_WORDS, Ask, Balls, Lane, Table


def told(sheet) -> list[str]:
    """What is read aloud: title, tasks, captions, questions, drill and safety line."""
    return [text for text in (sheet.title, sheet.intro, sheet.drill, sheet.safety) if text] + [
        part[0] for part in sheet.parts
    ]


def everything(sheet) -> list[str]:
    """All words of a sheet and of the coach's copy: also cells, choices and labels."""
    found = [*told(sheet), sheet.computed, LEVEL_WORDS[sheet.level]]
    found += [text for pair in sheet.given for text in pair]
    for part in sheet.parts:
        if isinstance(part, Table):
            found += [*part.columns, *(cell for row in part.rows for cell in row)]
        elif isinstance(part, Ask):
            found += [part.answer, *part.choices]
        elif isinstance(part, Lane):
            found += [line.name for line in part.lines]
        elif isinstance(part, Balls):
            found += [name for name, *_ in part.balls]
    return found
