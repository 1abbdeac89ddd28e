"""Leaflets set out from worked patterns: what is printed, in either terminology."""

import pytest

from loopleaf.publish.leaflet import day, leaflet, leaflets
from loopleaf.publish.leaflet_parts import Heading, Leaflet, Round, Telling, Terms
from loopleaf.publish.leaflet_rounds import seconds
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.demo.leaflets import leaf_of
from tests.publish.small_site import COASTER, ROOT, WRONG
from tests.yaml_text import read_yaml

DEMO = sorted(path.stem for path in (ROOT / "patterns").glob("*.yml"))


def _set_out(text: str, terms: Terms = "US", file: str = "coaster.yml", contact: str = "") -> Leaflet:
    checked = check(text.encode(), file)
    assert [found.message for found in checked.findings if found.severity == "error"] == []
    return leaflet(checked, terms, Settings(contact=contact))


def _rounds(one: Leaflet, piece: str) -> dict[str, Round]:
    found = next(each for each in one.pieces if each.name == piece)
    return {round.label: round for round in found.rounds}


# ---- rounds -------------------------------------------------------------------------------------


def test_rounds_alike_are_printed_once() -> None:
    rounds = _rounds(leaf_of("lantern-pouch"), "pouch")
    assert list(rounds) == [f"Round {n}" for n in (1, 2, 3, 4, 5, 6)] + ["Rounds 7–16"] + [
        f"Round {n}" for n in (17, 18, 19)
    ]
    sides = rounds["Rounds 7–16"]
    assert sides.anchors == tuple(f"pouch-{n}" for n in range(7, 17))
    assert (sides.text, sides.count) == ("ch 1, hdc in each st around, join with sl st to first hdc", "48")


def test_a_bare_join_names_its_place_and_n_its_number() -> None:
    rounds = _rounds(leaf_of("lantern-pouch"), "pouch")
    assert rounds["Round 1"].text == "ch 1, 8 hdc in ring, join with sl st to first hdc"
    assert rounds["Round 5"].text == "ch 1, (inc, hdc in next 3 sts) × 8, join with sl st to first hdc"


def test_the_same_rounds_in_the_other_terms() -> None:
    rounds = _rounds(leaf_of("lantern-pouch", "UK"), "pouch")
    assert rounds["Round 2"].text == "1ch, 2 htr in each st around, join with ss to first htr"
    assert rounds["Round 17"].count.startswith("24 tr, 24 ")


@pytest.mark.parametrize("slug", DEMO)
def test_both_leaflets_have_the_same_rounds_and_anchors(slug: str) -> None:
    us, uk = leaf_of(slug), leaf_of(slug, "UK")
    assert [(piece.anchor, [round.anchors for round in piece.rounds]) for piece in us.pieces] == [
        (piece.anchor, [round.anchors for round in piece.rounds]) for piece in uk.pieces
    ]
    assert (us.lang, uk.lang) == ("en-US", "en-GB")


@pytest.mark.parametrize("slug", DEMO)
def test_every_round_of_the_file_is_printed_just_once(slug: str) -> None:
    for piece in leaf_of(slug).pieces:
        anchors = [anchor for round in piece.rounds for anchor in round.anchors]
        assert anchors == [f"{piece.anchor.removeprefix('piece-')}-{n}" for n in range(1, len(anchors) + 1)]


@pytest.mark.parametrize("slug", DEMO)
def test_stated_counts_are_printed_as_stated(slug: str) -> None:
    # The file is read here without the engine: single rounds with a plain number as their count.
    written = read_yaml((ROOT / "patterns" / f"{slug}.yml").read_text(encoding="utf-8"))
    terms: Terms = written["terms"]
    printed = {piece.name: piece for piece in leaf_of(slug, terms).pieces}
    looked_at = 0
    for name, piece in written["pieces"].items():
        for entry in piece.get("rounds", piece.get("rows", [])):
            number = entry.get("round", entry.get("row"))
            if isinstance(number, int) and isinstance(entry.get("count"), int):
                anchor = f"{printed[name].anchor.removeprefix('piece-')}-{number}"
                round = next(one for one in printed[name].rounds if anchor in one.anchors)
                assert (round.count, round.worked_out) == (str(entry["count"]), False)
                looked_at += 1
    assert looked_at or slug in ("gull-collar", "harbour-square")


