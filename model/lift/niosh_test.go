package lift_test

import (
	"math"
	"testing"

	"example.org/castwright/model/lift"
	"example.org/castwright/model/units"
)

// TestLimit checks worked examples of NIOSH 94-110 (rev. 9/2021). The manual
// multiplies rounded factors, so that its printed limits differ by up to 0.3 lb;
// "full" is the product in full precision.
func TestLimit(t *testing.T) {
	tests := []struct {
		source        string
		form          lift.Form
		task          lift.Task
		printed, full float64 // printed 0: not printed
	}{
		{"best lift: every factor is 1", lift.US,
			lift.Task{Horizontal: 10, Vertical: 30, Distance: 10, PerMinute: 0.2, Hours: 1},
			51, 51},
		{"example 4, Fig. 14, p. 46, origin", lift.US,
			lift.Task{Horizontal: 10, Vertical: 22, Distance: 37, PerMinute: 3, Hours: 1,
				Grip: lift.GripFair}, 34.9, 34.814},
		{"example 4, destination; H = 20 inferred", lift.US,
			lift.Task{Horizontal: 20, Vertical: 59, Distance: 37, PerMinute: 3, Hours: 1,
				Grip: lift.GripFair}, 15.2, 15.253},
		{"example 1, p. 33, origin (from memory)", lift.US,
			lift.Task{Horizontal: 23, Vertical: 15, Distance: 48, PerMinute: 0.1, Hours: 1,
				Grip: lift.GripFair}, 16.3, 16.031},
		{"example 1, destination (from memory)", lift.US,
			lift.Task{Horizontal: 23, Vertical: 63, Distance: 48, PerMinute: 0.1, Hours: 1,
				Grip: lift.GripFair}, 14.5, 14.308},
		{"metric form, computed apart", lift.Metric,
			lift.Task{Horizontal: 30, Vertical: 75, Distance: 50, Asymmetry: 30, PerMinute: 3,
				Hours: 1, Grip: lift.GripFair}, 0, 13.875},
		{"a slab, computed apart", lift.US, lift.SlabTask, 0, 30.60},
	}
	for _, tt := range tests {
		got := tt.form.Limit(tt.task)
		if math.Abs(got-tt.full) > 0.0005+1e-9 {
			t.Errorf("%s: limit %.4f, want %.4f", tt.source, got, tt.full)
		}
		if tt.printed != 0 && math.Abs(got-tt.printed) > 0.3 {
			t.Errorf("%s: limit %.4f, printed %.4f", tt.source, got, tt.printed)
		}
	}
}

// TestIndex: example 1 lifts 44 lb; printed LI 2.7 and 3.0 (pp. 33 to 37, from
// memory). A top of 142.4 lb with two people at a slab: LI 2.33.
func TestIndex(t *testing.T) {
	tests := []struct{ load, limit, want float64 }{
		{44, 16.3, 2.7}, {44, 14.5, 3.0}, {142.4 / 2, lift.SlabLimit() / units.PoundKG, 2.33},
		{0, 0, 0}, {1, 0, math.Inf(1)},
	}
	for _, tt := range tests {
		if got := lift.Index(tt.load, tt.limit); !(math.Abs(got-tt.want) < 0.05) && got != tt.want {
			t.Errorf("Index(%g, %g) = %.3f, want %g", tt.load, tt.limit, got, tt.want)
		}
	}
}

// TestFrequency checks Table 5 of NIOSH 94-110 at rows, between rows, and beyond.
func TestFrequency(t *testing.T) {
	tests := []struct {
		perMinute, hours, height, want float64
	}{
		{0, 1, 30, 1}, {0.2, 8, 0, .85}, {0.5, 2, 30, .92}, {4, 1, 0, .84}, {4, 1.5, 0, .72},
		{4, 8, 30, .45}, {8.5, 1, 30, .56}, {9, 8, 29.9, 0}, {9, 8, 30, .15}, {11, 2, 0, 0},
		{11, 2, 30, .23}, {12, 1, 0, .37}, {13, 1, 0, 0}, {13, 1, 30, .34}, {15, 1, 30, .28},
		{15.1, 1, 30, 0}, {1, 8.1, 30, 0}, {math.NaN(), 1, 30, 0}, {1, math.NaN(), 30, 0},
	}
	for _, tt := range tests {
		task := lift.Task{Vertical: tt.height, PerMinute: tt.perMinute, Hours: tt.hours}
		if got := lift.US.Multipliers(task).Frequency; math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%g a minute for %g h at %g in: %g, want %g",
				tt.perMinute, tt.hours, tt.height, got, tt.want)
		}
	}
}

