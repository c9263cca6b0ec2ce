// Package report writes the report of one option: as text for paper and terminal,
// and as JSON for other programs. It reckons nothing; every number comes from
// package example.org/castwright/model/report.
package report
