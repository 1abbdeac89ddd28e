"""A booklet reads its own shelves and nothing else: no network, no file outside, no way round."""

import socket
from pathlib import Path

import pytest
from PIL import Image

from loopleaf.publish.booklet import Assets, BookletFailed, print_booklet, render
from loopleaf.publish.booklet_fetch import Refused, Shelves


def page(body: str, head: str = "") -> str:
    return f'<html lang="en-US"><head><title>Try</title>{head}</head><body><h1>Try</h1>{body}</body></html>'


@pytest.fixture
def collection(tmp_path: Path) -> Path:
    folder = tmp_path / "patterns"
    (folder / "steps").mkdir(parents=True)
    Image.new("RGB", (30, 20), "#3b6e6a").save(folder / "steps" / "moon.png")
    Image.new("RGB", (30, 20), "#000000").save(tmp_path / "secret.png")
    return folder


@pytest.fixture
def listener():
    """A server on this machine that would be reached if anything asked it; counts who did."""
    with socket.create_server(("127.0.0.1", 0)) as server:
        server.settimeout(0.2)
        yield server


def nobody_came(server: socket.socket) -> bool:
    try:
        server.accept()
    except TimeoutError:
        return True
    return False


def test_a_picture_of_the_collection_is_printed(collection):
    printed = print_booklet(page('<img src="pictures/steps/moon.png" alt="A moon">'), Assets(collection))
    assert printed.remarks == ()
    assert b"/Subtype /Image" in printed.pdf


@pytest.mark.parametrize(
    "body",
    [
        '<img src="{}" alt="x">',
        '<p style="background: url({})">x</p>',
        '<object data="{}" type="image/png">x</object>',
    ],
)
def test_nothing_is_fetched_from_the_network(listener, body):
    address = f"http://127.0.0.1:{listener.getsockname()[1]}/x.png"
    with pytest.raises(BookletFailed, match="was not printed"):
        render(page(body.format(address)), Assets())
    assert nobody_came(listener)


@pytest.mark.parametrize(
    "head",
    [
        '<link rel="stylesheet" href="{}">',
        "<style>@import url({});</style>",
        "<style>@font-face {{ font-family: F; src: url({}) }} body {{ font-family: F }}</style>",
    ],
)
def test_no_style_and_no_font_comes_from_the_network(listener, head):
    address = f"http://127.0.0.1:{listener.getsockname()[1]}/x"
    with pytest.raises(BookletFailed, match="was not printed"):
        render(page("", head.format(address)), Assets())
    assert nobody_came(listener)


def test_a_picture_inside_a_drawing_is_not_fetched_and_is_spoken_of(listener):
    address = f"http://127.0.0.1:{listener.getsockname()[1]}/x.png"
    drawing = (
        "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' "
        "width='9' height='9'>"
        f"<title>x</title><image width='9' height='9' xlink:href='{address}'/></svg>"
    )
    remarks = print_booklet(page(drawing), Assets()).remarks
    assert nobody_came(listener)
    assert len(remarks) == 1
    assert "could not be read" in remarks[0]


@pytest.mark.parametrize(
    "address",
    [
        "pictures/../secret.png",
        "pictures/%2e%2e/secret.png",
        "pictures/steps/../../secret.png",
        "file:///etc/hostname",
        "/etc/hostname",
        "//127.0.0.1/pictures/steps/moon.png",
        "fonts/../booklet/booklet.css",
        "ftp://127.0.0.1/x.png",
    ],
)
def test_a_file_outside_the_shelves_is_refused(collection, address):
    with pytest.raises(BookletFailed, match="was not printed"):
        render(page(f'<img src="{address}" alt="x">'), Assets(collection))


def test_a_link_that_leads_out_of_the_collection_is_refused(collection, tmp_path):
    (collection / "way-out.png").symlink_to(tmp_path / "secret.png")
    with pytest.raises(BookletFailed, match="outside the collection"):
        render(page('<img src="pictures/way-out.png" alt="x">'), Assets(collection))


def test_a_booklet_without_a_collection_shows_no_pictures():
    with pytest.raises(BookletFailed, match=r"“pictures/steps/moon\.png” is outside the collection"):
        render(page('<img src="pictures/steps/moon.png" alt="x">'), Assets())


def test_a_picture_that_is_not_there_is_named(collection):
    with pytest.raises(BookletFailed, match=r"“pictures/steps/sun\.png” can't be read"):
        render(page('<img src="pictures/steps/sun.png" alt="x">'), Assets(collection))


def test_a_file_that_is_no_picture_is_left_out_and_named(collection):
    (collection / "steps" / "torn.png").write_bytes(b"not a picture")
    printed = print_booklet(page('<img src="pictures/steps/torn.png" alt="x">'), Assets(collection))
    assert printed.remarks == (
        "The picture “steps/torn.png” could not be read, and is missing in the booklet.",
    )


def test_where_an_address_leads(collection):
    shelves = Shelves({"pictures": collection})
    assert shelves.locate("file:///pictures/steps/moon.png") == collection.resolve() / "steps" / "moon.png"
    for address in ("file:///pictures/", "file:///steps/moon.png", "file://host/pictures/steps/moon.png"):
        with pytest.raises(Refused):
            shelves.locate(address)


def test_a_sign_that_no_font_holds_is_spoken_of():
    style = '<style>body, h1 { font-family: "Leaflet Serif" }</style>'
    head = f'<link rel="stylesheet" href="fonts/fonts.css">{style}'
    clean = print_booklet(page("<p>½ × 8</p>", head), Assets())
    assert clean.remarks == ()
    odd = print_booklet(page("<p>\ue123</p>", head), Assets())
    assert odd.remarks == (
        "No font of the booklet has the sign “\ue123” (U+E123); it is printed as an empty box.",
    )


def test_a_picture_without_words_is_spoken_of(collection):
    printed = print_booklet(page('<img src="pictures/steps/moon.png">'), Assets(collection))
    assert printed.remarks == (
        "The picture “steps/moon.png” has no words (`alt`) for readers who can't see it.",
    )
