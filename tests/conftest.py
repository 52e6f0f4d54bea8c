"""Settings that every kind of test shares."""

from __future__ import annotations

import sys

from hypothesis import settings

# Python in the browser is several times slower: the same properties, on fewer examples there.
# For a search that takes its time: pytest --hypothesis-profile=long tests/property
settings.register_profile("here", max_examples=30, deadline=None)
settings.register_profile("long", max_examples=1000, deadline=None)
settings.register_profile("browser", max_examples=10, deadline=None)
settings.load_profile("browser" if sys.platform == "emscripten" else "here")
