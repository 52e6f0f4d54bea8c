"""Parts of the question Is the air right?: the coldest thing and the resin, the words, the answer, the working."""
