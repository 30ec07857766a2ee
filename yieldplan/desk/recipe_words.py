"""The table of a recipe in words: its keys, and one to begin from."""

from __future__ import annotations

WORDS = (
    "A piece the shop makes often, said once in its own names; [[NAME]] then asks for "
    "one, its names the keys. A size is reckoned with + − × ÷ (or - * /), brackets, "
    "min( , ) and max( , ); 3/4 is a size, and ÷ divides figures"
)

KEYS = (
    ("words", "text", "", "what it is, in one line"),
    ("sizes", "table of sizes", "", 'what each is usually; "ask": the job must say'),
    ("counts", "table of whole numbers", "", "what each is usually"),
    ("materials", "table of text", "", "the wood, sheet or stick each name usually is"),
    ("also", "table of formulas", "", "what is worked out from sizes and counts"),
    (
        "part",
        "list of tables",
        "needed",
        "keys as of [[part]]; sizes and counts are formulas, a quantity of 0 leaves it out",
    ),
    (
        "check",
        "list of tables",
        "",
        "words, measured and should_be: formulas that must agree; shelf.length is the part's",
    ),
)

EXAMPLE = """\
[recipe.wall_shelf]
sizes = { width = "ask", depth = "7", board = "3/4" }
counts = { shelves = 2 }
materials = { outside = "oak" }
also = { inside = "width - 2 * board" }

[[recipe.wall_shelf.part]]
name = "shelf"
quantity = "shelves"
wood = "outside"
between = { clear = "inside", joint = "dado", mate = "board" }
width = "depth - 1/4"
thickness = "board"

[[wall_shelf]]
name = "hall"
width = "30\""""