def test_counts_one_a_size_stand_in_brackets() -> None:
    rounds = _rounds(leaf_of("gull-collar"), "collar")
    assert rounds["Row 1"].count == "63 (69, 75)"
    assert rounds["Row 1"].unit == "sts"


def test_repeated_rows_are_called_by_number() -> None:
    rows = _rounds(leaf_of("tide-cloth", "UK"), "cloth")
    again = rows["Rows 10–25"]
    assert again.text == "repeat rows 2–9 twice more"
    assert again.count == ""  # rows 2 to 9 differ in theirs
    assert again.anchors == tuple(f"cloth-{n}" for n in range(10, 26))
    assert rows["Rows 26–28"].text == "repeat rows 2–4 once more"


def test_a_note_stands_with_the_first_of_its_rounds_only() -> None:
    rounds = _rounds(leaf_of("lantern-pouch"), "pouch")
    assert rounds["Round 4"].note.startswith("The increases come first")
    assert rounds["Round 5"].note == ""


def test_headings_and_tellings_stand_where_the_author_put_them() -> None:
    (ball,) = leaf_of("pebble-ball").pieces
    kinds = [type(item) for item in ball.items]
    assert kinds[0] is Heading
    at = next(i for i, item in enumerate(ball.items) if isinstance(item, Telling))
    before, after = ball.items[at - 1], ball.items[at + 1]
    assert isinstance(before, Round)
    assert isinstance(after, Round)
    assert (before.label, after.label) == ("Round 15", "Round 16")


def test_the_moment_of_the_video_leads_there() -> None:
    casing = _rounds(leaf_of("lantern-pouch"), "pouch")["Round 17"]
    assert (casing.video, casing.video_url) == ("6:10", "https://example.org/lantern-pouch#t=370")
    assert [seconds(moment) for moment in ("0:05", "6:10", "1:00:05")] == [5, 370, 3605]


def test_a_count_that_the_author_doesn_t_state_is_marked_and_said_once_at_the_foot() -> None:
    one = _set_out(COASTER.replace(", count: 12}", "}"))
    second = _rounds(one, "coaster")["Round 2"]
    assert (second.count, second.worked_out) == ("12", True)
    assert one.foot == (one.words["worked_out"],)
    assert _set_out(COASTER).foot == ()


def test_a_repeat_of_rows_without_a_stated_count_is_marked_too() -> None:
    rows = (
        "    worked: rows\n    start: chain 11\n    rows:\n"
        '      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}\n'
        '      - {row: 2, work: "ch 1, sc in each st across, turn", count: 10}\n'
        '      - {row: 3, work: "ch 1, sc in first st, sc in next 9 sts, turn"COUNT}\n'
        "      - {rows: 4-7, repeat: 2-3}\n"
    )
    before, after = COASTER.split("    worked:")[0], "finishing:" + COASTER.split("finishing:")[1]
    before = before.replace("finished size: {across: 4 cm}\n", "")
    for stated, marked in ((", count: 10", False), ("", True)):
        again = _rounds(_set_out(before + rows.replace("COUNT", stated) + after), "coaster")["Rows 4–7"]
        assert (again.text, again.count, again.worked_out) == ("repeat rows 2–3 twice more", "10", marked)


# ---- words ----------------------------------------------------------------------------------------


def test_yarns_go_by_letter_and_name_in_the_rounds_and_around_them() -> None:
    ball = leaf_of("pebble-ball")
    rounds = _rounds(ball, "ball")
    assert rounds["Round 8"].text.endswith("changing to B (quartz) on last yo")
    assert rounds["Round 8"].note.startswith("Let A (wet slate) hang inside.")
    assert "Yarn A (wet slate)." in ball.pieces[0].about
    assert any("Yarn B (oat) is for the moon" in note for note in leaf_of("lantern-pouch").notes)


