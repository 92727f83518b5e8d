"""Settings of every test: property tests draw the same examples each time, and time nothing."""

from hypothesis import HealthCheck, settings

settings.register_profile(
    "dryfit",
    database=None,
    deadline=None,
    derandomize=True,
    max_examples=60,
    print_blob=False,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("dryfit")
