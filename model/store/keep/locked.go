package keep

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/gofrs/flock"
)

// Locked does something to a file while no other window does: it waits for its
// turn. The lock lies beside the file, in a folder that is made if need be, and
// falls with the program that holds it.
func Locked(path string, do func() error) (err error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("making the folder for %s: %w", path, err)
	}
	lock := flock.New(filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock"))
	if err := lock.Lock(); err != nil {
		return fmt.Errorf("waiting for %s: %w", path, err)
	}
	defer lock.Unlock()
	return do()
}
