"""The working of Is the air right?: in degrees Celsius and hPa, as the formulas are published."""

from __future__ import annotations

from collections.abc import Iterator

from calc.answers import Working
from calc.casting import air, warming
from calc.casting.air import Air
from calc.constants import ZERO_C
from calc.questions import Given
from calc.questions._is_the_air.case import Coldest, compared_with, resin_of, shorter, thickness_band


def working(given: Given, it: Air, coldest: Coldest) -> Iterator[Working]:
    """In degrees Celsius and hPa, as the formulas are published."""
    room, dew, surface = (kelvin - ZERO_C for kelvin in (it.room_k, it.dew_k, it.surface_k))
    humidity = 100 * it.humidity
    formula = f"g = ln(U / 100) + {air.MAGNUS_SLOPE:g} t / ({air.MAGNUS_OFFSET:g} + t);  t_d = {air.MAGNUS_OFFSET:g} g / ({air.MAGNUS_SLOPE:g} − g)"
    yield Working("Dew point", formula, f"t = {room:.4g} °C, U = {humidity:.4g} %", f"{dew:.2f} °C")
    yield Working("Above the dew point", "t_surface − t_d", f"{surface:.4g} − {dew:.2f}", f"{it.margin_k:.2f} °C")
    wanted = air.limit("dew margin")
    yield Working("Least a surface should have", "t_d + margin", f"{dew:.2f} + {wanted:g}", f"{dew + wanted:.2f} °C")
    pressure = f"{air.saturation_pressure(it.dew_k) / 100:.2f} hPa"
    for name, share in (("Cooled to the humidity limit", "humidity limit"), ("Cooled to where blush is likelier", "blush humidity")):
        reached = air.temperature_for_humidity(it.dew_k, air.limit(share)) - ZERO_C
        numbers = f"e(t_d) = {pressure}, U_limit = {100 * air.limit(share):g} %"
        yield Working(name, "t at which e(t_d) / e(t) = U_limit", numbers, f"{reached:.2f} °C")
    numbers = f"± {100 * it.humidity_error:g} % and ± {it.temperature_error_k:.2g} °C"
    yield Working("Instruments", "each error by itself, added in squares", numbers, f"± {it.margin_error_k:.1f} °C")
    thickness = given.maybe("thickness")
    if thickness is not None and coldest.temperature_k < it.least_k < it.room_k:
        time = warming.time_to_warm(thickness, coldest.temperature_k, it.room_k, it.least_k)
        numbers = f"L = {500 * thickness:.4g} mm, h = {air.limit('room film'):g} W/(m² K), a = {air.limit('wood diffusivity'):.3g} m²/s"
        yield Working("Wood warms through", "t = L² / (a z²) ln(C / θ), z tan z = h L / k", numbers, f"{time / 3600:.2f} h")
    resin = resin_of(given)
    if resin is not None:
        usual, low, high = thickness_band(resin, compared_with(given))
        numbers = f"E = {air.limit('viscosity energy') / 1000:g} kJ/mol, T = {resin:.2f} K, T_ref = {compared_with(given):.2f} K"
        yield Working("Viscosity", "exp(E / R (1 / T − 1 / T_ref))", numbers, f"{usual:.3f} ({low:.3f} to {high:.3f})")
        reference = given.si("sheet_temperature") if given.maybe("working") is not None else it.room_k
        steps = f"{air.limit('halving step'):g} or {air.limit('halving step slow'):g} °C, the shorter"
        steps += ", and never over the sheet's own" if given.maybe("working") is not None else ""
        factor = shorter(resin, reference) if given.maybe("working") is None else min(1.0, shorter(resin, reference))
        yield Working("Working time", "2^(−(T − T_ref) / step)", f"{resin - reference:.4g} °C warmer, step {steps}", f"{factor:.3f}")
