"""Gates of the ratio, before the mix and after it."""

from __future__ import annotations

from calc.casting.standards import standard
from calc.safety.findings import SAME, Finding, Part, judge, must


def ratio_unit(way: str | None) -> Finding:
    """G5 before the mix: the ratio is measured in the unit the sheet gives it in.

    Parameters
    ----------
    way : "same" (in the sheet's own unit), "densities" (in another, turned with the densities of A and B) or
        "other" (in another, and the densities are not known).

    Returns
    -------
    Finding

    Examples
    --------
    >>> ratio_unit("other").state.value, ratio_unit("densities").state.value
    ('stop', 'no stop found')

    References
    ----------
    Fact 2.19.
    """
    if way in ("densities", "other"):
        return judge("G5", [must("unit-densities", way == "densities")])
    return judge("G5", [must("unit", True if way == "same" else None)])


def ratio_measured(
    a_kg: float | None, b_kg: float | None, sheet_b_per_a: float | None, tolerance: float | None, way: str | None = "same"
) -> Finding:
    """G5 after weighing: how far the ratio of what is in the bucket is from the sheet's.

    Parameters
    ----------
    a_kg, b_kg : what was weighed, more than 0, kg.
    sheet_b_per_a : the sheet's parts of B to one part of A, by weight.
    tolerance : the error the sheet allows, as a share; None where the sheet does not say.
    way : as in :func:`ratio_unit`. Only "same" lets weights be held against the sheet's ratio.

    Returns
    -------
    Finding
        Without the sheet's tolerance an error above the worst that resin makers allow (``data/mixing.csv``) still stops; a smaller one is
        not checked. A stop names the part that is short: with ``r`` the ratio, B / r - A of A or r A - B of B.

    Examples
    --------
    >>> ratio_measured(1.0, 0.45, 0.45, None).state.value, ratio_measured(1.0, 0.50, 0.45, None).state.value
    ('not checked', 'stop')
    >>> ratio_measured(1.0, 0.60, 0.50, 0.02).parts[0].lacks
    ('A', 0.2)
    >>> ratio_measured(1.0, 0.60, 0.50, 0.02, "densities").state.value
    'not checked'

    References
    ----------
    Fact 2.22: two resin makers weigh to 2 % and put 5 % at worst.
    """
    if way is None:
        return judge("G5", [must("unit", None)])
    if way != "same":
        return judge("G5", [must("by-weight", None)])
    if a_kg is None or b_kg is None or sheet_b_per_a is None:
        return judge("G5", [Part("ratio", "share", None, tolerance)])
    error = abs((b_kg / a_kg) / sheet_b_per_a - 1.0)
    error = 0.0 if error < SAME else error
    more_a = b_kg / sheet_b_per_a - a_kg
    lacks = ("A", more_a) if more_a > 0 else ("B", sheet_b_per_a * a_kg - b_kg)
    if tolerance is None:
        worst = Part("ratio-worst", "share", error, standard("ratio worst"), lacks=lacks)
        return judge("G5", [worst, Part("ratio", "share", error, None)])
    return judge("G5", [Part("ratio", "share", error, tolerance, lacks=lacks)])
