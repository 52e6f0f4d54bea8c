"""Settings that every kind of test shares."""

from __future__ import annotations

import sys

from hypothesis import settings

# Python in the browser is several times slower: the same properties, on fewer examples there.
settings.register_profile("here", max_examples=60, deadline=None)
settings.register_profile("browser", max_examples=10, deadline=None)
settings.load_profile("browser" if sys.platform == "emscripten" else "here")
