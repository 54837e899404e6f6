// Command slatwright draws made-to-measure bottle racks: it reads a design of
// one page, solves it, checks it and prints the packet that is carried to the
// saw. Each command stands in a file of its own; packet.go holds the way from a
// design to the files, in one piece.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }
