"""The right patterns that mistakes are made in: the demo collection and the passages that agree in print."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from loopleaf import trade
from tests.demo import guide
from tests.yaml_text import read_yaml, written_yaml

from .little.counts import Key

ROOT = Path(__file__).parents[2]
DEMO = sorted((ROOT / "patterns").glob("*.yml"))


def published() -> Iterator[tuple[str, bytes, dict[str, Any]]]:
    """Each worked example as a pattern file, with what is known of it."""
    data = read_yaml((ROOT / "tests/published/worked_examples.yml").read_text(encoding="utf-8"))
    for example in data["examples"]:
        kept = ("turning chains", "chain spaces", "special stitches")
        file = {
            "title": example["place"],
            "terms": "UK",
            "gauge": "not critical",
            **{key: example[key] for key in kept if key in example},
            "pieces": {"example": example["piece"]},
        }
        text = written_yaml(file, allow_unicode=True)
        yield f"{example['passage']} {example['place']}", text.encode(), example


NOT_YET: frozenset[str] = frozenset(
    {
        "the last shell is the group that the row below began with a chain",
        "the same group by the author's name for it",
        "a second shoulder on a row with an armhole below it",
        "a second shoulder with a stitch too many skipped before it",
        "one chain over a gap where a spiral begins",
        "filet that grows by a mesh at its beginning",
        "a second shoulder, stitches skipped at the centre",
        "a yarn joined in the 3rd stitch of a round",
        "the third stitch of a chain, counted from where it was worked into",
        "blocks of filet in an aside",
        "a popcorn with its number, and then without",
        "gaps before the first group and after the last",
        "up to the corner that the round began in",
        "an edging around the tip that the piece began at",
        "the rest left unworked, where none is left",
        "the rest left unworked of a row whose chain stands on the first stitch",
        "three a stitch before the middle of a row",
        "a corner reached past a stitch that nothing skips",
        "the chain at a mesh's end, past a stitch that nothing skips",
        "the author's V-stitches written out with a longer chain",
        "clusters of stitches whose last loops are held back",
        "front loops named again without their round",
        "next loop, of the free ones",
        "shells in the spaces of the first and the last shell",
        "long stitches between the petals of an earlier round",
        "long stitches between petals, from the gap on",
        "a long stitch where the hook stands within a petal",
        "evenly around a square's spaces needs a number",
        "until there are more groups than the count holds",
        "one stitch over more chains than lie there",
        "a second shoulder behind stitches that an earlier row left",
        "a second shoulder, where only that row says that the first left stitches",
        "down the side into the row ends, without a turn",
        "aside into the row ends behind a row's last stitch",
        "the last pass begins as the others do, up to what its ending names",
        "the same stitch and each other, working more in the spaces between",
        "arches from the stitch joined to",
        "a first cluster counted as one of the others, whose legs it doesn't say",
        "the author's shell said to go into a space, worked into a stitch",
        "up to a stitch before the marker, and up to a space",
        "stitches skipped in a round that is named",
        "the author's cluster told in its own stitches",
        "a mesh whose first chains are a stitch and a space, counted by its spaces alone",
        "a row seamed in each stitch, to join",
        "half shells at both ends, the last single in the chain of one",
        "corner to corner whose skipped chains count as a stitch, and are worked into",
        "counts told behind the line's end, and of petals",
        "rows of lace whose last shell is reached past a space beside it",
        "yarn joined between two stitches, and between two groups",
        "a round that passes a space before each of the author's shells, and at its end",
        "all the way around a piece from the end of its last row",
        "around a piece, its own last row's ends left out",
        "around a piece with its corners, in a row of its own",
        "two markers that are moved, and carried up where a round doesn't name them",
        "picots of the author's own, closed in each of print's places",
        "picots of the author's own in UK words",
        "a round that begins with a picot",
        "a stitch of the author's own told without a place goes where the round says",
        "behind the chains, into the stitch that they stand over",
        "behind the chains, into both stitches that they stand over",
        "picots of the author's own in brackets, joined, and to form a picot",
        "the author's shells told as all in one place",
        "the skipped stitch under the chains that come next",
        "a marker in a stitch by its number in the row",
        "a picot that closes on the way of an arch",
        "an ending that begins with the picot of its arch",
        "the first stitch of each pass",
        "loops behind a flap, in the middle of a round",
        "stitches of the round behind a flap",
        "one loop more than the flap leaves free",
        "the chains of a lace tape caught to those of an earlier row",
        "chains closed on themselves, named as a loop",
        "joined to the chain at the beginning, by its length",
        "the stitch that closed the last arch, called by its post",
        "corner to corner, the space said to be of row 1",
        "where the last of the last pass goes, which is where it goes anyway",
        "a last pass that only its count contradicts",
        "gathered stitches counted as clusters of so many",
        "clusters of one stitch fewer than counted",
        "all around from a corner, one corner after the other",
        "four sides, so many stitches evenly along each, from the end of an unturned row",
        "four corners and sides in a repeat, with another yarn",
        "three corners and sides of four",
        "a corner told, the sides between the others told, the work not turned",
        "a last row's end, a side of so many, the bottom and the other side",
        "a round behind a row that was joined goes on in the same direction",
        "a thumb in the piece itself, around its opening with a stitch in either side",
        "a thumb in the piece itself, a skipped stitch forgotten before the side",
        "plain stitches and posts, each on its own kind, in either order",
        "three kinds of stitches in one walk",
        "a shaped row that begins and ends with a slip stitch",
        "the low end of a mixed rib, slip stitches without a turning chain",
        "a shoulder's slip stitches, left by name on the way back",
        "a turned round that begins in the chain space beside the join",
        "moss stitch in turned rounds",
        "a turn at a row's end and again behind the counting chain",
        "the middle of a group whose first stitch is worked",
        "the middle of a corner whose first stitch is worked",
        "each stitch up to the middle of a group, once and twice in a row",
        "pairs worked between pairs, where single stitches lie below and where pairs do",
        "threes worked between single stitches",
        "pairs worked between single stitches of an odd number",
        "each stitch around, skipping the chain spaces",
        "a heel flap in the round itself, its sides and the stitches that it left",
        "a heel flap in a spiral, into its row ends, what it left unsaid",
        "a heel flap not turned before its side",
        "a heel flap, one row end too few on its other side",
        "a heel flap whose other side is forgotten",
        "one front of a body in rounds, back and forth",
        "a marker in the middle of the stitches just told, and on to it",
        "post stitches by what they are",
        "a brim closed through its own foundation",
        "a mesh whose long turning chain is told once",
        "picots closed on the stitch that they sit on",
        "arches that narrow by a half at each end",
        "shells counted by a name that nothing defines",
        "V-stitches counted by a name that nothing defines",
        "the foundation chain said again in row 1",
        "the foundation ring said again in round 1",
        "a tip whose last row has nothing between its two decreases",
        "a picot defined by the trade's own name for it",
        "a picot explained by its text alone",
        "a shell named in passing, and called by that name later",
        "around squares joined, a long side first",
        "across each side of squares joined",
        "around pieces in rows joined, into their stitches and the ends of their rows",
        "slip stitches behind a first chain lead to where the row begins",
        "slip stitches behind a first chain made before the turn",
        "slip stitches behind a first chain, at both armholes",
        "slip stitches behind a first chain, one stitch too many in the next row",
        "a thumb around its opening, into the chains' space",
        "a thumb around its opening, the space forgotten",
        "an opening closed through both layers, without a count",
        "doubles in the spaces of a mesh, two more left at its end than between them",
    }
)
"""Cases that the little model doesn't know yet; the engine alone is held to them."""


