"""Where pages to print are put: as HTML, and as PDF where a browser is at hand; and the sentence that says where."""

from os.path import lexists
from pathlib import Path

from bowlcore.coaching.paper import MADE_HERE
from bowlcore.coaching.print_pdf import HOW_TO_PRINT, find_browser, print_pdf
from bowlcore.whole_file import make_folder, write_whole

FOLDER = "printed"
_HTML, _PDF = (".html", ".htm"), ".pdf"


def put(pages, folder=None) -> str:
    """Write pages into the folder `printed`, beside what is there, each as a PDF too where a browser is at hand.

    Parameters
    ----------
    pages : dict of str
        Name without ending: the page as HTML.
    folder : Path
        The work folder; the folder that the lesson runs in if left out.

    Returns
    -------
    str
        The sentence that says what was written and how to print it.

    Raises
    ------
    OSError
        In one sentence, when the folder cannot be written.
    """
    written = put_beside(pages, (folder or Path.cwd()) / FOLDER)
    browser = find_browser()
    try:
        made = [_as_pdf(page, browser) for page in written] if browser else []
    except OSError:
        made = []  # the pages themselves are there
    return f"In the folder {FOLDER} of your lessons: {told(made or written)}"


def put_beside(pages, place) -> list[Path]:
    """Write pages into a folder, made if it is not there, beside what lies in it; returns the files.

    Parameters
    ----------
    pages : dict of str
        Name without ending: the page as HTML.
    place : Path

    Raises
    ------
    OSError
        In one sentence, when the folder cannot be made or written.
    """
    make_folder(place)
    mark = _free_mark(place, pages)
    return [_write(place / f"{name}{mark}.html", text) for name, text in pages.items()]


def put_as(pages) -> str:
    """Write pages under names that a person gave; what is there is replaced only if it was made here.

    Parameters
    ----------
    pages : dict of str
        Path, ending in .html or .pdf: the page as HTML. Of a .pdf the HTML is kept beside it.

    Raises
    ------
    OSError, ValueError
        In one sentence: another ending, a file that was not made here, a folder that cannot be written, or no browser
        for a .pdf (the HTML is written then).
    """
    pages = {Path(path): text for path, text in pages.items()}
    written = put_html_as(pages)
    if not any(path.suffix.lower() == _PDF for path in pages):
        return told(written)
    browser = find_browser()
    if browser is None:
        raise OSError(f"no browser that makes a PDF was found, so this was written: {told(written)}")
    return told([_as_pdf(page, browser) for page in written])


def put_html_as(pages) -> list[Path]:
    """The HTML of `put_as` alone, of a .pdf under the same name; returns the files. Raises as `put_as` does."""
    for path in pages:
        _check(path)
    return [
        _write(path.with_suffix(".html") if path.suffix.lower() == _PDF else path, text)
        for path, text in pages.items()
    ]


def told(files) -> str:
    """ "a.html and b.html. Open ..." """
    names = [path.name for path in files]
    listed = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    how = "Print at 100 %." if files[0].suffix == _PDF else HOW_TO_PRINT
    return f"{listed}. {how}"


def _write(page, text):
    write_whole(page, text.encode())
    return page


def _as_pdf(page, browser):
    pdf = page.with_suffix(_PDF)
    print_pdf(page, pdf, browser)
    return pdf


def _check(path):
    """A path that may be written."""
    if path.suffix.lower() not in (*_HTML, _PDF):
        raise ValueError(f"a file to print ends in .html or .pdf, got {path.name!r}")
    if not path.parent.is_dir():
        raise OSError(f"there is no folder {path.parent}")
    page = path.with_suffix(".html") if path.suffix.lower() == _PDF else path
    if (path.exists() or page.exists()) and not _made_here(page):
        raise OSError(f"{path.name} is there already and was not made by this program; name another file")


def _made_here(page):
    """True if a page of this program lies there."""
    try:
        if not page.is_file():
            return False
        with page.open("rb") as file:
            return MADE_HERE.encode() in file.read(4000)
    except OSError:
        return False


def _free_mark(place, pages):
    """ "" or " (2)": the same for all pages of one batch."""
    number, mark = 1, ""
    while any(lexists(place / f"{name}{mark}{end}") for name in pages for end in (".html", _PDF)):
        number += 1
        mark = f" ({number})"
    return mark
