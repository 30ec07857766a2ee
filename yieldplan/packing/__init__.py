"""Blanks into pieces: integers only; the one door of OR-Tools."""

from yieldplan.packing.plan_wood import plan_wood
from yieldplan.packing.pose import is_alike, pose
from yieldplan.packing.problem import Problem
from yieldplan.packing.solve import Solution, solve
from yieldplan.packing.stop import Progress, Stop

__all__ = [
    "Problem",
    "Progress",
    "Solution",
    "Stop",
    "is_alike",
    "plan_wood",
    "pose",
    "solve",
]
