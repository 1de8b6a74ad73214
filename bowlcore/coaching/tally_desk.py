"""Copying a tally in: what stays the same from line to line, and each line kept as it is typed.

The log is opened for each entry and closed again, so any number of pages may copy into it.
"""

from dataclasses import replace
from datetime import date

from bowlcore.coaching.frame_scores import rows_of
from bowlcore.coaching.log_entries import RELEASE_MEANT, Session, Shot, Total, initials
from bowlcore.coaching.log_games import balls_of, games_of
from bowlcore.coaching.log_source import own_file
from bowlcore.coaching.practice_log import PracticeLog
from bowlcore.coaching.tally import read_line
from bowlcore.rack.leave import Leave

LANE_MODES = ("not noted", "left", "right", "changes every turn")
_SHOWN = 5


class Desk:
    """Where a coach copies a tally in.

    Attributes
    ----------
    session : Session
        Today's; the same one is taken up again when the page is opened again.
    bowler : str or None
    usual : dict
        Fields of Shot that stay from line to line: game, line and release meant, trying.
    lane_mode : one of LANE_MODES
    """

    def __init__(self, path=None):
        self._path, self._mine = path, []
        self.session, self.bowler, self.lane_mode = self._take_up(date.today()), None, LANE_MODES[0]
        self.usual = {"game": None, "slide_board": None, "over_board": None, "trying": ""}
        self.usual |= dict.fromkeys(RELEASE_MEANT)

    def enter(self, text, changed=None) -> str:
        """Keep one line of the tally; the sentence that says what was kept.

        Parameters
        ----------
        text : str
            See `tally.read_line`.
        changed : dict, optional
            Fields of `usual` that hold from this line on.

        Raises
        ------
        ValueError
            In one sentence; nothing is kept.
        """
        line = read_line(text)
        if line.bowler and line.bowler != self.bowler:
            self._change_to(line.bowler)
        self.usual |= changed or {}
        if not self.bowler:
            raise ValueError("Whose ball is it? Write the initials first, such as AK:")
        if not line.fields:
            return f"Now {self.bowler} bowls."
        with self._open() as log, log.together():
            session = self._session_in(log)
            shot = Shot(self.bowler, **{"lane": self._lane(log, session), **self.usual, **line.fields})
            key = log.add_shot(session, shot)
        self._mine.append(key)
        return f"Kept: {said(shot)}"

    def take_back(self) -> str:
        """Remove the last row that was kept at this desk; then, one by one, those of this day that lie before it."""
        keys = self._mine or [kept.key for kept in self._today()]
        if not keys:
            return "Nothing was copied in on this day yet."
        with self._open(create=False) as log:
            log.take_back(keys[-1])
        self._mine = keys[:-1]
        return "The last row is taken back."

    def add_total(self, who, game, total) -> str:
        """Keep a score that was added up by hand."""
        entry = Total(who, game, total)
        with self._open() as log, log.together():
            self._mine.append(log.add_total(self._session_in(log), entry))
        return f"Kept: {entry.bowler}, game {entry.game}, {entry.total}."

    def delete_bowler(self, who) -> str:
        """Remove a bowler's rows for good."""
        who = initials(who)
        with self._open(create=False) as log:
            count = log.delete_bowler(who)
        if self.bowler == who:
            self.bowler = None
        return (
            f"{who} is deleted for good, {count} rows. CSV files and sheets that you made before are not reached: "
            "delete these yourself."
        )

    def rows(self) -> list[dict]:
        """The last few lines of today's session, the newest first."""
        return [
            {"who": kept.entry.bowler, "game": kept.entry.game or "practice", "lane": kept.entry.lane or "",
             "what": said(kept.entry).partition(", ")[2], "own words": kept.entry.words}
            for kept in reversed(self._today()[-_SHOWN:])
        ]  # fmt: skip

    def score_rows(self) -> list[dict]:
        """The present game of this bowler as a table of frames; empty while there is none."""
        games = [
            g for g in games_of(self._today()) if (g.bowler, g.number) == (self.bowler, self.usual["game"])
        ]
        return rows_of(balls_of(games[0].shots)) if games else []

    def _take_up(self, day):
        """The last session of a day, or a new one; a file that is no log is spoken of when a row is typed."""
        try:
            with self._open(create=False) as log:
                return [*(s for s in log.sessions().values() if s.day == day), Session(day)][-2:][0]
        except ValueError:
            return Session(day)

    def _today(self):
        if not self._file().exists():
            return []
        with self._open(create=False) as log:
            keys = [key for key, session in log.sessions().items() if session == self.session]
            return [kept for kept in log.shots() if kept.session in keys]

    def _change_to(self, bowler):
        """Take up the line, the game and the trial that this bowler had last in this session."""
        self.bowler = bowler
        theirs = [kept.entry for kept in self._today() if kept.entry.bowler == bowler]
        if theirs:
            self.usual = {name: getattr(theirs[-1], name) for name in self.usual}

    def _lane(self, log, session):
        if self.lane_mode in ("left", "right"):
            return self.lane_mode
        if self.lane_mode == LANE_MODES[0]:
            return None
        last = [k.entry.lane for k in log.shots() if k.session == session and k.entry.bowler == self.bowler]
        return "right" if last and last[-1] == "left" else "left"

    def _session_in(self, log):
        for key, session in log.sessions().items():
            if session == self.session:
                return key
        return log.add_session(self.session)

    def _file(self):
        return self._path or own_file()

    def _open(self, create=True):
        return PracticeLog(self._file(), create)

    def move_to(self, **fields):
        """Change day, place, lanes or note of the session that is copied in."""
        self.session = replace(self.session, **fields)


def said(shot) -> str:
    """A shot in words: "AK, flush, 10 left, made"."""
    parts = [shot.bowler]
    if shot.arrow_board is not None:
        parts.append(f"over {shot.arrow_board:g}")
    parts.append(shot.hit or "hit not seen")
    if shot.standing is None:
        parts.append("pins not noted")
    else:
        parts.append("strike" if not shot.standing else f"{Leave.of(*shot.standing).text} left")
    if shot.standing and shot.second is not None:
        missed = f"second ball took {shot.second}" if shot.second else "missed"
        parts.append("made" if shot.made else missed)
    return ", ".join(parts) + "."
