// Package book is the maker's own book of parts to keep, as a file: sinks with
// their taps, patterns of tap holes, edges and finishes that are used again in
// the next job. Several windows may have the book open: each change is made to
// the file as it stands, one after the other.
package book
