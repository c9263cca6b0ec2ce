// Package keep sees to it that nothing drawn is lost. While a window has a job
// in hand, its latest state lies in a slot beside the job's file (or, for a job
// that was never saved or lies where nothing can be written, in the folder for
// unsaved jobs), written atomically after each edit. A slot whose window is gone is an [Orphan] and is offered at
// the next start. A file that changed since this window read it is never
// overwritten.
//
// A slot of the job "bench.json" is ".bench.json.slot-1" with its lock
// ".bench.json.slot-1.lock". The lock is held by the window that owns the slot
// and falls when that window ends, however it ends.
package keep
