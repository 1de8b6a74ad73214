"""A small log for the tests of the practice log."""

from bowlcore.coaching.log_entries import Session, Shot
from bowlcore.coaching.practice_log import PracticeLog

TODAY = Session("2026-03-05", "our centre", 7, 8, "a note")
SHOT = Shot(
    "AK", (4, 7), 1, "high", "left", 22, 13, 12.5, "eyes on the arrow", "tugged it", 2, 16.5, 280, 45, 12.5
)


def filled(path, count=3):
    with PracticeLog(path) as log:
        session = log.add_session(TODAY)
        for _ in range(count):
            log.add_shot(session, SHOT)
    return session