// TestGrip checks Table 7: good 1.00 and 1.00, fair .95 and 1.00, poor .90 and
// .90, below and from 30 in.
func TestGrip(t *testing.T) {
	want := map[lift.Grip][2]float64{
		lift.GripGood: {1, 1}, lift.GripFair: {.95, 1}, lift.GripPoor: {.9, .9},
	}
	for grip, w := range want {
		for i, v := range []float64{29.9, 30} {
			m := lift.US.Multipliers(lift.Task{Vertical: v, Grip: grip})
			if m.Grip != w[i] {
				t.Errorf("grip %d at %g in: %g, want %g", grip, v, m.Grip, w[i])
			}
		}
	}
}

// TestLimitOutside: beyond the equation's bounds (pp. 13 to 20) there is no
// limit to recommend.
func TestLimitOutside(t *testing.T) {
	change := map[string]func(*lift.Task){
		"reach":     func(t *lift.Task) { t.Horizontal = 25.01 },
		"height":    func(t *lift.Task) { t.Vertical = 70.01 },
		"depth":     func(t *lift.Task) { t.Vertical = -0.01 },
		"travel":    func(t *lift.Task) { t.Distance = 70.01 },
		"twist":     func(t *lift.Task) { t.Asymmetry = -135.1 },
		"frequency": func(t *lift.Task) { t.PerMinute = 16 },
		"hours":     func(t *lift.Task) { t.Hours = 9 },
		"no number": func(t *lift.Task) { t.Horizontal = math.NaN() },
	}
	for name, f := range change {
		task := lift.SlabTask
		f(&task)
		if got := lift.US.Limit(task); got != 0 {
			t.Errorf("%s: limit %g, want none", name, got)
		}
	}
	near := lift.Task{Horizontal: 5, Vertical: 30, Distance: 0, PerMinute: 0.1, Hours: 0.5}
	if got := lift.US.Limit(near); got != 51 {
		t.Errorf("nearer than 10 in counts as 10 in: limit %g, want 51", got)
	}
}

// TestReach: H = 8 + W/2, below 10 in 10 + W/2; 20 and 25 cm (p. 15).
func TestReach(t *testing.T) {
	tests := []struct {
		form        lift.Form
		width, v, w float64
	}{
		{lift.US, 12, 30, 14}, {lift.US, 12, 9, 16}, {lift.Metric, 30, 75, 35}, {lift.Metric, 30, 20, 40},
	}
	for _, tt := range tests {
		if got := tt.form.Reach(tt.width, tt.v); got != tt.w {
			t.Errorf("Reach(%g, %g) = %g, want %g", tt.width, tt.v, got, tt.w)
		}
	}
}

// TestAverage: 10 a minute for 8 of 15 minutes is 5.33 a minute (p. 16).
func TestAverage(t *testing.T) {
	if got := lift.AveragePerMinute(10, 8); math.Abs(got-5.33) > 0.005 {
		t.Errorf("got %g, want 5.33", got)
	}
}

// TestTeam: HSE L23 (from memory): two people two thirds, three a half of their
// sum; two who may lift 25 kg each, 33.3 kg.
func TestTeam(t *testing.T) {
	for people, want := range map[int]float64{-1: 0, 0: 0, 1: 25, 2: 33.333, 3: 37.5, 4: 50} {
		if got := lift.TeamLimit(25, people); math.Abs(got-want) > 0.001 {
			t.Errorf("%d people: %g kg, want %g kg", people, got, want)
		}
	}
	if got := lift.SlabLimit(); math.Abs(got-13.88) > 0.005 {
		t.Errorf("a slab: %g kg, want 30.60 lb = 13.88 kg", got)
	}
}
