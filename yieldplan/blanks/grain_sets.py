"""Which parts must come from one board in order, so that the grain runs through them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from yieldplan.blanks.allowances import on_width
from yieldplan.blanks.left_out import is_left_out
from yieldplan.faults import Faults, did_you_mean
from yieldplan.model.job import GrainMatch, Job, Laid
from yieldplan.model.parts import Part
from yieldplan.units import tape

MIRRORED: frozenset[Laid] = frozenset({"book-matched", "slip-matched"})
"""Pairs that are two slices of one board."""


@dataclass(frozen=True, kw_only=True)
class GrainSet:
    """A grain match with the parts of it that are still to be made, in order."""

    match: GrainMatch
    parts: tuple[Part, ...]


def grain_sets(parts: Sequence[Part], job: Job, faults: Faults) -> Iterator[GrainSet]:
    """Every set of two or more parts; what cannot match goes to `faults`.

    A part that is made already leaves its set; one that stays behind alone is a part
    like any other.
    """
    known = {part.id: part for part in parts if not part.set_up}
    # A thing that could not be built has had its own message; its parts need none.
    unbuilt = {str(getattr(each, "name", "")) for each in job.assemblies}
    unbuilt -= {name.partition("/")[0] for name in known}
    set_of: dict[str, str] = {}
    for match in job.grain_matches:
        for name in dict.fromkeys(match.parts):
            if name in set_of:
                faults.add(
                    match.where,
                    name,
                    f'it is in two grain matches, the other is "{set_of[name]}"',
                    "Keep it in one of them",
                )
            elif (
                name not in known
                and name not in job.made
                and name.partition("/")[0] not in unbuilt
            ):
                wrong = "no part of the job is called this"
                faults.add(match.where, name, wrong, did_you_mean(name, known))
            set_of.setdefault(name, match.name)
        members = [known[name] for name in match.parts if name in known]
        if len(members) > 1 and _can_match(match, members, known, job, faults):
            yield GrainSet(match=match, parts=tuple(members))


def matched(parts: Sequence[Part], job: Job) -> frozenset[str]:
    """Ids of the parts that are made in a set and in no other way."""
    sets = grain_sets(parts, job, Faults())
    return frozenset(part.id for each in sets for part in each.parts)


def _can_match(
    match: GrainMatch,
    members: Sequence[Part],
    known: Mapping[str, Part],
    job: Job,
    faults: Faults,
) -> bool:
    first = members[0]
    wrong = remedy = said = ""
    for part in members:
        if part.wood != first.wood or part.thickness.value != first.thickness.value:
            said = part.id
            wrong = f"it is not of one wood and thickness with {first.id}"
            remedy = "Match parts of one wood and thickness"
        elif part.strips > 1 or part.glue_up is not None:
            said = part.id
            wrong = "a part glued up from strips cannot run on from another"
            key = "strips" if part.strips > 1 else "glue_up"
            remedy = f"Take it out of the match, or leave {key} out"
    counts = Counter(part.id for part in members)
    copies = {known[name].quantity / count for name, count in counts.items()}
    if not wrong and (len(copies) > 1 or copies.pop() % 1):
        said = match.name
        wrong = "its parts are not asked for equally often, so the sets do not come out whole"
        remedy = "Name each copy by itself, or set the quantities alike"
    if not wrong and match.laid in MIRRORED:
        said, wrong, remedy = _cannot_be_opened(match, members, job)
    if wrong:
        faults.add(match.where, said, wrong, remedy)
    return not wrong


def _cannot_be_opened(
    match: GrainMatch, members: Sequence[Part], job: Job
) -> tuple[str, str, str]:
    """What was said, what is wrong and what to do, where two slices cannot be a pair."""
    first, shop = members[0], job.shop
    sizes = {(part.length.value, part.width.value) for part in members}
    rough = first.width.value + on_width([first], first.width.value, shop).value
    most = f"{tape(shop.resaw_height, job.unit)} {job.unit}"
    if len(match.parts) != 2:
        wrong = (
            f"a {match.laid} set is a pair, and this one has {len(match.parts)} parts"
        )
        return match.name, wrong, "Name its two parts, or lay them end to end"
    if len(sizes) > 1:
        wrong = (
            f"the two halves of a {match.laid} pair are of one size, and these are not"
        )
        return match.name, wrong, "Make them alike, or lay them end to end"
    if first.is_sawn_to_size:
        wrong = f"a {match.laid} pair is resawn from a board, and this is none"
        return first.id, wrong, "Take a wood for it, or lay them end to end"
    if is_left_out("resaw", shop):
        wrong = f"a {match.laid} pair is resawn, and the shop does without resawing"
        return match.name, wrong, "Take resaw out of `without` under [shop]"
    if rough > shop.resaw_height:
        wrong = f"its blank is {tape(rough, job.unit)} {job.unit} wide; the bandsaw resaws {most}"
        return (
            first.id,
            wrong,
            "Make it narrower, or set resaw_height to what your saw takes",
        )
    return "", "", ""
