"""Decoding a clip: the frame asked for and no other, upright, in little memory; whatever is no clip is one sentence.

Needs the extra `clip`. The truth is what was drawn or painted before it was written.
"""

import re
import struct
import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest

from bowlcore.coaching import clip_file
from bowlcore.coaching.clip_desk import ClipDesk
from bowlcore.coaching.clip_file import ClipFile
from bowlcore.coaching.clip_write import DEMO_NAME, demo_scene, write_demo_clip, write_mp4

pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("av")]
SIZE = (48, 64)  # high, wide


@pytest.fixture(autouse=True)
def clips(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "clips").mkdir()
    return tmp_path / "clips"


def painted(number):
    """A frame that carries its number: eight blocks, black or white (binary), and a white corner, upper left."""
    picture = np.full((*SIZE, 3), 90, np.uint8)
    for bit in range(8):
        picture[24:40, 8 * bit : 8 * bit + 8] = 255 * (number >> bit & 1)
    picture[:12, :12] = 255
    return picture


def number_of(picture):
    return sum((picture[32, 8 * bit + 4].mean() > 128) << bit for bit in range(8))


def write(path, times, rate=120, key_every=12, codec="libx264", options=None):
    """Painted frames at these times, in 1/600 s as phones count."""
    import av

    with av.open(str(path), "w", format="mp4") as file:
        stream = file.add_stream(codec, rate=rate, options=options or {})
        stream.height, stream.width, stream.pix_fmt, stream.gop_size = *SIZE, "yuv420p", key_every
        stream.time_base = stream.codec_context.time_base = Fraction(1, 600)
        for number, time in enumerate(times):
            frame = av.VideoFrame.from_ndarray(painted(number), format="rgb24")
            frame.pts, frame.time_base = time, Fraction(1, 600)
            file.mux(stream.encode(frame))
        file.mux(stream.encode())
    return path.name


@pytest.mark.parametrize("codec, options", [
    ("libx264", {"bf": "3", "b-adapt": "0"}),  # frames stored out of their order
    ("libx264", {"x264-params": "open-gop=1:bframes=3"}),  # and before their key frame
    ("libx265", {"x265-params": "log-level=none"}),
    ("mpeg4", {}),
])  # fmt: skip
def test_every_frame_in_any_order_is_the_one_asked_for(codec, options, clips, av):
    if codec not in av.codecs_available:
        pytest.skip(f"this build of the library cannot write {codec}")
    clip = ClipFile(write(clips / "a.mp4", range(0, 500, 5), codec=codec, options=options))
    assert clip.count == 100 and clip.size_px == SIZE
    order = [
        0,
        99,
        50,
        49,
        48,
        51,
        *np.random.default_rng(2).integers(0, 100, 60),
        *range(30),
        *range(99, 60, -1),
    ]
    clip._most_held = 5
    assert [number_of(clip.frame(int(number))) for number in order] == order
    assert len(clip._held) <= 5


def test_a_coarse_clock_gives_the_rate_all_the_same(clips):
    # 240 a second in steps of 1/600 s: 2, 3, 2, 3
    clip = ClipFile(write(clips / "a.mp4", [round(2.5 * i + 0.1) for i in range(60)], rate=240))
    assert clip.frames_per_s == pytest.approx(240, rel=0.01) and clip.gaps == ()


def test_a_lost_frame_is_noticed_and_does_not_disturb_the_rate(clips):
    times = [5 * i for i in range(20)] + [5 * i for i in range(22, 40)]
    clip = ClipFile(write(clips / "a.mp4", times))
    assert clip.gaps == (19,) and clip.frames_per_s == pytest.approx(120, rel=0.01) and clip.count == 38


@pytest.mark.parametrize("quarter, matrix, corner", [
    (0, (1, 0, 0, 1), "upper left"), (1, (0, 1, -1, 0), "upper right"),
    (2, (-1, 0, 0, -1), "lower right"), (3, (0, -1, 1, 0), "lower left"),
])  # fmt: skip
def test_a_phone_held_upright_is_shown_upright(quarter, matrix, corner, clips):
    # the matrix {a b u c d v x y w} of the box 'tkhd', ISO 14496-12, 8.3.2: x' = a x + c y, y' = b x + d y (from memory)
    name = write(clips / "a.mp4", range(0, 50, 5))
    data = bytearray((clips / name).read_bytes())
    at = data.index(b"tkhd") + 4 + 4 + 20 + 8 + 8
    a, b, c, d = (value * 0x10000 for value in matrix)
    data[at : at + 36] = struct.pack(">9i", a, b, 0, c, d, 0, 0, 0, 0x40000000)
    (clips / name).write_bytes(data)
    clip = ClipFile(name)
    assert clip.size_px == (SIZE if quarter % 2 == 0 else SIZE[::-1])
    picture = clip.frame(3).mean(axis=2)
    bright = {
        "upper left": picture[:8, :8], "upper right": picture[:8, -8:],
        "lower right": picture[-8:, -8:], "lower left": picture[-8:, :8],
    }  # fmt: skip
    assert max(bright, key=lambda name: bright[name].mean()) == corner


