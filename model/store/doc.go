// Package store keeps jobs as JSON: one readable file a job.
//
// [Encode] is canonical: equal jobs give equal bytes. [Decode] reads what
// Encode wrote back to an equal job, and the members that it does not know are
// kept (design.Extra) and written again in their places. [Load] and [Save] do
// the same with files; a save is atomic.
//
// What a member is called, in which order it stands and what is needed is
// described once for each type (job.go, top.go, parts.go); reader, writer and
// the schema's test all follow that one description. The format is documented
// for strangers in assets/schema/castwright-job.schema.json.
//
// Only what a design can't represent is refused: broken JSON, unknown words,
// numbers beyond the bounds of a document, a newer version. A file that
// describes a bad top opens, and the design's faults explain it.
package store
