// Package approval is the desk at which the client agrees: the sheet to sign, the
// approved revisions of the job, how the option in hand stands to them, the
// letterhead, and the page that compares two options.
package approval
