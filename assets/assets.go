// Package assets holds what is built into the program: the schema of the job
// file and the demo jobs.
package assets

import (
	"bytes"
	"embed"
	"io/fs"
	"path"
)

//go:embed schema/castwright-job.schema.json
var schema []byte

//go:embed demo/*.json
var demos embed.FS

// Schema is the JSON Schema (draft 2020-12) of a job file.
func Schema() []byte { return bytes.Clone(schema) }

// Demo is a finished job of our own invention.
type Demo struct {
	Name string // of its file, such as "pottery-wash-counter.json"
	Data []byte
}

// Demos are the demo jobs; the first one is what the window opens on when
// there is nothing else to open.
func Demos() []Demo {
	entries, err := demos.ReadDir("demo")
	if err != nil {
		panic("assets: " + err.Error()) // it is built in
	}
	var out []Demo
	for _, e := range entries {
		data, err := fs.ReadFile(demos, path.Join("demo", e.Name()))
		if err != nil {
			panic("assets: " + err.Error())
		}
		out = append(out, Demo{e.Name(), data})
	}
	return out
}
