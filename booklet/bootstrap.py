"""From a fresh checkout to a working environment, with nothing but the standard library.

`enter()` runs a module of the checkout (`booklet`, `tests`) inside the checkout's own .venv. That is made
on the first run, and mended or made anew when it no longer fits. A stamp, written last, says what it was
made for; while the stamp holds, the way in costs a few small file reads.
This file keeps to the language of Python 3.7, so that an old Python gets a clear line, not a syntax error.
"""

import contextlib
import os
import sys

from booklet.machine import WINDOWS, Machine, Stop, add_packages, advice, last_line, lock

LEAST_PYTHON = (3, 10)
ROOT = os.path.dirname(os.path.dirname(os.path.realpath(__file__)))

# The system libraries that WeasyPrint loads, as its installation page lists them.
PANGO = {
    "apt-get": "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0",
    "dnf": "pango harfbuzz",
    "brew": 'pango && export DYLD_FALLBACK_LIBRARY_PATH="$(brew --prefix)/lib"',
}

NEED_OF_PANGO = "Pango, which sets the pages of the PDF,"

# Modules that must load, by the extra that brings them ("" is what every run needs).
PARTS = {
    "": "babel barcode click fontTools font_source_sans_pro font_source_serif_pro jinja2 markdown markupsafe msgspec nh3 pikepdf PIL"
        " pydyf pypdfium2 resvg_py rich rjsmin segno stdnum svgwrite uharfbuzz watchfiles yaml",
    "test": "coloraide distributed hatchling hypothesis jsonschema networkx numpy packaging papersize pdfua pypdf pytest"
            " scipy selenium skimage tinyhtml5 vermin xdist yamllint",
}
SOUND, BROKEN, NO_PANGO = 0, 1, 4
PROBE = """
import importlib, sys
for name in sys.argv[1:]:
    importlib.import_module(name)
try:
    from weasyprint.text import ffi
except OSError:
    sys.exit({no_pango})
sys.exit({sound} if ffi.harfbuzz_subset else {no_pango})
""".format(sound=SOUND, no_pango=NO_PANGO)


def enter(module, extra="", tools=None):
    """Run `python -m module` with our own arguments inside the checkout's environment. Does not return.

    `tools`: programs that must be on the search path, each with the package that holds it, by installer.
    """
    machine = Machine()
    environment = Environment(machine, ROOT, extra)
    try:
        if sys.version_info < LEAST_PYTHON:
            raise Stop("Python %d.%d or newer is needed; this is Python %s (%s). Run the command with a newer python3."
                       % (LEAST_PYTHON + (machine.version, sys.executable)))
        environment.make_ready()
        for program, packages in (tools or {}).items():
            if not machine.has(program):
                add_packages(machine, "%s, which the tests run," % program, packages)
    except (Stop, OSError) as trouble:
        machine.say(str(trouble))
        sys.exit(2)
    except KeyboardInterrupt:
        sys.exit(130)
    command = [environment.python, "-m", module] + sys.argv[1:]
    if WINDOWS:  # there, exec gives the prompt back before the command has ended
        import subprocess

        sys.exit(subprocess.call(command))
    os.execv(command[0], command)


def pango_advice():
    """What to tell a user whose system has lost Pango, or never had it: where booklet is installed by hand."""
    return advice(Machine(), NEED_OF_PANGO, PANGO)


def is_needed(extra=""):
    """Must this run enter the checkout's environment first? Not where booklet is installed already."""
    environment = Environment(Machine(), ROOT, extra)
    if not os.path.isfile(environment.project) or environment.is_ours():
        return False
    return environment.is_entered() or not any(is_installed_in(folder) for folder in sys.path)


def is_installed_in(folder):
    """Does this folder of installed packages hold us, and not another project of the same name?"""
    for name in os.listdir(folder) if os.path.isdir(folder) else ():
        if name.startswith("booklet-") and name.endswith(".dist-info"):
            with contextlib.suppress(OSError), open(os.path.join(folder, name, "entry_points.txt")) as points:
                return "booklet.cli:main" in points.read()
    return False


