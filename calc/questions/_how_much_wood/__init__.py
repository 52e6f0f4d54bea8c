"""Parts of the question How much wood is in it?: the wood and its figures, the answer, the cautions, the working."""
