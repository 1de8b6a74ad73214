"""Formulas as pictures, for paper and for pages where nothing sets formulas."""

import base64
import io
import re

_FORMULA = re.compile(r"\$\$(?P<displayed>.+?)\$\$|\$(?P<inline>[^$\n]+)\$", re.S)


def with_pictures(markdown: str) -> str:
    """The same Markdown with each formula in dollar signs as a picture, its words as the alternative text."""
    return _FORMULA.sub(_picture, markdown)


def _picture(formula) -> str:
    from matplotlib import mathtext  # slow to import, and a page may have no formula

    text = " ".join((formula["displayed"] or formula["inline"]).split())
    drawn = text.replace(r"\frac", r"\dfrac") if formula["displayed"] else text
    svg = io.BytesIO()
    try:
        mathtext.math_to_image(f"${drawn}$", svg, format="svg")
    except ValueError:
        return formula[0]  # dollar signs of somebody's own notes
    place = ' style="margin: 3mm 0; max-width: 100%; height: auto"' if formula["displayed"] else ""
    words = re.sub(r"\\(?:text|left|right|frac|,|;|qquad)", "", text).translate(
        str.maketrans("{}", "()", '\\"<')
    )
    return f'<img alt="{words}"{place} src="data:image/svg+xml;base64,{base64.b64encode(svg.getvalue()).decode()}">'
