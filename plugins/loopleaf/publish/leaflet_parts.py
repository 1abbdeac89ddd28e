"""The leaflet as plain values: everything that a page or a booklet prints, in one terminology.

Templates read these and decide nothing about crochet. All texts are plain text (templates escape
them), already in the leaflet's own terms; `picture.svg` alone is markup, drawn by `draw`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from .drawing import Drawing

Terms = Literal["US", "UK"]
CountStyle = Literal["plain", "brackets", "sts"]


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture: the author's file (path below the collection's folder, with `/`), or SVG text drawn
    from the stitches.

    across_mm: the larger side of what is drawn, in millimetres, 0 where it isn't known. left: SVG text of the
    same for a left hand, "" where it has none.
    """

    alt: str
    file: str = ""
    svg: str = ""
    credit: str = ""
    across_mm: float = 0.0
    left: str = ""


@dataclass(frozen=True, slots=True)
class Fact:
    """One entry of the strip of facts: `Hook`, `5.5 mm (US I-9)`. key: `size`, `level`, `hook`, `yarn` or
    `time`.
    """

    label: str
    value: str
    key: str = ""


@dataclass(frozen=True, slots=True)
class Size:
    """One thing said about sizes. label: what it is: `Sizes`, `Finished size` (with a piece's name
    behind it), `To fit`. lines: `34.5 cm (13½ in) around`, or the names of the sizes.
    """

    label: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Level:
    """name: `easy`. meaning: what the level asks of a maker. reasons: what in this pattern raises it,
    in the page's terms. learn: what to practise for it, a sentence each.
    """

    name: str
    meaning: str
    reasons: tuple[str, ...] = ()
    anchor: str = ""
    learn: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution chosen from what the pattern holds. standards: by name and, where it is known, year, with
    what each says.
    """

    title: str
    text: str
    standards: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Yarn:
    """One yarn. label: `B (oat)`, as it is called everywhere. weight: `medium (4), worsted`, the
    country's own name.

    amount: `about 52 g (1¾ oz), 88 m (97 yd)`; balls: `2 balls of 50 g (1¾ oz), 85 m (93 yd)`; "" where
    not known.
    colour: `#rrggbb` or "". fibre: "" where not said.
    """

    letter: str
    label: str
    weight: str
    colour: str = ""
    fibre: str = ""
    amount: str = ""
    balls: str = ""


@dataclass(frozen=True, slots=True)
class Hook:
    """size: `5.5 mm (US I-9)`. use: what it is for, "" for the only one."""

    size: str
    use: str = ""


@dataclass(frozen=True, slots=True)
class Abbreviation:
    """short: `hdc`. name: `half double crochet`. meaning: what this pattern means by it (`inc`), "" else.

    anchor: its entry on the collection's glossary page (`stitch-half`, `abbr-repeat`), "" where it has none.
    about: what the glossary says of it, the same for every pattern, "" else.
    """

    short: str
    name: str
    meaning: str = ""
    anchor: str = ""
    about: str = ""


@dataclass(frozen=True, slots=True)
class Special:
    """A special stitch. short: `sh`, "" without one. work: `5 hdc in same st`, "" where only told.
    text: in words.
    """

    name: str
    short: str
    work: str
    text: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading between rounds: `Base`."""

    text: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Telling:
    """A step that holds no stitches: `Stuff the ball firmly.` video, video_url: as a round's."""

    text: str
    picture: Picture | None = None
    video: str = ""
    video_url: str = ""


@dataclass(frozen=True, slots=True)
class Round:
    """One printed round or row, or several alike.

    anchors: one a round, the same in both terms: (`pouch-7`, … `pouch-16`). label: `Rounds 7–16`;
    number: `7–16`.
    count: `48`, `24 dc, 24 ch-1 sps`, `40 (48, 56)`, "" where nothing is counted. worked_out: the
    author stated none.
    unit: `sts` where the count is a plain number, for a reader who only hears it, "" else.
    side: `RS`, `WS` or "". video: `6:10`, "" without; video_url leads there.
    """

    anchors: tuple[str, ...]
    word: Literal["round", "row"]
    label: str
    number: str
    text: str
    count: str = ""
    unit: str = ""
    worked_out: bool = False
    side: str = ""
    note: str = ""
    picture: Picture | None = None
    video: str = ""
    video_url: str = ""

    @property
    def anchor(self) -> str:
        return self.anchors[0]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece. anchor: `piece-pouch`, unlike any round's or part's.

    about: lines under its title (`Make 2.`, `Yarn A (lichen).`, `Worked in joined rounds.`). start: `Begin
    with a magic ring.`, "" where there is none. items: headings, tellings and rounds in order. picture: the
    piece drawn on its own, None where it isn't. drawings: its chart, its measures, its profile.
    """

    name: str
    title: str
    anchor: str
    make: int
    about: tuple[str, ...]
    start: str
    items: tuple[Heading | Telling | Round, ...]
    picture: Picture | None = None
    drawings: tuple[Drawing, ...] = ()

    @property
    def rounds(self) -> tuple[Round, ...]:
        return tuple(item for item in self.items if isinstance(item, Round))


@dataclass(frozen=True, slots=True)
class SizePage:
    """One size's name, and the slug of its page; of the page with all sizes where the name is ""."""

    name: str
    slug: str


