"""Gates of a pressure pot and of a vacuum chamber: what is planned against what is marked.

Pressures are gauge pressures in Pa.
"""

from __future__ import annotations

from calc.safety.findings import Finding, Part, judge, must


def pot_pressure(
    planned_pa: float | None, pot_pa: float | None, relief_pa: float | None, hose_pa: float | None, gauge_pa: float | None
) -> Finding:
    """G12 before the pressure goes up: what is planned against the lowest marking.

    Parameters
    ----------
    planned_pa : what the regulator is set to, Pa.
    pot_pa, relief_pa, hose_pa, gauge_pa : the pot's working pressure, where the relief valve opens, the marking on hose and
        fittings, the end of the gauge's scale, Pa; None where nobody read it.

    Returns
    -------
    Finding
        All four count; one that was not read leaves it not checked.

    Examples
    --------
    >>> pot_pressure(4.1e5, 4.1e5, 4.1e5, 10e5, 7e5).state.value, pot_pressure(4.2e5, 4.1e5, None, None, None).state.value
    ('no stop found', 'stop')

    References
    ----------
    Fact 6.1.
    """
    limits = {"pot": pot_pa, "relief": relief_pa, "hose": hose_pa, "gauge": gauge_pa}
    return judge("G12", [Part(id, "pressure", planned_pa, limit) for id, limit in limits.items()])


def relief_setting(relief_pa: float | None, pot_pa: float | None) -> Finding:
    """G12 at the relief valve: it opens at the pot's pressure or below.

    Parameters
    ----------
    relief_pa, pot_pa : where the valve opens, and the pot's working pressure, Pa, or None.

    Returns
    -------
    Finding

    Examples
    --------
    >>> relief_setting(5e5, 4e5).state.value, relief_setting(4e5, None).state.value
    ('stop', 'not checked')

    References
    ----------
    Fact 6.1.
    """
    return judge("G12", [Part("relief-set", "pressure", relief_pa, pot_pa)])


def full_vacuum(sold_for_it: bool | None) -> Finding:
    """G13: the chamber was sold for full vacuum; a part of it is not allowed either.

    Parameters
    ----------
    sold_for_it : as its maker says; None where nobody knows.

    Returns
    -------
    Finding

    Examples
    --------
    >>> full_vacuum(None).state.value
    'not checked'

    References
    ----------
    Fact 6.5.
    """
    return judge("G13", [must("full-vacuum", sold_for_it)])
