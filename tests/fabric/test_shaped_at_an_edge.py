"""At which end of a row the stitch stands that is shaped `at neck edge`; common practice, no source."""

import pytest

from loopleaf.fabric import Made
from tests.fabric.test_cases import pattern_of

PLAIN = "sc in 2nd ch from hook and in each ch across, turn"
AT_THE_NECK = "ch 1, sc in each st across, dec 1 st at neck edge, turn"


@pytest.mark.parametrize(
    ("rows", "gathered"),
    [
        (["ch 1, dec 1 st at neck edge, work to end, turn"], [1]),
        ([AT_THE_NECK], [12]),
        (["ch 1, sc in next 7 sts, leave rem sts unworked for neck, turn", AT_THE_NECK, AT_THE_NECK], [1, 5]),
        (["ch 1, sc in next 7 sts, leave rem sts unworked for thumb, turn", AT_THE_NECK], [6]),
    ],
)
def test_where_two_are_worked_together(rows: list[str], gathered: list[int]) -> None:
    case = {
        "name": "an edge",
        "worked": "rows",
        "start": "chain 14",
        "stated": False,
        "lines": [[line] for line in (PLAIN, *rows)],
    }
    work = pattern_of(case)
    made = [one for row in work.pieces[0].rounds if (size := row.sizes[0]) for one in size.made]
    found = [one.number for one in made if isinstance(one, Made) and one.form == "tog"]
    assert not [row.troubles for row in work.pieces[0].rounds if row.troubles]
    assert found == gathered
