# Completion of the command punchwright. Made by tests/tools/make-desktop-files.py from the command line's own help.
# shellcheck shell=bash disable=SC2207
_punchwright() {
  local cur prev words cword
  _init_completion || return
  if ((cword == 1)); then
    COMPREPLY=($(compgen -W 'check card needles mend trace rows steps prove explain fabric leaflet chart yoke export import machine measure swatch thumbnail --help --version' -- "$cur"))
    [[ $cur == -* ]] || _filedir '@(repeat|yoke)'
    return
  fi
  case ${words[1]} in
    check)
      case $prev in
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '--json -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    card)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --card)
          :
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --card -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    needles)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --stay-back -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    mend)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --protect)
          :
          return ;;
        --catch)
          :
          return ;;
        --accept)
          :
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --protect --catch --accept --no-changes --symmetry --whole-symmetry --json -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    trace)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --width)
          :
          return ;;
        --rows)
          :
          return ;;
        --machine)
          COMPREPLY=($(compgen -W 'fine-card-24 standard-card-24 bulky-card-24 bulky-card-12 plastic-by-hand' -- "$cur")); _filedir machine
          return ;;
        --gauge)
          :
          return ;;
        --float)
          :
          return ;;
        --part)
          :
          return ;;
        --split)
          :
          return ;;
        --emphasis)
          :
          return ;;
        --shading)
          COMPREPLY=($(compgen -W 'diffusion dither split' -- "$cur"))
          return ;;
        --ignore)
          :
          return ;;
        --protect)
          :
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --width --rows --machine --gauge --float --part --best-place --split --emphasis --shading --ignore --light-is-contrast --mirror --protect --json -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(png|jpg|jpeg|bmp|pbm|pgm|ppm|xbm)'
      fi ;;
    rows)
      case $prev in
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '--json -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    steps)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '--json -o --output -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    prove)
      case $prev in
        --card)
          _filedir
          return ;;
        --picture)
          _filedir
          return ;;
        --side)
          COMPREPLY=($(compgen -W 'knit purl' -- "$cur"))
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '--card --json --picture --side -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat|yoke)'
      fi ;;
    explain)
      case $prev in
        --seen)
          _filedir
          return ;;
        --side)
          COMPREPLY=($(compgen -W 'knit purl' -- "$cur"))
          return ;;
        --picture)
          _filedir
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '--seen --side --picture --json -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    fabric)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --side)
          COMPREPLY=($(compgen -W 'knit purl' -- "$cur"))
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --side -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    leaflet)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --paper)
          COMPREPLY=($(compgen -W 'a4 letter' -- "$cur"))
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --paper -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    chart)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    yoke)
      case $prev in
        -o|--output)
          _filedir '@(yoke)'
          return ;;
        --sheets)
          :
          return ;;
        --pieces)
          :
          return ;;
        --paper)
          COMPREPLY=($(compgen -W 'a4 letter' -- "$cur"))
          return ;;
        --new)
          COMPREPLY=($(compgen -W 'pullover poncho' -- "$cur"))
          return ;;
        --tier)
          _filedir '@(repeat)'
          return ;;
        --sizes)
          :
          return ;;
        --chest)
          :
          return ;;
        --upper-arm)
          :
          return ;;
        --ease)
          :
          return ;;
        --machine)
          COMPREPLY=($(compgen -W 'fine-card-24 standard-card-24 bulky-card-24 bulky-card-12 plastic-by-hand' -- "$cur")); _filedir machine
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '--json --split -o --output --sheets --pieces --paper --new --tier --sizes --chest --upper-arm --ease --machine -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(yoke)'
      fi ;;
    export)
      case $prev in
        -o|--output)
          _filedir -d
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --stay-back --replace -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat)'
      fi ;;
    import)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --contrast)
          COMPREPLY=($(compgen -W 'darker lighter' -- "$cur"))
          return ;;
        --machine)
          COMPREPLY=($(compgen -W 'fine-card-24 standard-card-24 bulky-card-24 bulky-card-12 plastic-by-hand' -- "$cur")); _filedir machine
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --contrast --machine -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(png|jpg|jpeg|bmp|pbm|pgm|ppm|xbm)'
      fi ;;
    machine)
      case $prev in
        -o|--output)
          _filedir '@(machine)'
          return ;;
        --over-holes)
          :
          return ;;
        --over-rows)
          :
          return ;;
        --edge-to-hole)
          :
          return ;;
        --sheet-width)
          :
          return ;;
        --hole)
          :
          return ;;
        --swatch)
          :
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --over-holes --over-rows --edge-to-hole --sheet-width --hole --swatch -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        COMPREPLY=($(compgen -W 'fine-card-24 standard-card-24 bulky-card-24 bulky-card-12 plastic-by-hand' -- "$cur")); _filedir machine
      fi ;;
    measure)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --paper)
          COMPREPLY=($(compgen -W 'a4 letter roll' -- "$cur"))
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --paper -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        COMPREPLY=($(compgen -W 'fine-card-24 standard-card-24 bulky-card-24 bulky-card-12 plastic-by-hand' -- "$cur")); _filedir machine
      fi ;;
    swatch)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --paper)
          COMPREPLY=($(compgen -W 'a4 letter roll' -- "$cur"))
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --paper -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        COMPREPLY=($(compgen -W 'fine-card-24 standard-card-24 bulky-card-24 bulky-card-12 plastic-by-hand' -- "$cur")); _filedir machine
      fi ;;
    thumbnail)
      case $prev in
        -o|--output)
          _filedir
          return ;;
        --size)
          :
          return ;;
        --language)
          :
          return ;;
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W '-o --output --size -q --quiet -v --verbose --language -h --help --version' -- "$cur"))
      else
        _filedir '@(repeat|yoke)'
      fi ;;
  esac
} && complete -F _punchwright punchwright
