"""Parts of the question Before a deep pour: what it asks, its gates, its answer."""
