"""The command line: bowlcore open, show, sheets, pages, doctor. Errors are one sentence; nothing heavy is loaded here."""

import argparse
import sys
from pathlib import Path

from bowlcore import __version__
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


class _Parser(argparse.ArgumentParser):
    def error(self, message):
        message = message.removeprefix("argument COMMAND: ")
        self.exit(2, f"bowlcore: {message}; type bowlcore --help to see what it can do\n")


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
    _add_place(opening)
    opening.add_argument(
        "--page", default="", metavar="NUMBER", help="the lesson to open, for example 04 (default: the first)"
    )

    showing = commands.add_parser(
        "show", description="Show the lessons to a group: large, without code, each running by itself."
    )
    _add_place(showing)
    showing.add_argument(
        "--lesson", default="", metavar="NUMBER", help="the lesson to begin with (default: the contents)"
    )

    add_sheets(commands)
    add_pages(commands)
    commands.add_parser("doctor", description="Check the installation, one line for each thing.")
    return parser


def _add_place(command) -> None:
    """What `open` and `show` are both told."""
    command.add_argument(
        "folder",
        nargs="?",
        type=Path,
        metavar="FOLDER",
        help="where your own copies are kept (default: Ball Motion Workbook in your documents)",
    )
    command.add_argument(
        "--no-browser", action="store_true", help="only print the address, to be opened in a browser by hand"
    )


def main(argv=None) -> int:
    """Run one command; returns the exit code: 0 well, 1 it could not be done, 2 it was typed wrongly."""
    wanted = _parser().parse_args(argv)
    try:
        if wanted.command == "open":
            from bowlcore.open_lab import open_lab

            return open_lab(wanted.folder, page=wanted.page, browser=not wanted.no_browser)
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
