"""bowlcore sheets: worksheets with answers, the card, ten minutes before league, a tally, a note for parents, as files."""

from pathlib import Path

from bowlcore import work_folder

LESSONS = tuple(f"{number:02d}" for number in range(11))
OTHERS = ("card", "before", "tally", "parents")
LEVELS = {
    "8": "8-9",
    "8-9": "8-9",
    "10": "from 10",
    "from 10": "from 10",
    "14": "from 14",
    "from 14": "from 14",
}


def add_sheets(commands) -> None:
    """The words that can be typed after `bowlcore sheets`."""
    parser = commands.add_parser(
        "sheets",
        description="Write pages to print: worksheets of a lesson with their answers, or something else for the lanes.",
    )
    parser.add_argument(
        "what",
        type=lambda text: text.zfill(2) if text.isdecimal() else text,
        choices=(*LESSONS, *OTHERS),
        metavar="WHAT",
        help="a lesson, 00 to 10; or card, before (ten minutes before league), tally, parents (a note)",
    )
    parser.add_argument(
        "--people", type=int, metavar="N", help="how many sheets, 1 to 60 (default 8, or one for each name)"
    )
    parser.add_argument(
        "--level",
        choices=LEVELS,
        default="10",
        metavar="AGE",
        help="8-9, 10 or 14 (default 10): from which age",
    )
    parser.add_argument("--seed", type=int, default=1, metavar="S", help="same seed, same sheets (default 1)")
    parser.add_argument(
        "--hand", choices=("right", "left"), default="right", help="whose boards (default right)"
    )
    parser.add_argument(
        "--names", default="", metavar='"AK, BL"', help="names to print on the pages; kept nowhere"
    )
    parser.add_argument("--size", choices=("A4", "Letter"), default="A4", help="paper (default A4)")
    parser.add_argument("--large", action="store_true", help="large print, 16 point")
    parser.add_argument(
        "--out", type=Path, metavar="FILE", help="file to write, .html or .pdf (default: the folder printed)"
    )
    parser.add_argument(
        "--lesson", choices=LESSONS, default="00", metavar="NUMBER", help="for parents: what was done"
    )
    parser.add_argument(
        "--bowler",
        default="league one-hander",
        metavar="NAME",
        help="for card and before: an invented bowler",
    )
    parser.add_argument("--lane", default="house", metavar="OIL", help="for card and before: the oil pattern")
    parser.add_argument("--right-lane", metavar="OIL", help="the same of the right lane of a pair")


def sheets_command(wanted) -> int:
    """Write what was asked for and say where it lies.

    Raises
    ------
    ValueError, OSError
        In one sentence.
    """
    from bowlcore.coaching.printed import FOLDER, put, put_as
    from bowlcore.coaching.typed_names import read_names

    names = read_names(wanted.names)
    people = wanted.people if wanted.people is not None else len(names) or 8
    if people < len(names):
        raise ValueError(f"people must be at least as many as the names, {len(names)}, got {people}")
    pages = _pages(wanted, people, names)
    if wanted.out is not None:
        out = wanted.out.expanduser()
        print(put_as({out.with_stem(f"{out.stem}{part}"): text for part, text in pages.items()}))
        return 0
    folder = work_folder.default_folder()
    work_folder.make(folder)
    stem = f"sheets_{wanted.what}" if wanted.what in LESSONS else wanted.what
    print(put({f"{stem}{part}": text for part, text in pages.items()}, folder))
    print(f"  {folder / FOLDER}")
    return 0


def _pages(wanted, people, names):
    """End of the file name: page."""
    paper = {"size": wanted.size, "large": wanted.large}
    if wanted.what in LESSONS:
        from bowlcore.display.sheet_pages import sheets

        made = sheets(
            wanted.what, people, LEVELS[wanted.level], wanted.seed, hand=wanted.hand, names=names, **paper
        )
        return dict(zip(("", "_coach"), made, strict=True))
    if wanted.what == "parents":
        from bowlcore.display.handouts import parents_page

        return {"": parents_page(wanted.lesson, people, names, **paper)}
    if wanted.what == "tally":
        from bowlcore.display.tally_sheet import tally_html

        return {"": tally_html(names[0] if names else "", wanted.size, wanted.large)}
    return {"": _for_a_bowler(wanted, names[0] if names else "", paper)}


def _for_a_bowler(wanted, name, paper):
    from bowlcore.coaching.bowler import load_bowlers
    from bowlcore.coaching.bowler_card import bowler_card
    from bowlcore.coaching.path_lab import lane_of
    from bowlcore.display.bowler_card_page import card_page
    from bowlcore.display.handouts import before_league_page
    from bowlcore.motion.oil import pattern_names

    bowlers, shapes = load_bowlers(), pattern_names()
    for said, value, allowed in (
        ("bowler", wanted.bowler, bowlers),
        ("lane", wanted.lane, shapes),
        ("right lane", wanted.right_lane or wanted.lane, shapes),
    ):
        if value not in allowed:
            raise ValueError(f"{said} must be one of {', '.join(allowed)}, got {value[:40]!r}")
    lanes = {"": lane_of(wanted.lane)}
    if wanted.right_lane:
        lanes = {"left": lane_of(wanted.lane), "right": lane_of(wanted.right_lane)}
    bowler = bowlers[wanted.bowler]
    if wanted.what == "before":
        return before_league_page(bowler, lanes, name, **paper)
    about = "; ".join(
        f"{side or 'oil'}: {shape.replace('_', ' ')}"
        for side, shape in zip(lanes, (wanted.lane, wanted.right_lane), strict=False)
    )
    return card_page(bowler_card(bowler, lanes if wanted.right_lane else lanes[""]), name, about, **paper)
