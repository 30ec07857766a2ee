"""Hands a folder of papers over whole or not at all, and never over somebody's own work."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

MANIFEST = ".yieldplan-files"
"""Stands in every folder handed over: what was written, so that it is known again."""
_SYSTEM_FILES = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})
"""A file browser leaves these behind by looking at a folder; nobody's work is in them."""
_LOCKS = (("~$", ""), (".~lock.", "#"))
"""How the names of the files begin and end that a spreadsheet leaves while one is open."""


class FolderKept(RuntimeError):  # noqa: N818 - named for what happened
    """The folder was left as it was; says why and what to do."""

    def __init__(self, folder: Path, wrong: str, remedy: str) -> None:
        self.folder = folder
        super().__init__(f"{folder}: {wrong}.\n  {remedy}.")


def deliver(folder: Path, fill: Callable[[Path], object]) -> tuple[Path, ...]:
    """Let `fill` write its files, and put them in place as `folder`.

    The files are written into a folder beside the target, synced to the disk and moved
    into place in one step. A folder that is there already is replaced only where every
    file in it was written by this function and is unchanged.

    Returns
    -------
    tuple of Path
        The files handed over, in their place.

    Raises
    ------
    FolderKept
        When something in the folder is not ours; nothing was touched.
    OSError
        When the disk refuses; the folder is as it was before.
    """
    target = folder.resolve()
    _look(folder, target)
    target.parent.mkdir(parents=True, exist_ok=True)
    with _folder_beside(target) as staged:
        fill(staged)
        files = sorted(_files_in(staged))
        _note_down(staged, files)
        _sync(staged)
        # Planning may have taken minutes: somebody may have put a file there since.
        _look(folder, target)
        _move_into_place(staged, target)
    return tuple(folder / file for file in files)


def look_before(folder: Path) -> None:
    """Find out before a long plan whether `deliver` would refuse the folder.

    Raises
    ------
    FolderKept
        When it would.
    """
    target = folder.resolve()
    _look(folder, target)
    above = next(each for each in target.parents if each.exists())
    if not above.is_dir():
        raise FolderKept(folder, f"{above} is a file", "Name another folder with --out")
    if not os.access(above, os.W_OK):
        raise FolderKept(
            folder,
            f"nothing may be written in {above}",
            "Name another folder with --out",
        )


def _look(folder: Path, target: Path) -> None:
    if not target.exists():
        return
    if not target.is_dir():
        raise FolderKept(folder, "this is a file", "Name a folder with --out")
    if target == Path.cwd() or target in Path.cwd().parents:
        raise FolderKept(
            folder, "you are working in this folder", "Name a new folder inside it"
        )
    ours = _manifest(target)
    strange = sorted(set(_files_in(target)) - set(ours) - {MANIFEST})
    is_open = [name for name in strange if _is_lock(name)]
    if is_open:
        raise FolderKept(
            folder,
            f"a file in it is open in another program ({is_open[0]})",
            "Close it there and run this again",
        )
    strange = [name for name in strange if Path(name).name not in _SYSTEM_FILES]
    if strange:
        raise FolderKept(
            folder,
            f"it holds files this program did not write ({_some(strange)})",
            "Move them away, or name another folder with --out",
        )
    changed = [
        name for name, mark in ours.items() if not _is_unchanged(target / name, mark)
    ]
    if changed:
        raise FolderKept(
            folder,
            f"files in it were changed since they were written ({_some(changed)})",
            "Move the folder away to keep them, or name another one with --out",
        )


def _manifest(folder: Path) -> dict[str, str]:
    """What stands in the folder's manifest; nothing where it has none that can be read."""
    try:
        noted = json.loads((folder / MANIFEST).read_bytes())
    except (FileNotFoundError, ValueError):
        return {}
    files = noted.get("files") if isinstance(noted, dict) else None
    if not isinstance(files, dict):
        return {}
    return {name: mark for name, mark in files.items() if isinstance(mark, str)}


def _note_down(folder: Path, files: list[str]) -> None:
    noted = {"files": {name: _mark_of(folder / name) for name in files}}
    text = json.dumps(noted, ensure_ascii=False, indent=1)
    (folder / MANIFEST).write_bytes(f"{text}\n".encode())


def _mark_of(file: Path) -> str:
    return hashlib.sha256(file.read_bytes()).hexdigest()


def _is_unchanged(file: Path, mark: str) -> bool:
    # A file of ours that was thrown away is no loss either.
    if not file.exists() and not file.is_symlink():
        return True
    return file.is_file() and not file.is_symlink() and _mark_of(file) == mark


def _files_in(folder: Path) -> Iterator[str]:
    """Everything in the folder that is no plain folder, by its path from there."""
    for place, folders, files in os.walk(folder):
        here = Path(place)
        links = [name for name in folders if (here / name).is_symlink()]
        for name in (*files, *links):
            yield (here / name).relative_to(folder).as_posix()


def _is_lock(name: str) -> bool:
    last = Path(name).name
    return any(last.startswith(head) and last.endswith(tail) for head, tail in _LOCKS)


def _some(names: list[str]) -> str:
    shown = ", ".join(names[:3])
    return f"{shown} and {len(names) - 3} more" if len(names) > 3 else shown


@contextmanager
def _folder_beside(target: Path) -> Iterator[Path]:
    """A fresh folder on the same disk; gone afterwards if it was not moved into place."""
    staged = Path(tempfile.mkdtemp(prefix=f".{target.name}.", dir=target.parent))
    try:
        # mkdtemp makes a private folder; papers are handed over like any other file.
        mask = os.umask(0)
        os.umask(mask)
        staged.chmod(0o777 & ~mask)
        yield staged
    finally:
        if staged.exists():
            shutil.rmtree(staged)


def _sync(folder: Path) -> None:
    for name in _files_in(folder):
        with (folder / name).open("rb+") as file:
            os.fsync(file.fileno())
    for place, _, _ in os.walk(folder):
        _sync_folder(Path(place))


def _sync_folder(folder: Path) -> None:
    # Windows cannot open a folder, and writes its entries through.
    if os.name == "posix":
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _move_into_place(staged: Path, target: Path) -> None:
    if not target.exists():
        staged.rename(target)
        _sync_folder(target.parent)
        return
    old = Path(tempfile.mkdtemp(prefix=f".{target.name}.old.", dir=target.parent))
    aside = old / target.name
    try:
        target.rename(aside)
    except OSError:
        old.rmdir()
        raise
    try:
        staged.rename(target)
    except OSError:
        aside.rename(target)
        old.rmdir()
        raise
    _sync_folder(target.parent)
    _throw_away(aside, old)


def _throw_away(aside: Path, old: Path) -> None:
    """Remove the old folder's files that are ours; anything else stays where it is."""
    ours = _manifest(aside)
    for name in _files_in(aside):
        file = aside / name
        is_ours = name == MANIFEST or file.name in _SYSTEM_FILES
        if is_ours or (name in ours and _is_unchanged(file, ours[name])):
            file.unlink()
    for place, _, _ in os.walk(aside, topdown=False):
        if not any(Path(place).iterdir()):
            Path(place).rmdir()
    if not any(old.iterdir()):
        old.rmdir()
