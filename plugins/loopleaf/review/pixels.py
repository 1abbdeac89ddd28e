"""How many pixels a picture has, read from the first bytes of its file.

Sources: the published file formats (PNG, GIF89a, JPEG/JFIF, WebP), from memory.
"""

from collections.abc import Iterator


def pixels(beginning: bytes) -> tuple[int, int] | None:
    """Width and height in pixels; None where the stretch doesn't say, or is no such picture.

    beginning: the file's first bytes. In a JPEG the size stands behind its remarks, which may be long.
    """
    if beginning.startswith(b"\x89PNG\r\n\x1a\n") and len(beginning) >= 24:
        return _big(beginning[16:20]), _big(beginning[20:24])
    if beginning[:6] in (b"GIF87a", b"GIF89a") and len(beginning) >= 10:
        return _little(beginning[6:8]), _little(beginning[8:10])
    if beginning.startswith(b"\xff\xd8"):
        return _of_jpeg(beginning)
    if beginning[:4] == b"RIFF" and beginning[8:12] == b"WEBP" and len(beginning) >= 30:
        return _of_webp(beginning)
    return None


def _big(data: bytes) -> int:
    return int.from_bytes(data, "big")


def _little(data: bytes) -> int:
    return int.from_bytes(data, "little")


def _of_jpeg(data: bytes) -> tuple[int, int] | None:
    for mark, body in _segments(data):
        frame = 0xC0 <= mark <= 0xCF and mark not in (0xC4, 0xC8, 0xCC)
        if frame and len(body) >= 5:
            return _big(body[3:5]), _big(body[1:3])
    return None


def _segments(data: bytes) -> Iterator[tuple[int, bytes]]:
    """A JPEG's segments up to its first scan: the mark and what stands in it."""
    at = 2
    while at + 4 <= len(data) and data[at] == 0xFF:
        mark, length = data[at + 1], _big(data[at + 2 : at + 4])
        if mark == 0xDA or length < 2:
            return
        yield mark, data[at + 4 : at + 2 + length]
        at += 2 + length


def _of_webp(data: bytes) -> tuple[int, int] | None:
    form = data[12:16]
    if form == b"VP8X":
        return _little(data[24:27]) + 1, _little(data[27:30]) + 1
    if form == b"VP8L":
        bits = _little(data[21:25])
        return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    if form == b"VP8 ":
        return _little(data[26:28]) & 0x3FFF, _little(data[28:30]) & 0x3FFF
    return None
