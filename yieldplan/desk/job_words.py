"""The fixed tables of a job file and the columns of a tally, in words."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

import yieldplan.assemblies
from yieldplan import registry
from yieldplan.assemblies.assembly import Assembly
from yieldplan.desk import recipe_words
from yieldplan.desk.keys import Key
from yieldplan.job.assembly_tables import table_key
from yieldplan.job.tables import hints_of, is_length
from yieldplan.model.faces import FORBIDS, MARK_KINDS
from yieldplan.model.shop import Shop
from yieldplan.reference.tables import shop_defaults
from yieldplan.sources.columns import COLUMNS, NEEDED


@dataclass(frozen=True, kw_only=True)
class FixedTable:
    """A table whose keys are the same in every job.

    Parameters
    ----------
    where
        How its head is written.
    words
        What it says, in one line.
    keys
        Its keys.
    """

    name: str
    where: str
    words: str
    keys: Callable[[], list[Key]]
    example: str = ""


def _keys(*rows: tuple[str, str, str, str]) -> Callable[[], list[Key]]:
    return lambda: [
        Key(name=name, takes=takes, default=default, words=words)
        for name, takes, default, words in rows
    ]


def _shop() -> list[Key]:
    settings = hints_of(Shop)
    return [
        Key(
            name=default.key,
            takes="size" if is_length(settings[default.key]) else "word or number",
            default=f"{default.inch} (in a job in mm {default.mm})",
            words=f"{default.words}; {default.source}",
        )
        for default in shop_defaults().values()
    ]


def _shop_tables() -> str:
    """The tables in which a shop says what holds for every assembly of a kind."""
    known = registry.find(yieldplan.assemblies, Assembly)  # type: ignore[type-abstract]
    return ", ".join(f"[shop.{table_key(name)}]" for name in known)


def _tally() -> list[Key]:
    return [
        Key(
            name=name,
            takes="cell",
            default="needed" if name in NEEDED else "",
            words=words,
        )
        for name, words in COLUMNS.items()
    ]


def _faces() -> list[Key]:
    return [
        Key(
            name=word,
            takes="word",
            default="",
            words=f"may show {_listed(set(MARK_KINDS) - forbidden)}; "
            f"never {_listed(forbidden)}",
        )
        for word, forbidden in FORBIDS.items()
    ]


def _listed(kinds: Iterable[str]) -> str:
    return ", ".join(kind for kind in MARK_KINDS if kind in set(kinds)) or "nothing"


def _marks() -> list[Key]:
    notes = {
        "knot": "a tight one; sound parts may have it",
        "hole": "also a loose knot, which is going to be one",
        "split": "through the board, from an end",
        "check": "a crack along the grain",
        "wane": "bark or a missing edge",
        "sap": "sapwood",
        "pith": "the heart of the tree",
        "stain": "discoloured, sound",
        "worm": "worm holes",
        "shake": "a crack between the rings",
    }
    return [
        Key(
            name=kind,
            takes="kind of mark",
            default="",
            words=notes[kind],
        )
        for kind in MARK_KINDS
    ]


_ALL: Iterable[FixedTable] = (
    FixedTable(
        name="job",
        where="at the head of the file",
        words="What the job is called and how it is counted",
        keys=_keys(
            ("title", "text", "needed", "what stands on every sheet"),
            ("unit", '"in" or "mm"', "needed", "unit of a bare number"),
            ("currency", "three letters", "needed", "such as USD"),
            (
                "board_measure",
                '"nhla" or "exact"',
                "nhla (in a job in mm exact)",
                "surface measure by whole feet, or volume",
            ),
            ("minimum_order", "amount", "", "what all that is bought must come to"),
            ("minimum_feet", "amount", "", "the same in board feet; told where short"),
        ),
        example='title = "Hall case"\nunit = "in"\ncurrency = "USD"',
    ),
    FixedTable(
        name="shop",
        where="[shop]",
        words=f"How this shop works; {_shop_tables()} hold for all of their kind",
        keys=_shop,
        example='[shop]\nkerf = "3/32"\nbreakdown = "either"',
    ),
    FixedTable(
        name="wood",
        where="[wood.NAME]",
        words="A species of lumber, by the name that parts and tally use",
        keys=_keys(
            ("species", "species", "", "for how it moves; `yieldplan list species`"),
            ("show_wood", "true or false", "false", "whether smaller offcuts are kept"),
            ("minimum_order", "amount", "", "what the yard sells of it at the least"),
            ("minimum_feet", "amount", "", "the same in board feet; told where short"),
        ),
        example='[wood.walnut]\nspecies = "black walnut"\nshow_wood = true',
    ),
    FixedTable(
        name="sheet",
        where="[sheet.NAME]",
        words="A sheet product that can be bought",
        keys=_keys(
            ("product", "text", "needed", "what the supplier calls it"),
            ("thickness", "size", "needed", "as measured"),
            ("size", "list of 2 × size", "", "across the face grain, along it"),
            ("price", "amount", "", "of one whole sheet"),
            ("quantity", "whole number", "", "how many there are"),
            (
                "sizes",
                "list of tables",
                "",
                "several sizes instead: each its size, price and perhaps quantity",
            ),
            (
                "grain",
                "true or false",
                "true",
                "whether its face shows a grain; parts of one without may be turned",
            ),
        ),
        example='[sheet.bottom]\nproduct = "birch plywood"\nthickness = "5.2 mm"\nsize = ["48", "96"]\nprice = "38.00"\n\n[sheet.back]\nproduct = "hardboard"\nthickness = "1/8 in"\ngrain = false\nsizes = [\n  { size = ["48", "96"], price = "21.00" },\n  { size = ["24", "48"], price = "7.50", quantity = 3 },\n]',
    ),
    FixedTable(
        name="stick",
        where="[stick.NAME]",
        words="Stock of one cross-section in fixed lengths: moulding, dowel, edging",
        keys=_keys(
            ("product", "text", "needed", "what the supplier calls it"),
            ("width", "size", "needed", "as measured; its parts keep it"),
            ("thickness", "size", "needed", "as measured; its parts keep it"),
            (
                "lengths",
                "list of tables",
                "needed",
                "each its length, the price of one, and perhaps quantity",
            ),
        ),
        example='[stick.edging]\nproduct = "maple edging"\nwidth = "3/4 in"\nthickness = "1/8 in"\nlengths = [\n  { length = "8\'", price = "6.40" },\n  { length = "12\'", price = "9.10", quantity = 4 },\n]',
    ),
    FixedTable(
        name="price",
        where="[[price]]",
        words="What a board foot costs where the tally does not say",
        keys=_keys(
            ("wood", "text", "needed", "a wood of the job"),
            ("thickness", "thickness", "needed", "4/4; 13/16 surfaced; 27 mm rough"),
            ("grade", "grade", "", "left out: every grade without a price of its own"),
            ("per_foot", "amount", "", "of a board foot; this or the next"),
            ("per_cubic_metre", "amount", "", "kept by the board foot, to the cent"),
            ("as_of", "date", "", "day of the price list"),
        ),
        example='[[price]]\nwood = "walnut"\nthickness = "4/4"\ngrade = "FAS"\nper_foot = "14.50"\nas_of = 2026-11-02',
    ),
    FixedTable(
        name="recipe",
        where="[recipe.NAME]",
        words=recipe_words.WORDS,
        keys=_keys(*recipe_words.KEYS),
        example=recipe_words.EXAMPLE,
    ),
    FixedTable(
        name="grain match",
        where="[[grain_match]]",
        words="Parts cut from one board, in order, so that the grain runs through them",
        keys=_keys(
            ("name", "text", "needed", "what the set is called"),
            ("parts", "list of text", "needed", "two or more parts, in order"),
            (
                "laid",
                '"end to end", "one above the other", "book-matched" or "slip-matched"',
                "end to end",
                "how they lie in the board; the last two: a pair resawn from one thick blank",
            ),
        ),
        example='[[grain_match]]\nname = "fronts"\nparts = ["upper/front", "lower/front"]',
    ),
    FixedTable(
        name="made",
        where="[made]",
        words="What is made already and left out of the plan",
        keys=_keys(("PART", "whole number", "", "how many of the part are made")),
        example='[made]\n"upper/front" = 1',
    ),
    FixedTable(
        name="tally",
        where="a CSV file",
        words="The columns of a tally, one board a row, in any order",
        keys=_tally,
        example="id,length,width,marks\nW07,9',9-1/2,knot A 31-1/2 to 32-1/2 x 2 to 3-1/2",
    ),
    FixedTable(
        name="faces",
        where='show_face = "clear", back_face = "sound"',
        words="What a part's face must be free of; marks through the board count on both",
        keys=_faces,
        example='show_face = "sap allowed"',
    ),
    FixedTable(
        name="marks",
        where="column marks of a tally",
        words="What is wrong with a board: kind, face (none: through it), stretch of length, stretch of width (none: all of it); from the numbered end and the near edge",
        keys=_marks,
        example="knot A 31-1/2 to 32-1/2 x 2 to 3-1/2 | split 0 to 7",
    ),
)
TABLES = {table.name: table for table in _ALL}
