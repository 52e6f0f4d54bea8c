"""Gates of what is worn: a mask for vapour or for dust, and gloves with their clock."""

from __future__ import annotations

from calc.safety.findings import Finding, Part, State, judge, must
from calc.sources import value

#: Time in one pair of thin disposable gloves, s.
GLOVE_TIME_S = value("gate_figures", "gloves") * 60


def mask(
    worn: str | None,
    filters: str | None,
    used_s: float | None,
    schedule_s: float | None,
    in_date: bool | None,
    shaved: bool | None,
    fit_tested: bool | None,
    sealed: bool | None,
) -> Finding:
    """G16: the mask and its filters for the vapour of a mix.

    Parameters
    ----------
    worn : "tight" (a mask that seals on the face), "hood" (powered, loose-fitting) or "none" (the safety data
        sheet, section 8, asks for none).
    filters : "sheet" (as section 8 names), "vapour" (organic vapour with particles; section 8 not read yet)
        or "particles" (particles only).
    used_s, schedule_s : time on these filters, and the maker's schedule for them, s.
    in_date : the filters' date has not passed.
    shaved, fit_tested, sealed : for a mask that seals on the face; a hood has no seal on the face.

    Returns
    -------
    Finding

    Examples
    --------
    >>> mask("tight", "particles", 0, 3600, True, True, True, True).deciding.id
    'particles-only'

    References
    ----------
    Facts 1.1, 1.11, 1.14, 1.16, 1.19.
    """
    if worn is None:
        return judge("G16", [must("mask-kind", None)])
    if worn == "none":
        return Finding("G16", State.CLEAR, (), "no-mask-asked")
    kind = {"sheet": True, "particles": False}.get(filters or "")
    kind_id = "particles-only" if filters == "particles" else "section-8" if filters == "vapour" else "filter-kind"
    parts = [
        must(kind_id, kind),
        Part("filter-hours", "duration", used_s, schedule_s),
        must("filter-date", in_date),
    ]
    if worn == "tight":
        parts += [
            must("shaved", shaved),
            must("fit-tested", fit_tested),
            must("sealed", sealed),
        ]
    return judge("G16", parts)


def dust_mask(
    worn: str | None, filters: str | None, in_date: bool | None, shaved: bool | None, fit_tested: bool | None, sealed: bool | None
) -> Finding:
    """G16 for dust: the mask worn to cut and to sand.

    Parameters
    ----------
    worn : "tight" (seals on the face), "hood" (powered, loose-fitting) or "none".
    filters : "particles" (P100, P3, FFP3), "lesser" (FFP1, FFP2, N95) or "other" (a cloth, a nuisance mask, or for gas alone).
    in_date : the filters' date has not passed, and they breathe freely.
    shaved, fit_tested, sealed : for a mask that seals on the face.

    Returns
    -------
    Finding
        A lesser filter is not checked: whether it is enough depends on the dust, and going on is the maker's call.

    Examples
    --------
    >>> dust_mask("tight", "other", True, True, True, True).state.value, dust_mask("hood", "particles", True, None, None, None).state.value
    ('stop', 'no stop found')

    References
    ----------
    Facts 1.1, 1.11, 1.14, 1.16, 1.21, 1.27.
    """
    if worn is None:
        return judge("G16", [must("mask-kind", None)])
    if worn == "none":
        return judge("G16", [must("no-dust-mask", False)])
    if filters == "lesser":
        kind = must("lesser-filter", None)
    else:
        kind = must("dust-filter", None if filters is None else filters == "particles")
    parts = [kind, must("filter-date", in_date)]
    if worn == "tight":
        parts += [must("shaved", shaved), must("fit-tested", fit_tested), must("sealed", sealed)]
    return judge("G16", parts)


def gloves(worn_s: float | None, limit_s: float | None = GLOVE_TIME_S, splashed: bool = False) -> Finding:
    """G17: the time in one pair of gloves; a reminder, never a stop.

    Parameters
    ----------
    worn_s : time since this pair went on, s.
    limit_s : the glove maker's time if shorter, else :data:`GLOVE_TIME_S`, s.
    splashed : a splash or a tear since then.

    Returns
    -------
    Finding

    Examples
    --------
    >>> gloves(31 * 60).state.value
    'reminder'

    References
    ----------
    Facts 2.13 to 2.16.
    """
    finding = judge("G17", [Part("glove-time", "duration", worn_s, limit_s)])
    if splashed:
        return Finding("G17", State.REMINDER, finding.parts, "splash")
    if finding.state is State.STOP:
        return Finding("G17", State.REMINDER, finding.parts, "glove-time")
    return finding
