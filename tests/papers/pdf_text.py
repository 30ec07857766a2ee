"""Reads the words of a PDF back with pdftotext; a test that needs it is skipped where that is missing."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest


def text_in_pdf(content: bytes, folder: Path) -> str:
    """Every word of a PDF in the order it was painted, pages apart by form feeds."""
    program = shutil.which("pdftotext")
    if program is None:
        if os.environ.get("YIELDPLAN_OFFICE") == "required":
            pytest.fail("pdftotext is required here and was not found")
        pytest.skip("pdftotext is not installed")
    file = folder / "read.pdf"
    file.write_bytes(content)
    run = [program, "-raw", "-enc", "UTF-8", str(file), "-"]
    return subprocess.run(run, check=True, capture_output=True).stdout.decode("utf-8")
