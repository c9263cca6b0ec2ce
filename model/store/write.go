package store

import (
	"fmt"
	"io"
)

// Write writes a file that is not a job, such as a picture, as [Save] writes
// one: wholly or not at all.
func Write(path string, write func(io.Writer) error) error {
	if err := replace(path, write); err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	return nil
}
