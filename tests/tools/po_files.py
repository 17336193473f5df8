"""Translations as gettext keeps them: reads and writes .po files, and collects what the sources say. Entries keep the
files that say them, without lines, so that an edit elsewhere in a file changes no translation."""

import dataclasses
import pathlib
import re
import subprocess

ROOT = pathlib.Path(__file__).resolve().parents[2]
FOLDER = ROOT / "src/words"
TEMPLATE = FOLDER / "punchwright.pot"
KEYWORDS = {"tr": "1", "noted": "1", "said": "1", "said_count": "2,3"}
HEAD = """Project-Id-Version: punchwright
Report-Msgid-Bugs-To: people@punchwright.io
Last-Translator: The people of Punchwright <people@punchwright.io>
Language-Team: none
Language: {language}
MIME-Version: 1.0
Content-Type: text/plain; charset=UTF-8
Content-Transfer-Encoding: 8bit
{plurals}"""
PLURALS = {"de": "Plural-Forms: nplurals=2; plural=n != 1;\n"}


@dataclasses.dataclass
class Entry:
    words: str
    many: str | None = None  # where a number decides
    said: list = dataclasses.field(default_factory=list)  # the translation, or one for each plural form
    files: list = dataclasses.field(default_factory=list)
    fuzzy: bool = False

    @property
    def translated(self):
        return bool(self.said) and all(self.said)


ESCAPES = {"n": "\n", "t": "\t", "r": "\r", "a": "\a", "b": "\b", "f": "\f", "v": "\v"}


def unquoted(literal):
    return re.sub(r"\\(.)", lambda found: ESCAPES.get(found[1], found[1]), literal[1:-1])


def quoted(words):
    text = words.replace("\\", "\\\\").replace('"', '\\"')
    for letter, sign in ESCAPES.items():
        text = text.replace(sign, "\\" + letter)
    return f'"{text}"'


def read(text):
    """Entries by their English words; the head of the file, whose words are empty, too. What is obsolete is left out."""
    entries = {}
    entry, place = None, None
    for line in [*text.split("\n"), ""]:  # not splitlines(): words may hold other breaks
        if line.startswith("#~") or re.match(r"#($|[ .|])", line):
            continue
        keyword = re.match(r'(msgid_plural|msgid|msgstr(?:\[\d+\])?) (".*")$', line)
        new = not line or line.startswith("#") or (keyword and keyword[1] == "msgid")
        if entry is not None and new and place != "#":
            entries[entry.words] = entry
            entry, place = None, None
        if line.startswith("#"):
            entry, place = entry or Entry(""), "#"
            if line.startswith("#:"):
                entry.files += line[2:].split()
            entry.fuzzy |= line.startswith("#,") and "fuzzy" in line
        elif keyword:
            entry, place = entry or Entry(""), keyword[1]
            if place == "msgid":
                entry.words = unquoted(keyword[2])
            elif place == "msgid_plural":
                entry.many = unquoted(keyword[2])
            else:
                entry.said.append(unquoted(keyword[2]))
        elif line.startswith('"'):
            more = unquoted(line)
            if place == "msgid":
                entry.words += more
            elif place == "msgid_plural":
                entry.many += more
            else:
                entry.said[-1] += more
    return entries


def field(name, words):
    """In lines as the words have them."""
    lines = words.splitlines(keepends=True)
    if len(lines) < 2:
        return f"{name} {quoted(words)}\n"
    return f'{name} ""\n' + "".join(quoted(line) + "\n" for line in lines)


def written(entries, language=""):
    head = HEAD.format(language=language, plurals=PLURALS.get(language, ""))
    blocks = ['msgid ""\n' + field("msgstr", head)]
    for entry in entries:
        block = "".join(f"#: {file}\n" for file in entry.files) + field("msgid", entry.words)
        if entry.many is None:
            block += field("msgstr", entry.said[0] if entry.said else "")
        else:
            block += field("msgid_plural", entry.many)
            for number, form in enumerate(entry.said or ["", ""]):
                block += field(f"msgstr[{number}]", form)
        blocks.append(block)
    return "\n".join(blocks)


def sources():
    found = [path for path in (ROOT / "src").rglob("*") if path.suffix in (".cpp", ".hpp")]
    return sorted(path.relative_to(ROOT) for path in found)


def collected():
    """What the sources say, file by file: entries without translations."""
    arguments = ["xgettext", "--from-code=UTF-8", "--language=C++", "--add-location=file", "--no-wrap", "--keyword"]
    for name, places in KEYWORDS.items():
        arguments.append(f"--keyword={name}" + (f":{places}" if places != "1" else ""))
        arguments += [f"--flag={name}:{place}:no-c-format" for place in places.split(",")]  # "50 % of" is none
    told = subprocess.run([*arguments, "--output=-", *map(str, sources())], cwd=ROOT, capture_output=True, text=True)
    if told.returncode != 0:
        raise SystemExit(told.stderr)
    entries = read(told.stdout)
    entries.pop("", None)
    for entry in entries.values():
        entry.files = sorted(set(entry.files))
        entry.said = []
    return entries, told.stderr.strip()


def in_order(entries):
    return sorted(entries.values(), key=lambda entry: entry.files[:1])  # sorted() keeps the order within a file
