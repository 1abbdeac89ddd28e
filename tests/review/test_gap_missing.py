"""A gap that isn't there is told in words, as any other place is."""

from loopleaf.review import check

HEAD = "title: Gap\nterms: US\npieces:\n  strip:\n    worked: rows\n    start: chain 12\n    rows:\n"
ROWS = (
    '      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 11}\n'
    '      - {row: 2, work: "dc in sp before next sc, turn"}\n'
)


def test_it_is_said_what_is_missing() -> None:
    checked = check((HEAD + ROWS).encode(), "gap.yml")
    found = [one for one in checked.findings if one.rule == "no-such-place"]
    assert [one.message for one in found] == [
        "“sp before next sc” in row 2 can't be worked: there is no gap between stitches."
    ]
