"""A page for paper: A4 or Letter, black on white, 12 pt (16 pt large), nothing split, nothing fetched.

Classes for what stands on it: `sheet` one page, `keep` never split, `write` a box to write in.
"""

from html import escape

SIZES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # mm (ISO 216; 8.5 by 11 in)
MARGIN_MM = 13.0
MADE_HERE = '<meta name="generator" content="bowlcore">'  # a page of ours may be written again over itself
TEXT_PT, LARGE_PT = 12, 16
# no script, no address outside this file: a page from a stranger's name or note can do nothing
POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"
_CSS = """
html { font: %(text)dpt/1.26 Arial, Helvetica, "Liberation Sans", sans-serif; color: #000; background: #fff; }
body { margin: 0; overflow-wrap: break-word; }
h1 { font-size: 1.3em; line-height: 1.2; margin: 0 0 0.3em; }
h2 { font-size: 1.08em; line-height: 1.2; margin: 0.7em 0 0.2em; }
p { margin: 0.35em 0; }
ol, ul { margin: 0.35em 0; padding-left: 1.6em; }
table { border-collapse: collapse; width: 100%%; margin: 0.4em 0; }
th, td { border: 0.3mm solid #000; padding: 0.8mm 1.5mm; text-align: left; vertical-align: top; }
th { font-weight: 600; }
caption { text-align: left; font-weight: 600; padding-bottom: 0.2em; }
svg { display: block; max-width: 100%%; height: auto; }
.sheet { break-after: page; }
.sheet:last-child { break-after: auto; }
.keep, figure, table, tr, svg, li { break-inside: avoid; }
h1, h2, caption { break-after: avoid; }
p, li { orphans: 3; widows: 3; }
.write { display: inline-block; box-sizing: border-box; border: 0.3mm solid #000; min-width: 20mm; height: 1.9em;
  vertical-align: middle; }
.write.wide { display: block; width: 100%%; margin: 0.3em 0; }
@page { size: %(paper)s portrait; margin: %(margin)gmm;
  @top-left { content: %(title)s; font: 9pt Arial, Helvetica, sans-serif; }
  @top-right { content: counter(page) " / " counter(pages); font: 9pt Arial, Helvetica, sans-serif; } }
@media screen { body { max-width: %(inside)gmm; margin: 8mm auto; padding: 0 4mm; }
  .sheet { padding-bottom: 8mm; margin-bottom: 8mm; border-bottom: 0.3mm dashed #000; } }
"""


def page(title, body_html, *, size="A4", large=False) -> str:
    """A whole HTML document, ready to print.

    Parameters
    ----------
    title : str
        Plain text; it stands at the top of each printed page where the browser can do that.
    body_html : str
        HTML, with what people typed already escaped.
    size : "A4" or "Letter"
    large : bool
        16 pt for those who see badly; more pages.

    Raises
    ------
    ValueError
        For another size.
    """
    width, _ = paper_mm(size)
    css = _CSS % {
        "text": LARGE_PT if large else TEXT_PT,
        "paper": size,
        "margin": MARGIN_MM,
        "inside": width - 2 * MARGIN_MM,
        "title": _css_string(title),
    }
    return document(title, css, body_html)


def document(title, css, body_html, policy=POLICY) -> str:
    """A whole HTML document of ours; `policy` says what it may load and run. Half signs, which no file can hold, are "?"."""
    whole = (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}">{MADE_HERE}'
        '<meta name="viewport" content="width=device-width">'
        f"<title>{escape(title)}</title><style>{css}</style></head>\n<body>{body_html}</body></html>\n"
    )
    return whole.encode("utf-8", "replace").decode("utf-8")


def paper_mm(size) -> tuple[float, float]:
    """Width and height of a sheet of paper [mm]; ValueError for a size not known."""
    if size not in SIZES:
        raise ValueError(f"paper must be one of {', '.join(SIZES)}, got {str(size)[:40]!r}")
    return SIZES[size]


def _css_string(text):
    """A quoted string of CSS; whatever is no letter or digit is written as its number."""
    return '"' + "".join(sign if sign.isalnum() else f"\\{ord(sign):06x}" for sign in text) + '"'
