"""Parts of the question Will it stand?: the piece as typed, what is told of it, the side view."""
