"""Links inside the site, checked: MkDocs checks those in Markdown, these stand in pages of our own."""

import re
from collections.abc import Iterator, Mapping, Set
from html import unescape
from urllib.parse import unquote, urljoin, urlsplit


def broken(pages: Mapping[str, str], known: Set[str]) -> Iterator[tuple[str, str]]:
    """Page and link of each link that leads nowhere.

    pages: address -> HTML of the pages whose links are checked, and whose anchors are known. known: all
    addresses of the site. Addresses are relative to the site's root (`us/pouch/`, "" is the first page).
    """
    anchors = {address: set(re.findall(r'\bid="([^"]*)"', html)) for address, html in pages.items()}
    for address, html in pages.items():
        for written in re.findall(r'\b(?:href|src)="([^"]*)"', html):
            link = unescape(written)
            if urlsplit(link).scheme or link.startswith("//"):
                continue
            target = urlsplit(urljoin(f"http://site/{address}", link))
            path = unquote(target.path.lstrip("/"))
            missing = path not in known and path not in pages
            astray = target.fragment and path in anchors and unquote(target.fragment) not in anchors[path]
            if missing or astray:
                yield address, link
