"""Parts of the question How much to weigh?: the plan of the pours, the words, and the working."""
