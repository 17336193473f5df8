"""Manual pages: of the commands from the words of --help, of the file forms from docs/file-forms.md. The text is put
together as Markdown, and lowdown (a general-purpose tool of Debian) sets it as a manual page."""

import pathlib
import re
import subprocess

import help_words

SOURCE = pathlib.Path(__file__).resolve().parents[2]
DATE = "2026-11-26"  # of the words below; the same page on whatever day it is made

PAGES = {
    "repeat": "a two-colour drawing with everything about knitting it",
    "yoke": "a whole yoke in pieces and tiers",
    "machine": "a knitting machine: its bed, its card and how it reads",
    "motif": "a motif of one's own",
}

FILES = """# FILES

**$XDG_CONFIG_HOME/punchwright/settings**
: the editor's settings, usually *~/.config/punchwright/settings*

**$XDG_DATA_HOME/punchwright/motifs**
: motifs of one's own, usually *~/.local/share/punchwright/motifs*

**$XDG_STATE_HOME/punchwright**
: recent files, the place at the bench, undo steps and work that is not saved yet, usually *~/.local/state/punchwright*
"""


def page(name, section, what, body):
    head = f"title: {name.upper()}\nsection: {section}\ndate: {DATE}\nsource: Punchwright\nvolume: Punchwright\n\n"
    text = f"{head}# NAME\n\n{name} - {what}\n\n{body}"
    roff = subprocess.run(["lowdown", "-s", "-tman", "--out-no-smarty"], input=text, check=True, capture_output=True, text=True).stdout
    # lowdown asks for a typewriter's face that mandoc doesn't know, and sets a list's term as a paragraph drawn up to its
    # words by hand; a manual's own marks for both are shorter, and every viewer knows them.
    roff = re.sub(r"\\f\(?C[BR]?", lambda _: r"\fB", roff)
    roff = re.sub(r'\.LP\n(.*)\n\.if n \\\n\.sp -1v\n\.if t \\\n\.sp -0\.25v\n\.IP "" 5n\n', r".TP 5n\n\1\n", roff)
    roff = re.sub(r"(?m)^\.(S[HS])\n(.*)\n(?:\.[LP]P\n)?", r".\1 \2\n", roff)
    roff = "\n".join(line if line.startswith(".") else minus(line) for line in roff.splitlines())
    lines = [part for line in roff.splitlines() for part in (line if line.startswith(".") else wrapped(line)).splitlines()]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def minus(line):
    """Of an option: a sign to type, no hyphen."""
    return re.sub(r"(\\f[BIR])-|(?<![\w\\-])-(?=[\w-])|(?<=-)-(?=\w)", lambda found: (found[1] or "") + r"\-", line)


def wrapped(line, width=78):
    """Text that is filled anyway, in lines that diff well."""
    if len(line) <= width or line.startswith(" "):
        return line
    out, current = [], ""
    for word in line.split(" "):
        if current and len(current) + 1 + len(word) > width and not word.startswith((".", "'")):
            out.append(current)
            current = word
        else:
            current = f"{current} {word}" if current else word
    return "\n".join([*out, current])


def plain(text):
    return re.sub(r"([*_<>\[\]|\\`])", r"\\\1", text)


def definition(term, words):
    return f"{term}\n: {words}\n"


def of_command(command):
    text = f"## {command.name}\n\n**{plain(command.usage)}**\n\n{plain(command.words)}\n\n"
    for option in command.options:
        if "--help" in option.names or "--version" in option.names:
            continue
        term = ", ".join(f"**{name}**" for name in option.names)
        if option.value:
            term = f"{term} *{plain(option.value)}*".strip()
        text += definition(term, plain(option.words)) + "\n"
    return text


