"""bowlcore pages: lessons as files for phones, each a look-up of what the course has computed."""

import argparse
import contextlib
from pathlib import Path

from bowlcore import work_folder
from bowlcore.coaching.lesson_titles import TITLES

_OWN = {  # option: control of the panels, what stands for a value, help
    "speed": ("speed_mph", "MPH", "ball speed of your bowler, in mph"),
    "revs": ("rev_rate_rpm", "RPM", "rev rate"),
    "rotation": ("axis_rotation_deg", "DEGREES", "axis rotation"),
    "tilt": ("axis_tilt_deg", "DEGREES", "axis tilt"),
    "laydown": ("laydown_board", "BOARD", "where the ball is laid down"),
    "target": ("target_board", "BOARD", "target at 15 ft"),
}


def add_pages(commands) -> None:
    """The words that can be typed after `bowlcore pages`."""
    parser = commands.add_parser(
        "pages",
        description="Write lessons as pages for phones, one file each, to give away: they need no internet.",
    )
    parser.add_argument(
        "lessons",
        nargs="*",
        type=_lesson,
        metavar="LESSON",
        help="00 to 12 (default: all of them)",
    )
    for option, (_, what, told) in _OWN.items():
        parser.add_argument(f"--{option}", type=float, metavar=what, help=told)
    parser.add_argument("--pattern", metavar="OIL", help="an oil pattern, or a lane of your own by its name")
    parser.add_argument(
        "--hand", choices=("right", "left"), default="right", help="whose boards (default right)"
    )
    parser.add_argument("--metric", action="store_true", help="metres and km/h on the pages")
    parser.add_argument(
        "--into", type=Path, metavar="FOLDER", help="where to write (default: the folder phone)"
    )


def _lesson(text):
    number = text.zfill(2)
    if number not in TITLES:
        raise argparse.ArgumentTypeError(f"a lesson is a number from 00 to 12, got {text[:40]!r}")
    return number


def pages_command(wanted) -> int:
    """Write what was asked for and say where it lies.

    Raises
    ------
    ValueError, OSError
        In one sentence.
    """
    from bowlcore.coaching.printed import put_beside
    from bowlcore.display.phone_lessons import WITHOUT, lesson_page, not_asked_for, phone_lessons
    from bowlcore.display.phone_page import FOLDER, HOW_TO_GIVE
    from bowlcore.display.pieces import in_trade_words

    folder = work_folder.default_folder()
    place = folder / FOLDER if wanted.into is None else wanted.into.expanduser().absolute()
    for new in [folder, place] if wanted.into is None else [place]:
        work_folder.make(new)
    asked = list(dict.fromkeys(wanted.lessons or TITLES))
    with contextlib.chdir(folder if folder.is_dir() else Path.cwd()):  # lanes of one's own lie there
        own = _own(wanted)
        for lesson in asked:
            if lesson in WITHOUT:
                print(WITHOUT[lesson])
                continue
            print(f"{lesson} {TITLES[lesson]} …", flush=True)
            try:
                page = lesson_page(lesson, wanted.hand, wanted.metric, **own)
            except ValueError as problem:
                raise ValueError(in_trade_words(str(problem))) from None
            [file] = put_beside({_name(lesson): page}, place)
            print(f"  {file.name}  ({len(page.encode()) / 1e6:.1f} MB)", flush=True)
            if unused := not_asked_for(lesson, own) if own else []:
                print(
                    f"  It has no {' and no '.join(map(_option, unused))} to set; there it is as in the lesson."
                )
    if any(lesson in phone_lessons() for lesson in asked):
        print(f"In {place}. {HOW_TO_GIVE}")
    return 0


def _option(control):
    """What was typed for a control: "speed" for "speed_mph"."""
    return next((option for option, (name, *_) in _OWN.items() if name == control), control)


def _own(wanted):
    """What was typed about a bowler and a lane, by the controls' names."""
    typed = {control: getattr(wanted, option) for option, (control, *_) in _OWN.items()}
    return {
        name: value
        for name, value in (typed | {"pattern": _pattern(wanted.pattern)}).items()
        if value is not None
    }


def _pattern(text):
    from bowlcore.coaching.own_lanes import MARK, own_names
    from bowlcore.motion.oil import pattern_names

    shapes, own = pattern_names(), own_names()
    if text is None or text in shapes or text in own:
        return text
    if f"{MARK}{text}" in own:
        return f"{MARK}{text}"
    raise ValueError(f"pattern must be one of {', '.join([*shapes, *own])}, got {text[:40]!r}")


def _name(lesson):
    return f"{lesson}_{TITLES[lesson].lower().replace(', ', '_').replace(' ', '_')}"
