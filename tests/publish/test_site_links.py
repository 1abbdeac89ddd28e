"""Links inside the site."""

import pytest

from loopleaf.publish.site_links import broken


@pytest.mark.parametrize(
    ("link", "leads_nowhere"),
    [
        ("../../uk/pouch/#pouch-3", False),
        ("../../uk/pouch/#pouch-9", True),
        ("../../uk/poach/", True),
        ("../../booklets/pouch-us-a4.pdf", False),
        ("../../booklets/pouch-us-a5.pdf", True),
        ("#pouch-3", False),
        ("#pouch-4", True),
        ("../..", False),
        ("https://example.org/anything", False),
        ("mailto:ask@example.org", False),
        ("../../moon%20light.jpg", False),
        ("../../a.jpg?x=1&amp;y=2", False),
    ],
)
def test_a_link_is_followed(link: str, leads_nowhere: bool) -> None:
    pages = {
        "us/pouch/": f'<p id="pouch-3"><a href="{link}">x</a></p>',
        "uk/pouch/": '<p id="pouch-3"></p>',
        "": "<p></p>",
    }
    known = {"booklets/pouch-us-a4.pdf", "moon light.jpg", "a.jpg"}
    assert list(broken(pages, known)) == (
        [("us/pouch/", link.replace("&amp;", "&"))] if leads_nowhere else []
    )


def test_pictures_are_followed_too() -> None:
    assert list(broken({"us/a/": '<img src="../../no.jpg">'}, set())) == [("us/a/", "../../no.jpg")]
