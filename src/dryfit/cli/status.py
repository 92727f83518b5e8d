"""Exit status, and what stops a command from outside the notes.

0: done, warnings allowed; 1: errors in the notes or in the shop file; 2: wrong usage or the machine
(a file that cannot be read or written); 130: ended by Ctrl-C.
"""

DONE, IN_THE_NOTES, MACHINE, INTERRUPTED = 0, 1, 2, 130


class StoppedError(Exception):
    """Something outside the notes that stops us; its text is the one line to print."""
