"""The marked proof: the book's text as a galley, with a corrector's marks in its margin."""
