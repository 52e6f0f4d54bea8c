"""Parts of the question What colour dose?: what was typed, what cannot be, the answer's words, and the working."""
