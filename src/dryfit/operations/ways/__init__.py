"""By which machine, jig or hand a cut is made."""
