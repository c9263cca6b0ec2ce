// Package jobsheet is the dialog for what a job is as a whole: client, site, and
// the materials as used with their prices.
package jobsheet
