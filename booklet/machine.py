"""What setting up asks of this computer: run a command, find a program, install a system package, hold a lock.

Like bootstrap.py, this file uses the standard library alone and keeps to the language of Python 3.7.
"""

import contextlib
import os
import sys

WINDOWS = os.name == "nt"

# How each installer of system packages is asked.
INSTALL = {
    "apt-get": "sudo apt-get install %s",
    "dnf": "sudo dnf install %s",
    "brew": "brew install %s",
}


class Stop(Exception):
    """Setting up cannot go on; the message says why and what to do."""


class Machine:
    """What setting up asks of this computer. Tests put a pretend one in its place."""

    python = getattr(sys, "_base_executable", "") or sys.executable  # never the Python of a .venv to be remade
    version = "%d.%d" % sys.version_info[:2]

    def run(self, command):
        """Run a command quietly; give its exit code and all that it printed."""
        import subprocess

        quiet = dict(os.environ, DEBIAN_FRONTEND="noninteractive", PIP_DISABLE_PIP_VERSION_CHECK="1")
        done = subprocess.run(command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              env=quiet)
        return done.returncode, done.stdout.decode("utf-8", "replace")

    def has(self, program):
        """Is there such a program on the search path?"""
        import shutil

        return shutil.which(program) is not None

    def has_module(self, name):
        """Is there such a module in this Python?"""
        import importlib.util

        return importlib.util.find_spec(name) is not None

    def is_root(self):
        """May we install system packages without asking?"""
        return hasattr(os, "geteuid") and os.geteuid() == 0

    def say(self, line):
        """Tell the user how far we are, apart from the command's own output."""
        print("booklet: " + line, file=sys.stderr, flush=True)

    def wait(self):
        """Let a moment pass."""
        import time

        time.sleep(0.2)


def add_packages(machine, what, packages):
    """Install Debian packages where we may; elsewhere say which command does it, and stop.

    `packages`: the names to install, by installer, as in INSTALL.
    """
    if not (machine.has("apt-get") and machine.is_root()):
        raise Stop(advice(machine, what, packages))
    machine.say("installing %s with apt-get" % packages["apt-get"])
    command = ["apt-get", "install", "--yes", "--no-install-recommends"] + packages["apt-get"].split()
    code, words = machine.run(command)
    if code:  # a bare system has no package lists yet, or old ones
        machine.run(["apt-get", "update"])
        code, words = machine.run(command)
    if code:
        raise Stop("apt-get could not install %s (%s). Check the network connection and run the same command again."
                   % (packages["apt-get"], last_line(words)))


def advice(machine, what, packages):
    """What is missing, and the command that installs it here, or on every kind of system that we know."""
    here = [manager for manager in packages if machine.has(manager)] or list(packages)
    commands = ["  " + INSTALL[manager] % packages[manager] for manager in here]
    return "%s is missing. Install it, then run the same command again:\n%s" % (what, "\n".join(commands))


def last_line(words):
    """The line that says most of a failed command's output: its last error, else its last line."""
    lines = [line.strip() for line in words.splitlines() if line.strip()]
    errors = [line for line in lines if line.startswith(("ERROR:", "E:"))]
    return (errors or lines or ["it said nothing"])[-1].rstrip(".")


@contextlib.contextmanager
def lock(machine, root):
    """Let one run at a time set up; the system frees the lock even when that run is killed."""
    try:
        file = open(os.path.join(root, ".venv.lock"), "a")
    except OSError as error:
        raise Stop("cannot write in %s (%s). Copy the checkout to a folder of your own." % (root, error.strerror))
    with file:
        if not try_lock(file):
            machine.say("waiting for another run that is setting up")
            while not try_lock(file):
                machine.wait()
        yield


def try_lock(file):
    """Take the lock if it is free."""
    try:
        if WINDOWS:
            import msvcrt

            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
