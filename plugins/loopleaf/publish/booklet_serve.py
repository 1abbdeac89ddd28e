"""Booklets while serving: made when a reader asks for one, not at every save.

A thin layer before the server's own WSGI application; it knows the addresses of booklets and passes on the
rest.
"""

from collections.abc import Callable, Iterable
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

from .booklet import BookletsUnavailable
from .booklet_shelf import BookletJob, make_booklets

if TYPE_CHECKING:
    from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

JobFor = Callable[[str], BookletJob | None]
"""A booklet's path in the site (`booklets/lantern-pouch-us-a4.pdf`) -> its job; None where there is none."""


def booklets_on_request(site: "WSGIApplication", job_for: JobFor, cache: Path) -> "WSGIApplication":
    """The application with booklets: `…/booklets/NAME.pdf` is printed when first asked for, then kept."""
    printing = Lock()  # requests come on threads, and WeasyPrint's font maps aren't made for sharing

    def answer(environ: "WSGIEnvironment", start_response: "StartResponse") -> Iterable[bytes]:
        path = environ.get("PATH_INFO", "")
        name = path.rpartition("/booklets/")[2]
        asked = path.endswith(".pdf") and "/booklets/" in path and "/" not in name
        job = job_for(f"booklets/{name}") if asked else None
        if job is None:
            return site(environ, start_response)
        try:
            with printing:
                made = make_booklets([job], cache)
        except BookletsUnavailable as unavailable:
            return _sentence(start_response, "503 Service Unavailable", str(unavailable))
        if made.failures:
            return _sentence(start_response, "500 Internal Server Error", made.failures[0].text)
        pdf = made.paths[job.key].read_bytes()
        headers = [
            ("Content-Type", "application/pdf"),
            ("Content-Length", str(len(pdf))),
            ("Cache-Control", "no-cache"),
        ]
        start_response("200 OK", headers)
        return [pdf]

    return answer


def _sentence(start_response: "StartResponse", status: str, text: str) -> list[bytes]:
    body = f"{text}\n".encode()
    start_response(
        status, [("Content-Type", "text/plain; charset=utf-8"), ("Content-Length", str(len(body)))]
    )
    return [body]
