"""How much memory and processor time a search takes, its workers' too."""

from __future__ import annotations

import multiprocessing
import resource
import sys
import threading
from pathlib import Path


def cpu() -> float:
    """Seconds of a core that this process and its ended workers have used. [s]"""
    return sum(
        used.ru_utime + used.ru_stime
        for used in map(
            resource.getrusage, (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
        )
    )


class Memory:
    """Most memory this process and its workers hold at one time, sampled for the workers."""

    _EVERY = 0.2
    """[s]"""

    def __init__(self) -> None:
        self._workers = 0.0
        self._over = threading.Event()
        self._watch = threading.Thread(target=self._sample, daemon=True)
        self._watch.start()

    def peak_mb(self) -> float:
        """End the watch. Shared pages count in every process that holds them."""
        self._over.set()
        self._watch.join()
        own = _status("self", "VmHWM")
        if own is None:
            # Where there is no /proc: kilobytes on Linux, bytes on a Mac.
            peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
            peak += resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
            return peak / (1 << 20 if sys.platform == "darwin" else 1 << 10)
        return own + self._workers

    def _sample(self) -> None:
        while not self._over.wait(self._EVERY):
            children = [
                _status(str(child.pid), "VmRSS") or 0.0
                for child in multiprocessing.active_children()
            ]
            self._workers = max(self._workers, sum(children))


def _status(process: str, key: str) -> float | None:
    try:
        lines = Path(f"/proc/{process}/status").read_text("ascii").splitlines()
    except OSError:
        return None
    found = (line.split() for line in lines if line.startswith(f"{key}:"))
    return next((int(words[1]) / 1024 for words in found), None)
