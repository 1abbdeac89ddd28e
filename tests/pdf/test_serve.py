"""While serving, a booklet is made when somebody asks for it."""

import threading
from urllib.error import HTTPError
from urllib.request import urlopen
from wsgiref.simple_server import WSGIRequestHandler, make_server

import pytest

from loopleaf.publish.booklet import Assets, BookletsUnavailable
from loopleaf.publish.booklet_serve import booklets_on_request
from loopleaf.publish.booklet_shelf import BookletJob
from tests.pdf.test_shelf import jobs


class Quiet(WSGIRequestHandler):
    def log_message(self, format: str, *args: object):
        pass


def site(environ, start_response):
    start_response("200 OK", [("Content-Type", "text/plain")])
    return [b"the site: " + environ["PATH_INFO"].encode()]


@pytest.fixture
def serve(tmp_path):
    """Serves the application on a free port; gives its address and the list of names asked for."""
    asked: list[str] = []
    known = {job.key: job for job in jobs(1)}
    bad = BookletJob("bad", "US", "a4", '<img src="file:///etc/hostname" alt="x">', Assets())
    known[bad.key] = bad

    def job_for(key: str) -> BookletJob | None:
        asked.append(key)
        return known.get(key)

    server = make_server(
        "127.0.0.1", 0, booklets_on_request(site, job_for, tmp_path / "shelf"), handler_class=Quiet
    )
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}", asked, tmp_path / "shelf"
    server.shutdown()
    thread.join()
    server.server_close()


def test_the_first_request_prints_and_the_second_takes_it_from_the_shelf(serve):
    address, _, shelf = serve
    with urlopen(f"{address}/base/booklets/p0-us-a4.pdf", timeout=60) as answer:
        first = answer.read()
        assert answer.headers["Content-Type"] == "application/pdf"
    assert first.startswith(b"%PDF-1.7")
    (kept,) = shelf.glob("*.pdf")
    written = kept.stat().st_ino
    with urlopen(f"{address}/base/booklets/p0-us-a4.pdf", timeout=60) as answer:
        assert answer.read() == first
    assert kept.stat().st_ino == written


def test_everything_else_goes_to_the_site(serve):
    address, asked, shelf = serve
    for path in ("/us/lantern-pouch/", "/booklets/unknown-us-a4.pdf", "/booklets/p0-us-a4.txt", "/a.pdf"):
        with urlopen(address + path, timeout=60) as answer:
            assert answer.read() == b"the site: " + path.encode()
    assert asked == ["booklets/unknown-us-a4.pdf"]
    assert not shelf.exists()


def test_a_booklet_that_can_not_be_made_answers_with_its_sentence(serve, monkeypatch):
    address, _, _ = serve
    with pytest.raises(HTTPError, match="500") as failed:
        urlopen(f"{address}/booklets/bad-us-a4.pdf", timeout=60)
    assert b"was not printed" in failed.value.read()

    def unavailable(*args: object):
        raise BookletsUnavailable("No booklets were made, because the library Pango is missing.")

    monkeypatch.setattr("loopleaf.publish.booklet_serve.make_booklets", unavailable)
    with pytest.raises(HTTPError, match="503") as failed:
        urlopen(f"{address}/booklets/p0-us-a4.pdf", timeout=60)
    assert b"Pango is missing" in failed.value.read()
