"""Parts of the question How thick, how tall?: the layers of a casting, stacked parts, the strip of a round mould, the push on its walls."""
