"""What the pot's and the chamber's figures say, gate by gate; any of them may be missing."""

from __future__ import annotations

from collections.abc import Mapping

from calc.casting.standards import standard
from calc.questions import Given
from calc.questions._pot_or_vacuum.words import time_to_use
from calc.safety import gates
from calc.safety.findings import Finding

_SOLD_FOR_IT = {"yes": True, "no": False}


def findings(given: Given) -> Mapping[str, Finding]:
    """Every gate that these inputs can feed, by a name of its own: G12 stands for two moments.

    Parameters
    ----------
    given : the inputs of 'Pot or vacuum?'; any may be missing.

    Returns
    -------
    mapping of str to Finding
        "G12-relief" is the relief valve's own part of its gate.
    """
    rated, relief = given.maybe("rated"), given.maybe("relief")
    return {
        "G12": gates.vessels.pot_pressure(given.maybe("pressure"), rated, relief, given.maybe("hose"), given.maybe("gauge_scale")),
        "G12-relief": gates.vessels.relief_setting(relief, rated),
        "G13": gates.vessels.full_vacuum(_SOLD_FOR_IT.get(given.words("chamber"))),
        "G4": gates.pour.working_time(handling(given), given.maybe("working"), standard("working share"), time_to_use(given)),
    }


def handling(given: Given) -> float | None:
    """Vacuum, mixing and pouring together, s; None while one of them is missing.

    Parameters
    ----------
    given : the inputs of 'Pot or vacuum?'.

    Returns
    -------
    float or None
    """
    pump, hands = given.maybe("pump"), given.maybe("hands")
    return None if pump is None or hands is None else pump + hands
