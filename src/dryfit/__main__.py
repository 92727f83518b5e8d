"""`python -m dryfit` does what `dryfit` does."""

from dryfit.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
