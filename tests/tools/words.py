#!/usr/bin/python3
"""Compares what the sources say with its translations in src/words, and says what is wrong with these; or renews them.
Usage: words.py | words.py renew [MORE.po ...]
Renewing writes the template and each language with what the sources say now: what is no longer said is dropped, what is
new has no translation. Of a language, MORE files give what it lacks, the first of them that has it."""

import pathlib
import re
import subprocess
import sys

import po_files

# Words that are the same in both languages; numbers, units and single letters are anyway.
SAME = {"de": """A4 Ellipse Letter Poncho Pullover Fair Isle Punchwright OpenGL cm mm px kg dpi pt in Name Text Format
    Position Rest Symmetrie Motiv Motive Version bar orange PNG PDF SVG HTML CSV JSON TOML XBM PBM XDG FILE""".split()}
# Keys have other names on other keyboards.
KEYS = {"de": re.compile(r"\b(Ctrl|Shift|Escape|Return|Del|Home|Page ?Up|Page ?Down|Backspace|Space)\b")}
ENDINGS = ".:…;,?!"
# Where the other language ends otherwise: an ordinal is a number with a full stop, a clause within a sentence ends with
# a comma, a question may have its sign.
OTHER_ENDINGS = {"de": {"{}st", "{}nd", "{}rd", "{}th", "Where to begin",
                        "the ring of tier {} closing on a multiple of {} stitches", "equal pieces staying equal",
                        "no decrease row taking more than one stitch in two"}}


def places_of(words, start=0):
    """The {} of a format with what each shows and how, as fmt counts them; None where it is no format."""
    places, stack, automatic = [], [], start
    at = 0
    while at < len(words):
        letter = words[at]
        if not stack and words[at:at + 2] in ("{{", "}}"):
            at += 2
            continue
        if letter == "{":
            number = re.match(r"\d*", words[at + 1:])[0]
            if not number:
                number, automatic = str(automatic), automatic + 1
                stack.append([int(number), "", True])
            else:
                stack.append([int(number), "", False])
                at += len(number)
        elif letter == "}":
            if not stack:
                return None
            place, how, counted = stack.pop()
            if how and not how.startswith(":"):
                return None
            places.append((place, how, counted))
            if stack:
                stack[-1][1] += f"<{place}>"
        elif stack:
            stack[-1][1] += letter
        at += 1
    if stack or len({counted for *_, counted in places}) > 1:
        return None
    return sorted((place, how) for place, how, _ in places)


def ending(words):
    last = words.rstrip().rstrip("\"“”’'»«)").rstrip()[-1:]
    return last if last and last in ENDINGS else ""


def letters_in(words, language):
    """Words that another language would have otherwise."""
    plain = re.sub(r"\{[^}]*\}|--?[a-z][-a-z]*|\.[a-z]+\b|\$?[A-Z_]{3,}|\S+[/.]\S+", " ", words)
    return [word for word in re.findall(r"[^\W\d_]{2,}", plain) if word not in SAME.get(language, ())]


def troubles_of(english, said, language):
    """What is wrong with one form of a translation."""
    ours, theirs = places_of(english), places_of(said)
    if ours != theirs:
        yield f"other places: {ours} in English, {theirs} here"
    for side, strip in (("begins", str.lstrip), ("ends", str.rstrip)):
        blanks = [text.replace(strip(text), "", 1) if text.strip() else text for text in (english, said)]
        if blanks[0] != blanks[1]:
            yield f"{side} with {blanks[1]!r} instead of {blanks[0]!r}"
    shortened = not ending(english) and re.fullmatch(r"\S+\.", said.strip())
    otherwise = shortened or english in OTHER_ENDINGS.get(language, ())
    if ending(english) != ending(said) and not otherwise:
        yield f"ends with {ending(said)!r} instead of {ending(english)!r}"
    first = [re.match(r"\s*([;:,.…(]?)(?!\w)|", text)[1] or "" for text in (english, said)]
    if first[0] != first[1]:
        yield f"begins with {first[1]!r} instead of {first[0]!r}"
    if english == said and letters_in(english, language):
        yield "still in English"
    if key := KEYS[language].search(said) if language in KEYS else None:
        yield f"the key {key[0]} has another name"


