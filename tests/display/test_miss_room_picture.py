"""The picture of the area draws what the answer holds."""

from pytest import approx

from bowlcore.coaching.area import answer
from bowlcore.coaching.path_lab import ball_of, lane_of
from bowlcore.display.miss_room import _FanPicture, _moving, miss_room_panel
from bowlcore.display.picture import new_figure
from bowlcore.motion.release import Release
from bowlcore.motion.units import TARGET_FT

LINE = Release(17, 300, 45, 13, 17, 13)


def fans(**changed):
    return answer(
        LINE,
        [("house shape", lane_of("house")), ("flat shape", lane_of("flat"))],
        ball_of("benchmark"),
        **changed,
    ).fans


def test_the_green_bar_holds_the_targets_that_hit():
    miss_room_panel()
    for lane, fan in zip(_moving().lanes, fans(), strict=True):
        room, target = fan.room.target_board, fan.release.target_board
        feet, boards = lane.bar.get_data()
        assert list(feet) == [TARGET_FT] * 2
        assert list(boards) == approx([target - room.down, target + room.up])
    house, flat = (lane.bar.get_data()[1] for lane in _moving().lanes)
    assert house[1] - house[0] > 2 * (flat[1] - flat[0])


def test_three_paths_and_none_where_nothing_is_missed():
    picture = _FanPicture(new_figure(8, 3), (0.1, 0.1, 0.8, 0.8), "black")
    fan = fans(missed_boards=2)[0]
    picture.show(fan, 2)
    assert [line.get_ydata()[-1] for line in picture.missed] == approx(
        [fan.missed_out.entry_board, fan.missed_in.entry_board]
    )
    assert "dashes" in picture.title.get_text() and picture.ends[0].get_text().startswith("in ")
    picture.show(fans(missed_boards=0)[0], 0)
    assert (
        not any(len(line.get_ydata()) for line in picture.missed) and "dashes" not in picture.title.get_text()
    )


def test_a_laydown_without_any_line_leaves_the_lane_empty():
    panel = miss_room_panel(rev_rate_rpm=600, axis_rotation_deg=90, speed_mph=8, laydown_board=39)
    assert "House shape: from this laydown no target brings the ball to the pocket." in panel.sentence
    assert panel._drawn.rows[0]["upper lane: house shape"] == "no target found"
    assert len(_moving().lanes[0].aimed.get_ydata()) == 0
    panel.set(speed_mph=17, laydown_board=17, rev_rate_rpm=300, axis_rotation_deg=45)
    assert panel.sentence == miss_room_panel().sentence
