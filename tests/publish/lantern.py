"""A Lantern pouch leaflet set out by hand: what templates are tried on without the engine."""

from typing import Any

from loopleaf.publish.leaflet_parts import (
    Abbreviation,
    Caution,
    Change,
    Fact,
    Heading,
    Hook,
    Leaflet,
    Level,
    Licence,
    Picture,
    Piece,
    Round,
    Size,
    Special,
    Telling,
    Terms,
    Variation,
    Yarn,
)
from loopleaf.publish.words import words


def _drawing() -> str:
    rings = "".join(
        f'<circle cx="120" cy="120" r="{8 + 6 * i}" fill="none" stroke="#3b6e6a" stroke-width="3" '
        f'stroke-dasharray="{2 + i * 0.3:.1f} 2"/>'
        for i in range(18)
    )
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 240 240" role="img">'
        f"<title>Lantern pouch from below</title>{rings}</svg>"
    )


def _round(piece: str, first: int, last: int, text: str, count: str = "", **more: Any) -> Round:
    number = str(first) if first == last else f"{first}–{last}"
    return Round(
        anchors=tuple(f"{piece}-{i}" for i in range(first, last + 1)),
        word="round",
        label=f"Round {number}" if first == last else f"Rounds {number}",
        number=number,
        text=text,
        count=count,
        unit="sts" if count.isdigit() else "",
        **more,
    )


