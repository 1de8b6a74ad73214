"""The lessons by number, as they are called everywhere."""

TITLES = {
    "00": "Start here",
    "01": "What leaves the hand",
    "02": "Skid, hook, roll",
    "03": "Oil on the lane",
    "04": "Shape the path",
    "05": "Into the pocket",
    "06": "Read the reaction",
    "07": "A lane that changes",
    "08": "Spares",
    "09": "Measure a release",
    "10": "Keep a log",
    "11": "Run a clinic",
    "12": "Rules of thumb",
}


def numbered(lesson: str) -> str:
    """Number and title, as '04 Shape the path'."""
    return f"{lesson} {TITLES[lesson]}"
