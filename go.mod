module slatwright

go 1.26.0

require (
	github.com/BurntSushi/toml v1.6.0
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b
	github.com/go-pdf/fpdf v0.9.0
	github.com/google/go-cmp v0.7.0
	github.com/rogpeppe/go-internal v1.16.0
	github.com/spf13/cobra v1.10.2
	golang.org/x/image v0.47.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/spf13/pflag v1.0.9 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/text v0.43.0 // indirect
	golang.org/x/tools v0.51.0 // indirect
)
