"""Settings of the whole suite."""

from hypothesis import settings

# No test is judged by its time, and a run finds today what it found yesterday. To look for new examples:
# python3 -m tests --hypothesis-profile=explore
settings.register_profile("steady", deadline=None, derandomize=True)
settings.register_profile("explore", deadline=None, max_examples=1000)
settings.load_profile("steady")
