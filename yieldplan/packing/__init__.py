"""Blanks into pieces: integers only; the one door of OR-Tools."""

from yieldplan.packing.plan_wood import plan_wood
from yieldplan.packing.pose import pose
from yieldplan.packing.solve import Solution, solve
from yieldplan.packing.stop import Progress, Stop

__all__ = ["Progress", "Solution", "Stop", "plan_wood", "pose", "solve"]
