"""How many pixels a picture has, from files made here by the formats' own rules."""

import struct
import zlib
from collections.abc import Callable

import pytest

from loopleaf.publish.terminal import report
from loopleaf.review import check
from loopleaf.review.check import with_pictures_seen
from loopleaf.review.pixels import pixels
from tests.review.frame import framed


def png(wide: int, high: int) -> bytes:
    head = struct.pack(">II", wide, high) + b"\x08\x02\0\0\0"
    crc = struct.pack(">I", zlib.crc32(b"IHDR" + head))
    return b"\x89PNG\r\n\x1a\n" + struct.pack(">I", 13) + b"IHDR" + head + crc


def gif(wide: int, high: int) -> bytes:
    return b"GIF89a" + struct.pack("<HH", wide, high) + b"\0\0\0"


def jpeg(wide: int, high: int, remarks: int = 0) -> bytes:
    remark = b"\xff\xe1" + struct.pack(">H", remarks + 2) + b"x" * remarks if remarks else b""
    frame = b"\xff\xc2" + struct.pack(">HBHHB", 11, 8, high, wide, 1) + b"\1\x11\0"
    tables = b"\xff\xc4" + struct.pack(">H", 4) + b"\xff\xd8"
    return b"\xff\xd8" + remark + tables + frame + b"\xff\xda\0\2"


def webp(form: bytes, body: bytes) -> bytes:
    return b"RIFF\0\0\0\0WEBP" + form + b"\0\0\0\0" + body.ljust(10, b"\0")


@pytest.mark.parametrize(
    ("data", "wanted"),
    [
        (png(640, 480), (640, 480)),
        (gif(640, 480), (640, 480)),
        (jpeg(640, 480), (640, 480)),
        (jpeg(640, 480, remarks=60_000), (640, 480)),
        (webp(b"VP8X", b"\0\0\0\0" + (639).to_bytes(3, "little") + (479).to_bytes(3, "little")), (640, 480)),
        (webp(b"VP8L", b"\x2f" + (639 | 479 << 14).to_bytes(4, "little")), (640, 480)),
        (webp(b"VP8 ", b"\0\0\0\x9d\x01\x2a" + struct.pack("<HH", 640, 480)), (640, 480)),
        (webp(b"ALPH", b""), None),
        (jpeg(640, 480)[:6], None),
        (b"\xff\xd8\xff\xda\0\2", None),
        (b"\xff\xd8\xff\xe1\0\1\xff\xc0", None),
        (png(640, 480)[:20], None),
        (gif(640, 480)[:8], None),
        (b"<svg/>", None),
        (b"", None),
    ],
)
def test_pixels(data: bytes, wanted: tuple[int, int] | None) -> None:
    assert pixels(data) == wanted


PICTURED = (
    "pictures: [{file: cover.png, alt: One.}, {file: more.png, alt: Two.}]\n"
    'rounds: [{round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 8, picture: {file: step.png, '
    "alt: Three.}}]"
)


def coarse(**files: bytes) -> list[tuple[int, str]]:
    checked = check(framed(PICTURED).encode(), "case.yml")
    seen = with_pictures_seen(checked, lambda name: files.get(name.split(".")[0], png(5000, 5000)))
    return [
        (one.location.line, one.working)
        for one in seen.findings
        if one.rule == "picture-too-coarse-for-print"
    ]


def test_pictures_are_held_against_their_printed_width() -> None:
    assert coarse() == []
    assert coarse(more=png(10, 10)) == []  # on the site alone
    assert coarse(cover=gif(0, 0)) == []
    # 300 pixels to the inch (common practice, no source): 170 mm / 25.4 x 300 = 2,008; 46 mm: 543.
    (said,) = coarse(cover=png(800, 400))
    assert said == (7, "It is printed up to 170 mm wide; at 300 pixels to the inch that takes about 2010. "
                    "With 800 there are about 120 to the inch.")  # fmt: skip
    ((_, working),) = coarse(step=png(400, 400))
    assert "up to 46 mm wide" in working
    assert "takes about 540" in working


@pytest.mark.parametrize(
    ("wide", "high", "said"),
    [(1810, 1000, False), (1800, 1000, True), (700, 1370, False), (700, 1350, True)],
)
def test_a_tenth_less_is_let_pass(wide: int, high: int, said: bool) -> None:
    """A wide picture fills 170 mm: 2,010 pixels; a tall one 128 mm high: 1,510 pixels in height."""
    assert bool(coarse(cover=png(wide, high))) is said


def test_words(golden: Callable[[str, str], None]) -> None:
    checked = check(framed(PICTURED).encode(), "case.yml")
    seen = with_pictures_seen(checked, lambda name: png(300, 200))
    seen.findings[:] = [one for one in seen.findings if one.rule == "picture-too-coarse-for-print"]
    golden("picture-too-coarse-for-print.txt", report([seen]))
