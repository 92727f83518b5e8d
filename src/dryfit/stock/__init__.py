"""What the parts are made from: rough blanks, and the boards that the notes say are there."""
