"""Completions for bash, zsh and fish, from the words of --help."""

import help_words

PICTURES = ["png", "jpg", "jpeg", "bmp", "pbm", "pgm", "ppm", "xbm"]
HEAD = "# Completion of the command punchwright. Made by tests/tools/make-desktop-files.py from the command line's own help.\n"


def endings_for(option):
    """Of the files that it takes: a list, [] for any file, None for no file."""
    if option.ends:
        return option.ends
    if option.value == "PICTURE" and option.is_argument:
        return PICTURES
    if option.value in ("OUT", "FILE", "PICTURE", "LIST"):
        return []
    return None


def takes_machine(option):
    return option.value == "MACHINE" or "built in" in option.words


def bash(commands, machines):
    cases = []
    for command in commands:
        values = []
        for option in command.options:
            if not option.is_argument and option.value:
                values.append(f"        {'|'.join(option.names)})\n          {bash_value(option, machines)}\n"
                              "          return ;;\n")
        flags = " ".join(name for option in command.options for name in option.names)
        arguments = "; ".join(bash_value(option, machines) for option in command.options if option.is_argument)
        cases.append(f"    {command.name})\n"
                     + (f"      case $prev in\n{''.join(values)}      esac\n" if values else "")
                     + f"      if [[ $cur == -* ]]; then\n        COMPREPLY=($(compgen -W '{flags}' -- \"$cur\"))\n"
                     f"      else\n        {arguments or ':'}\n      fi ;;\n")
    names = " ".join(command.name for command in commands)
    return (HEAD + f"""# shellcheck shell=bash disable=SC2207
_punchwright() {{
  local cur prev words cword
  _init_completion || return
  if ((cword == 1)); then
    COMPREPLY=($(compgen -W '{names} --help --version' -- "$cur"))
    [[ $cur == -* ]] || _filedir '@(repeat|yoke)'
    return
  fi
  case ${{words[1]}} in
{''.join(cases)}  esac
}} && complete -F _punchwright punchwright
""")


def bash_value(option, machines):
    if option.choices:
        return f"COMPREPLY=($(compgen -W '{' '.join(option.choices)}' -- \"$cur\"))"
    if takes_machine(option):
        return f"COMPREPLY=($(compgen -W '{' '.join(machines)}' -- \"$cur\")); _filedir machine"
    if option.value == "FOLDER":
        return "_filedir -d"
    endings = endings_for(option)
    if endings is None:
        return ":"
    return f"_filedir '@({'|'.join(endings)})'" if endings else "_filedir"


def zsh_words(text):
    return text.replace("'", "'\\''").replace("[", "\\[").replace("]", "\\]").replace(":", "\\:")


def zsh_value(option, machines):
    if option.choices:
        return f":value:({' '.join(option.choices)})"
    if takes_machine(option):
        return f":machine:_alternative \"machines:built in:({' '.join(machines)})\" \"files:file:_files -g \\\"*.machine\\\"\""
    if option.value == "FOLDER":
        return ":folder:_files -/"
    endings = endings_for(option)
    if endings is None:
        return f":{option.value.lower()}: "
    return f":file:_files -g \"*.({'|'.join(endings)})\"" if endings else ":file:_files"


def zsh(commands, machines):
    cases = []
    for command in commands:
        lines = []
        for option in command.options:
            value = zsh_value(option, machines) if option.value else ""
            if option.is_argument:
                lines.append(f"'1{value}'")
                continue
            words = zsh_words(option.words)
            again = "*" if "again" in option.words else "(" + " ".join(option.names) + ")"
            for name in option.names:
                lines.append(f"'{again}{name}[{words}]{value}'")
        cases.append(f"    {command.name})\n      _arguments \\\n        " + " \\\n        ".join(lines) + " ;;\n")
    names = "\n".join(f"    '{command.name}:{zsh_words(command.words)}'" for command in commands)
    return ("#compdef punchwright\n" + HEAD + f"""
_punchwright() {{
  local -a commands
  commands=(
{names}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    _files -g '*.(repeat|yoke)'
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
{''.join(cases)}  esac
}}

_punchwright "$@"
""")


def fish(commands, machines):
    lines = [HEAD.rstrip(), "complete -c punchwright -f",
             "complete -c punchwright -n __fish_use_subcommand -k -a '(__fish_complete_suffix .repeat)'"]
    for command in commands:
        seen = f"-n '__fish_seen_subcommand_from {command.name}'"
        lines.append(f"complete -c punchwright -n __fish_use_subcommand -a {command.name} -d '{fish_words(command.words)}'")
        for option in command.options:
            value = fish_value(option, machines)
            if option.is_argument:
                lines.append(f"complete -c punchwright {seen} {value}".rstrip())
                continue
            names = " ".join(f"-l {name[2:]}" if name.startswith("--") else f"-s {name[1:]}" for name in option.names)
            needs = f" -r {value}".rstrip() if option.value else ""
            lines.append(f"complete -c punchwright {seen} {names}{needs} -d '{fish_words(option.words)}'")
    return "\n".join(lines) + "\n"


def fish_words(text):
    return text.rstrip(".").replace("\\", "\\\\").replace("'", "\\'")


def fish_value(option, machines):
    if option.choices:
        return f"-f -a '{' '.join(option.choices)}'"
    if takes_machine(option):
        return f"-k -a '{' '.join(machines)} (__fish_complete_suffix .machine)'"
    if option.value == "FOLDER":
        return "-f -a '(__fish_complete_directories)'"
    endings = endings_for(option)
    if endings is None:
        return "-f"
    offered = " ".join(f"(__fish_complete_suffix .{ending})" for ending in endings)
    return f"-k -a '{offered}'" if endings else "-F"


def made(program):
    commands = help_words.commands_of(program)
    machines = help_words.machines_of(program)
    return {"completions/punchwright.bash": bash(commands, machines), "completions/_punchwright": zsh(commands, machines),
            "completions/punchwright.fish": fish(commands, machines)}
