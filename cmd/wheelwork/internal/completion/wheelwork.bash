# bash completion for wheelwork; put it into ~/.bashrc:
#   source <(wheelwork completion bash)
_wheelwork() {
    local word line
    local -a words=()
    # The line is cut at "=": --format=json comes as three words.
    for word in "${COMP_WORDS[@]:1:COMP_CWORD}"; do
        [[ $word == "=" ]] || words+=("$word")
    done
    [[ ${COMP_WORDS[COMP_CWORD]} == "=" ]] && words+=("")
    COMPREPLY=()
    while IFS= read -r line; do
        if [[ $line == ":files" ]]; then
            compopt -o filenames -o default 2>/dev/null
            COMPREPLY=()
            return
        fi
        COMPREPLY+=("${line%%$'\t'*}")
    done < <("${COMP_WORDS[0]}" complete -- "${words[@]}" 2>/dev/null)
}
complete -F _wheelwork wheelwork
