"""Which grit next? Its fixed words."""

from __future__ import annotations

#: Goal -> what comes after the last grit: in a headline, and as a line of its own.
AFTER = {
    "coat": ("then the finish", "Oil or varnish", "Dust off, wipe with what the finish allows, let it dry."),
    "satin": ("and stop there", "Satin", "Last strokes along the grain or all one way, lathe off."),
    "paste": ("paste after", "Paste by hand", "A little, on a folded paper towel, never cloth; coarse paste until even, then fine on a fresh towel."),
    "clear": ("fine paste after", "Fine paste by hand", "A little, on a folded paper towel, never cloth."),
    "wheel": ("wheel after", "Compounds on the wheel", "Cutting compound, then polishing compound, a wheel for each. Wipe it clean between."),
}
#: What to do when nothing is left to sand: headline and the rest.
READY = {
    "coat": ("Stop sanding", "It is as fine as a finish asks for. Dust off, then coat."),
    "satin": ("Stop here", "It is as fine as satin asks for. Last strokes all one way, lathe off."),
    "paste": ("Paste", "By hand on a folded paper towel, a little at a time, keep it moving."),
    "clear": ("Fine paste", "By hand on a folded paper towel, a little at a time, keep it moving."),
    "wheel": ("Cutting compound", "On its own wheel, light touch, keep the work moving. Then polishing compound on another."),
}
WORDS = {
    "no-such-grit": "{label}: there is no grit {number} in this scale. Those most shops have are {known}.",
}
