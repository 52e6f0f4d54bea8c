"""Parts of the question When can I?: hours and times of day, the moulds, the clock's words, its drawing and working."""
