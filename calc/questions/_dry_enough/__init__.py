"""Parts of the question Dry enough?: the wood and its figures, the answer, the cautions, the working."""
