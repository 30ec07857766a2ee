"""Which parts must come from one board in order, so that the grain runs through them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from yieldplan.faults import Faults, did_you_mean
from yieldplan.model.job import GrainMatch, Job
from yieldplan.model.parts import Part


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
        if len(members) > 1 and _can_match(match, members, known, faults):
            yield GrainSet(match=match, parts=tuple(members))


def matched(parts: Sequence[Part], job: Job) -> frozenset[str]:
    """Ids of the parts that are made in a set and in no other way."""
    sets = grain_sets(parts, job, Faults())
    return frozenset(part.id for each in sets for part in each.parts)


def _can_match(
    match: GrainMatch,
    members: Sequence[Part],
    known: Mapping[str, Part],
    faults: Faults,
) -> bool:
    first = members[0]
    wrong = remedy = said = ""
    for part in members:
        if part.wood != first.wood or part.thickness.value != first.thickness.value:
            said = part.id
            wrong = f"it is not of one wood and thickness with {first.id}"
            remedy = "Match parts of one wood and thickness"
        elif part.strips > 1:
            said = part.id
            wrong = "a part glued up from strips cannot run on from another"
            remedy = "Take it out of the match, or leave strips out"
    counts = Counter(part.id for part in members)
    copies = {known[name].quantity / count for name, count in counts.items()}
    if not wrong and (len(copies) > 1 or copies.pop() % 1):
        said = match.name
        wrong = "its parts are not asked for equally often, so the sets do not come out whole"
        remedy = "Name each copy by itself, or set the quantities alike"
    if wrong:
        faults.add(match.where, said, wrong, remedy)
    return not wrong
