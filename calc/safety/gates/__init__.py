"""Gates: a plan's figures held against their limits, one point of no return at a time.

Every gate is a pure function on SI floats. It says one of three things: *stop* (a figure is past its
limit), *no stop found* (every figure was there and none is past its limit), *not checked* (a figure is
missing). A missing figure is never a pass, and a figure equal to its limit is not past it. The glove
clock, solvent in the air, noise and thrown work may say a fourth thing, *reminder*: they stop nobody.

What a gate says in words stands in ``data/gates.toml``; these modules hold no sentence a maker reads.
"""

from calc.safety.gates import lathe, pour, ratio, shop, vessels, worn

__all__ = ["lathe", "pour", "ratio", "shop", "vessels", "worn"]
