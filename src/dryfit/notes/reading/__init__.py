"""One line of the notes at a time: signs, words and numbers, and the grammar's parse tree."""
