"""A table in the text of a lesson: rows, or a DataFrame, as HTML and as plain words."""

from bowlcore.display.panel import table


class Shown:
    """Shows itself as the last line of a cell; the same on paper."""

    def __init__(self, rows):
        self.rows = rows

    def _repr_mimebundle_(self, **kwargs):
        words = "\n".join("; ".join(f"{title}: {cell}" for title, cell in row.items()) for row in self.rows)
        return {"text/html": table(self.rows), "text/plain": words}


def show_rows(rows) -> Shown:
    """A list of dicts with the same keys, or a DataFrame, as a table."""
    return Shown(rows.to_dict("records") if hasattr(rows, "to_dict") else list(rows))


def show_words(**said) -> Shown:
    """What was tried (underscores read as spaces) beside what was seen."""
    return Shown([{"try": label.replace("_", " "), "what happens": text} for label, text in said.items()])
