// Package assets holds what is built into the program: the schema of the job
// file, the demo jobs and the licences of the fonts.
package assets

import (
	"bytes"
	"embed"
	"io/fs"
	"path"
)

//go:embed schema/castwright-job.schema.json
var schema []byte

//go:embed licence/*.txt
var licences embed.FS

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

// Licences are the licences of the fonts that the program draws with and embeds in
// PDFs, by the fonts' names. Both allow it.
func Licences() map[string]string {
	out := map[string]string{}
	for font, name := range map[string]string{"Go fonts": "go-fonts", "DejaVu Sans Condensed": "dejavu-fonts"} {
		data, err := fs.ReadFile(licences, "licence/"+name+".txt")
		if err != nil {
			panic("assets: " + err.Error()) // it is built in
		}
		out[font] = string(data)
	}
	return out
}