def test_what_inc_means_is_said_once() -> None:
    (inc,) = (one for one in leaf_of("pebble-ball", "UK").abbreviations if one.short == "inc")
    assert inc.meaning == "2 dc in one stitch"
    (inc,) = (one for one in leaf_of("lantern-pouch").abbreviations if one.short == "inc")
    assert inc.meaning == "2 hdc in one stitch (Pouch), 2 sc in one stitch (Moon)"


def test_a_chain_that_doesn_t_count_is_explained_once_where_it_matters() -> None:
    def told(one: Leaflet) -> list[str]:
        return [
            note for note in one.notes if note in (one.words["first_stitch"], one.words["first_stitch_rows"])
        ]

    assert told(leaf_of("lantern-pouch")) == [leaf_of("lantern-pouch").words["first_stitch"]]
    assert told(leaf_of("tide-cloth", "UK")) == [leaf_of("tide-cloth", "UK").words["first_stitch_rows"]]
    assert told(leaf_of("pebble-ball")) == []  # a spiral has no beginning chain
    assert told(leaf_of("harbour-square")) == []  # its chains count


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize("slug", DEMO)
def test_the_abbreviations_are_those_of_these_terms(slug: str, terms: Terms) -> None:
    shorts = {short for one in leaf_of(slug, terms).abbreviations for short in one.short.split(", ")}
    assert shorts
    foreign = {"htr", "ss", "miss", "yrh"} if terms == "US" else {"sc", "hdc", "sl st", "sk", "yo"}
    assert shorts & foreign == set()


def test_only_what_the_pattern_uses_is_explained() -> None:
    shorts = [one.short for one in leaf_of("pebble-ball").abbreviations]
    assert "inc" in shorts
    assert not {"dc", "rep", "ch", "ch-sp"} & set(shorts)


def test_a_chain_space_is_explained_at_its_own_length() -> None:
    pouch = {one.short: one.name for one in leaf_of("lantern-pouch").abbreviations}
    assert pouch["ch-1 sp"] == "chain-1 space"


def test_free_text_is_put_into_the_other_terms() -> None:
    note = _rounds(leaf_of("harbour-square", "UK"), "border")["Round 1"].note
    assert "work one double crochet in each of the two corner spaces" in note


def test_gauge_and_tension() -> None:
    assert leaf_of("tide-cloth", "UK").gauge[0] == "17 dc and 18 rows over 10 cm (4 in), blocked."
    assert leaf_of("tide-cloth", "US").gauge[1] == "17 dc and 9 rows over 10 cm (4 in), blocked."
    assert leaf_of("lantern-pouch").gauge == ("14 hdc and 10 rounds over 10 cm (4 in), before blocking.",)
    assert leaf_of("harbour-square").gauge == ("The square measures 17 cm (6¾ in) across.",)
    free = COASTER.replace(
        "gauge: {stitch: sc, stitches: 14, rows: 15, over: 10 cm, blocked: no}", "gauge: not critical"
    ).replace("finished size: {across: 4 cm}\n", "")
    assert _set_out(free).gauge == ("Gauge is not critical here.",)
    assert _set_out(free, "UK").gauge == ("Tension is not critical here.",)


# ---- materials, sizes, the rest -----------------------------------------------------------------


def test_materials_name_the_weight_as_that_country_does() -> None:
    assert [leaf_of("lantern-pouch", terms).yarns[0].weight for terms in ("US", "UK")] == [
        "worsted (4)",
        "aran (4)",
    ]


def test_amounts_in_both_units_and_the_hook_in_millimetres_first() -> None:
    lichen = leaf_of("lantern-pouch").yarns[0]
    # 52 g of a yarn with 85 m in 50 g is 88.4 m; a yard is 0.9144 m, an ounce 28.35 g (1959 agreement).
    assert lichen.amount == "52 g (1¾ oz), 89 m (97 yd)"
    assert lichen.balls == "2 balls of 50 g (1¾ oz), 85 m (93 yd)"
    assert [hook.size for hook in leaf_of("lantern-pouch").hooks] == ["5.5 mm (US I-9)"]


