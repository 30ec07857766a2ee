"""Blanks into pieces: integers only; the one door of OR-Tools."""

from yieldplan.packing.ask_wood import Asked, ask_wood
from yieldplan.packing.plan_wood import plan_wood, wood_plan
from yieldplan.packing.problem import Problem
from yieldplan.packing.searching.crew import hands
from yieldplan.packing.searching.hands import Hands, side_by_side
from yieldplan.packing.searching.solve import Solution, solve
from yieldplan.packing.stop import Progress, Stop
from yieldplan.packing.woods import solve_woods

__all__ = [
    "Asked",
    "Hands",
    "Problem",
    "Progress",
    "Solution",
    "Stop",
    "ask_wood",
    "hands",
    "plan_wood",
    "side_by_side",
    "solve",
    "solve_woods",
    "wood_plan",
]