def lantern(terms: Terms = "US") -> Leaflet:
    """The pouch in either terminology; `t` picks between the two."""

    def t(us: str, uk: str) -> str:
        return us if terms == "US" else uk

    hdc, dc, sc = t("hdc", "htr"), t("dc", "tr"), t("sc", "dc")
    slip, skip = t("sl st", "ss"), t("sk", "miss")
    join = f"join with {slip} to first {hdc}"
    first = t("ch 1", "1ch")
    pouch: list[Heading | Telling | Round] = [
        Heading("Base", "pouch-base"),
        _round("pouch", 1, 1, f"{first}, 8 {hdc} in ring, {join}", "8", side="RS"),
        _round("pouch", 2, 2, f"{first}, 2 {hdc} in each st around, {join}", "16"),
        _round("pouch", 3, 3, f"{first}, ({hdc} in next st, 2 {hdc} in next st) × 8, {join}", "24"),
        *(
            _round(
                "pouch",
                i,
                i,
                f"{first}, (inc, {hdc} in next {i - 2} sts) × 8, {join}",
                str(8 * i),
                worked_out=i == 6,
            )
            for i in (4, 5, 6)
        ),
        Heading("Sides", "pouch-sides"),
        _round("pouch", 7, 16, f"{first}, {hdc} in each st around, {join}", "48"),
        Heading("Casing", "pouch-casing"),
        _round(
            "pouch",
            17,
            17,
            t(
                "ch 4 (counts as dc, ch 1), sk next st, *dc in next st, ch 1, sk next st; rep from * around, "
                "join with sl st to 3rd ch of ch-4",
                "4ch (counts as tr, 1ch), miss next st, *tr in next st, 1ch, miss next st; rep from * "
                "around, join with ss to 3rd ch of 4ch",
            ),
            f"24 {dc}, 24 {t('ch-1 sps', '1ch-sps')}",
            note="The cords run through this round.",
            video="6:10",
            video_url="https://example.org/lantern-pouch#t=370",
        ),
        _round(
            "pouch",
            18,
            18,
            f"{first}, {sc} in each st and ch-sp around, join with {slip} to first {sc}",
            "48",
        ),
        Heading("Edge", "pouch-edge"),
        _round(
            "pouch",
            19,
            19,
            f"{first}, *{sc} in next st, {skip} 2 sts, sh in next st, {skip} 2 sts; rep from * around, "
            f"join with {slip} to first {sc}, fasten off",
            f"8 {sc}, 8 sh",
        ),
    ]
    moon = [
        _round("moon", 1, 1, f"7 {sc} in 2nd ch from hook", "7"),
        _round("moon", 2, 2, f"inc around, {slip} in next st, fasten off", "14"),
    ]
    names = [
        ("ch", "chain", "chain"),
        (t("dc", "dc"), "double crochet", "double crochet"),
        (hdc, "half double crochet", "half treble crochet"),
        *([("sc", "single crochet", "")] if terms == "US" else [("tr", "", "treble crochet")]),
        (slip, "slip stitch", "slip stitch"),
        ("st, sts", "stitch, stitches", "stitch, stitches"),
        (skip, "skip", "miss"),
        ("rep", "repeat", "repeat"),
    ]
    return Leaflet(
        title="Lantern pouch",
        slug="lantern-pouch",
        terms=terms,
        lang=t("en-US", "en-GB"),
        summary="A round drawstring pouch with a scalloped edge and a moon sewn to its front.",
        designer="Saltmarsh Makers' Library",
        picture=Picture("Lantern pouch, drawn from its stitches", svg=_drawing()),
        made="1 pouch, 2 drawstrings, 1 moon",
        sizes=(Size("Finished size", ("34.5 cm (13½ in) around", "13.5 cm (5¼ in) high")),),
        facts=(
            Fact("Size", "34.5 × 13.5 cm (13½ × 5¼ in)", "size"),
            Fact("Level", "Easy", "level"),
            Fact("Hook", "5.5 mm (US I-9)", "hook"),
            Fact("Yarn", t("Worsted, 2 colors", "Aran, 2 colours"), "yarn"),
            Fact("Time", "3 to 5 hours", "time"),
        ),
        level=Level(
            "easy",
            "Simple stitch patterns, colour or shaping.",
            ("shells", "cords and a casing"),
            "level-easy",
        ),
        cautions=(
            Caution("Cords", "Keep drawstrings away from small children and pets."),
            Caution("Small parts", "A sewn-on piece can come off; not for children under three."),
        ),
        yarns=(
            Yarn(
                "A",
                "A (lichen)",
                t("medium (4), worsted", "aran"),
                "#3b6e6a",
                "wool",
                "52 g (1¾ oz), 88 m (97 yd)",
                "2 balls of 50 g (1¾ oz), 85 m (93 yd)",
            ),
            Yarn(
                "B",
                "B (oat)",
                t("medium (4), worsted", "aran"),
                "#e6d9bd",
                "wool",
                "about 4 g (⅛ oz), 6 m (7 yd)",
                "1 ball of 50 g (1¾ oz), 85 m (93 yd)",
            ),
        ),
        hooks=(Hook("5.5 mm (US I-9)"),),
        notions=("tapestry needle", "stitch marker"),
        gauge=(f"14 {hdc} and 10 rows over 10 cm (4 in), not blocked.",),
        abbreviations=(
            *(
                Abbreviation(short, t(us, uk), "", f"abbr-{us.replace(chr(32), chr(45))}")
                for short, us, uk in names
            ),
            Abbreviation("inc", "increase", f"2 {hdc} in the next stitch (2 {sc} in the moon)", "inc"),
        ),
        specials=(
            Special("shell", "sh", f"5 {dc} in same st", "Five stitches fanned from one.", "stitch-shell"),
        ),
        notes=("The wrong side of the base is the inside.", words(terms)["first_stitch"]),
        pieces=(
            Piece(
                "pouch",
                "Pouch",
                "piece-pouch",
                1,
                ("Yarn A (lichen).", "Worked in joined rounds."),
                "Begin with a magic ring.",
                tuple(pouch),
            ),
            Piece(
                "cord",
                "Drawstring",
                "piece-cord",
                2,
                ("Make 2.", "Yarn A (lichen).", "A chain of 69 cm (27¼ in), about 150 chains."),
                "",
                (),
            ),
            Piece(
                "moon",
                "Moon",
                "piece-moon",
                1,
                ("Yarn B (oat).", "Worked in a spiral.", "Leave a tail of 30 cm (12 in)."),
                "Begin with 2 chains.",
                tuple(moon),
            ),
        ),
        finishing=(
            Telling(
                "Thread one drawstring through round 17 of the pouch, under one stitch and over the next, "
                "from the gap before stitch 1; the other from the gap before stitch 13."
            ),
            Telling("Knot the two ends of each cord together."),
            Telling("Sew the moon to round 11 of the pouch, over stitches 11–14."),
            Telling("Weave in the ends."),
        ),
        variations=(Variation("Plain pouch", ("Leave out the moon.",)),),
        care="Hand wash, dry flat.",
        licence=Licence(
            "CC BY-NC 4.0",
            "Share and change it with the designer's name, but not to earn money.",
            "https://creativecommons.org/licenses/by-nc/4.0/",
        ),
        contact="https://example.org/help",
        changes=(
            Change(t("November 5, 2026", "5 November 2026"), "1.1.0", "Round 1 names the stitch to join to."),
            Change(t("October 2, 2026", "2 October 2026"), "", "First published."),
        ),
        version="1.1.0",
        published=t("October 2, 2026", "2 October 2026"),
        foot=("The counts marked ° were worked out from the stitches; the author states none there.",),
        ink="#3b6e6a",
        video="https://example.org/lantern-pouch",
        words=words(terms),
        edition=t("Version 1.1.0, November 5, 2026", "Version 1.1.0, 5 November 2026"),
        video_length="12:30",
    )
