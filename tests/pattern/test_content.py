from collections.abc import Callable

import pytest

from loopleaf.pattern import Finding, Source, is_picture, leaves_the_folder

Read = Callable[[str], Source]
Change = Callable[[str, str], str]
Marked = Callable[[str, Finding], str]


@pytest.mark.parametrize(
    ("value", "mark"),
    [
        ("<script>alert(1)</script>Pouch", "<script>alert(1)</script>"),
        ("A <b>soft</b> pouch", "<b>soft</b>"),
        ("A pouch <img src=x onerror=alert(1)", "<img src=x onerror=alert(1)"),
        ("<!-- hidden --> pouch", "<!-- hidden -->"),
        ("Tea &amp; cake &#60;", "&amp; cake &#60;"),
        ("'It''s <i>here</i>'", "<i>here</i>"),
        ("<svg/onload=x>", "<svg/onload=x>"),
        ("<![CDATA[x]]>", "<![CDATA[x]]>"),
    ],
)
def test_markup(value: str, mark: str, changed: Change, read: Read, marked: Marked) -> None:
    text = changed("title: Lantern pouch", f"title: {value}")
    (said,) = read(text).findings
    assert said.rule == "markup-in-text"
    assert marked(text, said) == mark
    assert said.suggestion is not None
    assert said.suggestion.replacement is not None
    assert "<" not in said.suggestion.replacement


@pytest.mark.parametrize(
    "value", ["5 < 6 and 7 > 6", "I <3 yarn", "Salt & pepper; both", "x<y", "a -> b", "R&D"]
)
def test_signs_that_are_no_markup(value: str, changed: Change, read: Read) -> None:
    source = read(changed("title: Lantern pouch", f"title: {value}"))
    assert [one.rule for one in source.findings] in ([], ["markup-in-text"] if value == "x<y" else [])
    assert source.pattern is not None


def test_markup_in_names_and_notes(changed: Change, read: Read, marked: Marked) -> None:
    text = changed("note: Quiet.", 'note: "<em>Quiet</em>."')
    text = text.replace("    B: {", '    "<B>": {')
    found = read(text).findings
    assert [(one.rule, marked(text, one)) for one in found] == [
        ("markup-in-text", "<B>"),
        ("markup-in-text", "<em>Quiet</em>"),
    ]


def test_with_markup_the_rounds_are_still_worked(changed: Change, read: Read) -> None:
    assert read(changed("title: Lantern pouch", "title: <b>Pouch</b>")).pattern is not None


@pytest.mark.parametrize(
    "file",
    [
        "../x.jpg", "../../etc/passwd", "a/../../x.png", "/etc/x.png", "C:\\x.png", "..\\x.png", "https://example.org/x.png",
        "file:///x.png", "~/x.png", "a/%2e%2e/%2e%2e/x.png", "//host/x.png", "..",
    ],
)  # fmt: skip
def test_paths_that_leave(file: str, changed: Change, read: Read, marked: Marked) -> None:
    assert leaves_the_folder(file)
    text = changed("tags:", f"pictures: [{{file: '{file}'}}]\ntags:")
    (said,) = read(text).findings
    assert (said.rule, marked(text, said)) == ("path-leaves-collection", f"'{file}'")


@pytest.mark.parametrize("file", ["x.jpg", "pictures/x.png", "a/../x.webp", "./x.gif", "..x.jpg", "a b.JPEG"])
def test_paths_that_stay(file: str, changed: Change, read: Read) -> None:
    assert not leaves_the_folder(file)
    assert read(changed("tags:", f"pictures: {file}\ntags:")).findings == []


@pytest.mark.parametrize("file", ["x.exe", "x.svg", "x", "x.jpg.html"])
def test_not_a_picture(file: str, changed: Change, read: Read, marked: Marked) -> None:
    text = changed("note: Quiet.", f"picture: {file}")
    (said,) = read(text).findings
    assert (said.rule, marked(text, said)) == ("not-a-picture", file)


def test_pictures_by_their_first_bytes() -> None:
    """First bytes as published: PNG (W3C), JPEG (ISO 10918), GIF89a, WebP container."""
    assert is_picture(b"\x89PNG\r\n\x1a\n....")
    assert is_picture(b"\xff\xd8\xff\xe0")
    assert is_picture(b"GIF89a")
    assert is_picture(b"RIFF\x00\x00\x00\x00WEBP")
    assert not is_picture(b"<svg xmlns=")
    assert not is_picture(b"RIFF\x00\x00\x00\x00WAVE")
    assert not is_picture(b"")


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "data:text/html,x",
        "ftp://example.org",
        "example.org",
        "https://",
        "https://a b",
        "http:x",
    ],
)
def test_links_that_are_not_safe(address: str, changed: Change, read: Read, marked: Marked) -> None:
    for old in (
        "contact: https://example.org/help",
        'video: {url: "https://example.org/lantern-pouch", length: "12:30"}',
    ):
        field = old.split(":")[0]
        text = changed(old, f'{field}: "{address}"')
        (said,) = read(text).findings
        assert (said.rule, marked(text, said)) == ("link-not-http", f'"{address}"')


@pytest.mark.parametrize(
    "address", ["https://example.org", "http://example.org:80/a?b=c#d", "me@example.org"]
)
def test_links_that_are(address: str, changed: Change, read: Read) -> None:
    assert read(changed("contact: https://example.org/help", f"contact: {address}")).findings == []


def test_a_bare_address_is_made_whole(
    changed: Change, read: Read, mended: Callable[[str, Finding], str]
) -> None:
    text = changed("contact: https://example.org/help", "contact: example.org/help")
    (said,) = read(text).findings
    assert read(mended(text, said)).findings == []


def test_only_contact_may_be_an_e_mail_address(changed: Change, read: Read) -> None:
    text = changed('"https://example.org/lantern-pouch"', "me@example.org")
    assert [one.rule for one in read(text).findings] == ["link-not-http"]


def test_unprintable_signs_by_escape(changed: Change, read: Read, marked: Marked) -> None:
    text = changed("title: Lantern pouch", 'title: "Lan\\x07tern"')
    (said,) = read(text).findings
    assert (said.rule, marked(text, said)) == ("not-yaml", "\\x07")
    assert read(changed("title: Lantern pouch", 'title: "Lan\\ttern"')).findings == []


def test_overlong_texts(changed: Change, read: Read) -> None:
    assert [one.rule for one in read(changed("Quiet.", "x" * 20_001)).findings] == ["too-large"]
    assert read(changed("Quiet.", "x" * 20_000)).findings == []
