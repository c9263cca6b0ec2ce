// Package files opens, saves and exports what the window has in hand, and keeps
// what was not saved from being lost: its own path dialogs, the guard, the jobs
// of late, and the window's settings. Whatever it writes is written wholly or
// not at all.
package files
