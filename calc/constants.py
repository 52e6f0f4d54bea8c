"""Constants of nature and of the units, as they are defined."""

from __future__ import annotations

ZERO_C = 273.15  # K, exact (nist-sp811)
STANDARD_GRAVITY = 9.80665  # m/s2, exact by definition (nist-sp811)
GAS_CONSTANT = 8.314462618  # J/(mol K), exact by definition (nist-sp811)