def of_program(program):
    commands = "\n".join(map(of_command, help_words.commands_of(program)))
    body = f"""# SYNOPSIS

**punchwright** \\[*FILE*\\]

**punchwright** *COMMAND* ...

# DESCRIPTION

Punchwright is for people who knit two-colour (Fair Isle) bands on hand-operated knitting machines. It checks a drawn
repeat against the machine that it is for, gives the rows to knit, the card template at full size or the needle chart, the
steps at the machine, and the proof that they give the drawing.

**punchwright** *FILE* opens the editor, a program of its own: see **punchwright-editor**(1). All else works without a
display. A *FILE* named **-** is standard input; an *OUT* named **-** is standard output.

# COMMANDS

**--help** after any command tells of it; **--version** gives the program's version.

{commands}
# EXIT STATUS

**0**
: done and no fault

**1**
: done and faults found

**2**
: cannot be done; nothing is half written, and standard error says what is wrong and what helps

{FILES}
# EXAMPLES

The card of a design, on A4 as the design says:

    punchwright card puffins.repeat -o card.pdf

Everything that can be handed over, into a folder:

    punchwright export puffins.repeat -o handout

# SEE ALSO

**punchwright-editor**(1), {see_also()}
"""
    return page("punchwright", 1, "two-colour bands for knitting machines, from a drawn repeat to a punched card", body)


def see_also(without=""):
    return ", ".join(f"**punchwright-{name}**(5)" for name in PAGES if name != without)


def of_editor():
    body = f"""# SYNOPSIS

**punchwright-editor** \\[**--settings** *FILE*\\] \\[**--motifs** *FOLDER*\\] \\[**--language** *CODE*\\]
\\[**--size** *WIDTHxHEIGHT*\\] \\[**--scale** *NUMBER*\\] \\[*FILE*\\]

# DESCRIPTION

The editor of **punchwright**(1): draw a repeat, see the cloth, be told what would go wrong, and hand over cards, charts
and leaflets. Without *FILE* it offers new designs, demos and recent files. It needs a display with OpenGL 3.2; where there
is none it says so, and **punchwright**(1) does all else.

All commands are in the list that Ctrl+Shift+P opens, with their keys; F1 opens the guide.

# OPTIONS

**--settings** *FILE*
: settings to read and keep, in place of those of the user

**--motifs** *FOLDER*
: the folder of motifs of one's own

**--language** *CODE*
: of the words, **en** or **de**; without it that of the settings, or of the system

**--size** *WIDTHxHEIGHT*
: of the window, in pixels

**--scale** *NUMBER*
: size of text and parts, 0.5 to 4; without it what the display says

**-h**, **--help**
: all options, those for scripts that drive the window too

**--version**
: the program's version

{FILES}
# SEE ALSO

**punchwright**(1), {see_also()}
"""
    return page("punchwright-editor", 1, "draw two-colour bands for knitting machines", body)


def as_list(table):
    """A table of keys, as a manual page lists them."""
    rows = [[cell.strip() for cell in re.split(r"(?<!\\)\|", line.strip().strip("|"))] for line in table.splitlines()]
    text = ""
    for key, *cells in rows[2:]:
        value, words = cells[0], " ".join(cells[1:]).strip()
        text += definition(re.sub(r"`([^`]+)`", lambda name: f"**{plain(name[1])}**", key), f"{value}{': ' if value and words else ''}{words}" or "-")
        text += "\n"
    return text


def of_form(name, sections):
    text = next(part for part in sections if part.startswith((f"`.{name}`", f"A motif of one's own: `.{name}`")))
    text = text.split("\n", 1)[1]
    text = re.sub(r"^\| Key .*\n(?:\|.*\n)+", lambda table: as_list(table[0]), text, flags=re.M)
    text = re.sub(r"\[([^]]+)\]\([^)]*\)", r"\1", text)
    body = f"# DESCRIPTION\n\n{text.strip()}\n\n# SEE ALSO\n\n**punchwright**(1), {see_also(name)}\n"
    return page(f"punchwright-{name}", 5, PAGES[name], re.sub(r"^### ", "## ", body, flags=re.M))


def made(program):
    sections = re.split(r"^## ", (SOURCE / "docs/file-forms.md").read_text(), flags=re.M)
    pages = {"man/punchwright.1": of_program(program), "man/punchwright-editor.1": of_editor()}
    for name in PAGES:
        pages[f"man/punchwright-{name}.5"] = of_form(name, sections)
    return pages
