"""The line of every key, however TOML writes it."""

from __future__ import annotations

import tomllib
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from yieldplan.job.lines import KeyPath, key_lines

TEXT = '''# a comment with = and [
title = "x # y"
a.b = [1,
  2, { c = 1, "d e" = """
 "quoted"""" },
]
[shop]
'odd key' = \'\'\'
two lines\'\'\'
[[drawer]]
name = ["u", "l"]
front = { wood = "w", joint = { kind = "k" } }
[drawer.back]
day = 2026-11-02 # after
[[drawer]]
name = "\\"z\\""
'''


def test_every_key_has_the_line_it_stands_on() -> None:
    lines = key_lines(TEXT)
    assert lines[("title",)] == 2
    assert lines[("a", "b", 1)] == 4
    assert lines[("a", "b", 1)] == lines[("a", "b", 2, "d e")]
    assert lines[("shop", "odd key")] == 8
    assert lines[("drawer", 0, "front", "joint", "kind")] == 12
    assert lines[("drawer", 0, "back", "day")] == 14
    assert lines[("drawer", 1)] == 15
    assert lines[("drawer", 1, "name")] == 16


def _paths(data: Any, path: KeyPath = ()) -> list[KeyPath]:
    found = [path] if path else []
    pairs = data.items() if isinstance(data, dict) else enumerate(data)
    for word, value in pairs:
        if isinstance(value, (dict, list)):
            found += _paths(value, (*path, word))
        else:
            found.append((*path, word))
    return found


def test_no_key_is_forgotten() -> None:
    assert set(_paths(tomllib.loads(TEXT))) <= set(key_lines(TEXT))


_words = st.text(alphabet="ab=.#[]{}'\" \\", max_size=5)


def _toml(value: Any) -> str:
    if isinstance(value, dict):
        inside = ", ".join(f"{_quoted(k)} = {_toml(v)}" for k, v in value.items())
        return "{ " + inside + " }"
    if isinstance(value, list):
        return "[\n" + ",\n".join(_toml(each) for each in value) + "\n]"
    return _quoted(value) if isinstance(value, str) else str(value)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


@given(
    st.dictionaries(
        _words,
        st.recursive(
            _words | st.integers(0, 9),
            lambda inner: (
                st.lists(inner, max_size=3) | st.dictionaries(_words, inner, max_size=3)
            ),
            max_leaves=8,
        ),
        max_size=4,
    )
)
def test_keys_are_found_whatever_stands_in_quotes(data: dict[str, Any]) -> None:
    text = "\n".join(f"{_quoted(key)} = {_toml(value)}" for key, value in data.items())
    # Lists inside inline tables may break lines, inline tables may not.
    assert tomllib.loads(text) == data
    lines = key_lines(text)
    assert set(_paths(data)) <= set(lines)
    for key in data:
        at = text.split("\n")[lines[(key,)] - 1]
        assert at.startswith(f"{_quoted(key)} =")
