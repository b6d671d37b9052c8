#compdef wheelwork
# zsh completion for wheelwork; put it into ~/.zshrc, after compinit:
#   source <(wheelwork completion zsh)
_wheelwork() {
    local line word
    local -a found
    for line in "${(@f)$("${words[1]}" complete -- "${(@)words[2,CURRENT]}" 2>/dev/null)}"; do
        if [[ $line == ":files" ]]; then
            _files
            return
        fi
        [[ -n $line ]] || continue
        word=${line%%$'\t'*}
        if [[ $line == *$'\t'* ]]; then
            found+=("${word//:/\\:}:${line#*$'\t'}")
        else
            found+=("${word//:/\\:}")
        fi
    done
    (( ${#found} )) && _describe -V wheelwork found
}
compdef _wheelwork wheelwork
