"""The working of Dry enough?, and what it stands on."""

from __future__ import annotations

from calc.answers import Working
from calc.casting.moisture import percent
from calc.quantity.units import from_si
from calc.quantity.writing import Shown, Style
from calc.questions._dry_enough.case import WHOLE, Wood


def working(wood: Wood) -> tuple[Working, ...]:
    """Each step with its numbers."""
    given, out = wood.given, []
    if wood.judged == "meter" and given.choice("corrects") == "no":
        wettest = given.many("readings")[-1]
        calibrated = given.pick("21 °C", "70 °F")
        formula = "M + 0.5 % × (meter's − wood's temperature) / 10 °F (5.6 °C)"
        numbers = f"{wood.pc(max(wettest, percent('meter low')))} + 0.5 % × ({calibrated} − {wood.warmth(wood.wood_k)}) / {given.pick('5.6 °C', '10 °F')}"
        out.append(Working("Reading, for the wood's temperature", formula, numbers, str(wood.pc(wood.read[-1], "up"))))
    if wood.judged == "analyser":
        share = wood.pc(given.many("readings")[-1])
        out.append(Working("Of the dry weight", "M = s / (1 − s)", f"{share} / (100 % − {share})", str(wood.pc(wood.read[-1], "up"))))
    if wood.judged == "oven" and wood.found is not None:
        dry = _fine(wood, given.si("oven_dry"))
        numbers = f"({_fine(wood, given.si('before'))} − {dry}) / {dry}"
        out.append(Working("Oven test", "M = (m − m_dry) / m_dry", numbers, str(wood.pc(wood.found, "up"))))
    for rate in wood.rates[:1]:
        days = f"{from_si(given.si('apart'), 'time', 'days'):g} days"
        now = _fine(wood, given.si("now"))
        numbers = f"({_fine(wood, given.si('last'))} − {now}) / {now} × 7 / {days}"
        out.append(Working("Lost in a week", "(m1 − m2) / m2 × 7 / days", numbers, str(wood.pc(rate))))
    out.append(_air(wood, "What this air brings it to", given.si("shop"), given.si("humidity"), wood.here))
    if given.choice("home") == "own":
        out.append(_air(wood, "Where it will live", given.si("home_temperature"), given.si("home_humidity"), wood.home))
    lower = f"{wood.level(percent('go'))}, or {wood.level(wood.home)} + {wood.level(percent('match'))}"
    out.append(Working("No reason to wait up to", "the lower of the two", lower, wood.level(wood.limits.go)))
    if wood.moved is not None and wood.found is not None:
        s, m1 = wood.pc(wood.shrinkage.tangential), wood.pc(min(wood.found, percent("fibre saturation")))
        numbers = f"{wood.size()} × ({wood.pc(wood.home).text} − {m1.text}) / (3000/{s.text} − 30 + {m1.text})"
        shown = wood.length(wood.moved)
        sign = "−" if wood.moved < 0 else ""
        out.append(Working("Movement along the rings", "ΔD = D (M2 − M1) / (3000/S − 30 + M1), in %", numbers, f"{sign}{shown}"))
    will_weigh = wood.mass_at(wood.limits.go)
    if will_weigh is not None and wood.found is not None and wood.mass is not None:
        numbers = f"{_fine(wood, wood.mass)} × (100 + {wood.level(wood.limits.go)[:-2]}) / (100 + {wood.pc(wood.found, 'up').text})"
        out.append(Working("Weight when dry enough", "m2 = m1 (100 + M2) / (100 + M1), M in %", numbers, str(wood.weight(will_weigh))))
    return tuple(out)


def _fine(wood: Wood, kg: float) -> Shown:
    """A mass for the working."""
    return wood.given.write(kg, ("mass", Style(wood.given.pick("g", "oz"), figures=4)))


def _air(wood: Wood, title: str, kelvin: float, humidity: float, found: float) -> Working:
    """One equilibrium, for the working."""
    formula = "EMC = 1800/W × [Kh/(1 − Kh) + (K1 Kh + 2 K1 K2 (Kh)²) / (1 + K1 Kh + K1 K2 (Kh)²)], W, K, K1, K2 from T"
    return Working(title, formula, f"T = {wood.warmth(kelvin)}, h = {wood.given.write(humidity, WHOLE)}", str(wood.pc(found)))


def sources(wood: Wood) -> tuple[str, ...]:
    """What the answer stands on."""
    keys = ["wood-handbook-4", "drying-lumber", "practice"]
    keys += {"meter": ["wood-handbook-13"], "oven": ["astm-d4442"], "log": ["judgement"]}.get(wood.judged, [])
    if wood.moved is not None:
        keys.append(wood.shrinkage.source)
    return tuple(dict.fromkeys(keys))