def test_balls_to_buy_are_enough_for_the_largest_amount() -> None:
    """By the stitches 2 m would do, and so would one ball of 3; 4 m with a tenth take two."""
    one = _set_out(COASTER.replace("weighed: 5 g, ball: {grams: 50, metres: 85}", "ball: {metres: 3}"))
    (slate,) = one.yarns
    assert slate.balls.startswith("2 balls of "), slate


def test_amounts_one_a_size() -> None:
    (grey,) = leaf_of("gull-collar").yarns
    assert grey.amount.startswith("64 (70, 76) g, ")


def test_several_hooks_say_what_each_is_for() -> None:
    one = _set_out(
        COASTER.replace("hook: 5 mm", "hook: [{size: 5 mm, for: the base}, {size: 4 mm, for: the rim}]")
    )
    assert [(hook.size, hook.use) for hook in one.hooks] == [
        ("5 mm (US H-8)", "for the base"),
        ("4 mm (US G-6)", "for the rim"),
    ]


def test_what_you_make_and_how_big() -> None:
    assert leaf_of("lantern-pouch").made == "1 pouch, 2 drawstrings, 1 moon"
    assert leaf_of("harbour-square").made == "12 squares, joined 3 across and 4 down, 1 border"
    assert leaf_of("lantern-pouch").sizes[0].lines == ("34.5 cm (13½ in) around", "13.5 cm (5¼ in) high")
    collar = leaf_of("gull-collar").sizes
    assert [(size.label, size.lines[0]) for size in collar] == [
        ("Sizes", "S (M, L)"),
        ("Finished size", "37 (40.5, 44) cm, 14½ (16, 17¼) in around"),
        ("To fit", "neck 34 (37, 41) cm, 13½ (14½, 16¼) in"),
        ("Time, L", "about 1½ to 3 hours with practice, about 4 to 8½ hours for someone new to it"),
    ]


@pytest.mark.parametrize("slug", DEMO)
def test_the_facts_have_centimetres_and_inches_in_either_terms(slug: str) -> None:
    for terms in ("US", "UK"):
        facts = {fact.key: fact.value for fact in leaf_of(slug, terms).facts}
        assert " cm" in facts["size"], terms
        assert " in" in facts["size"], terms


def test_the_facts_of_a_pattern_in_pieces_tell_the_largest() -> None:
    """A garland states its leaves and its string, and nothing of the whole."""
    facts = {fact.key: fact.value for fact in leaf_of("purslane-garland").facts}
    assert facts["size"] == "String: 128 cm (50½ in) long"


def test_the_facts_tell_the_time_of_every_size() -> None:
    """The smallest cap takes 1 hour at the least, the largest 2½ at the most."""
    facts = {fact.key: fact.value for fact in leaf_of("curlew-cap").facts}
    assert facts["time"] == "About 1 to 2½ hours"
    assert facts["size"] == "42.5 (48, 53.5, 58.5) cm, 16¾ (19, 21, 23) in around"


def test_amounts_that_differ_from_size_to_size_are_told_by_size() -> None:
    text = (ROOT / "patterns" / "gull-collar.yml").read_text(encoding="utf-8")
    yarn = _set_out(text.replace(', weighed: "64 (70, 76) g"', "")).yarns[0]
    small, middle, large = yarn.amount.split("; ")
    assert small.startswith("S: about ")
    assert (middle[:9], large[:9]) == ("M: about ", "L: about ")


def _rows(slug: str, place: str) -> dict[str, tuple[str, ...]]:
    (table,) = (one for one in leaf_of(slug).tables if one.place == place)
    return {row[0]: row[1:] for row in table.rows}