def troubles_of_entry(entry, there, language):
    if there is None:
        return ["no translation: add it with words.py renew"]
    if there.fuzzy:
        return ["fuzzy"]
    if not there.translated:
        return ["empty"]
    if (entry.many is None) != (there.many is None) or (entry.many or "") != (there.many or ""):
        return [f"its plural is {entry.many!r} in the sources, {there.many!r} here"]
    if entry.many is None:
        return list(troubles_of(entry.words, there.said[0], language))
    forms = [entry.words] + [entry.many] * (len(there.said) - 1)
    return [trouble for english, said in zip(forms, there.said) for trouble in troubles_of(english, said, language)]


def unseen_words():
    """Calls whose words xgettext can't collect: chosen or joined within the call."""
    chosen = re.compile(r"\b(tr|noted|said)\(\s*(?!\")[^;()]*(?:\([^()]*\)[^;()]*)*\?\s*\"")
    joined = re.compile(r"\b(?:tr|noted|said)\(\s*(?:\"(?:[^\"\\]|\\.)*\"\s*)+\+")
    for path in po_files.sources():
        text = (po_files.ROOT / path).read_text()
        for found in [*chosen.finditer(text), *joined.finditer(text)]:
            line = text.count("\n", 0, found.start()) + 1
            yield f"{path}:{line}: words that are chosen or joined within the call are not collected"


def shown(words):
    return repr(words if len(words) < 90 else words[:88] + "…")


def check():
    entries, warnings = po_files.collected()
    wrong = [*warnings.splitlines(), *unseen_words()]
    languages = sorted(po_files.FOLDER.glob("*.po"))
    if not languages:
        wrong.append("no translation in src/words")
    for path in languages:
        language = path.stem
        there = po_files.read(path.read_text())
        head = there.pop("", None)
        if head is None or "charset=UTF-8" not in head.said[0] or "Plural-Forms:" not in head.said[0]:
            wrong.append(f"{path.name}: its head names no UTF-8 or no plural forms")
        for entry in po_files.in_order(entries):
            for trouble in troubles_of_entry(entry, there.get(entry.words), language):
                wrong.append(f"{path.name}: {entry.files[0]}: {shown(entry.words)}: {trouble}")
        wrong += [f"{path.name}: {shown(words)}: nothing says it" for words in there if words not in entries]
        packed = subprocess.run(["msgfmt", "--check-format", "--check-domain", "--output-file=/dev/null", path],
                                capture_output=True, text=True)
        wrong += packed.stderr.splitlines()
    return wrong


def renewed(path, entries, more):
    """The file as it should be, and what is to be said about it."""
    remarks = []
    known = po_files.read(path.read_text()) if path.is_file() else {}
    origin = {words: path.name for words, entry in known.items() if entry.translated}
    for extra in more:
        for words, entry in po_files.read(extra.read_text()).items():
            if not words or not entry.translated:
                continue
            if words not in origin:
                known[words], origin[words] = entry, extra.name
                continue
            # A text that is said with a number in one place and without in another is one entry: the plural's.
            had = known[words]
            if had.many is None and entry.many is not None:
                known[words] = entry
            if any(one != other for one, other in zip(had.said, entry.said)):
                remarks.append(f"{shown(words)}: {had.said} in {origin[words]}, {entry.said} in {extra.name}")
    for words, entry in entries.items():
        there = known.get(words)
        entry.said = there.said if there is not None and not there.fuzzy else []
        if entry.many is None:
            entry.said = entry.said[:1]
        elif len(entry.said) == 1:
            entry.said = []
    remarks += [f"{shown(words)}: dropped, nothing says it" for words in known if words and words not in entries]
    missing = sum(not entry.translated for entry in entries.values())
    remarks.append(f"{path.name}: {len(entries)} entries, {missing} of them without a translation")
    return po_files.written(po_files.in_order(entries), path.stem), remarks


def renew(more):
    entries, warnings = po_files.collected()
    if warnings:
        print(warnings)
    po_files.TEMPLATE.write_text(po_files.written(po_files.in_order(entries)))
    languages = sorted({*po_files.FOLDER.glob("*.po"), *(po_files.FOLDER / f"{language}.po" for language in SAME)})
    for path in languages:
        text, remarks = renewed(path, entries, more)
        path.write_text(text)
        print("\n".join(remarks))


def main():
    match sys.argv[1:]:
        case []:
            if wrong := check():
                sys.exit("\n".join(wrong))
        case ["renew", *more]:
            renew([pathlib.Path(file) for file in more])
        case _:
            sys.exit(__doc__)


if __name__ == "__main__":
    main()