def right_patterns() -> dict[str, str]:
    """Every pattern that is right, by its name."""
    found = {path.stem: path.read_text(encoding="utf-8") for path in DEMO}
    return found | {name: data.decode() for name, data, example in published() if example["agrees"]}


def by_hand() -> Iterator[tuple[str, bytes, list[list[Any]]]]:
    """Rounds whose figures a person worked out, each case as a pattern file, with its lines.

    A line: its shorthand, what it uses, what it makes, its count as stated and, where it is wrong, the rule.
    """
    names = ("cases", "edge_cases", "loops", "printed", "print_cases", "print_chains", "print_moving_on")
    later = ("print_openings", "print_closings", "print_more_words", "print_places", "print_words")
    rarer = ("print_gaps", "rare_cases", "repeats_print_2", "places_print_2")
    rarest = (
        "print_posts_and_rows",
        "print_motifs",
        "print_toys",
        "print_garments",
        "print_everyday_words",
        "print_fourth",
    )
    own = ("laid_out", "print_silent")
    files = (ROOT / f"tests/fabric/{name}.yml" for name in (*names, *later, *rarer, *rarest, *own))
    cases = [case for file in files for case in read_yaml(file.read_text(encoding="utf-8"))]
    fields = {"turning": "turning chains", "chains": "chain spaces", "specials": "special stitches"}
    for case in cases:
        if case["name"] in NOT_YET:
            continue
        worked = case.get("worked", "joined rounds")
        name = "row" if worked.startswith("rows") else "round"
        piece: dict[str, Any] = {"yarn": "A", "worked": worked}
        if "start" in case:
            piece["start"] = case["start"]
        stated = case.get("stated", True)
        piece[f"{name}s"] = [
            {name: at, "work": line[0], **({"count": line[3]} if stated else {})}
            for at, line in enumerate(case["lines"], 1)
        ]
        file = {
            "title": case["name"],
            "terms": case.get("terms", "US"),
            "materials": {"yarns": {"A": {"name": "lichen"}, "B": {"name": "oat"}}},
            **{fields[key]: case[key] for key in fields if key in case},
            "pieces": {**case.get("before", {}), "piece": piece},
            "finishing": [{"lay out": case["lay out"]}] if "lay out" in case else [],
        }
        lines = [[*line[:2], _as_keys(line[2], file["terms"]), *line[3:]] for line in case["lines"]]
        yield case["name"], written_yaml(file).encode(), lines


def _as_keys(makes: dict[str, int], terms: str) -> dict[Key, int]:
    """`{dc: 6, ch-2 sp: 1}` under the names that the little model gives them."""
    named = {getattr(row, terms.lower()).short: row.key for row in trade.stitches()}
    keys: dict[Key, int] = {}
    for name, number in makes.items():
        chains = re.fullmatch(r"ch-(\d+) sp", name)
        keys[("space", int(chains[1])) if chains else named.get(name, name)] = number
    return keys


def constructs() -> Iterator[tuple[str, bytes]]:
    """Patterns in the rarer words of the format, each a whole file."""
    for case in read_yaml((Path(__file__).parent / "constructs.yml").read_text(encoding="utf-8")):
        for piece in case["pieces"].values():
            if "as" not in piece:
                piece["yarn"] = "A"
        file = {
            "title": case.pop("name"),
            "terms": "US",
            "gauge": "not critical",
            "materials": {"yarns": {"A": {"name": "lichen"}, "B": {"name": "oat"}}},
            **case,
        }
        yield file["title"], written_yaml(file).encode()


def of_the_guide() -> Iterator[tuple[str, bytes]]:
    """Every example of the authors' guide, as a file of its own."""
    for fence in guide.fences():
        file = guide.as_file(fence) if fence.language == "yaml" else guide.as_rounds(fence)
        yield str(fence), guide.dumped(file)
