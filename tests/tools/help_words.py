"""What the command line says of itself, read from its --help: commands, arguments, options and their words. Manual pages
and completions are made of it, so that neither can forget an option."""

import dataclasses
import re
import subprocess


@dataclasses.dataclass
class Option:
    names: list  # "-o", "--output"; of an argument none
    value: str  # "OUT", "knit|purl", or "" for a flag; of an argument its name
    words: str

    @property
    def choices(self):
        return self.value.split("|") if "|" in self.value else []

    @property
    def ends(self):
        """The endings of the files that it names."""
        return re.findall(r"\.([a-z]+)(?=(?: or \.[a-z]+)? file)", self.words)

    @property
    def is_argument(self):
        return not self.names


@dataclasses.dataclass
class Command:
    name: str
    usage: str
    words: str  # a sentence
    options: list


def help_of(program, *command):
    return subprocess.run([program, *command, "--help"], check=True, capture_output=True, text=True).stdout


def entries_in(text):
    """'  name, other VALUE  words' with the words' further lines below them."""
    found = []
    for line in text.splitlines():
        entry = re.match(r"  (\S.*?)  +(\S.*)$", line)
        if entry:
            found.append([entry[1], entry[2]])
        elif found and re.match(r"   +\S", line):
            found[-1][1] += " " + line.strip()
        elif found and not line.strip():
            break
    return found


def option_of(name, words):
    names = re.findall(r"(?<![\w-])--?[a-z][a-z-]*", name)
    value = re.sub(r"(?<![\w-])--?[a-z][a-z-]*,? ?", "", name).strip()
    return Option(names, value if names else name, words)


def command_of(program, name):
    text = help_of(program, name)
    usage, rest = text.split("\n\n", 1)
    words, rest = rest.split("\n\n", 1)
    return Command(name, " ".join(usage.removeprefix("Usage: ").split()), " ".join(words.split()),
                   [option_of(*entry) for entry in entries_in(rest)])


def commands_of(program):
    listed = help_of(program).split("\n\n")[1]
    return [command_of(program, name) for name in [*(name for name, _ in entries_in(listed)), "thumbnail"]]


def machines_of(program):
    listed = subprocess.run([program, "machine"], check=True, capture_output=True, text=True).stdout
    return [line.split()[0] for line in listed.splitlines()]
