"""The command line: bowlcore open, show, sheets, pages, doctor. Errors are one sentence; nothing heavy is loaded here."""

import argparse
import os
import re
import sys
from difflib import get_close_matches
from pathlib import Path

from bowlcore import __version__
from bowlcore.called import called
from bowlcore.pages_command import add_pages, pages_command
from bowlcore.sheets_command import add_sheets, sheets_command

WELCOME = """\
Ball Motion Workbook: lessons on how a bowling ball skids, hooks and rolls.

  bowlcore open      open the lessons in your browser
  bowlcore show      show them to a group: large, without code
  bowlcore sheets    write pages to print: worksheets, cards, notes
  bowlcore pages     write lessons as pages for phones
  bowlcore doctor    if something does not work: check the installation

  bowlcore open --help    says more about opening"""
COMMANDS = ("open", "show", "sheets", "pages", "doctor")


_WORDS = (  # what argparse says, and how people say it
    (r"argument (?:--)?([\w-]+): invalid int value: (.*)", r"\1 must be a whole number, got \2"),
    (r"argument (?:--)?([\w-]+): invalid float value: (.*)", r"\1 must be a number, got \2"),
    (
        r"argument WHAT: invalid choice: ('.*?') \(.*\)",
        r"what to print is 00 to 10, card, before, tally or parents, got \1",
    ),
    (
        r"the following arguments are required: WHAT",
        "say what to print: 00 to 10, card, before, tally or parents",
    ),
    (r"argument LESSON: ", ""),
    (
        r"unrecognized arguments: (.*)",
        r"there is no place for \1 here (a name with a blank goes in quotation marks)",
    ),
)


class _Parser(argparse.ArgumentParser):
    def error(self, message):
        unknown = re.match(r"argument COMMAND: invalid choice: '(.*?)'", message)
        if unknown:
            message = _no_command(unknown[1])
        for said, words in _WORDS:
            message = re.sub(said, words, message)
        self.exit(2, f"bowlcore: {message}; type {called()} {self._more()}\n")

    def _more(self):
        command = self.prog.removeprefix("bowlcore").strip()
        return f"{command} --help to see what it takes" if command else "--help to see what it can do"


def _no_command(typed):
    near = get_close_matches(typed.lower(), COMMANDS, 1)
    return f"there is no command {typed!r}" + (f", did you mean {near[0]}?" if near else "")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="bowlcore",
        usage="bowlcore COMMAND",
        description=WELCOME,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"bowlcore {__version__}")
    commands = parser.add_subparsers(
        dest="command", metavar="COMMAND", prog="bowlcore", help=argparse.SUPPRESS
    )

    opening = commands.add_parser("open", description="Open the lessons in your browser.")
    _add_place(opening, "the lesson to open, for example 04 (default: the first)")

    showing = commands.add_parser(
        "show", description="Show the lessons to a group: large, without code, each running by itself."
    )
    _add_place(showing, "the lesson to begin with, for example 04 (default: the contents)")

    add_sheets(commands)
    add_pages(commands)
    commands.add_parser("doctor", description="Check the installation, one line for each thing.")
    return parser


def _add_place(command, lesson) -> None:
    """What `open` and `show` are both told."""
    command.add_argument(
        "folder",
        nargs="?",
        metavar="FOLDER",
        help="where your own copies are kept (default: Ball Motion Workbook in your documents); a number is a lesson",
    )
    command.add_argument("--lesson", "--page", default="", metavar="NUMBER", help=lesson)
    command.add_argument(
        "--no-browser", action="store_true", help="only print the address, to be opened in a browser by hand"
    )


def _place(wanted) -> None:
    """What was typed after `open` or `show`: a lesson's number, or a folder."""
    typed = wanted.folder
    if re.fullmatch(r"\d{1,2}", typed) and not wanted.lesson:  # as `sheets 05` and `pages 05` are typed
        wanted.folder, wanted.lesson = None, typed
        return
    wanted.folder = Path(typed).expanduser()
    if wanted.folder.name == typed and not wanted.folder.exists():  # a slip of the keys should make no folder
        raise ValueError(
            f"There is no folder {typed!r} here; a lesson is a number from 00 to 12, and a new folder of that name is "
            f'made by: {called()} {wanted.command} ".{os.sep}{typed}"'
        )


def main(argv=None) -> int:
    """Run one command; returns the exit code: 0 well, 1 it could not be done, 2 it was typed wrongly."""
    wanted = _parser().parse_args(argv)
    try:
        if getattr(wanted, "folder", None):
            _place(wanted)
        if wanted.command == "open":
            from bowlcore.open_lab import open_lab

            return open_lab(wanted.folder, lesson=wanted.lesson, browser=not wanted.no_browser)
        if wanted.command == "show":
            from bowlcore.show import show

            return show(wanted.folder, lesson=wanted.lesson, browser=not wanted.no_browser)
        if wanted.command == "sheets":
            return sheets_command(wanted)
        if wanted.command == "pages":
            return pages_command(wanted)
        if wanted.command == "doctor":
            from bowlcore.doctor import run_checks

            return run_checks()
    except (OSError, ValueError) as problem:
        said = getattr(problem, "strerror", None)  # the system's own error names no value in words
        print(f"bowlcore: {f'{said}: {problem.filename}' if said else problem}", file=sys.stderr)
        return 1
    print(WELCOME)
    return 0


if __name__ == "__main__":
    sys.exit(main())
