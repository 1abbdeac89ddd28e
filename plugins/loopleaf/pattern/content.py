"""What a pattern's texts may hold: plain words, pictures beside the file, addresses that are safe to open."""

import posixpath
import re
from collections.abc import Iterator
from pathlib import PurePosixPath

from .finding import Suggestion
from .limits import LONGEST_TEXT
from .nodes import Flaw, Node
from .scalars import offsets

PICTURE_ENDINGS = (".jpg", ".jpeg", ".png", ".webp", ".gif")
"""Endings of picture files. No SVG: it can hold programs."""

_MARKUP = re.compile(
    r"</?[A-Za-z][^<>]*>|<[A-Za-z][A-Za-z0-9]*(?=[\s/]|$)[^<>]*|<!--.*?(?:-->|$)|<[!?][A-Za-z\[][^<>]*>?"
    r"|&(?:[A-Za-z]{2,8}|#\d{1,7}|#x[0-9a-fA-F]{1,6});",
    re.S,
)
_UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
_MAIL = re.compile(r"^[\w.+-]+@[\w-]+(?:\.[\w-]+)+$")
_WEB = re.compile(r"^https?://[\w-]+(?:\.[\w-]+)*(?::\d+)?(?:[/?#][^\s<>\"'`\\]*)?$", re.I)


def content_flaws(root: Node, text: str) -> list[Flaw]:
    """Markup, paths, links and overlong texts anywhere in the file; each value is looked at once."""
    flaws: list[Flaw] = []
    seen: set[int] = set()
    for name, above, node in _texts(root, "", ""):
        if id(node) in seen:
            continue
        seen.add(id(node))
        flaws += _markup(node, text)
        flaws += _unprintable(node, text)
        if len(node.text) > LONGEST_TEXT:
            flaws.append(_too_long(node))
        if name in ("picture", "pictures") or (name == "file" and above in ("picture", "pictures")):
            flaws += _picture(node)
        if name == "contact" or (name == "url" and above == "video") or (name == "video" and not above):
            flaws += _link(node, mail=name == "contact")
    return flaws


def _texts(node: Node, name: str, above: str) -> Iterator[tuple[str, str, Node]]:
    """Every text with the field it stands under and the field above that; field names too, under ""."""
    if node.kind == "text":
        yield name, above, node
    elif node.kind == "list":
        for item in node.items:
            yield from _texts(item, name, above)
    else:
        for key, value in node.fields:
            if key.kind == "text":
                yield "", "", key
            yield from _texts(value, key.text, name)


def _span(node: Node, text: str, start: int, end: int) -> tuple[int, int]:
    places = offsets(text, node)
    if places is None or end < 1:
        return node.start, node.end
    return places[start], places[end - 1] + 1 if text[places[end - 1]] == node.text[end - 1] else places[end]


def _markup(node: Node, text: str) -> list[Flaw]:
    found = list(_MARKUP.finditer(node.text))
    if not found:
        return []
    start, end = _span(node, text, found[0].start(), found[-1].end())
    without = _MARKUP.sub("", node.text[found[0].start() : found[-1].end()])
    first = " ".join(found[0][0].split())
    shown = first if len(first) <= 40 else f"{first[:37]}…"
    clean = not re.search(r"[\"'\\\n]", without)
    return [
        Flaw(
            "markup-in-text",
            start,
            end,
            f"`{shown}` is HTML, and this text is printed as it stands.",
            "Pages and booklets have a design of their own; the texts of a pattern are plain words.",
            Suggestion(
                "Take out the markup and leave the words.",
                without if clean else None,
                "likely" if clean else "fill-in",
            ),
            harmless=True,
        )
    ]


def _unprintable(node: Node, text: str) -> list[Flaw]:
    """Signs that no page can print, which an escape (`"\\x07"`) can bring in."""
    found = _UNPRINTABLE.search(node.text)
    if not found:
        return []
    start, end = _span(node, text, found.start(), found.end())
    return [
        Flaw(
            "not-yaml",
            start,
            end,
            f"This text holds a sign that can't be printed (U+{ord(found[0]):04X}).",
            "Pages and booklets can only hold signs that print.",
            Suggestion("Take it out.", "", "safe"),
        )
    ]


def _too_long(node: Node) -> Flaw:
    return Flaw(
        "too-large",
        node.start,
        node.end,
        f"This text is {len(node.text):,} characters long.",
        f"The limit for one text is {LONGEST_TEXT:,} characters: more than a printed leaflet holds.",
        Suggestion("Shorten it, or share it out.", None, "fill-in"),
        harmless=True,
    )


def leaves_the_folder(file: str) -> bool:
    """Whether a picture's path leads out of the folder that the pattern stands in, on any system."""
    path = file.replace("\\", "/")
    if (
        path.startswith(("/", "~"))
        or re.match(r"^[A-Za-z][A-Za-z0-9+.-]*:", path)
        or "\0" in path
        or "%" in path
    ):
        return True
    return posixpath.normpath(path).split("/")[0] == ".."


def _picture(node: Node) -> list[Flaw]:
    file = node.text.strip()
    if leaves_the_folder(file):
        name = PurePosixPath(file.replace("\\", "/")).name
        beside = name if name not in ("", "..") and re.fullmatch(r"[\w][\w .-]*", name) else None
        return [
            Flaw(
                "path-leaves-collection",
                node.start,
                node.end,
                f"`{file[:80]}` isn't beside this pattern.",
                "A pattern's pictures stand in its own folder or in a folder below it, "
                "so that it can be moved and shared whole.",
                Suggestion(
                    "Put the picture beside the pattern and give its name alone.",
                    beside,
                    "likely" if beside else "fill-in",
                ),
                harmless=True,
            )
        ]
    if not file.lower().endswith(PICTURE_ENDINGS):
        endings = f"{', '.join(PICTURE_ENDINGS[:-1])} or {PICTURE_ENDINGS[-1]}"
        return [
            Flaw(
                "not-a-picture",
                node.start,
                node.end,
                f"`{file[:80]}` isn't the name of a picture.",
                f"A picture's file name ends in {endings}.",
                Suggestion("Save it as one of these and give that name.", None, "fill-in"),
                harmless=True,
            )
        ]
    return []


def is_picture(data: bytes) -> bool:
    """Whether a file's first bytes (12 will do) are those of a JPEG, PNG, WebP or GIF, whatever its name."""
    return data.startswith((b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"GIF87a", b"GIF89a")) or (
        data[:4] == b"RIFF" and data[8:12] == b"WEBP"
    )


def _link(node: Node, mail: bool) -> list[Flaw]:
    address = node.text.strip()
    if _WEB.match(address) or (mail and _MAIL.match(address)):
        return []
    bare = re.fullmatch(r"[\w-]+(?:\.[\w-]+)+(?:/\S*)?", address) is not None
    also = ", or an e-mail address" if mail else ""
    return [
        Flaw(
            "link-not-http",
            node.start,
            node.end,
            f"`{address[:80]}` isn't an address that a reader can open safely.",
            f"A link in a pattern is an address that begins with https:// or http://{also}.",
            Suggestion(
                f"Write the whole address, from https:// on{also}.",
                f'"https://{address}"' if bare else None,
                "likely" if bare else "fill-in",
            ),
            harmless=True,
        )
    ]
