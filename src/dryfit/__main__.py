"""`python -m dryfit` and the command `dryfit`: an interrupt ends them at any moment, quietly.

Nothing of dryfit is loaded before that holds.
"""

import gc
import os
import signal
import sys

INTERRUPTED = 130
"""128 and the number of SIGINT, as shells count; `dryfit.cli.status` has it too."""

LOOK_FOR_RUBBISH = (50_000, 20, 20)
"""After so many new objects, and after so many such looks also among the older ones."""


def run() -> int:
    """Run one command and return its exit status: 130 where an interrupt ended it.

    While dryfit is loaded an interrupt ends the process at once; once the command is over it comes
    too late.  In between the command line decides what it does.
    """
    minds = signal.getsignal(signal.SIGINT) is signal.default_int_handler
    if not minds:
        return _command()
    try:
        signal.signal(signal.SIGINT, lambda *_: os._exit(INTERRUPTED))
        return _command()
    except KeyboardInterrupt:
        return INTERRUPTED
    finally:
        signal.signal(signal.SIGINT, signal.SIG_IGN)


def _command() -> int:
    # Nearly all that a run makes lives to its end: rubbish is looked for seldom.
    gc.set_threshold(*LOOK_FOR_RUBBISH)
    from dryfit.cli.run import main

    if signal.getsignal(signal.SIGINT) is not signal.SIG_IGN:
        signal.signal(signal.SIGINT, signal.default_int_handler)
    return main()


if __name__ == "__main__":
    sys.exit(run())
