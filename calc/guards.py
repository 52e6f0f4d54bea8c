"""What arithmetic asks of its figures before it means anything."""

from __future__ import annotations


def require_positive(**values: float) -> None:
    """Refuse what is not more than zero, by its name; for arithmetic that means nothing there.

    Parameters
    ----------
    values : name -> figure, in any unit.

    Raises
    ------
    ValueError
        one of them is zero, negative or not a number.

    Examples
    --------
    >>> require_positive(total=1.0)

    References
    ----------
    Definition.
    """
    for name, value in values.items():
        if not value > 0:
            raise ValueError(f"{name.replace('_', ' ')} must be more than zero, not {value}")
