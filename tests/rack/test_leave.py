"""Leaves as text, mask, mirror, and the rule for splits."""

import pytest

from bowlcore.rack.leave import ALL_PINS, Leave


def test_every_mask_comes_back_from_its_text():
    for mask in range(1024):
        leave = Leave(mask)
        assert Leave.from_text(leave.text) == leave
        assert Leave.of(*leave.pins) == leave
        assert leave.pinfall + len(leave.pins) == 10


def test_mirror_twice_is_the_same_leave():
    for mask in range(1024):
        assert Leave(mask).mirror.mirror == Leave(mask)
    assert Leave.of(4, 7).mirror.text == "6-10"
    assert Leave.of(2, 8).mirror.text == "3-9"
    assert Leave.of(1, 5).mirror == Leave.of(1, 5)


def test_a_split_stays_a_split_in_the_mirror():
    assert all(Leave(mask).is_split == Leave(mask).mirror.is_split for mask in range(1024))


@pytest.mark.claim(
    "What counts as a split is the customary list of splits",
    against="customary list, from memory",
    kind="practice",
)
@pytest.mark.parametrize(
    "text",
    [
        "7-10",
        "4-6",
        "4-6-7-10",
        "3-10",
        "2-7",
        "5-6",
        "4-5",
        "7-9",
        "8-10",
        "5-7",
        "5-10",
        "4-7-10",
        "7-8",
        "2-3",
        "6-7-10",
    ],
)
def test_splits(text):  # customary list of splits, from memory; the rule is in Leave.is_split
    assert Leave.from_text(text).is_split


@pytest.mark.parametrize(
    "text", ["", "10", "7", "2-8", "4-7", "6-10", "2-4-5-8", "3-6", "3-6-10", "1-7-10", "5-8", "6-9"]
)
def test_no_splits(text):  # one pin, neighbours, one behind the other, or the head pin stands
    assert not Leave.from_text(text).is_split


def test_strike_and_pins():
    assert Leave().is_strike and str(Leave()) == "strike" and Leave().pinfall == 10
    assert Leave.of(*ALL_PINS).pinfall == 0


@pytest.mark.parametrize(
    "make",
    [
        lambda: Leave(1024),
        lambda: Leave(-1),
        lambda: Leave.of(11),
        lambda: Leave.of(0),
        lambda: Leave.from_text("4-seven"),
        lambda: Leave(True),
        lambda: Leave(1.5),
    ],
)
def test_bad_leaves_are_refused_in_words(make):
    with pytest.raises(ValueError, match="got"):
        make()
