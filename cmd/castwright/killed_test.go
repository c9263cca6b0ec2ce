//go:build window && kills

package main_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.org/castwright/model/store"
)

// kills is how often the program is killed. The two hundred times of package
// keep's test are cheaper; here the whole window dies.
var kills = flag.Int("kills", 20, "how often the window is killed")

// TestKilledAtAnyMoment kills the window (SIGKILL) at random moments of editing and
// saving. Each time the job's file holds a whole job, one of those that were saved;
// the next start offers what was not saved; and taken up it is no older than two
// seconds before the end. It is run by hand:
//
//	go test -tags window,kills -run TestKilled -timeout 0 ./cmd/castwright -args -kills 200
func TestKilledAtAnyMoment(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	h.pause = 25 * time.Millisecond
	home := t.TempDir()
	path := writeJob(t, home)
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 1))
	width := 1200.0 // that the job has now, mm
	offered, saves, inSave := 0, 0, 0

	for round := range *kills {
		r := start(t, d, home, path)
		r.wait("the job is open", func(s state) bool { return s.Path == path && !s.Busy })
		// seen is when each width was first seen in the window.
		type sight struct {
			width float64
			at    time.Time
		}
		seen := []sight{{width, time.Now()}}
		stored := map[float64]bool{width: true} // widths that the file may hold
		killed := make(chan time.Time, 1)
		wait := time.Duration(1200+rnd.IntN(3500)) * time.Millisecond
		time.AfterFunc(wait, func() {
			now := time.Now()
			r.cmd.Process.Kill()
			killed <- now
		})
		p := func() at {
			s, _ := r.state()
			return s.Board.place(900, 450)
		}()
		h.move(p)
		h.down()
		h.up()
		saving := false
		for n := 1; r.alive() && n < 100; n++ {
			next := width + 1
			h.write(fmt.Sprint(next))
			h.key("Return")
			ok := false
			for end := time.Now().Add(3 * time.Second); time.Now().Before(end) && r.alive(); time.Sleep(10 * time.Millisecond) {
				if s, err := r.state(); err == nil && near(s.WidthMM, next) {
					ok = true
					break
				}
			}
			if !ok {
				break
			}
			width = next
			seen = append(seen, sight{width, time.Now()})
			saving = rnd.IntN(4) == 0
			if saving {
				stored[width] = true
				saves++
				h.key("ctrl+s")
			}
		}
		at := <-killed
		<-r.done
		if saving {
			inSave++
		}
		job, err := store.Load(path)
		if err != nil {
			t.Fatalf("round %d: the job's file can't be read after the kill: %v", round, err)
		}
		file := saved(t, path, "A").Measures.Bounds.W()
		known := false
		for w := range stored {
			known = known || near(w, file)
		}
		if len(job.Options) != 2 || !known {
			t.Errorf("round %d: the file holds a top of %g mm, which was never saved", round, file)
		}

		// The next start.
		r = start(t, d, home, path)
		s := r.wait("the job is open again", func(s state) bool { return s.Path == path })
		least := file
		for _, k := range seen {
			if at.Sub(k.at) >= 2*time.Second {
				least = max(least, k.width)
			}
		}
		deadline := time.Now().Add(2 * time.Second)
		for !s.Busy && time.Now().Before(deadline) {
			time.Sleep(50 * time.Millisecond)
			s, _ = r.state()
		}
		if s.Busy {
			offered++
			d.shoot(t, "killed-offered")
			h.key("Return") // take up
			s = r.wait("it is taken up", func(s state) bool { return !s.Busy })
		}
		if s.WidthMM < least-0.01 || s.WidthMM > width+1.01 {
			t.Errorf("round %d: %g mm is left; %g mm was %v old at the end, the file has %g mm", round, s.WidthMM, least, 2*time.Second, file)
		}
		width = s.WidthMM
		h.key("ctrl+s")
		r.wait("it is saved", func(s state) bool { return !s.Dirty && !s.Busy })
		h.key("ctrl+q")
		r.ended()
		if left, _ := filepath.Glob(filepath.Join(home, ".*slot*")); len(left) > 0 {
			t.Errorf("round %d: copies are left behind: %v", round, left)
		}
		if _, err := os.Stat(path); err != nil {
			t.Fatal(err)
		}
	}
	t.Logf("%d kills, %d of them right after a save was asked for; %d saves; recovery offered %d times", *kills, inSave, saves, offered)
	if offered == 0 {
		t.Error("recovery was never offered: the kills came at the wrong moments")
	}
}
