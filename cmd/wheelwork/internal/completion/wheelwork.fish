# fish completion for wheelwork; put it into ~/.config/fish/config.fish:
#   wheelwork completion fish | source
function __wheelwork_complete
    set -l words (commandline --cut-at-cursor --tokenize --current-process)
    set -l found ($words[1] complete -- $words[2..-1] (commandline --current-token --cut-at-cursor) 2>/dev/null)
    if contains -- ":files" $found
        __fish_complete_path (commandline --current-token --cut-at-cursor)
    else
        printf '%s\n' $found
    end
end
complete --command wheelwork --no-files --arguments '(__wheelwork_complete)'
