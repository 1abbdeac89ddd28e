"""Makes the README's pictures anew from site/: `make pictures`."""

import functools
import io
import runpy
import subprocess
import threading
from collections.abc import Sequence
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

ROOT = Path(__file__).resolve().parent.parent
PICTURES = ROOT / ".pictures"
TABLE = (226, 220, 206)  # what the booklet's pages lie on
GAP = 24


def keep(picture: Image.Image, name: str) -> None:
    """A small PNG: the pages have few colours."""
    picture.convert("RGB").quantize(192, dither=Image.Dither.NONE).save(PICTURES / name, optimize=True)


def pages(address: str) -> None:
    """The shelf at desk width, and rounds on a phone in both schemes side by side."""
    with sync_playwright() as playwright:
        program = runpy.run_path(str(ROOT / ".setup" / "needs.py"))["chromium"]()
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        desk = browser.new_page(viewport={"width": 1280, "height": 740})
        desk.goto(address)
        keep(Image.open(io.BytesIO(desk.screenshot())), "shelf.png")
        phones = []
        for terms in ("us", "uk"):
            phone = browser.new_page(viewport={"width": 390, "height": 640})
            phone.emulate_media(color_scheme="light" if terms == "us" else "dark")
            phone.goto(f"{address}{terms}/lantern-pouch/#pouch-3")
            phone.wait_for_timeout(300)
            phones.append(Image.open(io.BytesIO(phone.screenshot())))
        keep(side_by_side(phones), "rounds.png")
        browser.close()


def booklet(file: Path) -> None:
    """The cover and a page of rounds: the one that ends the base."""
    text = subprocess.run(["pdftotext", str(file), "-"], check=True, capture_output=True, text=True).stdout
    base = next(at for at, page in enumerate(text.split("\f"), start=1) if "The base is now" in page)
    pictures = []
    for page in ("1", str(base)):
        command = ["pdftoppm", "-r", "55", "-png", "-f", page, "-l", page, str(file)]
        printed = subprocess.run(command, check=True, capture_output=True).stdout
        pictures.append(Image.open(io.BytesIO(printed)))
    keep(side_by_side(pictures), "booklet.png")


def side_by_side(pictures: Sequence[Image.Image]) -> Image.Image:
    """Both on one table."""
    width = sum(one.width + GAP for one in pictures) + GAP
    table = Image.new("RGB", (width, max(one.height for one in pictures) + 2 * GAP), TABLE)
    left = GAP
    for one in pictures:
        table.paste(one, (left, GAP))
        left += one.width + GAP
    return table


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Nothing: the pictures are what is wanted."""


if __name__ == "__main__":
    PICTURES.mkdir(exist_ok=True)
    server = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(_Quiet, directory=str(ROOT / "site")))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    pages(f"http://127.0.0.1:{server.server_port}/")
    server.shutdown()
    booklet(ROOT / "site" / "booklets" / "lantern-pouch-uk-a4.pdf")
