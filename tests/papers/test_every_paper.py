"""What holds for every paper the registry finds, so that a new one needs no test of its own for it."""

from __future__ import annotations

import dataclasses
import html
import inspect
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.builders_plan import full_job, full_plan, passed, short_plan
from tests.papers.pdf_text import text_in_pdf
from yieldplan import papers
from yieldplan.measure.bid import bid
from yieldplan.model.plan import Plan
from yieldplan.papers.paper import Paper
from yieldplan.registry import find

FOUND = find(papers, Paper)  # type: ignore[type-abstract]
EVERY = pytest.mark.parametrize("name", FOUND)

Write = Callable[[str, Path], tuple[Path, ...]]


def _plan(plan: Plan) -> Write:
    return lambda name, folder: papers.write_all(plan, passed(plan), folder, [name])


def _bid(name: str, folder: Path) -> tuple[Path, ...]:
    plan = full_plan()
    return papers.write_all_bid(
        bid(full_job(), plan.parts, plan.blanks), folder, [name]
    )


EVERY_WAY = pytest.mark.parametrize(
    "write", [_plan(full_plan()), _plan(short_plan()), _bid],
    ids=["a plan", "a plan with a part missing", "a bid"],
)  # fmt: skip


def files_in(folder: Path) -> dict[str, bytes]:
    """Every file below a folder."""
    return {
        file.relative_to(folder).as_posix(): file.read_bytes()
        for file in sorted(folder.rglob("*"))
        if file.is_file()
    }


def text_in(content: bytes, folder: Path) -> str:
    """All that can be read in a file: an office file is unpacked, a PDF read, signs as typed."""
    if content.startswith(b"%PDF"):
        return " ".join(text_in_pdf(content, folder).split())
    if not content.startswith(b"PK"):
        return content.decode("utf-8", errors="replace")
    packed = folder / "packed"
    packed.write_bytes(content)
    with zipfile.ZipFile(packed) as office:
        members = "\n".join(
            office.read(member).decode("utf-8", errors="replace")
            for member in office.namelist()
        )
    return html.unescape(members)


@EVERY
@EVERY_WAY
def test_it_returns_every_file_it_writes_and_all_lie_inside(
    name: str, write: Write, tmp_path: Path
) -> None:
    folder = tmp_path / "plan"
    folder.mkdir()
    returned = write(name, folder)
    assert len(returned) == len(set(returned))
    assert {path.relative_to(folder).as_posix() for path in returned} == set(
        files_in(folder)
    )
    assert list(tmp_path.iterdir()) == [folder]


@EVERY
@EVERY_WAY
def test_the_same_plan_gives_the_same_bytes(
    name: str, write: Write, tmp_path: Path
) -> None:
    once, again = tmp_path / "once", tmp_path / "again"
    for folder in (once, again):
        folder.mkdir()
        write(name, folder)
    assert files_in(once) == files_in(again)


@EVERY
def test_a_plan_has_the_paper_and_nothing_of_it_is_empty(
    name: str, tmp_path: Path
) -> None:
    assert _plan(full_plan())(name, tmp_path)
    assert all(files_in(tmp_path).values())


@EVERY
def test_what_a_person_typed_comes_out_as_it_was_typed(
    name: str, tmp_path: Path
) -> None:
    # Every sign here means something to some file format.
    title = "=2+3 Schrank für Åse & <Co>; {x} %s"
    ids = {part.id: f"Åse & <{n}> {{x}} %s" for n, part in enumerate(full_plan().parts)}
    folder = tmp_path / "plan"
    folder.mkdir()
    _plan(_renamed(full_plan(job=full_job(title=title)), ids))(name, folder)
    read = "".join(text_in(each, tmp_path) for each in files_in(folder).values())
    # A paper may leave out the title, or the parts; what it shows stands there whole.
    assert "Åse & <" in read or "Schrank" in read
    assert read.count("Schrank") == read.count(title)
    for said in ids.values():
        start = said.partition(">")[0]
        assert read.count(f"{start}>") == read.count(said)


def _renamed(plan: Plan, ids: dict[str, str]) -> Plan:
    """The plan with other names for its parts, and for what the saw delivers of them."""
    parts = {
        part.demand: dataclasses.replace(part, id=ids[part.id]) for part in plan.parts
    }
    demands = {old: part.demand for old, part in parts.items()}
    blanks = tuple(
        dataclasses.replace(
            blank,
            makes={demands[each]: n for each, n in blank.makes.items()},
            inside=tuple(
                dataclasses.replace(each, demand=demands[each.demand])
                for each in blank.inside
            ),
        )
        for blank in plan.blanks
    )
    woods = tuple(
        dataclasses.replace(
            wood, need={demands.get(each, each): n for each, n in wood.need.items()}
        )
        for wood in plan.woods
    )
    return dataclasses.replace(
        plan, parts=tuple(parts.values()), blanks=blanks, woods=woods
    )


@EVERY
def test_a_word_that_looks_like_a_formula_is_never_one(
    name: str, tmp_path: Path
) -> None:
    plan = full_plan(job=full_job(title="=2+3"))
    folder = tmp_path / "plan"
    folder.mkdir()
    _plan(plan)(name, folder)
    for content in files_in(folder).values():
        read = text_in(content, tmp_path)
        assert "<f>2+3</f>" not in read
        assert "<f>1+1</f>" not in read


@EVERY
def test_it_stores_nothing_in_the_plan(name: str, tmp_path: Path) -> None:
    plan, before = full_plan(), full_plan()
    _plan(plan)(name, tmp_path)
    for field in dataclasses.fields(plan):
        assert getattr(plan, field.name) == getattr(before, field.name), field.name


@EVERY
def test_it_says_in_one_line_what_it_is(name: str) -> None:
    first = (inspect.getdoc(FOUND[name]) or "").splitlines()[0]
    assert first.endswith(".")
    assert len(first) < 90


def test_a_paper_nobody_knows_is_a_programmers_mistake(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="no paper is called leaflet"):
        papers.write_all(full_plan(), passed(full_plan()), tmp_path, ["leaflet"])
