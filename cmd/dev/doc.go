// Command dev is the project's one tool for a fresh clone. It needs only Go.
//
//	go run ./cmd/dev run [FILE]      set up, build and start the program
//	go run ./cmd/dev test [-short]   set up and run every check
//	go run ./cmd/dev check           set up only
//
// Each looks for what is missing on this machine, says what it is about to
// install, installs it on Debian and Ubuntu with apt-get, and elsewhere says
// exactly what to install. It imports the standard library alone and no cgo, so
// that it builds in seconds before any compiler or header is there.
package main
