"""The folder of clips: only plain files of phones inside it, whatever a name says; copied in whole, gone for good."""

import os

import pytest

from bowlcore.coaching import clip_folder
from bowlcore.coaching.clip_folder import Arrival, clip_names, clip_path, remove

pytestmark = pytest.mark.usefixtures("here")


@pytest.fixture
def clips(here):
    folder = here / "clips"
    folder.mkdir()
    (folder / "one.mp4").write_bytes(b"not a clip, but a file")
    return folder


def said(action, *given):
    with pytest.raises(ValueError) as problem:
        action(*given)
    assert "\n" not in str(problem.value)
    return str(problem.value)


def test_looking_makes_no_folder(here):
    assert clip_names() == [] and list(here.iterdir()) == []


def test_only_what_phones_write_is_listed(clips):
    for name in ("b.MOV", "c.m4v", "notes.txt", ".d.mp4.part", "one.mp4.clicks.json"):
        (clips / name).write_bytes(b"x")
    assert clip_names() == ["b.MOV", "c.m4v", "one.mp4"]
    assert clip_path("one.mp4") == clips / "one.mp4"


@pytest.mark.parametrize(
    "name", ["", ".", "..", "../one.mp4", "/etc/passwd", "a/b.mp4", "a\\b.mp4", "a\0.mp4", ".x.mp4", None, 3]
)
def test_a_name_is_a_name_and_no_way(name, clips):
    for action in (clip_path, remove):
        assert "named by its file name alone" in said(action, name)


def test_a_missing_file(clips):
    assert said(clip_path, "two.mp4") == "There is no clip 'two.mp4' in the folder clips of your lessons."
    assert "no clip 'two.mp4'" in said(remove, "two.mp4")


def test_a_folder_is_no_clip(clips):
    (clips / "two.mp4").mkdir()
    assert said(clip_path, "two.mp4") == "two.mp4 is a folder, and a clip is one file."
    assert "nothing was deleted" in said(remove, "two.mp4") and (clips / "two.mp4").is_dir()


def test_a_link_that_leads_away_is_not_followed(here, clips):
    secret = here.parent / "away.mp4"
    secret.write_bytes(b"somebody's")
    (clips / "two.mp4").symlink_to(secret)
    assert "is a link that leads out of the folder clips" in said(clip_path, "two.mp4")
    remove("two.mp4")
    assert secret.read_bytes() == b"somebody's" and not os.path.lexists(clips / "two.mp4")


def test_a_link_to_nothing(clips):
    (clips / "two.mp4").symlink_to(clips / "nothing.mp4")
    assert "There is no clip 'two.mp4'" in said(clip_path, "two.mp4")


def test_empty_and_too_large(clips, monkeypatch):
    (clips / "two.mp4").write_bytes(b"")
    assert said(clip_path, "two.mp4") == "two.mp4 is empty."
    with (clips / "three.mp4").open("wb") as file:
        file.truncate(1_400_000_000)  # takes no room on most disks
    assert "three.mp4 has 1.4 GB, and at most 1 GB can be opened" in said(clip_path, "three.mp4")


def test_another_kind_of_file(clips):
    (clips / "two.avi").write_bytes(b"x")
    assert "must end in .mp4, .mov, .m4v, got 'two.avi'" in said(clip_path, "two.avi")


def test_removing_takes_the_clip_all_its_clicks_and_nothing_else(clips):
    mine = ["one.mp4.clicks.json", "one.mp4.clicks kept.json", "one.mp4.clicks kept (2).json"]
    others = ["one.mp4.clicks.mp4", "one.mp4.clicks.txt", "two.mp4", "two.mp4.clicks.json", "one.mp"]
    for name in mine + others:
        (clips / name).write_bytes(b"x")
    assert remove("one.mp4").startswith("one.mp4 and the clicks on it are deleted for good.")
    assert sorted(p.name for p in clips.iterdir()) == sorted(others)


# -- copying a clip in --


def test_a_clip_comes_in_piece_by_piece_and_has_its_name_when_it_is_whole(here):
    coming = Arrival("IMG_1.MOV", 5)
    assert not coming.add(b"abc") and clip_names() == []
    assert coming.add(b"de") and clip_names() == ["IMG_1.MOV"]
    assert clip_path("IMG_1.MOV").read_bytes() == b"abcde"
    assert [p.name for p in (here / "clips").iterdir()] == ["IMG_1.MOV"]


def test_a_name_that_is_taken_gets_a_number(clips):
    two = [Arrival("one.mp4", 1), Arrival("one.mp4", 1)]
    assert [coming.add(b"x") for coming in two] == [True, True]
    assert clip_names() == ["one (2).mp4", "one (3).mp4", "one.mp4"]
    assert (clips / "one.mp4").read_bytes() == b"not a clip, but a file"


@pytest.mark.parametrize("name, kept", [
    ("../../evil.mp4", "evil.mp4"), ("C:\\films\\a.mp4", "a.mp4"), ("..mp4.mp4", "mp4.mp4"), ("<b>.mp4", "_b_.mp4"),
    ("x" * 300 + ".mp4", "x" * 76 + ".mp4"), ("Zoë 1.mp4", "Zoë 1.mp4"), ("a\0b.mp4", "a_b.mp4"),
])  # fmt: skip
def test_a_hostile_name_stays_in_the_folder(name, kept, here):
    Arrival(name, 1).add(b"x")
    assert clip_names() == [kept] and list((here / "clips").iterdir()) == [here / "clips" / kept]


@pytest.mark.parametrize("name, size, words", [
    ("a.avi", 5, "must end in .mp4, .mov, .m4v, got 'a.avi'"), ("a.mp4", 0, "a.mp4 is empty"), ("a.mp4", -1, "empty"),
    ("a.mp4", None, "empty"), ("a.mp4", 3_000_000_000, "a.mp4 has 3.0 GB"), (None, 5, "got 'None'"),
])  # fmt: skip
def test_what_cannot_come_in_is_refused_before_anything_is_written(name, size, words, here):
    assert words in said(Arrival, name, size) and list(here.iterdir()) == []


def test_more_bytes_than_announced_are_not_kept(here):
    coming = Arrival("a.mp4", 3)
    assert "larger than it said" in said(coming.add, b"abcd")
    assert list((here / "clips").iterdir()) == []


def test_what_a_closed_page_left_behind_is_swept_out(clips):
    left, fresh = clips / ".old.mp4.part", clips / ".new.mp4.part"
    for part in (left, fresh):
        part.write_bytes(b"half a clip")
    os.utime(left, (0, 0))
    Arrival("a.mp4", 1)
    assert not left.exists() and fresh.exists()


def test_the_folder_is_the_one_of_the_lessons(here):
    assert clip_folder.folder() == here / "clips"
