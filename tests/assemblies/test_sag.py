"""Shelves under books: the beam's formula worked by hand, and what a maker is told."""

from __future__ import annotations

from fractions import Fraction

from tests.builders import SPECIES, build, inches, make_bookcase, make_job, make_shop
from yieldplan.assemblies.bookcase import Bookcase
from yieldplan.assemblies.bookcase.keys import Back, Loose, Shelf
from yieldplan.assemblies.bookcase.sag import sag
from yieldplan.model.job import Job
from yieldplan.reference.tables import stiffness


def test_sag_is_five_times_load_and_span_to_the_fourth_over_384_stiffness() -> None:
    # Wood Handbook, FPL-GTR-190, 2010, ch. 9: uniform load on two simple supports.
    # Worked by hand: 12 wide and 1 thick, I = 12 x 1 / 12 = 1; 32 lb a foot is 8/3 lb an
    # inch; E = 1,500,000: 5 x 8/3 x 36^4 / (384 x 1,500,000 x 1)
    # = 22,394,880 / 576,000,000 = 0.03888 in.
    sinks = sag(
        span=Fraction(36),
        width=Fraction(12),
        thickness=Fraction(1),
        pounds_per_foot=Fraction(32),
        modulus=Fraction(1_500_000),
    )
    assert sinks == Fraction("0.03888")


def test_half_as_thick_sags_eight_times_as_far_and_twice_as_long_sixteen_times() -> (
    None
):
    # I goes with thickness^3, the formula with span^4.
    def sinks(span: int, thickness: Fraction) -> Fraction:
        return sag(
            span=Fraction(span),
            width=Fraction(10),
            thickness=thickness,
            pounds_per_foot=Fraction(20),
            modulus=Fraction(1_000_000),
        )

    assert sinks(30, Fraction(1, 2)) == 8 * sinks(30, Fraction(1))
    assert sinks(60, Fraction(1)) == 16 * sinks(30, Fraction(1))


def cautions(bookcase: Bookcase, job: Job | None = None) -> list[str]:
    made = build(job or make_job(bookcase)).cautions
    return [each for each in made if "sag" in each]


def test_a_long_thin_shelf_is_named_with_what_would_help() -> None:
    # 48 - 2 x 3/4 = 46-1/2 of poplar 12 x 3/4 under 25 lb a foot:
    # I = 12 x 0.421875 / 12 = 0.421875; 5 x 25/12 x 46.5^4 / (384 E I). The table's E is
    # from memory, so the figure is worked from whatever stands there.
    modulus = stiffness()["yellow-poplar"].modulus
    sinks = (
        5 * Fraction(25, 12) * inches("46-1/2") ** 4
        / (384 * modulus * inches("27/64"))
    )  # fmt: skip
    most = inches("46-1/2") / 384
    assert sinks > most
    shelf = Shelf(wood="poplar")
    (said,) = cautions(make_bookcase(width="48", shelf=shelf, fixed_shelves=3))
    assert said.startswith("den/shelf: loaded with 25 lb a foot it sags about ")
    # Sag goes with 1 / thickness^3: the first eighth for which it is little enough.
    eighths = next(n for n in range(6, 20) if sinks * 27 * 8 <= most * n**3)
    assert eighths == 7
    assert "Make it 7/8 in thick" in said
    # 46-1/2 sags too much by the cube root of sinks / most: halves of an inch down to it.
    halves = next(n for n in range(93, 0, -1) if sinks * Fraction(n, 93) ** 3 <= most)
    assert f"at most {halves // 2}" in said


def test_a_short_shelf_is_not() -> None:
    # 24 - 1-1/2 = 22-1/2: (22-1/2 / 46-1/2)^3 of the share above, a ninth.
    assert cautions(make_bookcase(width="24", fixed_shelves=3)) == []


def test_loose_shelves_are_looked_at_and_light_loads_do_no_harm() -> None:
    loose = Loose(quantity=2, wood="poplar")
    (said,) = cautions(make_bookcase(width="48", loose=loose))
    assert said.startswith("den/loose shelf: ")
    light = make_bookcase(width="48", loose=loose, load=Fraction(2))
    assert cautions(light) == []
    empty = make_bookcase(width="48", loose=loose, load=Fraction(0))
    assert cautions(empty) == []


def test_what_the_shop_says_of_loads_and_sag_rules() -> None:
    bookcase = make_bookcase(width="48", shelf=Shelf(wood="poplar"), fixed_shelves=1)
    strong = make_shop(shelf_load="3")
    assert cautions(bookcase, make_job(bookcase, shop=strong)) == []
    easy = make_shop(shelf_sag="1/100")
    assert cautions(bookcase, make_job(bookcase, shop=easy)) == []


def test_in_millimetres_the_load_is_in_kilograms_on_a_metre() -> None:
    # 25 lb a foot is 25 x 0.45359237 / 0.3048 = 37.204 kg a metre: the caution comes or
    # stays away together in both.
    load = 25 * Fraction("0.45359237") / Fraction("0.3048")
    bookcase = make_bookcase(
        width="48", shelf=Shelf(wood="poplar"), fixed_shelves=1, load=load
    )
    (said,) = cautions(bookcase, make_job(bookcase, unit="mm"))
    assert "37.2" in said
    assert "kg a metre" in said
    # 46-1/2 in is 1181.1 mm.
    assert "over its 1181.1 mm" in said


def test_a_wood_the_table_lacks_is_said_to_be_so() -> None:
    bookcase = make_bookcase(fixed_shelves=1, back=Back(sheet="ply"))
    job = make_job(bookcase, species={**SPECIES, "walnut": "bog oak"})
    (said,) = cautions(bookcase, job)
    assert said == (
        "den/shelf: how stiff walnut is is not in the table; how far 34 1/2 in of it "
        "sag under books was not looked at."
    )