def test_the_table_of_sizes_says_everything_once() -> None:
    """Rows that lie around a neck are no further wide than around, and no longer than high."""
    assert [*_rows("gull-collar", "sizes")] == [
        *("To fit, neck", "Around", "High", "Yarn A (gull gray)", "Time", "Time, new to it"),
    ]
    cap = _rows("curlew-cap", "sizes")
    assert cap["High along the cloth (worked out)"][0] == "about 17 cm (6¾ in)"
    assert cap["Time, new to it"][0] == "About 2 to 4½ hours"


def test_a_cover_says_how_large_the_whole_is() -> None:
    assert leaf_of("sandbank-seal").facts[0].value == "14 cm (5½ in) long"


def test_another_yarn_changes_what_is_stated() -> None:
    """The whole blanket of 53 × 70 cm, not a square of it: 12.5 ÷ 14.5 as large in DK."""
    assert _rows("harbour-square", "yarns")["DK (3)"] == (
        *("about 4 mm (US G-6)", "about 46 cm (18 in)", "about 60 cm (24 in)"),
    )


def test_the_size_of_a_piece_is_called_so() -> None:
    assert [size.label for size in leaf_of("harbour-square").sizes] == [
        "Finished size",
        "Finished size, Square",
        "Time",
    ]


@pytest.mark.parametrize(
    ("slug", "terms", "start"),
    [
        ("lantern-pouch", "US", "Begin with a magic ring."),
        ("harbour-square", "US", "Chain 4 and join with sl st into a ring."),
        ("harbour-square", "UK", "Chain 4 and join with ss into a ring."),
        ("reed-tray", "US", "Chain 13. You will work along both sides of it."),
        ("gull-collar", "US", "Chain 65 (71, 77)."),
        (
            "tide-cloth",
            "UK",
            "Chain 44. For another width, chain any multiple of 6 plus 2 (in stitches, a multiple of 6 "
            "plus 1; add 1 for the base chain).",
        ),
    ],
)
def test_how_a_piece_begins(slug: str, terms: Terms, start: str) -> None:
    assert leaf_of(slug, terms).pieces[0].start == start


def test_a_piece_on_another_s_edge_says_where() -> None:
    band = leaf_of("gull-collar").pieces[1]
    assert band.start == "Begin on the collar, along the ends of its rows."


def test_a_border_around_pieces_laid_out_is_told_after_them() -> None:
    border = next(piece for piece in leaf_of("harbour-square").pieces if piece.title == "Border")
    laid = "Lay out and join the 12 squares first, as under “Finishing”."
    assert border.start == f"{laid} Begin on the edge of the whole, all the way around it."


def test_a_cord_says_its_length_and_chains() -> None:
    cord = leaf_of("lantern-pouch").pieces[1]
    # Twice around 48 stitches at 14 in 10 cm: 68.6 cm, 96 chains.
    assert cord.about == ("Make 2.", "Yarn A (lichen).")
    assert cord.start == "Make a chain 68.5 cm (27 in) long, about 96 chains, and fasten off."


def test_finishing_is_told_in_sentences() -> None:
    steps = [step.text for step in leaf_of("lantern-pouch").finishing]
    assert steps[0] == (
        "Thread the first drawstring through round 17 of the pouch, under 1 and over 1 in turn, beginning in "
        "the gap before stitch 1. Thread the second in the same way, beginning in the gap before stitch 13."
    )
    assert steps[2] == "Sew the moon to round 11 of the pouch, over stitches 11–14."
    lay = leaf_of("harbour-square", "UK").finishing[1].text
    assert lay == "Lay out the 12 squares, 3 across and 4 down, and join them with dc through both layers."


def test_variations_licence_changes_and_dates() -> None:
    us, uk = leaf_of("lantern-pouch"), leaf_of("lantern-pouch", "UK")
    assert us.variations[0].lines == ("Leave out the moon.",)
    assert us.licence is not None
    assert us.licence.url.startswith("https://creativecommons.org/licenses/by-nc/")
    assert (us.changes[0].date, uk.changes[0].date) == ("November 5, 2026", "5 November 2026")
    assert (us.published, uk.published) == ("October 2, 2026", "2 October 2026")


