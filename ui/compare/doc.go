// Package compare shows two options side by side at one scale, with their
// numbers and what differs between them in words.
package compare
