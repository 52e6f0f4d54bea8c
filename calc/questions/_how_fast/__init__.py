"""Parts of the question How fast?: what would raise the speed, the words, the working, and the buffing wheel."""