def test_a_licence_of_the_designer_s_own() -> None:
    one = _set_out(COASTER.replace("CC0-1.0", "LicenseRef-Ask-me"))
    assert one.licence is not None
    assert (one.licence.name, one.licence.url) == ("Ask-me", "")
    assert one.licence.meaning == one.words["own_licence"]


def test_where_to_ask_is_the_pattern_s_or_else_the_collection_s() -> None:
    assert _set_out(COASTER, contact="https://example.org/ask").contact == "https://example.org/ask"
    own = f"{COASTER}contact: maker@example.org\n"
    assert _set_out(own, contact="https://example.org/ask").contact == "maker@example.org"


def test_an_author_s_picture_goes_by_its_path_in_the_collection() -> None:
    checked = check(
        f"{COASTER}pictures: [{{file: img/coaster.jpg, alt: A coaster.}}]\n".encode(), "home/coaster.yml"
    )
    picture = leaflet(checked, "US", Settings()).picture
    assert (picture.file, picture.alt, picture.svg) == ("home/img/coaster.jpg", "A coaster.", "")


def test_without_a_picture_the_piece_is_drawn_to_its_size() -> None:
    picture = _set_out(COASTER).picture
    assert picture.svg.startswith("<svg")
    assert picture.alt == "Coaster, drawn from its stitches, in slate"
    assert 30 < picture.across_mm < 60


def test_the_level_has_its_reasons() -> None:
    level = leaf_of("lantern-pouch").level
    assert level.name == "easy"
    assert "shells (round 19)" in level.reasons
    assert "Several stitches in one place, with places passed on either side." in level.learn
    assert leaf_of("tide-cloth", "UK").level.learn[0] == "Working under a chain instead of into it."
    assert leaf_of("ebb-scarf").level.learn == ()


def test_cautions_name_their_standards_with_year_and_scope() -> None:
    cords, parts = leaf_of("lantern-pouch").cautions
    assert any(one.startswith("EN 71-1:2005+A8 (toys for under 36 months: ") for one in cords.standards)
    assert any(one.startswith("16 CFR 1501.4, of 1979 (") for one in parts.standards)
    assert [one.standards for one in leaf_of("ebb-scarf").cautions] == [()]


def test_a_pattern_with_an_error_is_not_set_out() -> None:
    with pytest.raises(ValueError, match="can't be published"):
        leaflet(check(WRONG.encode(), "wrong.yml"), "US", Settings())


def test_both_at_once_are_as_each_alone() -> None:
    checked = check(COASTER.encode(), "coaster.yml")
    both = leaflets(checked, Settings())
    assert both == {terms: leaflet(checked, terms, Settings()) for terms in ("US", "UK")}


def test_dates_as_each_country_writes_them() -> None:
    from datetime import date

    assert day(date(2026, 1, 2), "US") == "January 2, 2026"
    assert day(date(2026, 1, 2), "UK") == "2 January 2026"


def test_chain_spaces_of_several_lengths_are_all_listed() -> None:
    short = {one.anchor: (one.short, one.name) for one in leaf_of("harbour-square").abbreviations}
    assert short["abbr-chain-n-space"] == ("ch-1 sp, ch-2 sp", "chain-1 space, chain-2 space")
    assert "abbr-stitch" not in short  # its lines have `sl st`, and no `st` besides


def test_a_special_stitch_without_a_short_form_has_a_plural() -> None:
    rows = {one.number: one.count for one in leaf_of("tide-cloth").pieces[0].rounds}
    assert (rows["2"], rows["6"]) == ("8 dc, 7 fans", "13 dc, 6 fans")


def test_the_tables_own_words_follow_the_terms() -> None:
    assert [leaf_of("gull-collar", terms).level.reasons[0] for terms in ("US", "UK")] == [
        "post stitches (row 2)",
        "raised stitches (row 2)",
    ]
    beds: dict[Terms, str] = {"US": "crib", "UK": "cot"}
    for terms, bed in beds.items():
        assert f"in the {bed} of a sleeping baby" in leaf_of("harbour-square", terms).cautions[0].text