@dataclass(frozen=True, slots=True)
class Table:
    """A table of measures. place: what it belongs to: `sizes`, `yarns` (others than the author's), `pieces`
    (their yarn), `cords`; on the glossary `hooks`, `weights`.

    head: one a column; the first column names its row. note: below it, "" without.
    """

    place: Literal["sizes", "pieces", "yarns", "cords", "hooks", "weights"]
    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Changed:
    """What a page says otherwise at another height. pieces: those that do.

    finishing: the steps, all of them, with the drawings that the page has there. picture: in the place of the
    first one, None where that is the author's own.
    """

    facts: tuple[Fact, ...]
    sizes: tuple[Size, ...]
    yarns: tuple[Yarn, ...]
    notes: tuple[str, ...]
    pieces: tuple[Piece, ...]
    finishing: tuple[Telling, ...]
    picture: Drawing | None = None
    yarn_note: str = ""
    tables: tuple[Table, ...] = ()


@dataclass(frozen=True, slots=True)
class Setting:
    """One height that a reader may choose. more: rounds more, 0 as written. cells: its row of the table.

    changed: None as written.
    """

    more: int
    label: str
    cells: tuple[str, ...]
    changed: Changed | None = None


@dataclass(frozen=True, slots=True)
class Heights:
    """The heights on offer, lowest first, as a table with a head.

    note: how far its amounts may be off; "" where it has none.
    """

    head: tuple[str, ...]
    settings: tuple[Setting, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Variation:
    """A variation: its title and what is done otherwise."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Licence:
    """name: `CC BY-NC 4.0`. meaning: one sentence in plain words. url: the licence's own page, "" for
    own terms.
    """

    name: str
    meaning: str
    url: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """One change: date (`5 November 2026` or `November 5, 2026`), version, what changed."""

    date: str
    version: str
    note: str


@dataclass(frozen=True, slots=True)
class Leaflet:
    """Everything that a pattern's page or booklet prints, in the order it is printed.

    slug: the page's name, of the YAML file. lang: `en-US` or `en-GB`. ink: yarn A's colour (`#rrggbb`,
    "" without).
    made: what you make (`1 pouch, 2 drawstrings, 1 moon`). facts: the strip below the picture.
    gauge: its lines. foot: lines said once at the end (counts only worked out). words: the template's
    own words in
    these terms (`words["gauge"]` is `Tension` in UK). contact: where to ask, an address or a link.
    changes: the newest first. edition: `Version 1.1.0, 5 November 2026`, "" without. video_length: `12:30`.
    more_pictures: the author's own after the first. yarn_note: how the yarns' amounts were come by.
    """

    title: str
    slug: str
    terms: Terms
    lang: str
    summary: str
    designer: str
    picture: Picture
    made: str
    sizes: tuple[Size, ...]
    facts: tuple[Fact, ...]
    level: Level
    cautions: tuple[Caution, ...]
    yarns: tuple[Yarn, ...]
    hooks: tuple[Hook, ...]
    notions: tuple[str, ...]
    gauge: tuple[str, ...]
    abbreviations: tuple[Abbreviation, ...]
    specials: tuple[Special, ...]
    notes: tuple[str, ...]
    pieces: tuple[Piece, ...]
    finishing: tuple[Heading | Telling, ...]
    variations: tuple[Variation, ...]
    care: str
    licence: Licence | None
    contact: str
    changes: tuple[Change, ...]
    version: str
    published: str
    foot: tuple[str, ...]
    ink: str
    video: str
    words: Mapping[str, str]
    edition: str = ""
    video_length: str = ""
    more_pictures: tuple[Picture, ...] = ()
    tables: tuple[Table, ...] = ()
    heights: Heights | None = None
    size_pages: tuple[SizePage, ...] = ()
    techniques: tuple[str, ...] = ()
    yarn_note: str = ""
