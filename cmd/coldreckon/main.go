// Command coldreckon answers one question for one small cruising boat: should
// it have refrigeration, and of which kind? It asks about the boat, reckons
// heat, electricity and money, and writes a report to print.
//
// This package is the outermost ring: it reads arguments, files, the
// environment and the clock, and it is the only one that writes files.
package main

import "os"

func main() {
	os.Exit(Main(os.Args[1:], os.Getenv, os.Stdin, os.Stdout, os.Stderr))
}