class Environment:
    """The checkout's .venv: what it is made for, and how it is made."""

    def __init__(self, machine, root, extra=""):
        self.machine, self.root, self.extra = machine, root, extra
        self.folder = os.path.join(root, ".venv")
        self.python = os.path.join(self.folder, *(("Scripts", "python.exe") if WINDOWS else ("bin", "python")))
        self.packages = os.path.join(
            self.folder, *(("Lib",) if WINDOWS else ("lib", "python" + machine.version)), "site-packages")
        self.stamp = os.path.join(self.folder, "stamp")
        self.project = os.path.join(root, "pyproject.toml")

    def is_entered(self):
        """Does this very Python belong to the environment?"""
        return os.path.realpath(sys.prefix) == os.path.realpath(self.folder)

    def is_ours(self):
        """Is it entered, and does it hold the extra that is asked for?"""
        return self.is_entered() and self.extra in ("", self.stamped()[1])

    def stamped(self):
        """The stamp's four parts: packages last touched, extra, Python and place, pyproject.toml."""
        try:
            with open(self.stamp, encoding="utf-8") as stamp:
                touched, extra, python, place, project = stamp.read().split("\n", 4)
            return touched, extra, (python, place), project
        except (OSError, ValueError):
            return "", "", ("", ""), ""

    def write_stamp(self, touched):
        """Say what the environment is made for now. `touched` is empty while Pango may be missing."""
        parts = (touched, self.extra, self.machine.version, self.root, self.wanted())
        with open(self.stamp + ".new", "w", encoding="utf-8") as stamp:
            stamp.write("\n".join(parts))
        os.replace(self.stamp + ".new", self.stamp)

    def wanted(self):
        """What must be installed: the text of pyproject.toml."""
        with open(self.project, encoding="utf-8") as project:
            return project.read()

    def touched(self):
        """When a package was last added or taken away, in nanoseconds, as text."""
        return str(os.stat(self.packages).st_mtime_ns) if os.path.isdir(self.packages) else "gone"

    def is_kept(self):
        """Can it be mended rather than made anew: of this Python, in this place, and it runs?"""
        return (self.stamped()[2] == (self.machine.version, self.root) and os.access(self.python, os.X_OK)
                and self.machine.run([self.python, "-m", "pip", "--version"])[0] == 0)

    def is_filled(self):
        """Were all packages installed that this pyproject.toml and extra ask for?"""
        _, extra, made_for, project = self.stamped()
        return (made_for == (self.machine.version, self.root) and project == self.wanted()
                and self.extra in ("", extra) and os.access(self.python, os.X_OK))

    def is_ready(self):
        """Is it complete, with no package added or gone since?"""
        return self.is_filled() and self.stamped()[0] == self.touched()

    def make_ready(self):
        """Make or mend it, one run at a time: a second run waits and finds the work done."""
        if self.is_ready():
            return
        with lock(self.machine, self.root):
            if self.is_ready():
                return
            if self.is_filled():
                self.extra = self.extra or self.stamped()[1]
            state = self.probe() if self.is_filled() else BROKEN
            if state == BROKEN:
                state = self.fill()
            self.write_stamp("")
            if state == NO_PANGO:
                add_packages(self.machine, NEED_OF_PANGO, PANGO)
                if self.probe() != SOUND:
                    raise Stop("WeasyPrint cannot load Pango. Run `%s -m weasyprint --info` to see why." % self.python)
            self.write_stamp(self.touched())
            self.machine.say("ready")

    def fill(self):
        """Install all packages, in the environment that is there if it can be kept; give the probe's answer."""
        if self.is_kept():
            self.install()
            state = self.probe()
            if state != BROKEN:
                return state
        self.make()
        self.install()
        state = self.probe()
        if state == BROKEN:
            raise Stop("a package in the new .venv does not load. `%s -m pip check` may say which." % self.python)
        return state

    def make(self):
        """Make an empty environment; what was there is deleted."""
        import shutil

        if not self.machine.has_module("ensurepip"):
            package = "python%s-venv" % self.machine.version
            add_packages(self.machine, "Python's ensurepip module", {"apt-get": package})
        self.machine.say("making .venv with Python %s" % self.machine.version)
        if os.path.islink(self.folder):
            os.unlink(self.folder)
        shutil.rmtree(self.folder, ignore_errors=True)
        code, words = self.machine.run([self.machine.python, "-m", "venv", self.folder])
        if code:
            raise Stop("cannot make the folder .venv (%s). Check that you may write here and that the disk is not full."
                       % last_line(words))

    def install(self):
        """Let pip install the checkout, editable, with what it needs."""
        self.machine.say("installing what %s into .venv (a minute or two)"
                         % ("the tests need" if self.extra else "booklet needs"))
        project = self.root + ("[%s]" % self.extra if self.extra else "")
        code, words = self.machine.run([self.python, "-m", "pip", "install", "--editable", project])
        with open(os.path.join(self.folder, "pip.log"), "w", encoding="utf-8") as log:
            log.write(words)
        if code:
            raise Stop("pip could not install what is needed (%s). Check the network connection and run the same "
                       "command again; all that pip said is in .venv/pip.log." % last_line(words))

    def probe(self):
        """Does everything load? SOUND, BROKEN or NO_PANGO."""
        names = " ".join(PARTS[part] for part in sorted({"", self.extra})).split()
        code, _ = self.machine.run([self.python, "-c", PROBE] + names)
        return code if code in (SOUND, NO_PANGO) else BROKEN
