module wheelwork

go 1.26.0

require (
	codeberg.org/go-fonts/liberation v0.5.0
	github.com/BurntSushi/toml v1.6.0
	github.com/agext/levenshtein v1.2.1
	github.com/fatih/color v1.19.0
	github.com/fsnotify/fsnotify v1.10.1
	github.com/hashicorp/hcl/v2 v2.25.0
	github.com/jstemmer/go-junit-report/v2 v2.1.0
	github.com/mattn/go-isatty v0.0.22
	github.com/mitchellh/go-wordwrap v1.0.1
	github.com/owenrumney/go-sarif/v2 v2.3.3
	github.com/pelletier/go-toml/v2 v2.4.3
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/sourcegraph/jsonrpc2 v0.2.3
	github.com/stretchr/testify v1.12.1
	github.com/vbauerster/mpb/v8 v8.16.2
	github.com/zclconf/go-cty v1.19.0
	golang.org/x/image v0.30.0
	golang.org/x/text v0.31.0
	golang.org/x/tools v0.52.0
	gonum.org/v1/plot v0.17.0
)

require (
	codeberg.org/go-latex/latex v0.2.0 // indirect
	github.com/VividCortex/ewma v1.2.0 // indirect
	github.com/acarl005/stripansi v0.0.0-20180116102854-5a71ef0e047d // indirect
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b // indirect
	github.com/apparentlymart/go-textseg/v15 v15.0.0 // indirect
	github.com/apparentlymart/go-textseg/v17 v17.0.1 // indirect
	github.com/clipperhouse/uax29/v2 v2.7.0 // indirect
	github.com/google/go-cmp v0.6.0 // indirect
	github.com/mattn/go-colorable v0.1.14 // indirect
	github.com/mattn/go-runewidth v0.0.30 // indirect
	github.com/vbauerster/cupwriter v0.0.5 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/mod v0.42.0 // indirect
	golang.org/x/sync v0.24.0 // indirect
	golang.org/x/sys v0.49.0 // indirect
)
