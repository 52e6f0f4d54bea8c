"""What the sheet says, in SI, with its contradictions told apart from its gaps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from calc.casting import air, resin, warm_resin
from calc.casting.cure.kinetics import REFERENCE_K, ResinClass
from calc.casting.mixing import Ratio, mixed_density, ratio_by_weight
from calc.casting.resin import stand_in
from calc.casting.standards import standard
from calc.errors import InputError, InputErrors
from calc.questions import Given

#: Where a figure comes from: the maker's sheet, arithmetic on it, or what stands in for it.
Origin = Literal["sheet", "worked out", "assumed"]


@dataclass(frozen=True)
class Sheet:
    """The fields of one resin."""

    given: Given

    def check(self) -> None:
        """Every contradiction at once.

        Raises
        ------
        InputErrors
            see ``WORDS`` of the question.
        """
        wrong = tuple(self._contradictions())
        if wrong:
            raise InputErrors(wrong)

    def _contradictions(self) -> Iterator[InputError]:
        maybe = self.given.maybe
        yield from self._ratios_apart()
        density, (low, high) = maybe("density"), self._densities
        if density is not None and low is not None and high is not None and not low * 0.97 <= density <= high * 1.03:
            yield InputError("density", "density-outside", low=str(self._density(low)), high=str(self._density(high)))
        for first, second, code in (
            ("lowest", "highest", "range-crossed"),
            ("earliest", "latest", "window-crossed"),
            ("demould", "cure", "cured-first"),
            ("pot_life", "demould", "hard-first"),
        ):
            lower, upper = maybe(first), maybe(second)
            if lower is not None and upper is not None and lower >= upper:
                yield InputError(second, code, other=self.given.as_typed(first))

    def _density(self, density: float) -> object:
        return self.given.write(density, "density")

    @property
    def _densities(self) -> tuple[float | None, float | None]:
        """Of A and B, the lighter first."""
        a, b = self.given.maybe("density_a"), self.given.maybe("density_b")
        return (a, b) if a is None or b is None else (min(a, b), max(a, b))

    def _ratios_apart(self) -> Iterator[InputError]:
        """The ratio by weight against that by volume: exactly with both densities, else by what the two would need."""
        if not (self.given.typed("ratio") and self.given.typed("ratio_volume")):
            return
        printed, parts = Ratio(*self.given.ratio("ratio")), self.given.ratio("ratio_volume")
        a, b = self.given.maybe("density_a"), self.given.maybe("density_b")
        if a is not None and b is not None:
            if abs(resin.ratio_gap(printed, *parts, a, b)) > stand_in("ratio gap"):
                needed = ratio_by_weight(*parts, a, b)
                yield InputError("ratio", "ratios-disagree", volume=self.given.text("ratio_volume"), weight=f"100:{needed.b:.3g}")
            return
        needs = resin.hardener_over_resin(printed, *parts)
        if not stand_in("hardener over resin low") <= needs <= stand_in("hardener over resin high"):
            yield InputError("ratio", "ratios-apart", volume=self.given.text("ratio_volume"), needs=f"{needs:.2f}")

    # --- ratio and density -------------------------------------------------------------------------

    @cached_property
    def ratio(self) -> tuple[Ratio, Origin] | None:
        """By weight, B for 100 of A; None where the sheet gives none."""
        if self.given.typed("ratio"):
            a, b = self.given.ratio("ratio")
            return Ratio(100.0, 100 * b / a), "sheet"
        if not self.given.typed("ratio_volume"):
            return None
        parts = self.given.ratio("ratio_volume")
        a_density, b_density = self.given.maybe("density_a"), self.given.maybe("density_b")
        if a_density is not None and b_density is not None:
            return ratio_by_weight(*parts, a_density, b_density), "worked out"
        return ratio_by_weight(*parts, 1.0, stand_in("hardener over resin")), "assumed"

    @cached_property
    def density(self) -> tuple[float, Origin]:
        """Of the mix, kg/m3."""
        typed, a, b = (self.given.maybe(name) for name in ("density", "density_a", "density_b"))
        if typed is not None:
            return typed, "sheet"
        if self.ratio is not None and a is not None and b is not None:
            return mixed_density(self.ratio[0], a, b), "worked out"
        return standard("density usual") * 1000, "assumed"

    # --- viscosity ---------------------------------------------------------------------------------

    def viscosity(self, kind: ResinClass) -> tuple[float, Origin]:
        """Of the mix at 25 °C, Pa s; that of its kind where the sheet prints none."""
        typed = self.given.maybe("viscosity")
        if typed is None:
            return resin.usual_viscosity(kind), "assumed"
        at = self.given.si("viscosity_temperature")
        return typed / warm_resin.viscosity_ratio(at, REFERENCE_K, air.limit("viscosity energy")), "sheet" if at == REFERENCE_K else "worked out"
