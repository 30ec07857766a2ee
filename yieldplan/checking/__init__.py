"""The proof: goes over a plan file again with nothing but Python, and says what does not hold."""

from yieldplan.checking.verdict import check

__all__ = ["check"]