def test_a_minute_at_240_a_second_takes_no_more_memory_than_a_second(clips, av):
    if not Path("/proc/self/status").exists():
        pytest.skip("the highest use of memory is read where Linux says it")
    name, high, wide = "long.mp4", 360, 640
    rng = np.random.default_rng(1)
    second = [np.full((high, wide, 3), 60 + i // 4, np.uint8) for i in range(240)]
    for picture in second:
        picture[100:200, 100:300] = rng.integers(0, 255, (1, 200, 3))
    write_mp4(clips / "second.mp4", second, 240)
    with av.open(str(clips / "second.mp4")) as source, av.open(str(clips / name), "w") as long:
        stream = long.add_stream_from_template(source.streams.video[0])
        packets = [p for p in source.demux(video=0) if p.dts is not None]
        step = packets[1].dts - packets[0].dts
        for again in range(60):  # the same second, sixty times
            for packet in packets:
                copy = av.Packet(bytes(packet))
                copy.pts, copy.dts = (t + again * 240 * step for t in (packet.pts, packet.dts))
                copy.time_base, copy.stream, copy.is_keyframe = packet.time_base, stream, packet.is_keyframe
                long.mux(copy)
    walk = (
        "import re, sys\nfrom bowlcore.coaching.clip_file import ClipFile\n"
        "used = lambda: int(re.search(r'VmHWM:\\s+(\\d+)', open('/proc/self/status').read())[1]) / 1024\n"
        "clip = ClipFile(sys.argv[1]); begun = used()\n"
        "for number in [*range(240), *range(0, clip.count, 997), *range(clip.count - 1, clip.count - 40, -1)]:\n"
        "    clip.frame(number)\n"
        "print(clip.count, clip.frames_per_s, used() - begun)"
    )
    told = [
        subprocess.run(
            [sys.executable, "-c", walk, file], capture_output=True, text=True, check=True
        ).stdout.split()
        for file in ("second.mp4", name)
    ]
    (short, _, a_second), (count, rate, a_minute) = (map(float, one) for one in told)
    assert (short, count) == (240, 14_400) and rate == pytest.approx(240, rel=0.01)
    assert (
        5 < a_second and a_minute < a_second + 30 and a_minute < 250
    )  # MB; all frames together would be 10,000 MB
    print(f"a second {a_second:.0f} MB, a minute {a_minute:.0f} MB above the start")


# -- the demo clip --


def test_the_demo_clip_is_small_says_what_it_is_and_shows_what_was_drawn(clips, av):
    assert write_demo_clip() == DEMO_NAME
    assert (clips / DEMO_NAME).stat().st_size < 1_000_000
    assert [p.name for p in clips.iterdir()] == [DEMO_NAME]
    with av.open(str(clips / DEMO_NAME)) as file:
        assert "made up for teaching" in file.metadata["comment"] and "seed 11" in file.metadata["comment"]
    clip, drawn = ClipFile(DEMO_NAME), demo_scene()
    high, wide = drawn.scene.size_px
    assert clip.count == drawn.scene.frames and clip.frames_per_s == pytest.approx(drawn.scene.frames_per_s)
    for number in (0, 17, 59):
        seen = clip.frame(number)[:high, :wide].astype(float)
        own, other = (np.abs(seen - drawn.frame(k)).mean() for k in (number, (number + 20) % 60))
        assert own < 4 and other > own  # two steps of grain, and what was lost in packing


def test_the_same_seed_gives_the_same_pictures(clips):
    write_demo_clip()
    first = ClipFile(DEMO_NAME).frame(5)
    write_demo_clip()
    assert np.array_equal(ClipFile(DEMO_NAME).frame(5), first)
    write_demo_clip(seed=12)
    assert not np.array_equal(ClipFile(DEMO_NAME).frame(5), first)


def test_the_desk_draws_the_demo_clip_when_it_is_asked_for(clips):
    desk = ClipDesk(DEMO_NAME)
    assert desk.last_frame == 59 and (clips / DEMO_NAME).exists()
    desk.close()


# -- what is no clip --


def refusal(name):
    with pytest.raises(ValueError) as said:
        ClipFile(name)
    assert "\n" not in str(said.value) and str(said.value).endswith(".")
    return str(said.value)


def test_a_text_that_is_called_a_clip(clips):
    (clips / "a.mp4").write_text("a letter\n" * 100)
    assert refusal("a.mp4").startswith(
        "a.mp4 cannot be read: it is broken, or no kind of clip that phones write"
    )


@pytest.mark.parametrize("share", [0.2, 0.6, 0.9])
def test_half_a_clip(share, clips):
    name = write(clips / "a.mp4", range(0, 250, 5))
    data = (clips / name).read_bytes()
    (clips / name).write_bytes(data[: int(share * len(data))])  # what tells the frames stands at the end
    assert re.search("cannot be read|holds no picture that can be read", refusal(name))


def test_a_clip_that_breaks_off_after_its_list_of_frames(clips, av):
    write(clips / "whole.mp4", range(0, 500, 5))
    with av.open(str(clips / "whole.mp4")) as whole:
        with av.open(str(clips / "a.mp4"), "w", options={"movflags": "faststart"}) as file:
            stream = file.add_stream_from_template(whole.streams.video[0])
            for packet in whole.demux(video=0):
                if packet.dts is not None:
                    packet.stream = stream
                    file.mux(packet)
    data = (clips / "a.mp4").read_bytes()
    (clips / "a.mp4").write_bytes(data[: int(0.7 * len(data))])
    clip = ClipFile("a.mp4")
    assert number_of(clip.frame(10)) == 10
    with pytest.raises(ValueError, match="Frame .* of a.mp4 is broken|frame must be between 0 and"):
        clip.frame(99)
    assert number_of(clip.frame(11)) == 11


def test_broken_bytes_in_the_middle_leave_the_rest(clips):
    name = write(clips / "a.mp4", range(0, 500, 5))
    data = bytearray((clips / name).read_bytes())
    start = data.index(b"mdat") + len(data) // 4
    data[start : start + 400] = b"\xff" * 400
    (clips / name).write_bytes(data)
    clip, seen = ClipFile(name), 0
    for number in range(100):
        try:
            seen += number_of(clip.frame(number)) == number
        except ValueError as problem:
            assert f"Frame {number} of a.mp4 is broken" in str(problem)
    assert seen > 50


def test_sound_alone(clips, av):
    with av.open(str(clips / "a.mp4"), "w") as file:
        stream = file.add_stream("aac", rate=44100, layout="mono")
        for start in range(0, 44100, 1024):
            sound = av.AudioFrame.from_ndarray(np.zeros((1, 1024), np.float32), format="fltp", layout="mono")
            sound.rate, sound.pts = 44100, start
            file.mux(stream.encode(sound))
        file.mux(stream.encode())
    assert refusal("a.mp4") == "a.mp4 holds no picture that can be read."


def test_a_single_picture(clips):
    assert "cannot be read" in refusal(write(clips / "a.mp4", [0]))


def test_a_list_of_other_files_is_not_followed(clips):
    write(clips / "whole.mp4", range(0, 50, 5))
    for text in (
        f"#EXTM3U\n#EXTINF:1,\n{clips / 'whole.mp4'}\n#EXT-X-ENDLIST\n",
        "ffconcat version 1.0\nfile whole.mp4\n",
    ):
        (clips / "a.mp4").write_text(text)
        assert "a.mp4 cannot be read" in refusal("a.mp4")


def test_too_wide_and_too_long(clips, monkeypatch):
    name = write(clips / "a.mp4", range(0, 250, 5))
    monkeypatch.setattr(clip_file, "_WIDEST_PX", 60)
    assert refusal(name) == "a.mp4 is 64 by 48 pixels; between 16 and 60 can be opened."
    monkeypatch.setattr(clip_file, "_WIDEST_PX", 4096)
    monkeypatch.setattr(clip_file, "_MOST_FRAMES", 30)
    assert refusal(name) == "a.mp4 has more than 30 frames: cut it on the phone."


def test_names_that_are_no_clip_in_the_folder(clips):
    (clips / "folder.mp4").mkdir()
    assert "folder.mp4 is a folder" in refusal("folder.mp4")
    assert "There is no clip 'gone.mp4'" in refusal("gone.mp4")
    assert "named by its file name alone" in refusal("../a.mp4")


@pytest.mark.parametrize("number", [-1, 50, 1000])
def test_a_frame_that_is_not_there(number, clips):
    clip = ClipFile(write(clips / "a.mp4", range(0, 250, 5)))
    with pytest.raises(ValueError, match=f"frame must be between 0 and 49, got {number}"):
        clip.frame(number)
