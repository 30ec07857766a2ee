"""A folder is handed over whole or not at all, and never over somebody's own work."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from yieldplan.desk import output
from yieldplan.desk.output import MANIFEST, FolderKept, deliver, look_before


def writing(**files: str) -> Callable[[Path], None]:
    def fill(folder: Path) -> None:
        for name, text in files.items():
            (folder / f"{name}.txt").write_text(text, encoding="utf-8")

    return fill


def everything_in(folder: Path) -> dict[str, str]:
    return {
        file.relative_to(folder).as_posix(): file.read_text(encoding="utf-8")
        for file in sorted(folder.rglob("*"))
        if file.is_file() and file.name != MANIFEST
    }


def test_a_new_folder_holds_what_was_written_and_nothing_is_left_beside_it(
    tmp_path: Path,
) -> None:
    files = deliver(tmp_path / "a" / "plan", writing(one="1", two="2"))
    assert files == (tmp_path / "a/plan/one.txt", tmp_path / "a/plan/two.txt")
    assert everything_in(tmp_path) == {"a/plan/one.txt": "1", "a/plan/two.txt": "2"}
    assert [each.name for each in (tmp_path / "a").iterdir()] == ["plan"]


def test_our_own_unchanged_folder_is_replaced_and_old_papers_go(tmp_path: Path) -> None:
    deliver(tmp_path / "plan", writing(old="1", both="1"))
    deliver(tmp_path / "plan", writing(new="2", both="2"))
    assert everything_in(tmp_path) == {"plan/both.txt": "2", "plan/new.txt": "2"}
    assert [each.name for each in tmp_path.iterdir()] == ["plan"]


def test_a_paper_that_was_thrown_away_does_not_stand_in_the_way(tmp_path: Path) -> None:
    deliver(tmp_path / "plan", writing(one="1", two="1"))
    (tmp_path / "plan/one.txt").unlink()
    deliver(tmp_path / "plan", writing(one="2"))
    assert everything_in(tmp_path) == {"plan/one.txt": "2"}


def test_an_empty_folder_may_be_used(tmp_path: Path) -> None:
    (tmp_path / "plan").mkdir()
    deliver(tmp_path / "plan", writing(one="1"))
    assert everything_in(tmp_path) == {"plan/one.txt": "1"}


def add_notes(folder: Path) -> None:
    (folder / "notes.txt").write_text("mine", encoding="utf-8")


def add_deep_notes(folder: Path) -> None:
    (folder / "mine").mkdir()
    (folder / "mine" / "notes.txt").write_text("mine", encoding="utf-8")


def change(folder: Path) -> None:
    (folder / "one.txt").write_text("1, corrected by hand", encoding="utf-8")


def lose_the_manifest(folder: Path) -> None:
    (folder / MANIFEST).unlink()


def damage_the_manifest(folder: Path) -> None:
    (folder / MANIFEST).write_text("[]", encoding="utf-8")


def put_a_link(folder: Path) -> None:
    (folder / "link").symlink_to(folder.parent, target_is_directory=True)


def replace_by_a_link(folder: Path) -> None:
    (folder.parent / "elsewhere.txt").write_text("1", encoding="utf-8")
    (folder / "one.txt").unlink()
    (folder / "one.txt").symlink_to(folder.parent / "elsewhere.txt")


@pytest.mark.parametrize(
    "meddle",
    [
        add_notes,
        add_deep_notes,
        change,
        lose_the_manifest,
        damage_the_manifest,
        put_a_link,
        replace_by_a_link,
    ],
)
def test_a_folder_with_anything_not_ours_is_kept_as_it_is(
    tmp_path: Path, meddle: Callable[[Path], None]
) -> None:
    folder = tmp_path / "plan"
    deliver(folder, writing(one="1"))
    meddle(folder)
    before = everything_in(tmp_path)
    with pytest.raises(FolderKept):
        look_before(folder)
    with pytest.raises(FolderKept, match="plan: "):
        deliver(folder, writing(one="2"))
    assert everything_in(tmp_path) == before


def test_a_folder_of_someone_elses_and_a_file_are_kept(tmp_path: Path) -> None:
    add_notes(tmp_path)
    with pytest.raises(FolderKept, match=r"did not write \(notes.txt\)"):
        deliver(tmp_path, writing(one="1"))
    with pytest.raises(FolderKept, match="this is a file"):
        deliver(tmp_path / "notes.txt", writing(one="1"))
    assert everything_in(tmp_path) == {"notes.txt": "mine"}


def test_a_path_through_a_file_is_refused_before_the_plan_is_made(
    tmp_path: Path,
) -> None:
    add_notes(tmp_path)
    with pytest.raises(FolderKept, match=r"notes\.txt is a file"):
        look_before(tmp_path / "notes.txt" / "plan")
    look_before(tmp_path / "new" / "plan")
    assert everything_in(tmp_path) == {"notes.txt": "mine"}


@pytest.mark.parametrize("lock", ["~$workbook.xlsx", ".~lock.workbook.xlsx#"])
def test_a_workbook_open_in_a_spreadsheet_is_named(tmp_path: Path, lock: str) -> None:
    deliver(tmp_path / "plan", writing(one="1"))
    (tmp_path / "plan" / lock).touch()
    with pytest.raises(FolderKept, match="open in another program"):
        deliver(tmp_path / "plan", writing(one="2"))


def test_what_a_file_browser_leaves_behind_does_not_stand_in_the_way(
    tmp_path: Path,
) -> None:
    deliver(tmp_path / "plan", writing(one="1"))
    (tmp_path / "plan" / ".DS_Store").touch()
    deliver(tmp_path / "plan", writing(one="2"))
    assert everything_in(tmp_path) == {"plan/one.txt": "2"}


def test_the_folder_one_works_in_is_not_pulled_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    with pytest.raises(FolderKept, match="working in this folder"):
        deliver(Path(), writing(one="1"))


def test_a_paper_that_cannot_be_written_leaves_the_old_folder_and_no_scraps(
    tmp_path: Path,
) -> None:
    deliver(tmp_path / "plan", writing(one="1"))

    def fail(folder: Path) -> None:
        writing(one="2")(folder)
        raise OSError(28, "No space left on device")

    with pytest.raises(OSError, match="No space"):
        deliver(tmp_path / "plan", fail)
    assert everything_in(tmp_path) == {"plan/one.txt": "1"}
    assert [each.name for each in tmp_path.iterdir()] == ["plan"]


def test_a_move_that_fails_half_way_puts_the_old_folder_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    deliver(tmp_path / "plan", writing(one="1"))
    rename = Path.rename
    moves: list[Path] = []

    def second_move_fails(self: Path, target: Path) -> Path:
        moves.append(self)
        if len(moves) == 2:
            raise PermissionError(13, "Permission denied")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", second_move_fails)
    with pytest.raises(PermissionError):
        deliver(tmp_path / "plan", writing(one="2"))
    assert len(moves) == 3
    assert everything_in(tmp_path) == {"plan/one.txt": "1"}
    assert [each.name for each in tmp_path.iterdir()] == ["plan"]


def test_a_file_put_there_at_the_last_moment_is_never_thrown_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    deliver(tmp_path / "plan", writing(one="1"))
    move = output._move_into_place

    def with_a_late_file(staged: Path, target: Path) -> None:
        add_notes(target)
        move(staged, target)

    monkeypatch.setattr(output, "_move_into_place", with_a_late_file)
    deliver(tmp_path / "plan", writing(one="2"))
    kept = everything_in(tmp_path)
    assert kept.pop("plan/one.txt") == "2"
    assert list(kept.values()) == ["mine"]


@pytest.mark.skipif(os.name != "posix", reason="rights are told this way on POSIX only")
def test_the_folder_has_the_rights_any_new_folder_would_have(tmp_path: Path) -> None:
    deliver(tmp_path / "plan", writing(one="1"))
    (tmp_path / "other").mkdir()
    assert (tmp_path / "plan").stat().st_mode == (tmp_path / "other").stat().st_mode
