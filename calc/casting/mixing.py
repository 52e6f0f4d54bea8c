"""A and B and the ratio between them: what each batch takes of both.

Masses in kg, volumes in m3, densities in kg/m3. A ratio inside is always by
weight; a ratio by volume is turned into one first, with both densities.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.guards import require_positive

#: A count or a reading this near a whole number of steps is that number: floats, not grams.
NEAR = 1e-9


@dataclass(frozen=True)
class Ratio:
    """Parts by weight, as on the sheet: 100:45 is ``Ratio(100, 45)``.

    Parameters
    ----------
    a, b : parts of A and of B by weight, both more than zero.

    Raises
    ------
    ValueError
        A part is zero, negative or not a number.

    Examples
    --------
    >>> Ratio(100, 45).b_per_a
    0.45
    """

    a: float
    b: float

    def __post_init__(self) -> None:
        require_positive(parts_of_a=self.a, parts_of_b=self.b)

    @property
    def b_per_a(self) -> float:
        """How much B goes with one of A, by weight."""
        return self.b / self.a


@dataclass(frozen=True)
class Parts:
    """What is weighed for one pour: mass of A and of B, kg."""

    a: float
    b: float

    @property
    def total(self) -> float:
        """Mixed resin, kg."""
        return self.a + self.b


def ratio_by_weight(volume_of_a: float, volume_of_b: float, density_of_a: float, density_of_b: float) -> Ratio:
    """Turn a ratio by volume into one by weight: a:b becomes a*rho_A : b*rho_B.

    Parameters
    ----------
    volume_of_a, volume_of_b : parts by volume, more than zero.
    density_of_a, density_of_b : kg/m3, from the label, more than zero.

    Returns
    -------
    Ratio
        By weight, with A scaled to 100.

    Raises
    ------
    ValueError
        Something is zero or negative.

    Examples
    --------
    >>> round(ratio_by_weight(2, 1, 1150, 980).b, 1)
    42.6

    References
    ----------
    Exact: mass is density times volume.
    """
    require_positive(density_of_a=density_of_a, density_of_b=density_of_b)
    by_volume = Ratio(volume_of_a, volume_of_b)
    return Ratio(100.0, 100.0 * by_volume.b_per_a * density_of_b / density_of_a)


def mixed_density(ratio: Ratio, density_of_a: float, density_of_b: float) -> float:
    """Density of the mixed liquid when the two volumes simply add: (mA+mB)/(mA/rho_A+mB/rho_B).

    Parameters
    ----------
    ratio : by weight.
    density_of_a, density_of_b : kg/m3, more than zero.

    Returns
    -------
    float
        kg/m3.

    Notes
    -----
    The liquids shrink a little as they cure; this is the liquid just mixed.

    Examples
    --------
    >>> round(mixed_density(Ratio(100, 45), 1130, 1010), 1)
    1089.8

    References
    ----------
    Exact for volumes that add.
    """
    require_positive(density_of_a=density_of_a, density_of_b=density_of_b)
    return (ratio.a + ratio.b) / (ratio.a / density_of_a + ratio.b / density_of_b)


def split(total: float, ratio: Ratio) -> Parts:
    """A and B for a total: mA = M a/(a+b), mB = M b/(a+b).

    Parameters
    ----------
    total : mixed resin wanted, kg, more than zero.
    ratio : by weight.

    Returns
    -------
    Parts
        Exact, not rounded to a scale.

    Examples
    --------
    >>> parts = split(1.870, Ratio(100, 45))
    >>> round(parts.a, 4), round(parts.b, 4)
    (1.2897, 0.5803)

    References
    ----------
    Exact arithmetic.
    """
    require_positive(total=total)
    mass_of_a = total * ratio.a / (ratio.a + ratio.b)
    return Parts(mass_of_a, total - mass_of_a)


def parts_from_a(mass_of_a: float, ratio: Ratio) -> Parts:
    """The batch that a weighed amount of A makes: mB = mA b/a. For A over-poured, too.

    Parameters
    ----------
    mass_of_a : kg really in the bucket, more than zero.
    ratio : by weight.

    Returns
    -------
    Parts
        That A, and the B it needs.

    Examples
    --------
    >>> round(parts_from_a(1.342, Ratio(100, 45)).b, 4)
    0.6039

    References
    ----------
    Exact arithmetic.
    """
    require_positive(mass_of_a=mass_of_a)
    return Parts(mass_of_a, mass_of_a * ratio.b_per_a)


def parts_from_b(mass_of_b: float, ratio: Ratio) -> Parts:
    """The batch that a weighed amount of B makes: mA = mB a/b.

    Parameters
    ----------
    mass_of_b : kg really in the bucket, more than zero.
    ratio : by weight.

    Returns
    -------
    Parts
        The A it needs, and that B.

    Examples
    --------
    >>> round(parts_from_b(0.600, Ratio(100, 45)).a, 4)
    1.3333

    References
    ----------
    Exact arithmetic.
    """
    require_positive(mass_of_b=mass_of_b)
    return Parts(mass_of_b / ratio.b_per_a, mass_of_b)


def parts_with(planned: Parts, in_bucket_a: float, in_bucket_b: float, ratio: Ratio) -> Parts:
    """The smallest batch on ratio that holds the plan and what is already in the bucket.

    Parameters
    ----------
    planned : what this pour was to be, kg.
    in_bucket_a, in_bucket_b : already in, kg, zero or more.
    ratio : by weight.

    Returns
    -------
    Parts
        The plan itself while neither part is over it; else grown to fit the part that is.

    Raises
    ------
    ValueError
        Less than nothing is in the bucket.

    Examples
    --------
    >>> round(parts_with(Parts(1.2897, 0.5803), 1.342, 0, Ratio(100, 45)).total, 4)
    1.9459

    References
    ----------
    Exact arithmetic.
    """
    if in_bucket_a < 0 or in_bucket_b < 0:
        raise ValueError("what is in the bucket cannot be less than nothing")
    batch = planned
    if in_bucket_a > batch.a:
        batch = parts_from_a(in_bucket_a, ratio)
    if in_bucket_b > batch.b:
        batch = parts_from_b(in_bucket_b, ratio)
    return batch
